import { day } from '../dates.js';
import type { Rec } from '../yaml.js';

/** Beads that were turned down once or twice and stand today: weld number → what was wrong. */
const REJECTS: readonly (readonly [number, string, number])[] = [
  [9, 'undercut, 0.8 mm over 30 mm at the toe', 1],
  [37, 'crater crack at the stop', 1],
  [88, 'leg short: 5/32 in where 3/16 was called', 1],
  [131, 'porosity, cluster of five', 1],
  [177, 'overlap on the upright leg', 2],
  [214, 'undercut at the jamb', 1],
  [305, 'lack of fusion at the start', 1],
  [402, 'porosity after a gas bottle ran low', 1],
  [511, 'burn-through at the chord wall', 1],
];

/** Puts the bad days on record: the reject stays, the repair and the second look stand beside it. */
export function repaired(welds: readonly Rec[]): readonly Rec[] {
  return welds.map((weld, i) => {
    const reject = REJECTS.find(([number]) => number === i + 1);
    if (!reject) return weld;
    const [, reason, repairs] = reject;
    const by = (weld.inspections as readonly Rec[])[0]?.by;
    const first = (weld.inspections as readonly Rec[])[0]?.date as string;
    const looks: Rec[] = [{ method: 'VT', by, date: first, result: 'reject', reason }];
    for (let n = 1; n <= repairs; n++) {
      const last = n === repairs;
      looks.push({
        method: 'VT',
        by,
        date: day(first, n),
        result: last ? 'accept' : 'reject',
        ...(last ? {} : { reason: 'cold start left in' }),
        repair: n,
      });
    }
    return { ...weld, block: true, inspections: looks, note: last(reason) };
  });
}

const last = (reason: string): string => `ground out and run again: ${reason.split(',')[0]}`;
export const REJECTED_NUMBERS = REJECTS.map(([number]) => `W-${String(number).padStart(4, '0')}`);
