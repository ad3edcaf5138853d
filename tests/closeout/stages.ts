import type { HoldPoint } from '../../src/records/hold-point.js';
import type { Inspection, Person, Stage } from '../../src/records/index.js';
import type { DecidedFinding } from '../../src/rules/decide.js';
import { buildModel, record, source } from '../support/build.js';

export const stage = (id: string, ...holdPoints: readonly HoldPoint[]): Stage => ({
  ...record(id),
  name: `The ${id}`,
  holdPoints,
});
export const person = (id: string, role: string): Person => ({ ...record(id), name: id, role, qualified: [] });
export const people = new Map(
  [person('K7', 'welder'), person('E1', 'electrician'), person('J2', 'inspector')].map((one) => [one.id, one]),
);
export const finding = (rule: string, ids: readonly string[], more: Partial<DecidedFinding> = {}): DecidedFinding => ({
  rule,
  severity: 'warning',
  message: `${rule}!`,
  ids,
  place: source.place(),
  ...more,
});
export type Shell = Parameters<typeof buildModel>[0];
export const modelOf = (shell: Shell, ...stages: readonly Stage[]) => buildModel(shell, { people, stages });
export const VT = (result: Inspection['result'], more: Partial<Inspection> = {}): Inspection => ({
  method: 'VT',
  by: 'J2',
  date: '2026-03-02',
  result,
  ...more,
});
