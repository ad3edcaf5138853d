import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Library, Qualification, Weld } from '../../records/index.js';
import { baseParts, thinnerMm } from './base.js';
import { coversPosition } from './positions.js';
import { processName } from './process.js';

/** Why no qualification of the welder covers a weld: of the one that comes nearest. Empty where one does. */
export interface Qualified {
  /** `qualified`, `not qualified` with reasons, or `not verified` where the record lacks what it takes to judge. */
  readonly verdict: 'qualified' | 'not qualified' | 'not verified';
  readonly reasons: readonly Shortfall[];
}

export type Shortfall =
  | { readonly what: 'no welder' | 'no date' | 'unknown welder' }
  | { readonly what: 'process'; readonly process: string }
  | { readonly what: 'position'; readonly position: string; readonly listed: readonly string[] }
  | { readonly what: 'before' | 'after'; readonly date: string; readonly limit: string }
  | { readonly what: 'thickness'; readonly thicknessMm: number; readonly range: readonly [number, number] }
  | { readonly what: 'group'; readonly group: string; readonly listed: readonly string[] };

/** Judges one weld against its welder's qualifications: process, position, date, thinner part, material group. */
export function qualified(weld: Weld, model: Model): Qualified {
  if (weld.welder === undefined) return { verdict: 'not verified', reasons: [{ what: 'no welder' }] };
  const person = model.library.people.get(weld.welder);
  if (!person) return { verdict: 'not verified', reasons: [{ what: 'unknown welder' }] };
  if (weld.date === undefined) return { verdict: 'not verified', reasons: [{ what: 'no date' }] };
  const process = processName(weld.process);
  const candidates = person.qualified.filter((one) => one.process !== undefined && processName(one.process) === process);
  if (candidates.length === 0) return { verdict: 'not qualified', reasons: [{ what: 'process', process }] };
  const nearest = candidates
    .map((one) => shortfalls(one, weld, model))
    .reduce((best, next) => (next.length < best.length ? next : best));
  return nearest.length === 0 ? { verdict: 'qualified', reasons: [] } : { verdict: 'not qualified', reasons: nearest };
}

function shortfalls(paper: Qualification, weld: Weld, model: Model): readonly Shortfall[] {
  const short: Shortfall[] = [];
  const date = dayOf(weld.date as string);
  if (date < paper.from) short.push({ what: 'before', date, limit: paper.from });
  if (paper.until !== undefined && date > paper.until) short.push({ what: 'after', date, limit: paper.until });
  if (weld.position !== undefined && paper.positions.length > 0 && !coversPosition(paper.positions, weld.position)) {
    short.push({ what: 'position', position: weld.position, listed: paper.positions });
  }
  const parts = baseParts(weld, model);
  const thicknessMm = thinnerMm(parts);
  if (thicknessMm !== undefined && paper.thicknessMm && !inRange(thicknessMm, paper.thicknessMm)) {
    short.push({ what: 'thickness', thicknessMm, range: paper.thicknessMm });
  }
  const groups = parts.flatMap(({ alloy }) => groupOf(alloy, model.library) ?? []);
  const uncovered = groups.find((group) => paper.groups.length > 0 && !coversGroup(paper.groups, group));
  if (uncovered !== undefined) short.push({ what: 'group', group: uncovered, listed: paper.groups });
  return short;
}

/** A range is met at its ends, whatever unit they were typed in. */
export const inRange = (value: number, [low, high]: readonly [number, number]): boolean =>
  value >= low - 0.01 && value <= high + 0.01;

/** Material group of an alloy (21, 22, 23 of ISO/TR 15608), without its part number. */
const groupOf = (alloy: string | undefined, { materials }: Library): string | undefined =>
  alloy === undefined ? undefined : materials.get(alloy)?.group?.split('.')[0];

/** Tested in 23 may weld 21 and 22; 21 and 22 give each other; neither gives 23: EN 287-2 as read in a textbook. */
function coversGroup(listed: readonly string[], group: string): boolean {
  const tested = listed.map((one) => one.split('.')[0]);
  if (tested.includes(group)) return true;
  return (group === '21' || group === '22') && tested.some((one) => one === '21' || one === '22' || one === '23');
}
