import type { Elsewhere } from '../../model/elsewhere.js';
import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Weld } from '../../records/index.js';
import { processName } from './process.js';

/** ISO 9606-2 9.2 and AWS D1.2, unverified citation: the process was used within each six months. */
const MONTHS = 6;

export interface ContinuityGap {
  readonly weld: Weld;
  readonly welder: string;
  readonly process: string;
  /** Last work with the process before the gap. */
  readonly since: string;
  /** The weld of another shell that this work was, where it was one: `OV-021 W-0012`. */
  readonly sinceElsewhere?: string;
  /** Last day on which it still held. */
  readonly until: string;
}

/** A day on which somebody is on record as having used a process. */
interface Use {
  readonly day: string;
  readonly elsewhere?: string;
}

/**
 * Welds of this shell made after more than six months without the process, by the welds of every shell in the store and the dates
 * that the welder's qualifications start. The edge: work on 1 January holds to 1 July; 2 July is a gap (the project's own reading,
 * day to day). Other shells are looked at only where this one's own welds leave a gap.
 */
export function continuityGaps({ shell, library, elsewhere }: Model): readonly ContinuityGap[] {
  const gaps: ContinuityGap[] = [];
  for (const person of library.people.values()) {
    const own = shell.welds.filter(({ welder, date }) => welder === person.id && date !== undefined);
    for (const process of new Set(own.map((weld) => processName(weld.process)))) {
      const starts: readonly Use[] = person.qualified
        .filter((one) => one.process !== undefined && processName(one.process) === process)
        .map(({ from }) => ({ day: from }));
      const work = own.filter((weld) => processName(weld.process) === process).sort((a, b) => day(a).localeCompare(day(b)));
      const here = gapsIn(work, starts, person.id, process);
      if (here.length === 0) continue;
      const others = elsewhere ? usesElsewhere(elsewhere, person.id, process) : [];
      gaps.push(...(others.length > 0 ? gapsIn(work, [...starts, ...others], person.id, process) : here));
    }
  }
  return gaps;
}

const day = (weld: Weld): string => dayOf(weld.date ?? '');

function usesElsewhere(elsewhere: Elsewhere, welder: string, process: string): readonly Use[] {
  return elsewhere.records('welds', [welder]).flatMap(({ shell, id, typed }) => {
    const same = String(typed.welder) === welder && processName(String(typed.process)) === process;
    return same && ISO_DAY.test(String(typed.date)) ? [{ day: dayOf(String(typed.date)), elsewhere: `${shell} ${id}` }] : [];
  });
}
const ISO_DAY = /^\d{4}-\d{2}-\d{2}/u;

/** Each first weld after a gap; without a start on record the first weld of all begins the count. */
function gapsIn(work: readonly Weld[], starts: readonly Use[], welder: string, process: string): readonly ContinuityGap[] {
  return work.flatMap((weld, i) => {
    const before = [...starts.filter((start) => start.day <= day(weld)), ...work.slice(0, i).map((one) => ({ day: day(one) }))];
    const last = before.reduce<Use | undefined>((a, b) => (a && a.day >= b.day ? a : b), undefined);
    if (last === undefined) return [];
    const until = monthsLater(last.day, MONTHS);
    if (day(weld) <= until) return [];
    return [{ weld, welder, process, since: last.day, sinceElsewhere: last.elsewhere, until }];
  });
}

/** The same day some months on; the last day of a shorter month. */
export function monthsLater(date: string, months: number): string {
  const [year = 0, month = 1, dayOfMonth = 1] = dayOf(date).split('-').map(Number);
  const total = year * 12 + (month - 1) + months;
  const [toYear, toMonth] = [Math.floor(total / 12), total % 12];
  const last = new Date(Date.UTC(toYear, toMonth + 1, 0)).getUTCDate();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${toYear}-${two(toMonth + 1)}-${two(Math.min(dayOfMonth, last))}`;
}
