import { dayOf } from '../../quantity/day.js';
import type { Instrument } from '../../records/index.js';

/** Why a calibration does not cover a day: none is on record, it had run out, or it came later. */
export type CalibrationGap =
  | { readonly what: 'no due day' }
  | { readonly what: 'overdue'; readonly day: string }
  | { readonly what: 'not yet'; readonly day: string };

type Calibrated = Pick<Instrument, 'calibrated' | 'due'>;

/**
 * What the calibration of a gauge or scale lacks for its use on a date; undefined where it covers it, or where the date is not known.
 * The due day counts whole. Without a due date nothing is covered.
 */
export function calibrationGap({ calibrated, due }: Calibrated, date: string | undefined): CalibrationGap | undefined {
  if (date === undefined) return undefined;
  if (due === undefined) return { what: 'no due day' };
  if (dayOf(date) > dayOf(due)) return { what: 'overdue', day: due };
  if (calibrated !== undefined && dayOf(date) < dayOf(calibrated)) return { what: 'not yet', day: calibrated };
  return undefined;
}

/** The same in words: a clause, without a full stop. */
export function calibrationLapse(instrument: Instrument, date: string | undefined): string | undefined {
  const gap = calibrationGap(instrument, date);
  switch (gap?.what) {
    case 'no due day':
      return `${instrument.id} has no calibration due date`;
    case 'overdue':
      return `${instrument.id} was due for calibration on ${gap.day}`;
    case 'not yet':
      return `${instrument.id} was calibrated on ${gap.day}, after this use`;
    default:
      return undefined;
  }
}
