import type { UnitSystem } from '../quantity/format.js';
import { KG_PER_LB } from '../quantity/units.js';

/** Round steps of an axis: 1, 2 or 5 times a power of ten, `most` of them or fewer. */
export function ticks(highest: number, most = 6): readonly number[] {
  if (!(highest > 0)) return [0];
  const raw = highest / most;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((k) => k * power >= raw - 1e-9) ?? 10) * power;
  return Array.from({ length: Math.floor(highest / step + 1e-9) + 1 }, (_, k) => k * step);
}

/** Charts show one unit system: the store's first. */
export const chartUnit = (units: UnitSystem): { readonly perKg: number; readonly word: string } =>
  units === 'metric' ? { perKg: 1, word: 'kg' } : { perKg: 1 / KG_PER_LB, word: 'lb' };
