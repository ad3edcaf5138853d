import { KG_PER_LB, M3_PER_US_GAL, MM_PER_IN, PA_PER_INCH_OF_WATER, PA_PER_PSI } from './units.js';

/** How a store shows figures. `both` prints the store's first system with the other in brackets. */
export type UnitSystem = 'us' | 'metric' | 'both';

const pair = (system: UnitSystem, us: string, metric: string): string =>
  system === 'us' ? us : system === 'metric' ? metric : `${us} (${metric})`;

/** Digits in groups of three with a comma, a true minus sign, `decimals` places. */
export function number(value: number, decimals = 0): string {
  // What a conversion leaves behind a half decides nothing: the same figure rounds the same way wherever it comes from.
  const fixed = Number(Math.abs(value).toFixed(6)).toFixed(decimals);
  const [whole = '0', fraction] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/gu, ',');
  const sign = value < 0 && Number(fixed) !== 0 ? '−' : '';
  return `${sign}${grouped}${fraction ? `.${fraction}` : ''}`;
}

/** Inches to the nearest 1/16, as a shop writes them: `6 ft 3-1/2 in`, `5-1/4 in`, `0 in`. */
export function feetInches(lengthMm: number): string {
  const sign = lengthMm < 0 ? '−' : '';
  const sixteenths = Math.round(Number(((Math.abs(lengthMm) / MM_PER_IN) * 16).toFixed(6)));
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths % 192) / 16);
  let numerator = sixteenths % 16;
  let denominator = 16;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const fraction = numerator === 0 ? '' : `${inches > 0 ? '-' : ''}${numerator}/${denominator}`;
  const small = `${inches > 0 || !fraction ? inches : ''}${fraction} in`;
  const shown = sixteenths === 0 ? '' : sign;
  if (feet === 0 || sixteenths < 48 * 16) return `${shown}${sixteenths < 48 * 16 ? inchesOnly(sixteenths) : small}`;
  return inches === 0 && !fraction ? `${shown}${feet} ft` : `${shown}${feet} ft ${small}`;
}

function inchesOnly(sixteenths: number): string {
  const inches = Math.floor(sixteenths / 16);
  let numerator = sixteenths % 16;
  let denominator = 16;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  if (numerator === 0) return `${inches} in`;
  return `${inches > 0 ? `${inches}-` : ''}${numerator}/${denominator} in`;
}

export const length = (mm: number, system: UnitSystem): string => pair(system, feetInches(mm), `${number(mm)} mm`);
/** How far one may go: never rounded up. Whole sixteenths and millimetres; the small share is what a conversion leaves behind. */
/** Rounded up to 1/16 in and to 1 mm: sizes that must pass under or between something. */
export const lengthUp = (mm: number, system: UnitSystem): string =>
  pair(system, feetInches((Math.ceil((mm / MM_PER_IN) * 16 - 1e-9) / 16) * MM_PER_IN), `${number(Math.ceil(mm - 1e-9))} mm`);

export const lengthDown = (mm: number, system: UnitSystem): string =>
  pair(system, feetInches((Math.floor((mm / MM_PER_IN) * 16 + 1e-9) / 16) * MM_PER_IN), `${number(Math.floor(mm + 1e-9))} mm`);
/** A gap, a sag, a weld size: to the nearest 1/64 in, tenths of a millimetre. Lengths of a foot and more as `length`. */
export const smallLength = (mm: number, system: UnitSystem): string =>
  Math.abs(mm) >= 304.8 ? length(mm, system) : pair(system, sixtyFourths(mm), `${number(mm, 1)} mm`);

/** To the nearest 1/64 in: `3/16 in`, `1-1/2 in`. */
export function sixtyFourths(mm: number): string {
  const parts = Math.round((Math.abs(mm) / MM_PER_IN) * 64);
  const [whole, over] = [Math.floor(parts / 64), parts % 64];
  // The largest power of two that the numerator holds, up to 64.
  const common = over === 0 ? 64 : Math.min(64, over & -over);
  const fraction = over === 0 ? '' : `${over / common}/${64 / common}`;
  const sign = mm < 0 && parts > 0 ? '−' : '';
  if (fraction === '') return `${sign}${whole} in`;
  return `${sign}${whole > 0 ? `${whole}-` : ''}${fraction} in`;
}

/** Wall and plate thicknesses: thousandths of an inch, tenths of a millimetre. */
export const thickness = (mm: number, system: UnitSystem): string =>
  pair(system, `${(mm / MM_PER_IN).toFixed(3)} in`, `${number(mm, 1)} mm`);
export const mass = (kg: number, system: UnitSystem, decimals = 0): string =>
  pair(system, `${number(kg / KG_PER_LB, decimals)} lb`, `${number(kg, decimals)} kg`);
/** What may be loaded: never rounded up. The small share takes off what a conversion leaves behind a whole figure. */
export const massDown = (kg: number, system: UnitSystem): string =>
  pair(system, `${number(Math.floor(kg / KG_PER_LB + 1e-9))} lb`, `${number(Math.floor(kg + 1e-9))} kg`);
export const area = (mm2: number, system: UnitSystem): string =>
  pair(system, `${number(mm2 / (MM_PER_IN * 12) ** 2, 1)} ft²`, `${number(mm2 / 1e6, 2)} m²`);
export const volume = (m3: number, system: UnitSystem): string =>
  pair(system, `${number(m3 / M3_PER_US_GAL, 1)} gal`, `${number(m3 * 1000)} L`);
/** Inches of water column below 1 psi, as gas fitters read them; kilopascals with as many digits. */
export function pressure(pa: number, system: UnitSystem): string {
  const low = Math.abs(pa) < PA_PER_PSI;
  return pair(
    system,
    low ? `${number(pa / PA_PER_INCH_OF_WATER, 1)} in w.c.` : `${number(pa / PA_PER_PSI)} psi`,
    `${number(pa / 1000, low ? 2 : 0)} kPa`,
  );
}
export const lineMass = (kgPerM: number, system: UnitSystem): string =>
  pair(system, `${number((kgPerM / KG_PER_LB) * 0.3048, 3)} lb/ft`, `${number(kgPerM, 3)} kg/m`);
/** Below 15 ft·lb in inch-pounds, as terminals are tightened; newton metres to a tenth below 100. Nothing is rounded to another tool's setting. */
export const torque = (nm: number, system: UnitSystem): string => {
  const footPounds = nm / NM_PER_FT_LB;
  const us = footPounds < 15 ? `${number(footPounds * 12)} in·lb` : `${number(footPounds)} ft·lb`;
  return pair(system, us, `${nm < 100 ? tenths(nm) : number(nm)} N·m`);
};
const NM_PER_FT_LB = 1.3558179483314;

/** To a tenth, without a nought behind the point: `7.5`, `15`. */
export const tenths = (value: number): string => number(value, Math.round(value * 10) % 10 === 0 ? 0 : 1);

export const MONTHS: readonly string[] = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** What a fuse or breaker is rated, as it is stamped: `7.5 A`. */
export const amps = (a: number): string => `${tenths(a)} A`;
/** What a conductor may carry: whole amperes, never rounded up. */
export const ampsDown = (a: number): string => `${number(Math.floor(a + 1e-9))} A`;
export const temperature = (k: number, system: UnitSystem): string =>
  pair(system, `${number(k * 1.8 - 459.67)} °F`, `${number(k - 273.15)} °C`);
export const percent = (fraction: number, decimals = 1): string => `${number(fraction * 100, decimals)} %`;
/** `x 12 ft 3 in aft, 1 ft 4 in right, 6 in up` is long; positions print as a bracketed triple in the store's first unit. */
export function positionWords(at: readonly [number, number, number], system: UnitSystem): string {
  const us = `x ${number(at[0] / MM_PER_IN, 1)}, y ${number(at[1] / MM_PER_IN, 1)}, z ${number(at[2] / MM_PER_IN, 1)} in`;
  const metric = `x ${number(at[0])}, y ${number(at[1])}, z ${number(at[2])} mm`;
  return pair(system, us, metric);
}
/** `2026-04-07` → `7 Apr 2026`: dates as a reader says them, never a clock of this machine. */
export function dateWords(iso: string, months = MONTHS): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/u.exec(iso);
  if (!match) return iso;
  return `${Number(match[3])} ${months[Number(match[2]) - 1] ?? match[2]} ${match[1]}`;
}

/** The `at`-th name of a row that is lettered instead of numbered, from 0: A … Z, AA, AB … */
export const letters = (at: number): string =>
  (at < 26 ? '' : letters(Math.floor(at / 26) - 1)) + String.fromCharCode(65 + (at % 26));

const SIGNS: readonly (readonly [typed: RegExp, printed: string])[] = [
  [/(?<=\d\s?)([Mkm]?)ohms?\b/gu, '$1Ω'],
  [/\b(ft|in)\.(?=lbf?\b)/gu, '$1·'],
  [/\bN\.m\b/gu, 'N·m'],
];

/** What somebody typed, with the units as print has them: `1 Mohm` as `1 MΩ`, `150 ft.lb` as `150 ft·lb`. */
export const unitSigns = (typed: string): string => SIGNS.reduce((text, [sign, printed]) => text.replace(sign, printed), typed);
