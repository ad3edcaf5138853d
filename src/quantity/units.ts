/**
 * Every unit that a record may be typed in, with its exact factor to the unit used inside.
 *
 * Inside: mm, kg, N, Pa, s, K, L as m³, V, A, W, N·m … (SI with mm for lengths and mm² for areas, as the trade's tables have them).
 * Sources: NIST SP 811 Appendix B.8 and NIST Handbook 44 Appendix C (inch, pound, gallon, pound-force, standard gravity: exact
 * definitions); SI Brochure for the rest. See tests/quantity/units.test.ts for each factor beside its source.
 */

export type Dimension =
  | 'length'
  | 'area'
  | 'inertia'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'time'
  | 'temperature'
  | 'volume'
  | 'voltage'
  | 'current'
  | 'power'
  | 'resistance'
  | 'torque'
  | 'density'
  | 'lineMass'
  | 'angle'
  | 'fraction'
  | 'stiffness'
  | 'flow'
  | 'conductorArea';

export interface Unit {
  readonly dimension: Dimension;
  /** Value inside = value typed × factor + offset. */
  readonly factor: number;
  readonly offset?: number;
}

const INCH_MM = 25.4;
const FOOT_MM = 304.8;
const POUND_KG = 0.45359237;
const GRAVITY = 9.80665;
const POUND_FORCE_N = POUND_KG * GRAVITY;
const US_GALLON_M3 = 231 * INCH_MM ** 3 * 1e-9;
const PSI_PA = POUND_FORCE_N / (INCH_MM * 1e-3) ** 2;
/** Of water at 4 °C: NIST SP 811, appendix B.8. */
const INCH_OF_WATER_PA = 249.08891;

const unit = (dimension: Dimension, factor: number, offset?: number): Unit =>
  offset === undefined ? { dimension, factor } : { dimension, factor, offset };

/** Unit as typed → what it is. Case matters only where two units differ by it (m and M). */
export const UNITS: Readonly<Record<string, Unit>> = {
  mm: unit('length', 1),
  cm: unit('length', 10),
  m: unit('length', 1000),
  km: unit('length', 1e6),
  in: unit('length', INCH_MM),
  '"': unit('length', INCH_MM),
  ft: unit('length', 304.8),
  "'": unit('length', 304.8),
  yd: unit('length', 914.4),
  mi: unit('length', 1609.344e3),
  mm2: unit('area', 1),
  cm2: unit('area', 100),
  m2: unit('area', 1e6),
  in2: unit('area', INCH_MM ** 2),
  ft2: unit('area', FOOT_MM ** 2),
  mm4: unit('inertia', 1),
  cm4: unit('inertia', 1e4),
  in4: unit('inertia', INCH_MM ** 4),
  kg: unit('mass', 1),
  g: unit('mass', 1e-3),
  t: unit('mass', 1000),
  lb: unit('mass', POUND_KG),
  lbs: unit('mass', POUND_KG),
  oz: unit('mass', POUND_KG / 16),
  N: unit('force', 1),
  kN: unit('force', 1000),
  lbf: unit('force', POUND_FORCE_N),
  Pa: unit('pressure', 1),
  kPa: unit('pressure', 1e3),
  MPa: unit('pressure', 1e6),
  GPa: unit('pressure', 1e9),
  mbar: unit('pressure', 100),
  bar: unit('pressure', 1e5),
  psi: unit('pressure', PSI_PA),
  ksi: unit('pressure', PSI_PA * 1000),
  // Conventional inch of water, ISO 31-3 / NIST SP 811.
  inH2O: unit('pressure', INCH_OF_WATER_PA),
  'in w.c.': unit('pressure', INCH_OF_WATER_PA),
  'in wc': unit('pressure', INCH_OF_WATER_PA),
  s: unit('time', 1),
  min: unit('time', 60),
  h: unit('time', 3600),
  d: unit('time', 86400),
  K: unit('temperature', 1),
  C: unit('temperature', 1, 273.15),
  '°C': unit('temperature', 1, 273.15),
  F: unit('temperature', 1 / 1.8, 459.67 / 1.8),
  '°F': unit('temperature', 1 / 1.8, 459.67 / 1.8),
  L: unit('volume', 1e-3),
  l: unit('volume', 1e-3),
  mL: unit('volume', 1e-6),
  m3: unit('volume', 1),
  gal: unit('volume', US_GALLON_M3),
  'imp gal': unit('volume', 4.54609e-3),
  qt: unit('volume', US_GALLON_M3 / 4),
  ft3: unit('volume', FOOT_MM ** 3 * 1e-9),
  in3: unit('volume', INCH_MM ** 3 * 1e-9),
  V: unit('voltage', 1),
  mV: unit('voltage', 1e-3),
  kV: unit('voltage', 1e3),
  A: unit('current', 1),
  mA: unit('current', 1e-3),
  W: unit('power', 1),
  kW: unit('power', 1000),
  ohm: unit('resistance', 1),
  mohm: unit('resistance', 1e-3),
  kohm: unit('resistance', 1e3),
  Mohm: unit('resistance', 1e6),
  'N.m': unit('torque', 1),
  Nm: unit('torque', 1),
  N·m: unit('torque', 1),
  'ft.lb': unit('torque', POUND_FORCE_N * FOOT_MM * 1e-3),
  'lb.ft': unit('torque', POUND_FORCE_N * FOOT_MM * 1e-3),
  'in.lb': unit('torque', POUND_FORCE_N * INCH_MM * 1e-3),
  'lb.in': unit('torque', POUND_FORCE_N * INCH_MM * 1e-3),
  'kg/m3': unit('density', 1),
  'g/cm3': unit('density', 1000),
  'kg/L': unit('density', 1000),
  'lb/in3': unit('density', POUND_KG / (INCH_MM * 1e-3) ** 3),
  'lb/gal': unit('density', POUND_KG / US_GALLON_M3),
  'kg/m': unit('lineMass', 1),
  'g/m': unit('lineMass', 1e-3),
  'lb/ft': unit('lineMass', POUND_KG / (FOOT_MM * 1e-3)),
  deg: unit('angle', 1),
  '°': unit('angle', 1),
  '%': unit('fraction', 0.01),
  'N/mm': unit('stiffness', 1000),
  'N/m': unit('stiffness', 1),
  'kN/m': unit('stiffness', 1000),
  'lb/in': unit('stiffness', POUND_FORCE_N / (INCH_MM * 1e-3)),
  'L/min': unit('flow', 1e-3 / 60),
  'gal/min': unit('flow', US_GALLON_M3 / 60),
};

/** Names that people write for units, to be answered with the sign that is read. */
export const SPOKEN: Readonly<Record<string, string>> = {
  inch: 'in',
  inches: 'in',
  ins: 'in',
  foot: 'ft',
  feet: 'ft',
  yards: 'yd',
  mile: 'mi',
  miles: 'mi',
  millimeters: 'mm',
  millimetres: 'mm',
  meters: 'm',
  metres: 'm',
  pound: 'lb',
  pounds: 'lb',
  '#': 'lb',
  ounces: 'oz',
  kgs: 'kg',
  kilos: 'kg',
  kilograms: 'kg',
  gallon: 'gal',
  gallons: 'gal',
  liters: 'L',
  litres: 'L',
  amp: 'A',
  amps: 'A',
  volt: 'V',
  volts: 'V',
  vdc: 'V',
  vac: 'V',
  watt: 'W',
  watts: 'W',
  ohms: 'ohm',
  seconds: 's',
  sec: 's',
  mins: 'min',
  minutes: 'min',
  hr: 'h',
  hrs: 'h',
  hours: 'h',
  day: 'd',
  days: 'd',
  degrees: 'deg',
  percent: '%',
  psig: 'psi',
  'ft-lb': 'ft.lb',
  'ft lb': 'ft.lb',
  'in-lb': 'in.lb',
  'n-m': 'N.m',
};

/** What to write, for messages: an example of each dimension. */
export const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: '5-1/4 in',
  area: '12.5 cm2',
  inertia: '22.0 in4',
  mass: '140 lb',
  force: '40 kN',
  pressure: '110 psi',
  time: '15 min',
  temperature: '21 C',
  volume: '60 gal',
  voltage: '12.8 V',
  current: '15 A',
  power: '25 W',
  resistance: '0.5 ohm',
  torque: '12 N.m',
  density: '2700 kg/m3',
  lineMass: '1.6 kg/m',
  angle: '90 deg',
  fraction: '12 %',
  stiffness: '300 N/mm',
  flow: '3 gal/min',
  conductorArea: '6 mm2',
};

/** Kilograms of one pound, exactly; for the last step of printing. */
export const KG_PER_LB = POUND_KG;
export const N_PER_LBF = POUND_FORCE_N;
export const MM_PER_IN = INCH_MM;
export const M3_PER_US_GAL = US_GALLON_M3;
export const PA_PER_PSI = PSI_PA;
export const PA_PER_INCH_OF_WATER = INCH_OF_WATER_PA;
export const STANDARD_GRAVITY = GRAVITY;
