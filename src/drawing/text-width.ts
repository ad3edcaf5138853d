import { CAPITAL_SHARE, TEXT_STYLES, type TextStyleName } from './styles.js';

/**
 * Advance widths in thousandths of the font size, for U+0020 to U+007E.
 * Measured from the hmtx tables of Atkinson Hyperlegible Next, regular and bold.
 */
const REGULAR =
  '280,286,301,651,592,919,731,160,299,299,485,606,210,362,210,387,648,407,548,576,614,588,598,510,615,595,210,210,553,628,553,480,' +
  '778,626,613,645,669,569,552,694,694,392,512,631,541,824,693,714,592,724,614,592,558,690,593,856,623,575,607,317,387,344,552,372,' +
  '243,525,566,485,564,538,314,558,550,252,245,492,262,845,550,548,566,574,349,471,326,540,461,684,481,449,460,344,237,344,555';
const BOLD =
  '312,303,390,765,610,969,725,210,335,335,485,595,271,373,272,440,659,440,579,600,624,607,626,537,624,571,272,272,569,612,569,547,' +
  '781,678,643,658,688,597,566,718,701,424,561,663,552,858,717,746,629,756,650,610,607,686,644,886,685,650,618,340,440,344,582,400,' +
  '288,552,596,510,596,563,365,593,571,300,259,555,318,882,571,576,596,599,376,508,376,567,530,740,539,521,505,381,254,381,537';
/** A sign outside the table: wide enough for any Latin letter, and for a full-width sign. */
const OTHER = 850;
const OTHER_WIDE = 1100;

const regular = REGULAR.split(',').map(Number);
const bold = BOLD.split(',').map(Number);

/** Printed width of one line of text, mm. Never less than the true one for Latin text. */
export function textWidthMm(words: string, styleName: TextStyleName): number {
  const style = TEXT_STYLES[styleName];
  const table = style.bold ? bold : regular;
  let thousandths = 0;
  for (const sign of words) {
    const code = sign.codePointAt(0) as number;
    const wide = code > 0x2e80 ? OTHER_WIDE : OTHER;
    thousandths += table[code - 0x20] ?? wide;
  }
  return (thousandths * style.sizeMm) / 1000;
}

/** Height that a line of text takes up, mm: ascenders, descenders and a little air. */
export const textHeightMm = (styleName: TextStyleName): number => TEXT_STYLES[styleName].sizeMm * 1.12;

/** Height of the capitals and figures, mm. */
export const capitalsMm = (styleName: TextStyleName): number => TEXT_STYLES[styleName].sizeMm * CAPITAL_SHARE;

/** `words` cut with an ellipsis so that it is no wider than `mostMm`. */
export function shorten(words: string, styleName: TextStyleName, mostMm: number): string {
  if (textWidthMm(words, styleName) <= mostMm) return words;
  const signs = [...words];
  while (signs.length > 1 && textWidthMm(`${signs.join('').trimEnd()}…`, styleName) > mostMm) signs.pop();
  return `${signs.join('').trimEnd()}…`;
}
