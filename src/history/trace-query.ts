import type { TraceWord } from '../records/field.js';
import { KIND_NAMES, kindOf } from '../records/kinds.js';
import { eachField } from '../records/references.js';

export type TraceKey = TraceWord;

/** What a recall may ask for → the keys that hold it and the kinds that have them, as the fields themselves say. */
export const TRACE_KEYS: ReadonlyMap<TraceKey, { readonly keys: ReadonlySet<string>; readonly kinds: ReadonlySet<string> }> =
  tracedKeys();

function tracedKeys() {
  const found = new Map<TraceKey, { readonly keys: Set<string>; readonly kinds: Set<string> }>();
  for (const kind of KIND_NAMES) {
    eachField(kindOf(kind).fields, ({ traits: { traced } }, _path, key) => {
      if (traced === undefined) return;
      const one = found.get(traced) ?? { keys: new Set(), kinds: new Set() };
      one.keys.add(key);
      one.kinds.add(kindOf(kind).home.in === 'part' ? 'shell' : kind);
      found.set(traced, one);
    });
  }
  return found;
}

/** What is sought: any of some values under any of some keys. */
export interface TraceQuery {
  readonly keys: ReadonlySet<string>;
  /** Lower case. */
  readonly values: ReadonlySet<string>;
  /** Kinds of record that are looked at; all where absent. */
  readonly kinds?: ReadonlySet<string>;
}

/** `heats`: of a certificate, the heats that the library says it is of. */
export function soughtFor(key: TraceKey, value: string, heats: readonly string[] = []): readonly TraceQuery[] {
  const one = { ...traced(key), values: new Set([plainWord(value)]) };
  const ofHeats = (['heat', 'lot'] as const).map((word) => ({ ...traced(word), values: new Set(heats.map(plainWord)) }));
  return heats.length === 0 ? [one] : [one, ...ofHeats];
}

const traced = (key: TraceKey) => TRACE_KEYS.get(key) ?? { keys: new Set<string>(), kinds: new Set<string>() };

/** As values are compared: without case, and whatever the white space. */
export const plainWord = (value: unknown): string => String(value).trim().replace(/\s+/gu, ' ').toLowerCase();

/** Words of which one must stand in a file for it to have a hit; a value of several words may be broken over lines, so its longest. */
export const wordsOf = (sought: readonly TraceQuery[]): readonly string[] =>
  sought.flatMap(({ values }) => [...values].map((value) => value.split(' ').reduce((a, b) => (b.length > a.length ? b : a))));
