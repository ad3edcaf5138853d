import type { Crossing } from '../compute/services/types.js';
import { placeWords } from '../query/place-words.js';
import type { Run } from '../records/index.js';
import type { Book } from './book.js';
import { showIn } from './show.js';

/** Where runs pass a sheet with weather on one side, and whether what keeps the water out there is on record. */

const kept = new WeakMap<object, ReadonlyMap<string, readonly Crossing[]>>();

/** Passages of a run through outside sheets. */
export function outsidePassages(book: Book, run: string): readonly Crossing[] {
  const { services } = book.assessment.figures;
  let byRun = kept.get(services);
  if (!byRun) {
    const found = new Map<string, Crossing[]>();
    for (const one of services.crossings) {
      if (one.sealed !== undefined) found.set(one.run, [...(found.get(one.run) ?? []), one]);
    }
    byRun = found;
    kept.set(services, byRun);
  }
  return byRun.get(run) ?? [];
}

export const SEALED_WORD = 'sealed';
const NOT_SEALED = 'sealing not verified';

/** `sealed at BP-L-3; sealing not verified at RF-04`; seals that are recorded for other places too. */
export function sealWords(book: Book, run: Pick<Run, 'id' | 'sealed'>): string | undefined {
  const passed = outsidePassages(book, run.id);
  const system = book.show.system === 'both' ? 'us' : book.show.system;
  const recorded = (run.sealed ?? []).map((one) => (typeof one === 'string' ? one : placeWords(showIn(system), one)));
  const unproved = [...new Set(passed.filter((one) => !one.sealed).map((one) => one.through))];
  return (
    [
      recorded.length > 0 && `${SEALED_WORD} at ${recorded.join(', ')}`,
      unproved.length > 0 && `${NOT_SEALED} at ${unproved.join(', ')}`,
    ]
      .filter(Boolean)
      .join('; ') || undefined
  );
}

/** What keeps a copper lug off the aluminium: a repairer puts it back. */
export const insulatorWords = (one: { readonly insulator?: boolean }): string | undefined =>
  one.insulator ? 'insulator fitted' : undefined;
