import { isData } from './yaml-text.js';

/** Below this share of a value, two ways of writing it are the same: `5-1/4 in` and `133.35 mm`. */
const NEAR = 1e-9;

/** Two values are the same as measured, however they were typed. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= NEAR * Math.max(1, Math.abs(a), Math.abs(b));
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((one, i) => sameValue(one, b[i]));
  if (isData(a) && isData(b)) {
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    // A quantity whose unit says what it is keeps its text beside its value.
    return keys.every((key) => (key === 'text' && 'dimension' in a && 'dimension' in b) || sameValue(a[key], b[key]));
  }
  return a === b || (a === undefined && b === null) || (a === null && b === undefined);
}

/** Typed the same, but for what YAML may take for a number or a yes. */
export function sameTyped(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((one, i) => sameTyped(one, b[i]));
  // `of: CMP-04` and `of: [CMP-04]` read the same.
  if (Array.isArray(a) !== Array.isArray(b)) {
    const [list, one] = Array.isArray(a) ? [a, b] : [b as readonly unknown[], a];
    return list.length === 1 && typeof one !== 'object' && one !== undefined && sameTyped(list[0], one);
  }
  if (isData(a) && isData(b)) {
    const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])];
    return keys.every((key) => sameTyped(a[key], b[key]));
  }
  if (typeof a === 'object' || typeof b === 'object') return (a ?? null) === (b ?? null);
  return word(a) === word(b);
}

const word = (value: unknown): string => (value === true ? 'yes' : value === false ? 'no' : String(value ?? ''));
