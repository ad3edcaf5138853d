import { evidenceAge } from '../query/evidence-age.js';
import type { Book } from './book.js';

const MOST = 4;

/** What stands beside a photo or test: that it was entered late and by whom, and what has changed since. Nothing where neither is so. */
export function ageWords(book: Book, id: string, of: readonly string[], date: string | undefined): string | undefined {
  const { late, changed } = evidenceAge(book.assessment.model, id, of, date);
  const words: string[] = [];
  if (late) {
    const who = book.edition === 'shop' && late.who !== '' ? ` by ${late.who}` : '';
    words.push(`Entered on ${book.show.date(late.entered)}${who}, ${late.days} days later.`);
  }
  if (changed.length > 0) {
    const some = changed.slice(0, MOST).map((one) => `${one.id} on ${book.show.date(one.day)}`);
    const more = changed.length > MOST ? ` and ${changed.length - MOST} more` : '';
    words.push(
      `Changed since: ${some.join(', ')}${more}. It does not show ${changed.length === 1 ? 'that' : 'those'} as now built.`,
    );
  }
  return words.length > 0 ? words.join(' ') : undefined;
}
