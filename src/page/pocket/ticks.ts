import type { Keep } from '../keep.js';
import type { ScreenStore } from './screen-store.js';
import { today } from './today.js';

/** Steps and tasks that were ticked off stay ticked when the page is opened again, each with its day. */
export function keepTicks(keep: Keep, { eachMade }: Pick<ScreenStore, 'eachMade'>): void {
  const ticked = new Map(Object.entries(JSON.parse(keep.get('ticked') ?? '{}') as Readonly<Record<string, string>>));
  const keys = new Map<Element, string>();
  eachMade((screen) => {
    for (const [i, box] of screen.querySelectorAll<HTMLInputElement>('.ticks input').entries()) {
      const key = `${screen.id} ${i}`;
      keys.set(box, key);
      box.checked = ticked.has(key);
      if (box.checked) showDay(box, ticked.get(key));
    }
  });
  document.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    const key = keys.get(target);
    if (key === undefined) return;
    if (target.checked) ticked.set(key, today());
    else ticked.delete(key);
    showDay(target, ticked.get(key));
    keep.put('ticked', JSON.stringify(Object.fromEntries(ticked)));
  });
}

/** The day stands behind the words of the step; none where it is not ticked. */
function showDay(box: HTMLInputElement, day: string | undefined): void {
  const words = box.nextElementSibling;
  words?.querySelector('time')?.remove();
  if (!words || day === undefined) return;
  const time = document.createElement('time');
  time.dateTime = day;
  time.textContent = ` (${day})`;
  words.append(time);
}
