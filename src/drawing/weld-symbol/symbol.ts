import { arrowHead } from '../dimensions.js';
import { circle, line, type Mark, type Point, type Rect, rectArea, textMark } from '../scene.js';
import { textWidthMm } from '../text-width.js';
import { type ArrowSide, basicSymbol, SYMBOL_MM, symbolWidthMm } from './elements.js';
import { isResistance } from './process-number.js';
import { lengthWords, type SymbolStyle, type SymbolWeld, sizeWords, tailWords } from './words.js';

/** How one symbol stands on the sheet. */
export interface SymbolPlace {
  /** Where the reference line and the arrow meet. */
  readonly joint: Point;
  /** The way that the reference line runs from there. */
  readonly runs: 'right' | 'left';
  /** Tips of its arrows, at the weld. */
  readonly tips: readonly Point[];
}

/** What the tail says beside process and procedure. */
export interface SymbolExtra {
  /** Like joints that the symbol stands for. */
  readonly joints?: number;
  /** Short name of this symbol in the book's table of symbols. */
  readonly key?: string;
}

/** From the solid line to the dashed one of ISO 2553 system A, mm. */
export const DASHED_MM = 0.9;
const RING_MM = 1;
const FLAG_MM = 3.4;
const AIR_MM = 0.8;
/** Clear line before and after the figures. */
const LEAD_MM = 1.6;
const TAIL_MM = 1.6;
const HALF_HEIGHT_MM = SYMBOL_MM + 0.5;

interface Layout {
  readonly size: string;
  readonly length: string;
  readonly tail: string;
  readonly lineMm: number;
  readonly widthMm: number;
}

function layOutSymbol(weld: SymbolWeld, style: SymbolStyle, extra: SymbolExtra): Layout {
  const size = sizeWords(weld, style);
  const length = lengthWords(weld, style);
  const tail = [tailWords(weld, style, extra.joints ?? 1), extra.key && `symbol ${extra.key}`].filter(Boolean).join(' / ');
  const figures = textWidthMm(size, 'dimension') + symbolWidthMm(weld.type) + textWidthMm(length, 'dimension') + 2 * AIR_MM;
  const lineMm = 2 * LEAD_MM + figures + (weld.allRound || weld.site ? RING_MM : 0);
  return { size, length, tail, lineMm, widthMm: lineMm + TAIL_MM + AIR_MM + textWidthMm(tail, 'dimension') };
}

/** Width and height that a symbol takes up beside its arrow, mm; its reference line runs through the middle of the height. */
export function symbolSizeMm(
  weld: SymbolWeld,
  style: SymbolStyle,
  extra: SymbolExtra = {},
): { widthMm: number; heightMm: number } {
  const { widthMm } = layOutSymbol(weld, style, extra);
  return { widthMm, heightMm: 2 * (HALF_HEIGHT_MM + (weld.site ? FLAG_MM - HALF_HEIGHT_MM + 0.3 : 0)) };
}

/**
 * A welding symbol by AWS A2.4 or ISO 2553 system A, as marks in mm on the sheet.
 *
 * AWS: arrow side below the line, other side above. ISO system A: arrow side on the solid line, other side on
 * the dashed one; the dashed line lies below, and is left out where both sides are alike (unverified citation). The ring for all round
 * and the flag for the site stand where arrow and line meet; figures read from left to right whichever way the line runs.
 */
export function weldSymbol(weld: SymbolWeld, style: SymbolStyle, place: SymbolPlace, extra: SymbolExtra = {}): readonly Mark[] {
  const { size, length, tail, lineMm } = layOutSymbol(weld, style, extra);
  const right = place.runs === 'right';
  const [x, y] = place.joint;
  const end: Point = [right ? x + lineMm : x - lineMm, y];
  const left = Math.min(x, end[0]);
  const ring = (weld.allRound || weld.site) && right ? RING_MM : 0;
  const figuresX = left + LEAD_MM + ring;
  const symbolX = figuresX + textWidthMm(size, 'dimension') + AIR_MM;
  const centred = weld.type === 'seam' && isResistance(weld.process);
  const rows = centred ? [row(0, 1)] : rowsOf(weld, style);
  const dashed = style.standard === 'iso' && weld.sides !== 'both' && !centred;
  return [
    ...arrows(place),
    line('labels', 'weld-symbol', [place.joint, end]),
    ...(dashed
      ? [
          line('labels', 'weld-symbol-dashed', [
            [left, y + DASHED_MM],
            [Math.max(x, end[0]), y + DASHED_MM],
          ]),
        ]
      : []),
    ...rows.flatMap(({ offset, side }): readonly Mark[] => [
      ...basicSymbol(weld.type, [symbolX, y + offset], side, centred),
      ...figures(size, [figuresX, y + offset], side),
      ...figures(length, [symbolX + symbolWidthMm(weld.type) + AIR_MM, y + offset], side),
    ]),
    ...(weld.allRound ? [circle('labels', 'weld-ring', place.joint, RING_MM)] : []),
    ...(weld.site ? flag(place.joint, right) : []),
    ...tailMarks(tail, end, right),
  ];
}

/** A line that symbols stand on, from the solid line, and the side they stand to. */
interface Row {
  readonly offset: number;
  readonly side: ArrowSide;
}
const row = (offset: number, side: ArrowSide): Row => ({ offset, side });

function rowsOf({ sides }: SymbolWeld, { standard }: SymbolStyle): readonly Row[] {
  if (sides === 'both') return [row(0, 1), row(0, -1)];
  if (standard === 'aws') return [sides === 'arrow' ? row(0, 1) : row(0, -1)];
  return [sides === 'arrow' ? row(0, -1) : row(DASHED_MM, 1)];
}

const figures = (words: string, [x, y]: Point, side: ArrowSide): readonly Mark[] =>
  words === '' ? [] : [textMark('labels', 'dimension', [x, y + side * (SYMBOL_MM / 2 + 0.15)], words)];

function arrows({ joint, tips }: SymbolPlace): readonly Mark[] {
  return tips.flatMap((tip) => [
    line('leaders', 'weld-symbol', [joint, tip]),
    { ...arrowHead(tip, Math.atan2(tip[1] - joint[1], tip[0] - joint[0])), layer: 'labels' as const },
  ]);
}

/** The flag flies up from the corner, towards the tail: AWS A2.4, unverified citation. */
function flag([x, y]: Point, right: boolean): readonly Mark[] {
  const away = right ? 1 : -1;
  return [
    line('labels', 'weld-symbol', [
      [x, y],
      [x, y - FLAG_MM],
    ]),
    rectArea('labels', 'mark-filled', [
      [x, y - FLAG_MM],
      [x + away * 1.6, y - FLAG_MM + 0.7],
      [x, y - FLAG_MM + 1.4],
    ]),
  ];
}

function tailMarks(words: string, [x, y]: Point, right: boolean): readonly Mark[] {
  if (words === '') return [];
  const away = right ? 1 : -1;
  const fork = (up: number): Mark =>
    line('labels', 'weld-symbol', [
      [x, y],
      [x + away * TAIL_MM, y + up * TAIL_MM],
    ]);
  const anchor = right ? 'start' : 'end';
  return [fork(1), fork(-1), textMark('labels', 'dimension', [x + away * (TAIL_MM + AIR_MM), y], words, { anchor })];
}

/** An arrow leans away from its symbol by at least this much sideways for each millimetre up or down. */
const LEAN = 0.35;
/** Nor does it lie along its line, or end in the ring: least way up or down, and sideways, mm. */
const LEAST_MM = 2.2;

/**
 * Where the reference line of a symbol in a box begins, and which way it runs, for a weld beside the box. Nothing where the arrow
 * would have to run back over the symbol.
 */
export function towards(box: Rect, weldAt: Point): Pick<SymbolPlace, 'joint' | 'runs'> | undefined {
  const y = (box.y0 + box.y1) / 2;
  const away = Math.abs(weldAt[1] - y);
  if (away < LEAST_MM) return undefined;
  const aside = Math.max(LEAST_MM, LEAN * away);
  if (weldAt[0] <= box.x0 - aside) return { joint: [box.x0, y], runs: 'right' };
  if (weldAt[0] >= box.x1 + aside) return { joint: [box.x1, y], runs: 'left' };
  return undefined;
}
