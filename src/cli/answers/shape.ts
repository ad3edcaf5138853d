import type { Json } from '../report/json.js';

/** A JSON Schema (draft 2020-12). */
export type JsonShape = { readonly [key: string]: Json };

export const jsonText: JsonShape = { type: 'string' };
export const flag: JsonShape = { type: 'boolean' };
export const jsonNumber: JsonShape = { type: 'number' };
export const whole: JsonShape = { type: 'integer' };
export const jsonTexts: JsonShape = { type: 'array', items: jsonText };
export const jsonPlace: JsonShape = {
  type: 'array',
  items: jsonNumber,
  minItems: 3,
  maxItems: 3,
  description: 'x rearward from the front axle, y to the right, z up from the top of the frame rail; mm',
};

export const jsonOneOf = (...words: readonly string[]): JsonShape => ({ enum: words });
export const jsonList = (items: JsonShape): JsonShape => ({ type: 'array', items });
export const pair = (items: JsonShape): JsonShape => ({ type: 'array', items, minItems: 2, maxItems: 2 });
/** By a name that the records give, as an axle. */
export const byName = (value: JsonShape): JsonShape => ({ type: 'object', additionalProperties: value });
/** The key is always there; null says that there is nothing to tell. */
export const orNull = (one: JsonShape): JsonShape => ({ anyOf: [one, { type: 'null' }] });

/** Units by the last part of a key. */
export const JSON_UNITS: Readonly<Record<string, string>> = {
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
  mb: 'millions of bytes',
  bytes: 'bytes',
};

/** `kg_per_m`, `load_kg`: what the numbers under a key are in; undefined where the key names no unit. */
export function unitOf(key: string): string | undefined {
  const [of, per] = key.split('_per_');
  if (per === 'm') return `${unitOf(`_${of}`)} a metre`;
  return JSON_UNITS[/(?:^|_)([a-z0-9]+)$/u.exec(key)?.[1] ?? ''];
}

/** An object that has at least these keys, those of `sometimes` not always. More keys may come. */
export function shape(keys: Readonly<Record<string, JsonShape>>, sometimes: Readonly<Record<string, JsonShape>> = {}): JsonShape {
  const described = Object.entries({ ...keys, ...sometimes }).map(([key, value]) => {
    const unit = unitOf(key);
    return [key, unit === undefined || value.description !== undefined ? value : { ...value, description: `in ${unit}` }];
  });
  return { type: 'object', properties: Object.fromEntries(described), required: Object.keys(keys) };
}
