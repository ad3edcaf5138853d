import type { UnitSystem } from '../quantity/format.js';
import * as format from '../quantity/format.js';
import { KG_PER_LB, MM_PER_IN, N_PER_LBF } from '../quantity/units.js';
import type { Quantity } from '../records/index.js';
import type { Language } from '../words/index.js';

/** One way of writing a kind of figure: the words under a column's head, and the figure without its unit. */
export interface FigureStyle {
  readonly unit: string;
  write(value: number): string;
}

/** How this shop's books write figures: in sentences with units, in columns without. */
export interface Show {
  readonly system: UnitSystem;
  length(mm: number): string;
  /** Rounded up: what must pass under or between something. */
  lengthUp(mm: number): string;
  thickness(mm: number): string;
  mass(kg: number): string;
  massDown(kg: number): string;
  area(mm2: number): string;
  volume(m3: number): string;
  pressure(pa: number): string;
  torque(nm: number): string;
  /** As its author declared it; a force in the reader's units besides, rounded down. */
  rating(declared: Quantity): string;
  temperature(k: number): string;
  position(at: readonly [number, number, number]): string;
  date(iso: string | undefined): string;
  percent(fraction: number, decimals?: number): string;
  /** The columns that a figure takes: one, or two where both systems are shown. */
  readonly ways: {
    readonly length: readonly FigureStyle[];
    readonly thickness: readonly FigureStyle[];
    readonly mass: readonly FigureStyle[];
    /** To a tenth, for single parts. */
    readonly smallMass: readonly FigureStyle[];
    /** Rounded down: margins, allowances and capacities, so that no figure promises more than there is. */
    readonly massDown: readonly FigureStyle[];
    readonly lineMass: readonly FigureStyle[];
    readonly area: readonly FigureStyle[];
    readonly station: readonly FigureStyle[];
    readonly sectionArea: readonly FigureStyle[];
    readonly inertia: readonly FigureStyle[];
    readonly pressure: readonly FigureStyle[];
  };
}

const way = (unit: string, write: (value: number) => string): FigureStyle => ({ unit, write });
const PER_FT2 = (MM_PER_IN * 12) ** 2;

const US: Show['ways'] = {
  length: [way('ft in', format.feetInches)],
  thickness: [way('in', (mm) => (mm / MM_PER_IN).toFixed(3))],
  mass: [way('lb', (kg) => format.number(kg / KG_PER_LB))],
  smallMass: [way('lb', (kg) => format.number(kg / KG_PER_LB, 1))],
  massDown: [way('lb', (kg) => format.number(Math.floor(kg / KG_PER_LB + 1e-9)))],
  lineMass: [way('lb/ft', (v) => format.number((v / KG_PER_LB) * 0.3048, 3))],
  area: [way('ft²', (v) => format.number(v / PER_FT2, 1))],
  station: [way('in', (mm) => format.number(mm / MM_PER_IN, 1))],
  sectionArea: [way('in²', (v) => format.number(v / MM_PER_IN ** 2, 3))],
  inertia: [way('in⁴', (v) => format.number(v / MM_PER_IN ** 4, 3))],
  pressure: [way('psi', (pa) => format.pressure(pa, 'us').replace(/ psi$/u, ''))],
};

const METRIC: Show['ways'] = {
  length: [way('mm', (mm) => format.number(mm))],
  thickness: [way('mm', (mm) => format.number(mm, 1))],
  mass: [way('kg', (kg) => format.number(kg))],
  smallMass: [way('kg', (kg) => format.number(kg, 1))],
  massDown: [way('kg', (kg) => format.number(Math.floor(kg + 1e-9)))],
  lineMass: [way('kg/m', (v) => format.number(v, 3))],
  area: [way('m²', (v) => format.number(v / 1e6, 2))],
  station: [way('mm', (mm) => format.number(mm))],
  sectionArea: [way('mm²', (v) => format.number(v, 1))],
  inertia: [way('cm⁴', (v) => format.number(v / 1e4, 2))],
  pressure: [way('kPa', (pa) => format.number(pa / 1000))],
};

function waysOf(system: UnitSystem): Show['ways'] {
  if (system === 'us') return US;
  if (system === 'metric') return METRIC;
  const both = Object.keys(US).map((key) => [key, [...US[key as keyof Show['ways']], ...METRIC[key as keyof Show['ways']]]]);
  return Object.fromEntries(both) as Show['ways'];
}

const MONTHS: Readonly<Record<Language, readonly string[]>> = {
  en: format.MONTHS,
  es: ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sept', 'oct', 'nov', 'dic'],
};

/** Spaces between a figure and its unit, and within a length, do not break at a line's end. */
const whole = (text: string): string => text.replace(/(?<=[\d)]) (?=[^\s(])/gu, '\u00a0');

function ratingText({ text, dimension, value }: Quantity, system: UnitSystem): string {
  const lbf = /lbf/u.test(text);
  if (dimension !== 'force' || (system === 'us' && lbf) || (system === 'metric' && !lbf)) return text;
  const other = lbf
    ? `${format.number(Math.floor(value / 100 + 1e-9) / 10, 1)} kN`
    : `${format.number(Math.floor(value / N_PER_LBF + 1e-9))} lbf`;
  return `${text} (${other})`;
}

export function showIn(system: UnitSystem, language: Language = 'en'): Show {
  return {
    system,
    length: (mm) => whole(format.length(mm, system)),
    lengthUp: (mm) => whole(format.lengthUp(mm, system)),
    thickness: (mm) => whole(format.thickness(mm, system)),
    mass: (kg) => whole(format.mass(kg, system)),
    massDown: (kg) => whole(format.massDown(kg, system)),
    area: (mm2) => whole(format.area(mm2, system)),
    volume: (m3) => whole(format.volume(m3, system)),
    pressure: (pa) => whole(format.pressure(pa, system)),
    torque: (nm) => whole(format.torque(nm, system)),
    rating: (declared) => whole(ratingText(declared, system)),
    temperature: (k) => whole(format.temperature(k, system)),
    position: (at) => format.positionWords(at, system),
    date: (iso) => (iso ? format.dateWords(iso, MONTHS[language]).replaceAll(' ', '\u00a0') : ''),
    percent: (fraction, decimals = 1) => whole(format.percent(fraction, decimals)),
    ways: waysOf(system),
  };
}
