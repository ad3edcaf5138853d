import { dayOf } from '../../quantity/day.js';
import type { Instrument } from '../../records/index.js';

/**
 * Why the calibration of a gauge or scale does not cover its use on a date; undefined where it does, or where the date is not known.
 * The due day counts whole. Without a due date nothing is covered.
 */
export function calibrationLapse(instrument: Instrument, date: string | undefined): string | undefined {
  if (date === undefined) return undefined;
  const { id, calibrated, due } = instrument;
  if (due === undefined) return `${id} has no calibration due date`;
  if (dayOf(date) > dayOf(due)) return `${id} was due for calibration on ${due}`;
  if (calibrated !== undefined && dayOf(date) < dayOf(calibrated)) return `${id} was calibrated on ${calibrated}, after this use`;
  return undefined;
}
