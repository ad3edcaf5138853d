import { date, quantityOfAnyKind, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** library/instruments.yaml: scales, gauges, meters. */
export const instrument = kind(
  'instrument',
  { in: 'library', list: 'instruments' },
  {
    kind: text('axle scale, pressure gauge, multimeter …').required().as('instrumentKind').asLast(),
    name: text('Maker’s name and number'),
    /** In the SI unit of what it measures (kg for a scale, Pa for a gauge, …). */
    resolution: quantityOfAnyKind('Smallest step that it shows'),
    /** Relative (fraction), or absolute in the unit of the resolution. */
    tolerance: quantityOfAnyKind('How far it may be off, as 0.2 % or 20 lb'),
    calibrated: date('Last calibration'),
    due: date('Next calibration'),
  },
  { stands: 'kept up' },
);

export type Instrument = RecordOf<typeof instrument>;
