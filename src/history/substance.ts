import { getOwn } from '../get-own.js';
import { type RecordThen, recordsIn } from './records-in.js';

/** Fields that say where a thing is, how it runs, how large it is and what it joins. The rest describes, or is evidence. */
const SUBSTANCE = [
  'at',
  'from',
  'to',
  'via',
  'zones',
  'box',
  'along',
  'outline',
  'opening',
  'holes',
  'joins',
  'section',
  'alloy',
  'plate',
  'thickness',
  'wall',
  'conductor',
  'installed_length',
  'cut_length',
  'length',
  'width',
  'height',
  'sill',
  'type',
] as const;
/** Of a pipe or a wire `size` is what it is; of a tank or a box it only draws it. */
const SIZED: ReadonlySet<string> = new Set(['run', 'circuit', 'weld', 'node']);

/** A record of substance that differs between two versions of a shell's files. */
export interface SubstanceChange {
  readonly id: string;
  /** The date typed on it, where that changed with it. */
  readonly date?: string;
}

/** Versions of one file, before and after; the first is absent for a new file, the second for one that is gone. */
export interface FileVersions {
  readonly file: string;
  readonly before?: string;
  readonly after?: string;
}

/**
 * Records whose place, route, size or joints became others between the versions, all files of one commit taken together, so that a record that
 * was moved to another file is the same. A figure that was not there before was recorded late, and is no change; nor is an entry that was
 * mended, with a new `corrected`; nor what became other while it was only planned.
 */
export function substanceChanges(
  versions: readonly FileVersions[],
  read: SubstanceReader = recordsIn,
): readonly SubstanceChange[] {
  return bothSides(versions, read).flatMap(([then, now]): SubstanceChange[] => {
    if (wasPlanned(then) || !differs(then, now)) return [];
    const [a, b] = [fieldsOf(then), fieldsOf(now)];
    const corrected = getOwn(b, 'corrected');
    if (corrected !== undefined && told(corrected) !== told(getOwn(a, 'corrected'))) return [];
    const date = getOwn(b, 'date');
    return [{ id: now.id, ...(typeof date === 'string' && date !== getOwn(a, 'date') ? { date } : {}) }];
  });
}

/** Ids of records that are planned no more, and are in the coach now, between the versions. */
export function builtIn(versions: readonly FileVersions[], read: SubstanceReader = recordsIn): readonly string[] {
  if (!versions.some(({ before = '' }) => before.includes('planned'))) return [];
  return bothSides(versions, read).flatMap(([then, now]) => (wasPlanned(then) && !wasPlanned(now) ? [now.id] : []));
}

/** Records that are in both versions and may differ. */
function bothSides(versions: readonly FileVersions[], read: SubstanceReader): readonly (readonly [RecordThen, RecordThen])[] {
  const changed = versions.filter(({ before, after }) => before !== undefined && !onlyAdds(before, after ?? ''));
  if (changed.length === 0) return [];
  // A record may have gone to a file of this commit that only gained lines.
  const gone = changed.some(({ before = '', after }) => after === undefined || after.length < before.length);
  const looked = gone ? versions : changed;
  const before = byName(looked.flatMap(({ file, before: text }) => (text === undefined ? [] : read(file, text))));
  const after = byName(looked.flatMap(({ file, after: text }) => (text === undefined ? [] : read(file, text))));
  return [...after].flatMap(([name, now]) => {
    const then = before.get(name);
    return then ? [[then, now] as const] : [];
  });
}

/** As typed: records of before are not read by their form. */
const wasPlanned = (record: RecordThen): boolean => /^(?:yes|true)$/iu.test(String(getOwn(fieldsOf(record), 'planned') ?? ''));

export type SubstanceReader = (file: string, text: string) => readonly RecordThen[];

/** Reads each version once, though it is what one commit left and the next one found. */
export function readOnce(): SubstanceReader {
  const known = new Map<string, readonly RecordThen[]>();
  return (file, text) => {
    const found = known.get(`${file} ${text}`) ?? recordsIn(file, text);
    known.set(`${file} ${text}`, found);
    return found;
  };
}

/** Most commits of a build add lines: nothing that was there has changed. */
function onlyAdds(before: string, after: string): boolean {
  if (after.startsWith(before)) return true;
  const lines = after.split('\n');
  let at = 0;
  return before.split('\n').every((line) => {
    const found = lines.indexOf(line, at);
    at = found + 1;
    return found >= 0;
  });
}

const byName = (records: readonly RecordThen[]): ReadonlyMap<string, RecordThen> =>
  new Map(records.map((one) => [`${one.kind} ${one.identity}`, one]));

const fieldsOf = ({ data }: RecordThen): Readonly<Record<string, unknown>> => (data ?? {}) as Readonly<Record<string, unknown>>;

const told = (value: unknown): string | undefined => (value === undefined ? undefined : JSON.stringify(value));

function differs(then: RecordThen, now: RecordThen): boolean {
  const [a, b] = [fieldsOf(then), fieldsOf(now)];
  const keys = SIZED.has(now.kind) ? [...SUBSTANCE, 'size'] : SUBSTANCE;
  return keys.some((key) => {
    const [before, after] = [told(getOwn(a, key)), told(getOwn(b, key))];
    return before !== undefined && after !== undefined && before !== after;
  });
}
