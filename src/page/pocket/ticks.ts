import type { Keep } from '../keep.js';

/** Steps that were ticked off stay ticked when the page is opened again, with the day. */
export function keepTicks(keep: Keep): void {
  const ticked = new Set<string>(JSON.parse(keep.get('ticks') ?? '[]') as string[]);
  const keys = new Map<Element, string>();
  for (const screen of document.querySelectorAll('.screen'))
    for (const [i, box] of screen.querySelectorAll<HTMLInputElement>('.ticks input').entries()) {
      keys.set(box, `${screen.id} ${i}`);
      box.checked = ticked.has(`${screen.id} ${i}`);
    }
  document.addEventListener('change', ({ target }) => {
    const key = target instanceof HTMLInputElement ? keys.get(target) : undefined;
    if (key === undefined) return;
    if ((target as HTMLInputElement).checked) ticked.add(key);
    else ticked.delete(key);
    keep.put('ticks', JSON.stringify([...ticked]));
  });
}
