import type { Rec } from '../../yaml.js';

export interface Plant {
  readonly rule: string;
  /** Ids that the finding names first. */
  readonly id: string;
  readonly file: string;
  readonly what: string;
  /** What must be looked at beside the records before it can be found. */
  readonly needs?: 'history' | 'photos';
  /** Spoils the records of a list: those of `file`, by list for a service. */
  readonly spoil: (records: Rec[], list: string) => Rec[];
}

export const change =
  (id: string, with_: Rec) =>
  (records: Rec[]): Rec[] =>
    records.map((one) => (one.id === id ? prune({ ...one, ...with_ }) : one));
const prune = (record: Rec): Rec => Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
export const add =
  (list: string, more: readonly Rec[]) =>
  (records: Rec[], of: string): Rec[] =>
    of === list ? [...records, ...more] : records;
export const both =
  (...all: readonly Plant['spoil'][]): Plant['spoil'] =>
  (records, list) =>
    all.reduce((some, spoil) => spoil(some, list), records);

export const run = (
  id: string,
  circuit: string | undefined,
  from: string,
  to: string,
  via: readonly (readonly string[])[],
  more: Rec,
): Rec => ({
  id,
  ...(circuit ? { circuit } : {}),
  from,
  to,
  ...(via.length > 0 ? { via } : {}),
  ...more,
  supports: '15 in',
  tolerance: '12 mm',
  stage: 'services',
});
