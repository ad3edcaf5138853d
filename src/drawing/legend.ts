import type { Medium } from '../records/index.js';
import { MEDIUM_STYLES } from './media.js';
import { line, type Mark, type Point, textMark } from './scene.js';
import { mm } from './svg.js';
import { NODE_SYMBOL_MM, type NodeSymbol, SYMBOL_WORDS, symbolMarks } from './symbols.js';
import { textWidthMm } from './text-width.js';

const SWATCH_MM = 14;
const ROW_MM = 4.5;

/** A row (or rows) that says what the patterns and symbols of this drawing stand for; `said`: the English name in the reader's words. */
export function legendMarks(
  media: readonly Medium[],
  symbols: readonly NodeSymbol[],
  at: Point,
  widthMm: number,
  said: (words: string) => string = (words) => words,
): readonly Mark[] {
  const marks: Mark[] = [];
  let [x, y] = at;
  const makeRoom = (neededMm: number): void => {
    if (x + neededMm > at[0] + widthMm && x > at[0]) {
      x = at[0];
      y += ROW_MM;
    }
  };
  for (const medium of media) {
    const { name: english, letter } = MEDIUM_STYLES[medium];
    const name = said(english);
    const needed = SWATCH_MM + 1.5 + textWidthMm(name, 'note') + 4;
    makeRoom(needed);
    marks.push(
      line('furniture', `run-${medium}`, [
        [x, y],
        [x + SWATCH_MM, y],
      ]),
    );
    marks.push(textMark('furniture', 'letter', [x + SWATCH_MM / 2, y], letter, { anchor: 'middle', backed: true }));
    marks.push(textMark('furniture', 'note', [x + SWATCH_MM + 1.5, y], name));
    x += needed;
  }
  const medium = media[0];
  if (medium === undefined) return marks;
  for (const symbol of symbols) {
    const words = said(SYMBOL_WORDS[symbol]);
    const needed = 2 * NODE_SYMBOL_MM + 1.5 + textWidthMm(words, 'note') + 3.5;
    makeRoom(needed);
    marks.push(
      ...symbolMarks(symbol, medium, [x + NODE_SYMBOL_MM * 1.2, y]).map((mark): Mark => ({ ...mark, layer: 'furniture' })),
    );
    marks.push(textMark('furniture', 'note', [x + 2 * NODE_SYMBOL_MM + 1.5, y], words));
    x += needed;
  }
  return marks;
}

/** A short piece of a medium's line with its letter, as an inline SVG for tables and legends. */
export function mediumSwatch(medium: Medium): string {
  const { pen, letter, name } = MEDIUM_STYLES[medium];
  const dash = pen.dash ? ` stroke-dasharray="${pen.dash.map(mm).join(' ')}"` : '';
  const d = 'M0 1.8L18 1.8';
  const core = pen.core ? `<path d="${d}" stroke="${pen.core.colour}" stroke-width="${mm(pen.core.widthMm)}"/>` : '';
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="sb-swatch" role="img" aria-label="${name}: line with the letter ${letter}" width="18mm" height="3.6mm" viewBox="0 0 18 3.6" fill="none">` +
    `<title>${name}</title><path d="${d}" stroke="${pen.colour}" stroke-width="${mm(pen.widthMm)}"${dash}/>${core}` +
    `<rect x="7.6" y="0.4" width="2.8" height="2.8" fill="#ffffff"/>` +
    `<text x="9" y="2.5" font-family="'Atkinson Hyperlegible Next', sans-serif" font-size="2.3" font-weight="700" text-anchor="middle" fill="#1c2126">${letter}</text></svg>`
  );
}
