import type { Book } from './book.js';
import { sentencesFor } from './sentences.js';
import { type Ref, ref } from './table.js';

const kept = new WeakMap<object, ReadonlyMap<string, readonly Ref[]>>();

/**
 * What was found and decided about a record, to be printed beside it: `NC-04 rework`, linked to the finding record. Only what this
 * edition may tell: the records were sifted before any chapter sees them.
 */
export function decisionsOf(book: Book, id: string): readonly Ref[] {
  const w = sentencesFor(book);
  const { shell } = book.assessment.model;
  let byRecord = kept.get(shell);
  if (!byRecord) {
    const found = new Map<string, Ref[]>();
    for (const one of shell.findings) {
      const decided = one.decision && w(`decided.${one.decision}`);
      const words = decided === undefined ? w('decided.none') : one.closed ? decided : w('decided.open', { decided });
      const mark = ref(one.id, `${one.id} ${words}`);
      for (const of of one.of) found.set(of, [...(found.get(of) ?? []), mark]);
    }
    for (const { id: amendment, date, changes } of shell.amendments) {
      const mark = ref(amendment, w('decided.changed', { id: amendment, date: book.show.date(date) }));
      for (const of of changes) found.set(of, [...(found.get(of) ?? []), mark]);
    }
    byRecord = found;
    kept.set(shell, byRecord);
  }
  return byRecord.get(id) ?? [];
}
