import type { Run } from '../../records/index.js';
import { arrowHead } from '../dimensions.js';
import type { LabelWish } from '../labels.js';
import { spreadLines } from '../lanes.js';
import { alongLine, clipLine, lineLengthMm } from '../outline.js';
import { growRect, line, type Mark, type Point } from '../scene.js';
import type { LayerPiece, ServiceLayer } from '../service-layers.js';
import type { Port } from '../sheet.js';
import { RunLetters } from './run-letters.js';

/** A stretch of a run within one layer. */
export interface LayerRun extends LayerPiece {
  readonly run: Run;
}

/** Stretches shorter than this on the sheet go straight through the layer: a mark and no line, mm. */
const THROUGH_MM = 1.5;
/** Ends that go on to the same layer within this of each other share one label, mm. */
const TOGETHER_MM = 6;
/** More ids than this in one label would be a column: it says how many. */
const MOST_IDS = 2;
const LETTER_FROM_MM = 20;
const LETTER_EVERY_MM = 70;
const LETTER_AT = [0.5, 0.35, 0.65, 0.2, 0.8] as const;
const LETTER_CLEAR_MM = 1.5;

const GOES_TO: Readonly<Record<ServiceLayer, string>> = {
  belly: 'to the belly',
  floor: 'to the inside',
  left: 'to the left wall',
  right: 'to the right wall',
  front: 'to the front wall',
  rear: 'to the rear wall',
  ceiling: 'to the ceiling',
};

/** Where runs leave a layer. */
interface Exit {
  readonly at: Point;
  readonly to: ServiceLayer;
  readonly ids: string[];
}

/** Runs of one layer side by side, with arrows and ids only where they leave it: what ends here is named by its node. */
export function layerRunMarks(
  pieces: readonly LayerRun[],
  port: Port,
  symbols: readonly Point[],
): { readonly marks: readonly Mark[]; readonly wishes: readonly LabelWish[] } {
  const lines = spreadLines(pieces.map(({ points }) => points.map(port.place)));
  const marks: Mark[] = [];
  const exits: Exit[] = [];
  const letters = new RunLetters(symbols);
  pieces.forEach((piece, index) => {
    const points = lines[index] as readonly Point[];
    const long = lineLengthMm(points);
    if (long < THROUGH_MM) return;
    const { run, from, to } = piece;
    marks.push(line('runs', `run-${run.medium}`, points, run.id));
    const count = long < LETTER_FROM_MM ? 0 : Math.max(1, Math.floor(long / LETTER_EVERY_MM));
    for (let k = 0; k < count; k++) {
      const places = LETTER_AT.map((share) => alongLine(points, (long * (k + share)) / count).at);
      marks.push(
        ...letters.at(
          run.medium,
          places.filter((at) => isAlone(at, lines, index)),
        ),
      );
    }
    const ends = [...points];
    // One that only passes is named once, where it goes on.
    if (to) leaves(exits, run.id, to, ends);
    else if (from) leaves(exits, run.id, from, ends.reverse());
    if (to) marks.push(arrowOut(points));
    if (from) marks.push(arrowOut([...points].reverse()));
  });
  return { marks, wishes: exits.map(exitWish) };
}

function leaves(exits: Exit[], id: string, to: ServiceLayer, points: readonly Point[]): void {
  const at = points.at(-1) as Point;
  const near = exits.find((one) => one.to === to && Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) <= TOGETHER_MM);
  if (near) near.ids.push(id);
  else exits.push({ at, to, ids: [id] });
}

function exitWish({ at, to, ids }: Exit): LabelWish {
  const own = [...new Set(ids)];
  const few = own.length <= MOST_IDS;
  const words = few ? own.join(', ') : `${own.length} runs ${GOES_TO[to]}`;
  return { text: words, anchor: at, style: 'id-large', priority: 50, clearMm: 0.8, ...(few ? { id: own[0] as string } : {}) };
}

function arrowOut(points: readonly Point[]): Mark {
  const [before, tip] = [points.at(-2) as Point, points.at(-1) as Point];
  return { ...arrowHead(tip, Math.atan2(tip[1] - before[1], tip[0] - before[0])), layer: 'nodes' };
}

function isAlone([x, y]: Point, lines: readonly (readonly Point[])[], own: number): boolean {
  const about = growRect({ x0: x, y0: y, x1: x, y1: y }, LETTER_CLEAR_MM);
  return lines.every((points, index) => index === own || clipLine(points, about).length === 0);
}
