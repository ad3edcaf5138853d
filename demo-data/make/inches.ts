/** Lengths as a shop writes them, from inches. */

export type P = readonly [number, number, number];

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** `5-1/4 in`, `-3/4 in`, `0.1 in`: fractions down to 1/32, thousandths below that. */
export function inch(value: number): string {
  const sign = value < -1e-9 ? '-' : '';
  const size = Math.abs(value);
  const steps = Math.round(size * 32);
  if (Math.abs(size * 32 - steps) > 1e-6) return `${sign}${trim(size)} in`;
  const whole = Math.floor(steps / 32);
  const rest = steps % 32;
  if (rest === 0) return `${sign}${whole} in`;
  const by = gcd(rest, 32);
  const fraction = `${rest / by}/${32 / by}`;
  return `${sign}${whole > 0 ? `${whole}-${fraction}` : fraction} in`;
}

/** `27 ft 3-1/2 in`; under two feet in inches. */
export function feet(value: number, step = 16): string {
  const rounded = Math.round(value * step) / step;
  if (rounded < 24) return inch(rounded);
  const whole = Math.floor(rounded / 12 + 1e-9);
  const rest = rounded - whole * 12;
  return rest < 1e-9 ? `${whole} ft` : `${whole} ft ${inch(rest)}`;
}

export const millimetres = (value: number): string => `${Math.round(value * 25.4)} mm`;

/** A place with its units. */
export const at = (p: P): readonly string[] => p.map(inch);
/** A place for a file that opens with `units: {length: in}`. */
export const bare = (p: P): readonly number[] => p.map((one) => Number(trim(one)));
export const outline = (points: readonly P[]): readonly (readonly string[])[] => points.map(at);

export const pounds = (value: number): string =>
  Math.abs(value) >= 1000 ? `${thousands(Math.round(value))} lb` : `${trim(Math.round(value * 10) / 10)} lb`;
const thousands = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/gu, ',');

export function trim(value: number): string {
  return String(Number(value.toFixed(4)));
}

export const lengthOf = (path: readonly P[]): number =>
  path.slice(1).reduce((sum, p, i) => sum + Math.hypot(...p.map((c, k) => c - ((path[i] as P)[k] as number))), 0);
