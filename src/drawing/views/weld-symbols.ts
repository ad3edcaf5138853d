import type { Assessment } from '../../assess.js';
import { compose, type Drawing } from '../compose.js';
import type { Point } from '../scene.js';
import { symbolKinds } from '../weld-symbol/kinds.js';
import { symbolSizeMm, weldSymbol } from '../weld-symbol/symbol.js';
import { type SymbolStyle, symbolInWords } from '../weld-symbol/words.js';

/** One symbol of the book's table of symbols. */
export interface SymbolEntry {
  readonly key: string;
  readonly figure: Drawing;
  readonly words: string;
  /** Ids of the welds that it stands for, and how many joints they have. */
  readonly welds: readonly string[];
  readonly joints: number;
}

/** Arrow beside the reference line: across and down, mm. */
const ARROW_MM = { across: 5, down: 3.4 };
const EDGE_MM = 0.4;

/** The symbols that the welds need, each once, with its arrow free. */
export function weldSymbols({ model }: Assessment): readonly SymbolEntry[] {
  const style: SymbolStyle = { standard: model.shop.weldSymbols, units: model.shop.units };
  return symbolKinds(model.shell.welds).map(({ key, weld, welds }) => {
    const words = symbolInWords(weld, style);
    const { widthMm, heightMm } = symbolSizeMm(weld, style);
    const joint: Point = [EDGE_MM + ARROW_MM.across, EDGE_MM + heightMm / 2];
    const sheet = { widthMm: Math.ceil(widthMm + ARROW_MM.across + 2 * EDGE_MM), heightMm: Math.ceil(heightMm + 2 * EDGE_MM) };
    const figure = compose(
      {
        id: `weld-symbol-${key}`,
        title: `Symbol ${key}`,
        alt: `Welding symbol: ${words}.`,
        ...sheet,
        room: { x0: 0, y0: 0, x1: sheet.widthMm, y1: sheet.heightMm },
        units: model.shop.units,
        furniture: false,
        marks: weldSymbol(weld, style, { joint, runs: 'right', tips: [[EDGE_MM, joint[1] + ARROW_MM.down]] }),
        wishes: [],
      },
      {},
    );
    return {
      key,
      figure,
      words,
      welds: welds.map(({ id }) => id),
      joints: welds.reduce((sum, one) => sum + one.joins.length, 0),
    };
  });
}
