import type { Model } from '../../model/shell.js';
import type { Weld } from '../../model/structure.js';
import { processName } from './process.js';

/** ISO 9606-2 9.2 and AWS D1.2, from memory: the process was used within each six months. */
const MONTHS = 6;

export interface ContinuityGap {
  readonly weld: Weld;
  readonly welder: string;
  readonly process: string;
  /** Last work with the process before the gap. */
  readonly since: string;
  /** Last day on which it still held. */
  readonly until: string;
}

/**
 * Welds made after more than six months without the process, by this shell's own records and the dates that the welder's
 * qualifications start. The edge: work on 1 January holds to 1 July; 2 July is a gap (the project's own reading, day to day).
 */
export function continuityGaps({ shell, library }: Model): readonly ContinuityGap[] {
  const gaps: ContinuityGap[] = [];
  for (const person of library.people.values()) {
    const own = shell.welds.filter(({ welder, date }) => welder === person.id && date !== undefined);
    for (const process of new Set(own.map((weld) => processName(weld.process)))) {
      const starts = person.qualified
        .filter((one) => one.process !== undefined && processName(one.process) === process)
        .map(({ from }) => from);
      const work = own.filter((weld) => processName(weld.process) === process).sort((a, b) => day(a).localeCompare(day(b)));
      gaps.push(...gapsIn(work, starts, person.id, process));
    }
  }
  return gaps;
}

const day = (weld: Weld): string => (weld.date ?? '').slice(0, 10);

/** Each first weld after a gap; without a start on record the first weld of all begins the count. */
function gapsIn(work: readonly Weld[], starts: readonly string[], welder: string, process: string): readonly ContinuityGap[] {
  return work.flatMap((weld, i) => {
    const before = [...starts.filter((start) => start <= day(weld)), ...work.slice(0, i).map(day)].sort().at(-1);
    if (before === undefined) return [];
    const until = monthsLater(before, MONTHS);
    return day(weld) > until ? [{ weld, welder, process, since: before, until }] : [];
  });
}

/** The same day some months on; the last day of a shorter month. */
export function monthsLater(date: string, months: number): string {
  const [year = 0, month = 1, dayOfMonth = 1] = date.slice(0, 10).split('-').map(Number);
  const total = year * 12 + (month - 1) + months;
  const [toYear, toMonth] = [Math.floor(total / 12), total % 12];
  const last = new Date(Date.UTC(toYear, toMonth + 1, 0)).getUTCDate();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${toYear}-${two(toMonth + 1)}-${two(Math.min(dayOfMonth, last))}`;
}
