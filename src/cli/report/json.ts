import type { Vec3 } from '../../geometry/vector.js';
import type { DecidedFinding } from '../../rules/decide.js';
import { DIRECTION_MARKS } from '../../source/direction-marks.js';

/** Plain data for one JSON object. `undefined` becomes null: a stable key is always there. */
export type Json = null | undefined | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** The answer of a command as one line-broken JSON object: keys as in the record format, SI units, nothing rounded away that matters. */
export function envelope(
  command: string,
  shell: string | null,
  revision: string | null,
  body: { readonly [key: string]: Json },
): string {
  return asciiControls(JSON.stringify({ shellbook: 1, command, shell, revision, ...body }, tidy, 1));
}

/** Controls and marks of text direction, which no terminal may get raw and which JSON writes as `\\u202e`. */
export const asciiControls = (json: string): string =>
  json.replace(UNSAFE, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);

const UNSAFE = new RegExp(`[\\u007f-\\u009f${DIRECTION_MARKS}]`, 'gu');

/** Six decimals of a millimetre, kilogram, volt or degree are below anything measured; the rest is noise of arithmetic. */
function tidy(_key: string, value: unknown): unknown {
  if (value === undefined) return null;
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) return null;
  const rounded = Number(value.toFixed(6));
  return rounded === 0 ? 0 : rounded;
}

export const place3 = (at: Vec3 | undefined): Json => (at === undefined ? null : [at[0], at[1], at[2]]);

export function findingJson(finding: DecidedFinding): { readonly [key: string]: Json } {
  const { rule, severity, message, ids, place, decidedBy } = finding;
  return {
    rule,
    severity,
    message,
    ids,
    file: place.file,
    line: place.line,
    column: place.column,
    ...(decidedBy === undefined ? {} : { decided_by: decidedBy }),
  };
}

/** A record with each value mapped to JSON. */
export function mapValues<T>(record: Readonly<Record<string, T>>, map: (value: T) => Json): { readonly [key: string]: Json } {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, map(value)]));
}
