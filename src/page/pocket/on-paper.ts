/** What is folded away is printed too: steps are followed from the paper. Afterwards it is as it was. */
export function unfoldOnPaper(): void {
  const opened: HTMLDetailsElement[] = [];
  window.addEventListener('beforeprint', () => {
    for (const one of document.querySelectorAll<HTMLDetailsElement>('.screen.here details:not([open])')) {
      one.open = true;
      opened.push(one);
    }
  });
  window.addEventListener('afterprint', () => {
    for (const one of opened.splice(0)) one.open = false;
  });
}
