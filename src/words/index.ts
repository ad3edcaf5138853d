import { ASKED } from './asked.js';
import { COACH } from './coach.js';
import { DECLARED } from './declared.js';
import { DRAWING } from './drawn.js';
import { EMERGENCY } from './emergency.js';
import { FLOOR, FLOOR_TAPPED } from './floor.js';
import { HAZARDS } from './hazards.js';
import { KEEPING } from './keeping.js';
import { LABELS } from './labels.js';
import { LIVING } from './living.js';
import { OWNER } from './owner.js';
import { POCKET, TAPPED } from './pocket.js';
import { ROAD } from './road.js';
import type { Blanks, Reader } from './sentence.js';

export { FLOOR_CHOICES, FLOOR_FIELDS, FLOOR_TAPPED } from './floor.js';
export { isTranslated, translated } from './phrases.js';
export { TAPPED } from './pocket.js';
export { type English, LANGUAGES, type Language, type Reader, readerOf } from './sentence.js';
export { spelt } from './spelling.js';

/** Every sentence that a reader sees on these pages, once: by key, in English as spoken in either country and in Spanish. */
export const WORDS = {
  ...ASKED,
  ...COACH,
  ...DECLARED,
  ...DRAWING,
  ...EMERGENCY,
  ...FLOOR,
  ...FLOOR_TAPPED,
  ...HAZARDS,
  ...KEEPING,
  ...LABELS,
  ...LIVING,
  ...OWNER,
  ...POCKET,
  ...ROAD,
  ...TAPPED,
} as const;

export type WordKey = keyof typeof WORDS;
export type Filled<K extends WordKey> = Blanks<(typeof WORDS)[K]['us']>;

/** Keys of sentences that have no blank to fill. */
export type PlainKey = { [K in WordKey]: [Filled<K>] extends [never] ? K : never }[WordKey];

/** What fills the blanks of a sentence; nothing where it has none. */
export type Values<K extends WordKey> = [Filled<K>] extends [never] ? [] : [Readonly<Record<Filled<K>, string | number>>];

/** A sentence for a reader; what stands in braces in it is filled in. */
export function say<K extends WordKey>(reader: Reader, key: K, ...values: Values<K>): string {
  const { us, uk = us, es }: { us: string; uk?: string; es: string } = WORDS[key];
  const sentence = reader.language === 'es' ? es : reader.english === 'uk' ? uk : us;
  const filled = (values[0] ?? {}) as Readonly<Record<string, string | number>>;
  return sentence.replace(/\{(\w+)\}/gu, (blank, name: string) => String(filled[name] ?? blank));
}

/** The same for one reader: `w('head.name')`. */
export const sayTo =
  (reader: Reader) =>
  <K extends WordKey>(key: K, ...values: Values<K>): string =>
    say(reader, key, ...values);
