import { placedNodes } from '../../model/placed.js';
import type { Run, ServiceNode } from '../../records/index.js';
import type { LabelWish } from '../labels.js';
import { spreadLines } from '../lanes.js';
import { alongLine, clipLine, lineLengthMm } from '../outline.js';
import { growRect, line, type Mark, type Point, type Rect } from '../scene.js';
import type { Port } from '../sheet.js';
import { NODE_SYMBOL_MM, nodeMarks } from '../symbols.js';
import { RunLetters } from './run-letters.js';

/** A label stands on a run at least every so often, mm on the sheet. */
const LABEL_EVERY_MM = 90;
const LETTER_EVERY_MM = 60;
const SHORTEST_WITH_LETTER_MM = 14;
/** Off the middle first, where the label of the run wants to stand. */
const LETTER_AT = [0.3, 0.7, 0.2, 0.8, 0.4, 0.6, 0.1, 0.9] as const;
const LETTER_CLEAR_MM = 1.3;
/** Where else along its stretch a run may be labelled. */
const ALONG = [0.4, 0.6, 0.25, 0.75, 0.12, 0.88] as const;

export interface RunsDrawn {
  readonly marks: readonly Mark[];
  readonly wishes: readonly LabelWish[];
}

/** Runs in the patterns of their media, apart where they lie over each other, each labelled as often as it is long. */
export function runMarks(
  runs: readonly Run[],
  port: Port,
  more: { readonly labelled?: boolean; readonly clip?: Rect; readonly symbols?: readonly Point[] } = {},
): RunsDrawn {
  const drawn = runs.filter((run) => run.path.length >= 2);
  const lines = spreadLines(drawn.map((run) => run.path.map(port.place)));
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  const letters = new RunLetters(more.symbols);
  drawn.forEach((run, index) => {
    const whole = lines[index] as readonly Point[];
    const pieces = more.clip ? clipLine(whole, more.clip) : [whole];
    const others = lines.filter((_, other) => other !== index);
    const longest = Math.max(0, ...pieces.map(lineLengthMm));
    for (const points of pieces) {
      const length = lineLengthMm(points);
      marks.push(line('runs', `run-${run.medium}`, points, run.id));
      for (const places of letterPlaces(points, length, others)) marks.push(...letters.at(run.medium, places));
      if (more.labelled !== false && length === longest) wishes.push(...runWishes(run, points, length));
    }
  });
  return { marks, wishes };
}

/** Where each letter of a run may stand: where it lies alone, since on a bundle it would hide the run's neighbours. */
function letterPlaces(
  points: readonly Point[],
  length: number,
  others: readonly (readonly Point[])[],
): readonly (readonly Point[])[] {
  if (length < SHORTEST_WITH_LETTER_MM) return [];
  const count = Math.max(1, Math.floor(length / LETTER_EVERY_MM));
  return Array.from({ length: count }, (_, k) =>
    LETTER_AT.map((share) => alongLine(points, (length * (k + share)) / count).at).filter((at) => isClear(at, others)),
  );
}

const isClear = (at: Point, others: readonly (readonly Point[])[]): boolean => {
  const near: Rect = growRect({ x0: at[0], y0: at[1], x1: at[0], y1: at[1] }, LETTER_CLEAR_MM);
  return others.every((points) => clipLine(points, near).length === 0);
};

function runWishes(run: Run, points: readonly Point[], length: number): readonly LabelWish[] {
  const count = Math.max(1, Math.round(length / LABEL_EVERY_MM));
  return Array.from({ length: count }, (_, k): LabelWish => {
    const middleFirst = (Math.floor((count - 1) / 2) + k) % count;
    return {
      text: run.id,
      anchor: alongLine(points, (length * (middleFirst + 0.5)) / count).at,
      also: ALONG.map((share) => alongLine(points, (length * (middleFirst + share)) / count).at),
      style: 'id-large',
      priority: k === 0 ? 40 : 10,
      id: run.id,
      repeat: k > 0,
    };
  });
}

/** Node symbols with their ids; places where people switch, shut or undo something come first. */
export function nodeMarksAndWishes(nodes: readonly ServiceNode[], port: Port): RunsDrawn {
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const node of placedNodes(nodes)) {
    const at = port.place(node.at);
    marks.push(...nodeMarks(node, at));
    wishes.push(nodeWish(node, at));
  }
  return { marks, wishes };
}

/** A node's id beside its symbol. */
export const nodeWish = (node: ServiceNode, at: Point): LabelWish => ({
  text: node.id,
  anchor: at,
  style: 'id-large',
  priority: nodePriority(node),
  id: node.id,
  clearMm: NODE_SYMBOL_MM,
});

const FIRST = new Set<ServiceNode['nodeKind']>(['source', 'panel', 'valve']);
const nodePriority = (node: ServiceNode): number => (FIRST.has(node.nodeKind) ? 80 : node.nodeKind === 'fitting' ? 45 : 60);
