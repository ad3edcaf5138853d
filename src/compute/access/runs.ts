import { grow } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Panel, Run } from '../../records/index.js';
import { type Cover, follow } from './follow.js';
import type { Obstacles } from './obstacles.js';
import { distanceFromOpening, isBehind, type PanelOpening, pointGrid } from './opening.js';
import { REACH_MM } from './reach.js';
import { samples } from './samples.js';
import { bestFirst, clearWay, FEW_ENTRIES, toldReach } from './sight.js';
import type { PanelReach, RunAccess } from './types.js';

/** A piece of one run by its middle. */
interface Piece {
  readonly run: number;
  readonly at: Vec3;
  readonly lengthMm: number;
}

/** What one panel lays open of one run: its clear pieces, and the piece to judge the panel by. */
interface Through {
  readonly opening: PanelOpening;
  readonly clear: number[];
  best: number;
  rankMm: number;
  /** The clear way to the best piece. */
  wayMm: number | undefined;
}

/** For every 100 mm of every run, which access panels lay it open. */
export function runAccess(
  runs: readonly Run[],
  openings: readonly PanelOpening[],
  solid: Obstacles,
  isConcealed: (at: Vec3) => boolean,
): readonly RunAccess[] {
  const pieces = runs.flatMap((one, run) => samples(one.path).map((sample): Piece => ({ run, ...sample })));
  const index = pointGrid(pieces.map(({ at }) => at));
  const found = runs.map(() => [] as Through[]);
  const sights = runs.map(sightOf);
  for (const opening of openings) {
    const through = new Map<number, Through>();
    index.visit(grow(opening.bounds, REACH_MM.arm), (i) => {
      const piece = pieces[i] as Piece;
      if (isBehind(piece.at, opening, REACH_MM.arm)) lookAt(i, piece, sights[piece.run] as SightLine, opening, solid, through);
      return false;
    });
    for (const [run, one] of through) (found[run] as Through[]).push(one);
  }
  const concealed = pieces.map(({ at }) => isConcealed(at));
  const costs = new Map(openings.map(({ panel }) => [panel.id, openingCost(panel)] as const));
  let start = 0;
  return runs.map((run, i) => {
    const first = start;
    while (pieces[start]?.run === i) start += 1;
    return oneRun(run, pieces.slice(first, start), first, concealed, found[i] as readonly Through[], solid, costs);
  });
}

function lookAt(
  i: number,
  { at, run: number }: Piece,
  sight: SightLine,
  opening: PanelOpening,
  solid: Obstacles,
  through: Map<number, Through>,
): void {
  let one = through.get(number);
  if (!one) {
    one = { opening, clear: [], best: i, rankMm: Infinity, wayMm: undefined };
    through.set(number, one);
  }
  const wayMm = clearWay(opening, at, solid, sight);
  if (wayMm !== undefined) one.clear.push(i);
  // The panel is told by its best piece: the nearest clear one, else the nearest.
  const rank = wayMm ?? BLOCKED + distanceFromOpening(at, opening);
  if (rank < one.rankMm || (rank === one.rankMm && i < one.best)) {
    one.best = i;
    one.rankMm = rank;
    one.wayMm = wayMm;
  }
}

const sightOf = ({ id, toleranceMm }: Run) => ({ ignore: id, toleranceMm, entries: FEW_ENTRIES });
type SightLine = ReturnType<typeof sightOf>;

/** Added to a distance, it puts whatever is not clear behind all that is, mm. */
const BLOCKED = 1e6;

function oneRun(
  run: Run,
  pieces: readonly Piece[],
  first: number,
  concealed: readonly boolean[],
  through: readonly Through[],
  solid: Obstacles,
  costs: ReadonlyMap<string, number>,
): RunAccess {
  const clear = new Set(through.flatMap((one) => one.clear));
  let inReachMm = 0;
  let openMm = 0;
  pieces.forEach(({ lengthMm }, k) => {
    const hidden = concealed[first + k] as boolean;
    if (!hidden) openMm += lengthMm;
    if (!hidden || clear.has(first + k)) inReachMm += lengthMm;
  });
  const covers = through.flatMap(({ opening: { panel }, clear: laidOpen }): readonly Cover[] => {
    const hidden = laidOpen.filter((i) => concealed[i]);
    return hidden.length === 0 ? [] : [{ panel: panel.id, pieces: new Set(hidden), cost: costs.get(panel.id) ?? 1 }];
  });
  const panels = through.map(({ opening, best, wayMm }): PanelReach => {
    const { at } = pieces[best - first] as Piece;
    return toldReach(opening, at, wayMm, solid, sightOf(run));
  });
  return {
    id: run.id,
    lengthMm: pieces.reduce((total, piece) => total + piece.lengthMm, 0),
    inReachMm,
    openMm,
    panels: bestFirst(panels),
    follow: follow(covers),
  };
}

/** What opening a panel costs beside another: one for the panel, a little for each fastener, half a panel for sealant. House rule. */
function openingCost({ fixing }: Panel): number {
  return 1 + 0.02 * (fixing?.count ?? 8) + (fixing?.sealant || fixing?.adhesive ? 0.5 : 0);
}
