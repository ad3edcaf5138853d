import type { TraceHit } from '../history/trace.js';
import { type TraceQuery, wordsOf } from '../history/trace-query.js';
import { filesWith } from '../store/search.js';

export interface Traced {
  readonly hits: readonly TraceHit[];
  /** Files that could not be looked at, each with why. */
  readonly refused: ReadonlyMap<string, string>;
}

/** Every place in the shells of a store where any of it stands, by shell and file. A file without the words is not read as records. */
export async function traceStore(root: string, sought: readonly TraceQuery[]): Promise<Traced> {
  const looked = filesWith(root, wordsOf(sought));
  // The reader of records is loaded while Git looks.
  const [{ files, refused }, { hitsIn }] = await Promise.all([looked, import('../history/trace.js')]);
  const hits = [...files].flatMap(([file, text]) => hitsIn(file, text, sought));
  return { hits, refused: refused ?? new Map() };
}

/** Heats of a certificate, by its id or number in the library. */
export async function heatsOf(root: string, certificate: string): Promise<readonly string[]> {
  const wanted = certificate.trim().toLowerCase();
  const looked = filesWith(root, [wanted]);
  const [{ files }, { recordsIn }] = await Promise.all([looked, import('../history/records-in.js')]);
  return [...files]
    .filter(([file]) => file.startsWith('library/'))
    .flatMap(([file, text]) => recordsIn(file, text))
    .filter(({ kind, id, data }) => {
      const { document } = (data ?? {}) as { readonly document?: unknown };
      return (
        kind === 'library certificate' &&
        (id.toLowerCase() === wanted ||
          String(document ?? '')
            .toLowerCase()
            .includes(wanted))
      );
    })
    .flatMap(({ data }) => {
      const { heats } = (data ?? {}) as { readonly heats?: unknown };
      return Array.isArray(heats) ? heats.map(String) : typeof heats === 'string' ? [heats] : [];
    });
}
