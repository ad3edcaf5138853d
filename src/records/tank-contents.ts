import { getOwn } from '../get-own.js';

export const TANK_USES = ['fresh', 'waste', 'fuel', 'gas', 'fluid'] as const;
export type TankUse = (typeof TANK_USES)[number];

/** What tanks hold, by the listed words of their `contents`, compared without regard to capitals. */
interface Contents {
  readonly words: readonly string[];
  /** kg/m³; absent where it must be typed. */
  readonly densityKgM3?: number;
  /** What such a tank is for, where its `use` is not recorded. */
  readonly use: TankUse;
  /** What a condition may call it, beside its words and its use. */
  readonly called?: readonly string[];
}

const CONTENTS = [
  // ISO 22241-1: 1087–1093 at 20 °C, unverified citation (1.09 kg/L).
  { words: ['diesel exhaust fluid', 'DEF', 'urea'], densityKgM3: 1090, use: 'fluid', called: ['def'] },
  // 0.832 kg/L, within EN 590's 820–845 at 15 °C, unverified citation.
  { words: ['diesel', 'diesel fuel', 'fuel'], densityKgM3: 832, use: 'fuel' },
  // Within EN 228's 720–775, unverified citation; the heavier end, which is the safe side.
  { words: ['gasoline', 'petrol'], densityKgM3: 775, use: 'fuel' },
  // NFPA 58 Annex B, commercial propane: relative density of the liquid at 60 °F.
  { words: ['propane', 'LPG', 'LP gas', 'LP'], densityKgM3: 504, use: 'gas', called: ['propane'] },
  { words: ['butane'], use: 'gas' },
  // Handbook figure for 50 % ethylene glycol, unverified citation.
  { words: ['coolant', 'glycol'], densityKgM3: 1070, use: 'fluid' },
  { words: ['antifreeze', 'hydraulic oil', 'oil'], use: 'fluid' },
  // 1 kg/L, as 49 CFR 571.110 and 571.120 S10 have it for the label; waste as water.
  { words: ['grey', 'gray', 'grey water', 'gray water'], densityKgM3: 1000, use: 'waste', called: ['grey', 'gray'] },
  { words: ['black', 'black water', 'sewage'], densityKgM3: 1000, use: 'waste', called: ['black'] },
  { words: ['waste', 'waste water', 'toilet'], densityKgM3: 1000, use: 'waste' },
  { words: ['water', 'fresh water', 'fresh', 'potable water', 'drinking water'], densityKgM3: 1000, use: 'fresh' },
] as const satisfies readonly Contents[];

/** Every word of the list. */
export const CONTENTS_WORDS: readonly string[] = CONTENTS.flatMap(({ words }) => words);

const ROWS: ReadonlyMap<string, Contents> = new Map(
  CONTENTS.flatMap((row) => row.words.map((word) => [word.toLowerCase(), row] as const)),
);

const rowOf = (contents: string): Contents | undefined => ROWS.get(contents.trim().toLowerCase());

export const isListedContents = (contents: string): boolean => rowOf(contents) !== undefined;

/** kg/m³ by a listed word; undefined for any other, and where it must be typed. */
export const densityOf = (contents: string): number | undefined => rowOf(contents)?.densityKgM3;

/** Density of the heaviest that the list has, kg/m³: taken where words of the list stand among others, as in `rain water in bags`. */
export const HEAVIEST_KG_M3 = Math.max(...CONTENTS.flatMap((row: Contents) => row.densityKgM3 ?? []));

const folded = (text: string): string => ` ${text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `;

/** A listed word stands in the text, among others: it may propose what was meant, and answers nothing. */
export const hasListedWords = (contents: string): boolean =>
  CONTENTS_WORDS.some((word) => folded(contents).includes(folded(word)));

/** What a tank with such contents is for; undefined where the word is not listed. A record's own `use` goes before it. */
export const useOfContents = (contents: string): TankUse | undefined => rowOf(contents)?.use;

/** What a condition may call tanks by what they are for. */
const CALLED_BY_USE: Readonly<Record<string, TankUse>> = {
  fuel: 'fuel',
  fresh: 'fresh',
  water: 'fresh',
  waste: 'waste',
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
  const means = getOwn(CALLED_BY_USE, word);
  return means === undefined ? rowOf(contents)?.called?.includes(word) === true : (use ?? useOfContents(contents)) === means;
}

/** What a condition may call the tanks of a shell, for suggestions. */
export const contentsWords = (tanks: readonly Held[]): readonly string[] =>
  [...new Set([...Object.keys(CALLED_BY_USE), ...CONTENTS.flatMap((row: Contents) => row.called ?? [])])].filter((word) =>
    tanks.some((tank) => meansContents(word, tank)),
  );
