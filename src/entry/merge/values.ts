import type { KindName } from '../../records/index.js';
import { blockColumns, columnFor } from '../columns.js';
import { sameTyped } from '../same.js';
import { type Data, isData } from '../yaml-text.js';

/** A field that two people changed to different things. */
export interface ValueClash {
  readonly path: readonly string[];
  readonly base: unknown;
  readonly ours: unknown;
  readonly theirs: unknown;
}

/** What comes of two changes of one value; on a clash `value` has ours there. */
export interface MergedValue {
  readonly value: unknown;
  readonly clashes: readonly ValueClash[];
}

/** Merges a value field by field: `undefined` is a field that is not there. Lists that both only added to get both additions. */
export function mergeValues(
  kind: KindName | undefined,
  { base, ours, theirs }: { readonly base: unknown; readonly ours: unknown; readonly theirs: unknown },
  path: readonly string[] = [],
): MergedValue {
  if (sameTyped(ours, theirs) || sameTyped(base, theirs)) return { value: ours, clashes: [] };
  if (sameTyped(base, ours)) return { value: theirs, clashes: [] };
  if (isData(ours) && isData(theirs) && (base === undefined || base === null || isData(base)))
    return mergeMaps(kind, { base: (base ?? {}) as Data, ours, theirs }, path);
  const list = kind !== undefined && isAddedTo(kind, path) ? bothAdded(base, ours, theirs) : undefined;
  if (list) return { value: list, clashes: [] };
  return { value: ours, clashes: [{ path, base, ours, theirs }] };
}

function mergeMaps(
  kind: KindName | undefined,
  { base, ours, theirs }: { readonly base: Data; readonly ours: Data; readonly theirs: Data },
  path: readonly string[],
): MergedValue {
  const keys = [...new Set([...Object.keys(ours), ...Object.keys(theirs)])];
  const merged = keys.map((key) => {
    const way = [...path, key];
    return [key, mergeValues(kind, { base: base[key], ours: ours[key], theirs: theirs[key] }, way)] as const;
  });
  const left = merged.filter(([, { value }]) => value !== undefined);
  return {
    value: Object.fromEntries(left.map(([key, { value }]) => [key, value])),
    clashes: merged.flatMap(([, { clashes }]) => clashes),
  };
}

/** Lists of ids, of words, and of blocks: their order says nothing that an addition could break. A way of points is none of them. */
function isAddedTo(kind: KindName, path: readonly string[]): boolean {
  if (path.length === 0 || path.at(-1) === 'joins') return false;
  const form = columnFor(kind, path.join('.'))?.form.as;
  return form === 'ids' || form === 'texts' || blockColumns(kind, path, 0) !== undefined;
}

/** The base with what both added; undefined where one of them took away or changed what was there. */
function bothAdded(base: unknown, ours: unknown, theirs: unknown): readonly unknown[] | undefined {
  const [old, mine, yours] = [base ?? [], ours ?? [], theirs ?? []].map((one) => [one].flat() as readonly unknown[]) as [
    readonly unknown[],
    readonly unknown[],
    readonly unknown[],
  ];
  const starts = (list: readonly unknown[]): boolean => old.every((one, i) => i < list.length && sameTyped(one, list[i]));
  if (!starts(mine) || !starts(yours)) return undefined;
  const more = yours.slice(old.length).filter((one) => !mine.some((own) => sameTyped(own, one)));
  return [...mine, ...more];
}
