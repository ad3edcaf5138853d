import { evidenceAge } from '../query/evidence-age.js';
import type { Book } from './book.js';

const MOST = 4;

/**
 * What stands beside a photo or test: that it was entered late and by whom, what has changed since, and what was built only after it. Nothing
 * where none is so.
 */
export function ageWords(book: Book, id: string, of: readonly string[], date: string | undefined): string | undefined {
  const { late, changed, early } = evidenceAge(book.assessment.model, id, of, date);
  const words: string[] = [];
  if (late) {
    const who = book.edition === 'shop' && late.who !== '' ? ` by ${late.who}` : '';
    words.push(`Entered on ${book.show.date(late.entered)}${who}, ${late.days} days later.`);
  }
  const listed = (all: typeof changed): string => {
    const some = all.slice(0, MOST).map((one) => `${one.id} on ${book.show.date(one.day)}`);
    return all.length > MOST ? `${some.join(', ')} and ${all.length - MOST} more` : some.join(', ');
  };
  const them = (all: typeof changed): string => (all.length === 1 ? 'that' : 'those');
  if (changed.length > 0) words.push(`Changed since: ${listed(changed)}. It does not show ${them(changed)} as now built.`);
  if (early.length > 0) words.push(`Built after it: ${listed(early)}. It cannot show ${them(early)}.`);
  return words.length > 0 ? words.join(' ') : undefined;
}
