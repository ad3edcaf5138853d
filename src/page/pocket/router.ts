/** Shows one screen at a time, by what follows `#` in the address: links work as they do without scripts. */
export function route(shown: (id: string) => void): void {
  const go = (): void => {
    const asked = idIn(window.location.hash);
    const target = (asked !== '' && document.getElementById(asked)) || document.getElementById('find');
    const screen = target?.closest('.screen');
    if (!target || !screen) return;
    for (const old of document.querySelectorAll('.screen.here')) if (old !== screen) old.classList.remove('here');
    screen.classList.add('here');
    shown(target.id);
    if (asked === '') return;
    const heading = screen.querySelector('h1');
    heading?.setAttribute('tabindex', '-1');
    heading?.focus({ preventScroll: true });
    if (target === screen) window.scrollTo(0, 0);
    else target.scrollIntoView();
  };
  window.addEventListener('hashchange', go);
  go();
}

function idIn(hash: string): string {
  try {
    return decodeURIComponent(hash.slice(1));
  } catch {
    return hash.slice(1);
  }
}
