import { boundsOf, grow } from '../../geometry/box.js';
import { grid } from '../../geometry/grid.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { ServiceNode } from '../../model/services.js';
import type { Model } from '../../model/shell.js';
import type { Panel } from '../../model/structure.js';
import { behind } from './behind.js';
import { type Cover, follow } from './follow.js';
import { type Obstacles, obstacles } from './obstacles.js';
import { depthBehind, nearestOfOpening, type PanelOpening, panelOpening } from './opening.js';
import { REACH_MM } from './reach.js';
import { type Sample, samples } from './samples.js';
import { bestFirst, isClear, NEAR_MM, reachThrough } from './sight.js';
import type { AccessFigures, NodeAccess, PanelReach, RunAccess } from './types.js';
import { zoneMap } from './zones.js';

/**
 * What can be reached through which access panel: for every node and every 100 mm of every run the distance from each opening,
 * cleared of members, panels, components and large pipes in the way. Lengths in mm. Reach and opening sizes: reach.ts.
 */
export function access(model: Model): AccessFigures {
  const { shell } = model;
  const openings = panelOpenings(model);
  const solid = obstacles(model);
  const zones = zoneMap(shell.zones);
  const isConcealed = (at: Vec3): boolean => zones.holding(at).some((zone) => zone.concealed);

  const nodeReaches = reachAll(
    shell.nodes.map((node) => ({ at: node.at })),
    openings,
    solid,
  );
  const nodes = shell.nodes.map((node, i) =>
    nodeAccess(node, nodeReaches[i] as readonly PanelReach[], openings, node.panel === undefined && !isConcealed(node.at)),
  );
  const runs = runAccess(model, openings, solid, isConcealed);
  return {
    nodes,
    runs,
    behind: behind(model, openings, solid),
    coverage: {
      nodes: nodes.length,
      nodesInReach: nodes.filter((node) => node.open || node.inReach).length,
      runLengthMm: sum(runs.map((run) => run.lengthMm)),
      runLengthInReachMm: sum(runs.map((run) => run.inReachMm)),
    },
    assumptions: [...ASSUMPTIONS, ...openings.flatMap((opening) => opening.assumed)],
  };
}

const ASSUMPTIONS: readonly string[] = [
  `Reach is that of a small person with bare hands (ANSUR II, 5th percentile woman): hand ${REACH_MM.hand} mm, forearm ${REACH_MM.forearm} mm, arm ${REACH_MM.arm} mm from the opening; openings after MIL-STD-1472, from memory.`,
  'A straight way is looked for from ten places of the opening; members count by their walls, so the hollow of a tube is open at its ends.',
  'Wires, hoses and pipes under 50 mm are taken as pushed aside; components without a size do not stand in the way.',
  'A node or a length of run that lies in no concealed zone is open and needs no panel, unless its record names one.',
];

function panelOpenings({ shell }: Model): readonly PanelOpening[] {
  const corners = shell.panels.flatMap((panel) => panel.outline);
  const { min, max } = corners.length > 0 ? boundsOf(corners) : boundsOf([[0, 0, 0]]);
  const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
  const byId = new Map(shell.panels.map((panel) => [panel.id, panel] as const));
  return shell.panels
    .filter((panel) => panel.panelKind === 'access')
    .flatMap((panel) => {
      const parent: Panel | undefined = panel.of === undefined ? undefined : byId.get(panel.of);
      const opening = panelOpening(panel, parent, middle);
      return opening ? [opening] : [];
    });
}

/** For each place, its reach through every opening near enough to matter, in the order of the places. */
function reachAll(
  places: readonly { readonly at: Vec3; readonly ignore?: string }[],
  openings: readonly PanelOpening[],
  solid: Obstacles,
  { withinMm = NEAR_MM, starts = 10 } = {},
): readonly (readonly PanelReach[])[] {
  const found: PanelReach[][] = places.map(() => []);
  const index = grid(
    places.map(({ at }, i) => ({ index: i, bounds: { min: at, max: at } })),
    withinMm / 2,
  );
  for (const opening of openings) {
    for (const i of index.near(grow(opening.bounds, withinMm))) {
      const { at, ignore } = places[i] as { at: Vec3; ignore?: string };
      if (depthBehind(at, opening) < -1 || distance(at, nearestOfOpening(at, opening)) > withinMm) continue;
      (found[i] as PanelReach[]).push(reachThrough(opening, at, solid, { ignore, starts }));
    }
  }
  return found;
}

function nodeAccess(
  node: ServiceNode,
  near: readonly PanelReach[],
  openings: readonly PanelOpening[],
  open: boolean,
): NodeAccess {
  const named = openings.find((opening) => opening.panel.id === node.panel);
  const missing = named && !near.some((one) => one.panel === node.panel);
  const far: readonly PanelReach[] = missing
    ? [{ panel: named.panel.id, distanceMm: distance(node.at, nearestOfOpening(node.at, named)), reach: 'beyond', blockedBy: [] }]
    : [];
  const panels = bestFirst([...near, ...far]);
  return { id: node.id, panels, inReach: panels.some(isClear), open };
}

function runAccess(
  { shell }: Model,
  openings: readonly PanelOpening[],
  solid: Obstacles,
  isConcealed: (at: Vec3) => boolean,
): readonly RunAccess[] {
  const cut = shell.runs.map((run) => samples(run.path));
  const flat = cut.flatMap((pieces, run) =>
    pieces.map((piece) => ({ ...piece, ignore: (shell.runs[run] as { id: string }).id })),
  );
  const reaches = reachAll(flat, openings, solid, { withinMm: REACH_MM.arm, starts: RUN_STARTS });
  const costs = new Map(openings.map(({ panel }) => [panel.id, openingCost(panel)] as const));
  let start = 0;
  return shell.runs.map((run, i) => {
    const pieces = cut[i] as readonly Sample[];
    const own = reaches.slice(start, start + pieces.length);
    start += pieces.length;
    return oneRun(run.id, pieces, own, isConcealed, costs);
  });
}

function oneRun(
  id: string,
  pieces: readonly Sample[],
  reaches: readonly (readonly PanelReach[])[],
  isConcealed: (at: Vec3) => boolean,
  costs: ReadonlyMap<string, number>,
): RunAccess {
  let inReachMm = 0;
  let openMm = 0;
  const best = new Map<string, PanelReach>();
  const covered = new Map<string, Set<number>>();
  pieces.forEach((piece, i) => {
    const concealed = isConcealed(piece.at);
    const own = reaches[i] as readonly PanelReach[];
    if (!concealed) openMm += piece.lengthMm;
    if (!concealed || own.some(isClear)) inReachMm += piece.lengthMm;
    for (const one of own) {
      const before = best.get(one.panel);
      best.set(one.panel, before ? (bestFirst([before, one])[0] as PanelReach) : one);
      if (concealed && isClear(one)) covered.set(one.panel, (covered.get(one.panel) ?? new Set()).add(i));
    }
  });
  const covers: readonly Cover[] = [...covered].map(([panel, set]) => ({ panel, pieces: set, cost: costs.get(panel) ?? 1 }));
  return {
    id,
    lengthMm: sum(pieces.map((piece) => piece.lengthMm)),
    inReachMm,
    openMm,
    panels: bestFirst([...best.values()]),
    follow: follow(covers),
  };
}

/** Places of the opening tried for each piece of a run: there are many pieces, and their neighbours are tried as well. */
const RUN_STARTS = 4;

/** What opening a panel costs beside another: one for the panel, a little for each fastener, half a panel for sealant. House rule. */
function openingCost({ fixing }: Panel): number {
  return 1 + 0.02 * (fixing?.count ?? 8) + (fixing?.sealant || fixing?.adhesive ? 0.5 : 0);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
