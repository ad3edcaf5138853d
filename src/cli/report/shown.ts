import { number, type UnitSystem } from '../../quantity/format.js';
import { KG_PER_LB, MM_PER_IN } from '../../quantity/units.js';

/**
 * How tables at the prompt show figures: bare numbers under a head that has the unit. A store that shows both systems gets its first here;
 * the book has both, JSON is in SI.
 */
export interface ShownUnits {
  readonly massUnit: string;
  readonly lengthUnit: string;
  readonly longUnit: string;
  readonly areaUnit: string;
  /** To the nearest whole unit; one decimal where it is asked for. */
  mass(kg: number | undefined, decimals?: number): string;
  /** Rounded down: margins, allowances and capacities, so that no figure promises more than there is. */
  massDown(kg: number | undefined): string;
  length(mm: number | undefined): string;
  /** Metres or feet. */
  long(mm: number | undefined): string;
  area(mm2: number | undefined): string;
}

const NONE = '-';

const shownAs = (
  massUnit: string,
  kgPerUnit: number,
  lengthUnit: string,
  mmPerUnit: number,
  longUnit: string,
  mmPerLong: number,
): ShownUnits => ({
  massUnit,
  lengthUnit,
  longUnit,
  areaUnit: `${longUnit}²`,
  mass: (kg, decimals = 0) => (kg === undefined ? NONE : number(kg / kgPerUnit, decimals)),
  massDown: (kg) => (kg === undefined ? NONE : number(Math.floor(kg / kgPerUnit + 1e-9))),
  length: (mm) => (mm === undefined ? NONE : number(mm / mmPerUnit, mmPerUnit === 1 ? 0 : 1)),
  long: (mm) => (mm === undefined ? NONE : number(mm / mmPerLong, 1)),
  area: (mm2) => (mm2 === undefined ? NONE : number(mm2 / mmPerLong ** 2, 1)),
});

const US = shownAs('lb', KG_PER_LB, 'in', MM_PER_IN, 'ft', MM_PER_IN * 12);
const METRIC = shownAs('kg', 1, 'mm', 1, 'm', 1000);

export const shownIn = (units: UnitSystem): ShownUnits => (units === 'metric' ? METRIC : US);
