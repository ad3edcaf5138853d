import type { Limits } from './library.js';

/** ABYC E-11, wires from an exhaust: 9 in from a dry one, 2 in from one cooled by water, from memory. */
export const HOT_MM = { dry: 230, wet: 50 } as const;

/** The shop's limits where shop.yaml does not say otherwise. House rules, each with where it comes from. */
export const LIMITS: Limits = {
  // common practice, no source: less than 3 % left on an axle is gone with the first repair.
  axleMargin: 0.03,
  // common practice, no source: 1/8 in between diagonals, 1/16 in header sag.
  diagonalDifferenceMm: 25.4 / 8,
  headerSagMm: 25.4 / 16,
  // common practice, no source: trusses and posts at 20 in.
  trussSpacingMm: 508,
  // NEC Chapter 9 Table 1 for three and more wires in a raceway, from memory; a house rule for cavities.
  cavityFill: 0.4,
  // common practice, no source: gas 2 in from mains; low voltage and mains in separate cavities.
  keepApart: [
    { media: ['gas', 'ac'], distanceMm: 50.8 },
    { media: ['dc', 'ac'], shareZone: false },
  ],
  // common practice, no source: 50 mm about a moving tyre or slide.
  movingClearanceMm: 50,
  hotClearanceMm: HOT_MM,
  // ABYC E-11 for critical 12 V loads, from memory.
  voltageDrop: 0.03,
  // common practice, no source: 3 mm out of plane shows in a skin.
  flatnessMm: 3,
  // common practice, no source: a week between an event and its entry.
  lateEntryDays: 7,
  // common practice, no source: one part in a hundred.
  unexplainedMass: 0.01,
};

/** 68 kg (150 lb) for each designated seat: 49 CFR 571.110 S3, 567.4(g)(3). */
export const OCCUPANT_KG = 68;

/** Density of what tanks hold, kg/m³, by a word of their contents. First match rules. */
const DENSITIES: readonly (readonly [RegExp, number])[] = [
  // ISO 22241-1: 1087–1093 at 20 °C, from memory (1.09 kg/L).
  [/\b(?:def|exhaust fluid|urea)\b/iu, 1090],
  // 0.832 kg/L, within EN 590's 820–845 at 15 °C, from memory.
  [/\b(?:diesel|fuel)\b/iu, 832],
  // Within EN 228's 720–775, from memory; the heavier end, which is the safe side.
  [/\b(?:gasoline|petrol)\b/iu, 775],
  // NFPA 58 Annex B, commercial propane: relative density of the liquid at 60 °F.
  [/\b(?:propane|lpg|lp gas|lp)\b/iu, 504],
  // Handbook figure for 50 % ethylene glycol, from memory.
  [/\b(?:coolant|glycol)\b/iu, 1070],
  // 1 kg/L, as 49 CFR 571.110 and 571.120 S10 have it for the label; waste as water.
  [/\b(?:water|fresh|potable|grey|gray|black|waste|sewage)\b/iu, 1000],
];

export const densityOf = (contents: string): number | undefined => DENSITIES.find(([word]) => word.test(contents))?.[1];

/** What a condition may call a tank by, beside its id and its very contents. */
const CONTENTS_WORDS: Readonly<Record<string, RegExp>> = {
  fuel: /^(?!.*\bexhaust\b).*\b(?:diesel|gasoline|petrol|fuel)\b/iu,
  fresh: /^(?!.*\b(?:grey|gray|black|waste)\b).*\b(?:water|fresh|potable)\b/iu,
  water: /^(?!.*\b(?:grey|gray|black|waste)\b).*\b(?:water|fresh|potable)\b/iu,
  grey: /\b(?:grey|gray)\b/iu,
  gray: /\b(?:grey|gray)\b/iu,
  black: /\b(?:black|sewage)\b/iu,
  waste: /\b(?:grey|gray|black|waste|sewage)\b/iu,
  def: /\b(?:def|exhaust fluid|urea)\b/iu,
  propane: /\b(?:propane|lpg|lp)\b/iu,
  gas: /\b(?:propane|lpg|lp)\b/iu,
};

/** Does a condition's key mean a tank with these contents? */
export function meansContents(key: string, contents: string): boolean {
  const word = key.toLowerCase();
  if (word === contents.toLowerCase()) return true;
  return Object.hasOwn(CONTENTS_WORDS, word) && (CONTENTS_WORDS[word] as RegExp).test(contents);
}

/** The words that a condition may use for the tanks of a shell, for suggestions. */
export const contentsWords = (contents: readonly string[]): readonly string[] =>
  Object.keys(CONTENTS_WORDS).filter((word) => contents.some((one) => meansContents(word, one)));
