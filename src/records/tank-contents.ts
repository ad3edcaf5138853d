/** Density of what tanks hold, kg/m³, by a word of their contents. First match rules. */
const DENSITIES: readonly (readonly [RegExp, number])[] = [
  // ISO 22241-1: 1087–1093 at 20 °C, unverified citation (1.09 kg/L).
  [/\b(?:def|exhaust fluid|urea)\b/iu, 1090],
  // 0.832 kg/L, within EN 590's 820–845 at 15 °C, unverified citation.
  [/\b(?:diesel|fuel)\b/iu, 832],
  // Within EN 228's 720–775, unverified citation; the heavier end, which is the safe side.
  [/\b(?:gasoline|petrol)\b/iu, 775],
  // NFPA 58 Annex B, commercial propane: relative density of the liquid at 60 °F.
  [/\b(?:propane|lpg|lp gas|lp)\b/iu, 504],
  // Handbook figure for 50 % ethylene glycol, unverified citation.
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
