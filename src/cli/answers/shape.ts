import type { Json } from '../report/json.js';

/** A JSON Schema (draft 2020-12). */
export type Shape = { readonly [key: string]: Json };

export const text: Shape = { type: 'string' };
export const flag: Shape = { type: 'boolean' };
export const number: Shape = { type: 'number' };
export const whole: Shape = { type: 'integer' };
export const texts: Shape = { type: 'array', items: text };
export const place: Shape = {
  type: 'array',
  items: number,
  minItems: 3,
  maxItems: 3,
  description: 'x rearward from the front axle, y to the right, z up from the top of the frame rail; mm',
};

export const oneOf = (...words: readonly string[]): Shape => ({ enum: words });
export const list = (items: Shape): Shape => ({ type: 'array', items });
export const pair = (items: Shape): Shape => ({ type: 'array', items, minItems: 2, maxItems: 2 });
/** By a name that the records give, as an axle. */
export const byName = (value: Shape): Shape => ({ type: 'object', additionalProperties: value });
/** The key is always there; null says that there is nothing to tell. */
export const orNull = (one: Shape): Shape => ({ anyOf: [one, { type: 'null' }] });

/** Units by the last part of a key. */
export const UNITS: Readonly<Record<string, string>> = {
  mm: 'millimetres',
  mm2: 'square millimetres',
  mm4: 'millimetres to the fourth power',
  kg: 'kilograms',
  lb: 'pounds, as a label prints them',
  kpa: 'kilopascals',
  v: 'volts',
  a: 'amperes',
  w: 'watts',
  k: 'kelvin',
  nm: 'newton metres',
  l: 'litres',
  deg: 'degrees of angle',
  percent: 'percent',
  px: 'pixels of the picture',
};

/** `kg_per_m`, `load_kg`: what the numbers under a key are in; undefined where the key names no unit. */
export function unitOf(key: string): string | undefined {
  const [of, per] = key.split('_per_');
  if (per === 'm') return `${unitOf(`_${of}`)} a metre`;
  return UNITS[/(?:^|_)([a-z0-9]+)$/u.exec(key)?.[1] ?? ''];
}

/** An object that has at least these keys, those of `sometimes` not always. More keys may come. */
export function shape(keys: Readonly<Record<string, Shape>>, sometimes: Readonly<Record<string, Shape>> = {}): Shape {
  const described = Object.entries({ ...keys, ...sometimes }).map(([key, value]) => {
    const unit = unitOf(key);
    return [key, unit === undefined || value.description !== undefined ? value : { ...value, description: `in ${unit}` }];
  });
  return { type: 'object', properties: Object.fromEntries(described), required: Object.keys(keys) };
}
