import type { TestVerdict } from '../../compute/verdicts/verdict.js';
import {
  length,
  mass,
  number,
  percent,
  pressure,
  temperature,
  torque,
  type UnitSystem,
  unitSigns,
  volume,
} from '../../quantity/format.js';
import { PA_PER_PSI } from '../../quantity/units.js';
import type { Test } from '../../records/index.js';

/** What was read and what was allowed, in words: `a drop of 2 psi, expected at most 0.5 psi`. */
export function valueAndLimit(test: Test, { value, atLeast }: TestVerdict, units: UnitSystem): string {
  const limit = unitSigns(test.limit?.text ?? '');
  const bound = atLeast ? 'at least' : 'at most';
  if (test.measured) return `${unitSigns(test.measured.text)}, expected ${bound} ${limit}`;
  const drop = value === undefined ? '' : `a drop of ${amount(value, test.start?.dimension, units)} `;
  return `${drop}(${test.start?.text} to ${test.end?.text}), expected ${bound} ${limit}`;
}

function amount(value: number, dimension: string | undefined, units: UnitSystem): string {
  if (dimension === 'pressure') return smallPressure(value, units);
  if (dimension === 'length') return length(value, units);
  if (dimension === 'mass') return mass(value, units);
  if (dimension === 'volume') return volume(value, units);
  if (dimension === 'temperature') return temperature(value, units);
  if (dimension === 'torque') return torque(value, units);
  if (dimension === 'fraction') return percent(value);
  return number(value, 2);
}

/** A drop is a fraction of a psi where a working pressure is many. */
function smallPressure(pa: number, units: UnitSystem): string {
  return Math.abs(pa) < 20_000
    ? units === 'metric'
      ? `${number(pa / 1000, 2)} kPa`
      : `${number(pa / PA_PER_PSI, 2)} psi`
    : pressure(pa, units);
}
