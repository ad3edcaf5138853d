export const TANK_USES = ['fresh', 'waste', 'fuel', 'gas', 'fluid'] as const;
export type TankUse = (typeof TANK_USES)[number];

/** What tanks hold, by a word of their `contents`. First match rules. */
interface Contents {
  readonly words: RegExp;
  /** kg/m³; absent where it must be typed. */
  readonly densityKgM3?: number;
  /** What such a tank is for, where its `use` is not recorded. */
  readonly use: TankUse;
}

const CONTENTS: readonly Contents[] = [
  // ISO 22241-1: 1087–1093 at 20 °C, unverified citation (1.09 kg/L).
  { words: /\b(?:def|exhaust fluid|urea)\b/iu, densityKgM3: 1090, use: 'fluid' },
  // 0.832 kg/L, within EN 590's 820–845 at 15 °C, unverified citation.
  { words: /\b(?:diesel|fuel)\b/iu, densityKgM3: 832, use: 'fuel' },
  // Within EN 228's 720–775, unverified citation; the heavier end, which is the safe side.
  { words: /\b(?:gasoline|petrol)\b/iu, densityKgM3: 775, use: 'fuel' },
  // NFPA 58 Annex B, commercial propane: relative density of the liquid at 60 °F.
  { words: /\b(?:propane|lpg|lp gas|lp)\b/iu, densityKgM3: 504, use: 'gas' },
  { words: /\bbutane\b/iu, use: 'gas' },
  // Handbook figure for 50 % ethylene glycol, unverified citation.
  { words: /\b(?:coolant|glycol)\b/iu, densityKgM3: 1070, use: 'fluid' },
  { words: /\b(?:antifreeze|hydraulic|oil)\b/iu, use: 'fluid' },
  // 1 kg/L, as 49 CFR 571.110 and 571.120 S10 have it for the label; waste as water.
  { words: /\b(?:grey|gray|black|waste|sewage|toilet)\b/iu, densityKgM3: 1000, use: 'waste' },
  { words: /\b(?:water|fresh|potable)\b/iu, densityKgM3: 1000, use: 'fresh' },
];

const rowOf = (contents: string): Contents | undefined => CONTENTS.find(({ words }) => words.test(contents));

export const densityOf = (contents: string): number | undefined => rowOf(contents)?.densityKgM3;

/** What a tank with such contents is for; undefined where the word is not known. A record's own `use` goes before it. */
export const useOfContents = (contents: string): TankUse | undefined => rowOf(contents)?.use;

/** What a condition may call a tank by, beside its id and its very contents: what it is for, or a word of its contents. */
const CONDITION_WORDS: Readonly<Record<string, TankUse | RegExp>> = {
  fuel: 'fuel',
  fresh: 'fresh',
  water: 'fresh',
  grey: /\b(?:grey|gray)\b/iu,
  gray: /\b(?:grey|gray)\b/iu,
  black: /\b(?:black|sewage)\b/iu,
  waste: 'waste',
  def: /\b(?:def|exhaust fluid|urea)\b/iu,
  propane: /\b(?:propane|lpg|lp)\b/iu,
  gas: 'gas',
};

interface Held {
  readonly contents: string;
  readonly use?: TankUse;
}

/** Does a condition's key mean a tank with these contents and this use? */
export function meansContents(key: string, { contents, use }: Held): boolean {
  const word = key.toLowerCase();
  if (word === contents.toLowerCase()) return true;
  const means = Object.hasOwn(CONDITION_WORDS, word) ? CONDITION_WORDS[word] : undefined;
  return typeof means === 'string' ? (use ?? useOfContents(contents)) === means : means?.test(contents) === true;
}

/** The words that a condition may use for the tanks of a shell, for suggestions. */
export const contentsWords = (tanks: readonly Held[]): readonly string[] =>
  Object.keys(CONDITION_WORDS).filter((word) => tanks.some((tank) => meansContents(word, tank)));
