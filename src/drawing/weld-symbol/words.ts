import { processName } from '../../compute/welding/process.js';
import { feetInches, number, sixtyFourths, type UnitSystem } from '../../quantity/format.js';
import type { Weld } from '../../records/index.js';
import { processNumber } from './process-number.js';

/** Which standard a shop's symbols follow, and in which unit their figures stand. */
export interface SymbolStyle {
  readonly standard: 'iso' | 'aws';
  readonly units: UnitSystem;
}

/** What a symbol tells of a weld. */
export type SymbolWeld = Pick<
  Weld,
  'type' | 'sizeMm' | 'lengthMm' | 'sides' | 'allRound' | 'process' | 'procedure' | 'filler' | 'site'
>;

/** ISO 2553 figures are in mm; AWS A2.4 figures follow the drawing, here inches unless the store is metric. */
export const inMillimetres = ({ standard, units }: SymbolStyle): boolean => standard === 'iso' || units === 'metric';

/** Without a mark between thousands: on a symbol it would read as the decimal sign. */
const millimetres = (mm: number, decimals = 1): string => String(Number(mm.toFixed(decimals)));

/**
 * Size, left of the symbol. ISO 2553: z a fillet's leg, s the depth of a groove, d a plug's diameter, c a seam's width (the
 * last three: unverified citation). AWS A2.4: a bevel's depth plain; where there is none to prepare, the weld's own size in parentheses.
 */
export function sizeWords(weld: SymbolWeld, style: SymbolStyle): string {
  const figure = inMillimetres(style) ? millimetres(weld.sizeMm) : sixtyFourths(weld.sizeMm).replace(/ in$/u, '');
  if (style.standard === 'iso') return `${ISO_LETTER[weld.type]}${figure}`;
  return weld.type === 'square groove' || weld.type === 'flare' ? `(${figure})` : figure;
}

const ISO_LETTER: Readonly<Record<Weld['type'], string>> = {
  fillet: 'z',
  'square groove': 's',
  'bevel groove': 's',
  'V groove': 's',
  flare: 's',
  plug: 'd',
  seam: 'c',
};

/** Length of the weld, right of the symbol. A plug has none. */
export function lengthWords(weld: SymbolWeld, style: SymbolStyle): string {
  if (weld.type === 'plug') return '';
  return inMillimetres(style) ? millimetres(weld.lengthMm, 0) : feetInches(weld.lengthMm).replace(/ in$/u, '');
}

/** In the tail: process and procedure, ISO by its number of ISO 4063, AWS by its letters; then how many like joints. */
export function tailWords(weld: SymbolWeld, style: SymbolStyle, joints: number): string {
  const process = style.standard === 'iso' ? processNumber(weld.process, weld.filler) : processName(weld.process);
  return [process, weld.procedure, joints > 1 ? `${joints} joints` : undefined].filter(Boolean).join(' / ');
}

const TYPE_WORDS: Readonly<Record<Weld['type'], string>> = {
  fillet: 'leg',
  'square groove': 'size',
  'bevel groove': 'depth',
  'V groove': 'depth',
  flare: 'size',
  plug: 'diameter',
  seam: 'width',
};

/** The same in words, for those who do not read symbols: `fillet, leg 3/16 in, both sides, 4 in long`. */
export function symbolInWords(weld: SymbolWeld, style: SymbolStyle): string {
  const metric = inMillimetres(style);
  const size = metric ? `${millimetres(weld.sizeMm)} mm` : sixtyFourths(weld.sizeMm);
  const length = metric ? `${number(weld.lengthMm)} mm` : feetInches(weld.lengthMm);
  const where = weld.allRound ? 'all round' : weld.sides === 'both' ? 'both sides' : `${weld.sides} side`;
  return [
    weld.type,
    `${TYPE_WORDS[weld.type]} ${size}`,
    where,
    weld.type === 'plug' ? '' : `${length} long`,
    weld.site ? 'welded on site' : '',
  ]
    .filter(Boolean)
    .join(', ');
}

/** The shortest words for a line of a schedule: `fillet 3/16 × 4 in, both sides`. */
export function shortInWords(weld: SymbolWeld, style: SymbolStyle): string {
  const metric = inMillimetres(style);
  const size = metric ? millimetres(weld.sizeMm) : sixtyFourths(weld.sizeMm).replace(/ in$/u, '');
  const by = metric ? `${number(weld.lengthMm)} mm` : feetInches(weld.lengthMm);
  const length = weld.type === 'plug' ? ` ${metric ? 'mm' : 'in'}` : ` × ${by}`;
  const where = weld.allRound ? ', round' : weld.sides === 'both' ? ', both' : weld.sides === 'other' ? ', other' : '';
  return `${weld.type} ${size}${length}${where}`;
}
