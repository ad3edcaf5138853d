import { z } from 'zod';

/** What stands under a key of an answer. */
export type JsonShape = z.ZodType;
/** An object of an answer: exactly these keys. */
export type JsonObject = z.ZodObject;
/** One form of an answer, or several of which one is given. */
export type AnswerForms = JsonObject | readonly JsonObject[];

export const jsonText = z.string();
export const flag = z.boolean();
export const jsonNumber = z.number();
export const whole = z.int();
export const jsonTexts = z.array(z.string());
/** As it was typed, or as Git has it: nothing is promised of what is in it. */
export const jsonAny = z.unknown();
/** A record as it is typed, key by key. */
export const jsonRecord = z.record(z.string(), z.unknown());
export const jsonPlace = z
  .tuple([z.number(), z.number(), z.number()])
  .describe('x rearward from the front axle, y to the right, z up from the top of the frame rail; mm');

export const jsonOneOf = (...words: readonly string[]): JsonShape => z.enum(words as [string, ...string[]]);
export const jsonList = (items: JsonShape): JsonShape => z.array(items);
export const pair = (items: JsonShape): JsonShape => z.tuple([items, items]);
/** By a name that the records give, as an axle. */
export const byName = (value: JsonShape): JsonShape => z.record(z.string(), value);
/** One of several shapes. */
export const jsonEither = (...shapes: readonly JsonShape[]): JsonShape => z.union(shapes as [JsonShape, ...JsonShape[]]);
/** The key is always there; null says that there is nothing to tell. */
export const orNull = (one: JsonShape): JsonShape => z.nullable(one);

/** Units by the last part of a key. */
const JSON_UNITS: Readonly<Record<string, string>> = {
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

type Keys = Readonly<Record<string, JsonShape>>;

/** An object of exactly these keys; those of `sometimes` not always. */
export function shape(keys: Keys, sometimes: Keys = {}): JsonObject {
  const described = (of: Keys): Keys =>
    Object.fromEntries(
      Object.entries(of).map(([key, value]) => {
        const unit = unitOf(key);
        return [key, unit === undefined || value.description !== undefined ? value : value.describe(`in ${unit}`)];
      }),
    );
  const optional = Object.fromEntries(Object.entries(described(sometimes)).map(([key, value]) => [key, z.optional(value)]));
  return z.strictObject({ ...described(keys), ...optional });
}
