import type { Reader } from './sentence.js';

/** Words of the program's own sentences that are spelt, or are, otherwise in British English: as in the United States → as in Britain. */
const BRITISH: Readonly<Record<string, string>> = {
  center: 'centre',
  centered: 'centred',
  centers: 'centres',
  color: 'colour',
  colors: 'colours',
  curb: 'kerb',
  gray: 'grey',
  'ground bond': 'earth bond',
  'ground bonds': 'earth bonds',
  'ground stud': 'earth stud',
  'ground studs': 'earth studs',
  'Grounds and bonding': 'Earths and bonding',
  liter: 'litre',
  liters: 'litres',
  tire: 'tyre',
  tires: 'tyres',
};
const KNOWN = new RegExp(
  `\\b(?:${Object.keys(BRITISH)
    .sort((a, b) => b.length - a.length)
    .join('|')})\\b`,
  'giu',
);

/** A sentence of the program's own, written as in the United States, for a reader of either English. Never for what a record says. */
export function spelt({ language, english }: Reader, text: string): string {
  if (language !== 'en' || english !== 'uk') return text;
  return text.replace(KNOWN, (word) => {
    const british = BRITISH[word] ?? BRITISH[word.toLowerCase()] ?? word;
    return /^\p{Lu}/u.test(word) ? british.slice(0, 1).toUpperCase() + british.slice(1) : british;
  });
}
