import { ifThere } from '../dom.js';
import type { PageWords } from '../words.js';

/** Whole months from one day to another, none where the second is the earlier. */
export function monthsBetween(from: string, to: Date): number {
  const start = new Date(`${from}T00:00:00`);
  if (Number.isNaN(start.getTime())) return 0;
  const months = (to.getFullYear() - start.getFullYear()) * 12 + to.getMonth() - start.getMonth();
  return Math.max(0, to.getDate() < start.getDate() ? months - 1 : months);
}

/** Says so where the page is older than it should be. */
export function sayAge(date: string | undefined, oldAfterMonths: number, words: PageWords): void {
  const place = ifThere<HTMLElement>('old');
  if (!place || date === undefined) return;
  const months = monthsBetween(date, new Date());
  if (months <= oldAfterMonths) return;
  place.textContent = words('tap.old', { months });
  place.hidden = false;
}
