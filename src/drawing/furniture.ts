import type { UnitSystem } from '../quantity/format.js';
import { MM_PER_IN } from '../quantity/units.js';
import { line, type Mark, type Point, type Rect, rectArea, rectangle, textMark } from './scene.js';
import { scaleText } from './sheet.js';
import { textWidthMm } from './text-width.js';

interface Strip {
  readonly marks: readonly Mark[];
  readonly endX: number;
}

const METRIC_STEPS = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].map((mm) => ({
  mm,
  words: mm < 1000 ? `${mm} mm` : `${mm / 1000} m`,
}));
const US_STEPS = [
  ...[1, 2, 3, 6].map((inches) => ({ mm: inches * MM_PER_IN, words: `${inches} in` })),
  ...[1, 2, 5, 10, 20, 50].map((feet) => ({ mm: feet * 12 * MM_PER_IN, words: `${feet} ft` })),
];

/** The scale in words over bars of a round length, in the store's units; both where the store prints both. */
export function scaleBar(reduction: number, units: UnitSystem, at: Point, mostMm: number): Strip {
  const words = scaleText(reduction);
  const startX = at[0] + textWidthMm(words, 'name-strong') + 2.5;
  const marks: Mark[] = [textMark('furniture', 'name-strong', [at[0], at[1]], words)];
  let endX = startX;
  const systems = units === 'both' ? (['us', 'metric'] as const) : ([units] as const);
  systems.forEach((system, row) => {
    const y = systems.length === 1 ? at[1] : at[1] + (row === 0 ? -2.2 : 2.2);
    const bar = oneBar(reduction, system === 'us' ? US_STEPS : METRIC_STEPS, [startX, y], mostMm);
    marks.push(...bar.marks);
    endX = Math.max(endX, bar.endX);
  });
  return { marks, endX };
}

function oneBar(
  reduction: number,
  steps: readonly { readonly mm: number; readonly words: string }[],
  [x, y]: Point,
  mostMm: number,
): Strip {
  const step = steps.findLast(({ mm }) => mm / reduction <= mostMm) ?? steps[0];
  if (!step) return { marks: [], endX: x };
  const lengthMm = step.mm / reduction;
  const half = lengthMm / 2;
  return {
    marks: [
      rectangle('furniture', 'furniture-filled', { x0: x, y0: y - 0.5, x1: x + half, y1: y + 0.5 }),
      rectangle('furniture', 'furniture', { x0: x + half, y0: y - 0.5, x1: x + lengthMm, y1: y + 0.5 }),
      textMark('furniture', 'note', [x + lengthMm + 1.2, y], step.words),
    ],
    endX: x + lengthMm + 1.2 + textWidthMm(step.words, 'note'),
  };
}

/** Which way the vehicle faces on this sheet; `words` for its front. */
export function frontArrow(front: 'left' | 'right', [x, y]: Point, words: string): Strip {
  const width = textWidthMm(words, 'name-strong');
  const length = 9;
  const from = front === 'left' ? x + length : x + width + 1.5;
  const to = front === 'left' ? x : x + width + 1.5 + length;
  const back = front === 'left' ? to + 3 : to - 3;
  return {
    marks: [
      line('furniture', 'axis', [
        [from, y],
        [back, y],
      ]),
      rectArea('furniture', 'furniture-filled', [
        [to, y],
        [back, y - 1.1],
        [back, y + 1.1],
      ]),
      textMark('furniture', 'name-strong', [front === 'left' ? x + length + 1.5 : x, y], words),
    ],
    endX: x + length + 1.5 + width,
  };
}

const LINE_MM = 3.1;

/** Notes run on in a strip of this width, mm; too narrow a strip holds none. */
export const noteRows = (notes: readonly string[], widthMm: number): readonly string[] =>
  notes.length === 0 ? [] : wrapWords(notes.join(' '), widthMm);

/** Lines of notes from the strip's top down. */
export const noteLines = (rows: readonly string[], strip: Rect): readonly Mark[] => {
  const top = Math.max(strip.y0 + LINE_MM / 2, (strip.y0 + strip.y1) / 2 - ((rows.length - 1) * LINE_MM) / 2);
  return rows.map((words, index) => textMark('furniture', 'note', [strip.x0, top + index * LINE_MM], words));
};

/** Height of so many lines of notes. */
export const notesMm = (rows: number): number => rows * LINE_MM;

function wrapWords(words: string, widthMm: number): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of words.split(/\s+/u)) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && textWidthMm(longer, 'note') > widthMm) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  return current === '' ? lines : [...lines, current];
}
