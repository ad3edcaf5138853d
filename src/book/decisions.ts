import type { Book } from './book.js';
import { type Ref, ref } from './table.js';

const kept = new WeakMap<object, ReadonlyMap<string, readonly Ref[]>>();

/**
 * What was found and decided about a record, to be printed beside it: `NC-04 rework`, linked to the finding record. Only what this
 * edition may tell: the records were sifted before any chapter sees them.
 */
export function decisionsOf(book: Book, id: string): readonly Ref[] {
  const { findings } = book.assessment.model.shell;
  let byRecord = kept.get(findings);
  if (!byRecord) {
    const found = new Map<string, Ref[]>();
    for (const one of findings) {
      const words = one.decision ? `${one.decision}${one.closed ? '' : ', open'}` : 'undecided';
      const mark = ref(one.id, `${one.id} ${words}`);
      for (const of of one.of) found.set(of, [...(found.get(of) ?? []), mark]);
    }
    byRecord = found;
    kept.set(findings, byRecord);
  }
  return byRecord.get(id) ?? [];
}
