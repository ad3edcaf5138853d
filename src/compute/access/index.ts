import { boundsOf, grow } from '../../geometry/box.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import { isPlaced, type PlacedNode, placedNodes } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import type { Panel } from '../../records/index.js';
import { approached } from './approach.js';
import { behindPanel } from './behind.js';
import { isExposed } from './exposed.js';
import { type Obstacles, obstacles, STIFF_PIPE_MM } from './obstacles.js';
import { isBehind, nearestOfOpening, type PanelOpening, panelOpening, pointGrid } from './opening.js';
import { FINGER_MM, HAND_RADIUS_MM, REACH_MM } from './reach.js';
import { runAccess } from './runs.js';
import { bestFirst, isClear, NEAR_MM, reachThrough } from './sight.js';
import { standing } from './standing.js';
import { surfaces } from './surfaces.js';
import type { AccessFigures, Approach, BehindItem, NodeAccess, PanelReach, RunAccess } from './types.js';
import { zoneMap } from './zones.js';

/**
 * What can be reached through which access panel: for every node and every 100 mm of every run the distance from each opening,
 * cleared of members, panels, components and large pipes in the way. Lengths in mm. Reach and opening sizes: reach.ts.
 */
export function access(model: Model): AccessFigures {
  const { shell } = model;
  const solid = obstacles(model);
  const openings = approached(model, panelOpenings(model), solid);
  const concealed = zoneMap(shell.zones.filter((zone) => zone.concealed));
  const isConcealed = (at: Vec3): boolean => concealed.holds(at) || !isExposed(at, solid);

  const byPanel = new Map(openings.map((opening) => [opening.panel.id, opening] as const));
  const placed = placedNodes(shell.nodes);
  const reaches = nodeReaches(placed, openings, solid);
  const near = new Map(placed.map((node, i) => [node.id, reaches[i] as readonly PanelReach[]] as const));
  const nodes = shell.nodes.map((node) =>
    isPlaced(node)
      ? nodeAccess(node, near.get(node.id) ?? [], byPanel, node.panel === undefined && !isConcealed(node.at))
      : { id: node.id, panels: [], inReach: false, open: false, placed: false as const },
  );
  const { runs, behind } = oneReachAPair(
    runAccess(shell.runs, openings, solid, isConcealed),
    behindPanel(model, openings, solid),
  );
  return {
    nodes,
    runs,
    approaches: Object.fromEntries(openings.map(({ panel, approach }) => [panel.id, approach as Approach])),
    behind,
    coverage: {
      nodes: nodes.length,
      nodesInReach: nodes.filter((node) => node.open || node.inReach).length,
      runLengthMm: sum(runs.map((run) => run.lengthMm)),
      runLengthInReachMm: sum(runs.map((run) => run.inReachMm)),
    },
    assumptions: [...ASSUMPTIONS, ...standing(model).assumptions, ...openings.flatMap((opening) => opening.assumed)],
  };
}

/**
 * A run is looked at every 100 mm of its way, and once at its place nearest to the panel: both lists give the better of the two, so that a
 * run and a panel have one reach wherever it is shown.
 */
function oneReachAPair(
  runs: readonly RunAccess[],
  behind: Readonly<Record<string, readonly BehindItem[]>>,
): Pick<AccessFigures, 'runs' | 'behind'> {
  const better = new Map<string, PanelReach>();
  const key = (run: string, panel: string): string => JSON.stringify([run, panel]);
  const put = (run: string, one: PanelReach): void => {
    const other = better.get(key(run, one.panel));
    better.set(key(run, one.panel), other ? (bestFirst([other, one])[0] as PanelReach) : one);
  };
  for (const { id, panels } of runs) for (const one of panels) put(id, one);
  for (const [panel, items] of Object.entries(behind)) {
    for (const { id, kind, nearest: _, ...one } of items) if (kind === 'run') put(id, { panel, ...one });
  }
  return {
    runs: runs.map((run) => ({
      ...run,
      panels: bestFirst(run.panels.map((one) => better.get(key(run.id, one.panel)) as PanelReach)),
    })),
    behind: Object.fromEntries(
      Object.entries(behind).map(([panel, items]) => [
        panel,
        items
          .map((item) => ({ ...item, ...(item.kind === 'run' ? withoutPanel(better.get(key(item.id, panel))) : {}) }))
          .sort((a, b) => a.distanceMm - b.distanceMm || (a.id < b.id ? -1 : 1)),
      ]),
    ),
  };
}

function withoutPanel(reach: PanelReach | undefined): Omit<PanelReach, 'panel'> | Record<string, never> {
  if (!reach) return {};
  const { panel: _, ...rest } = reach;
  return rest;
}

const ASSUMPTIONS: readonly string[] = [
  `Reach is that of a small person with bare hands (ANSUR II, 5th percentile woman): hand ${REACH_MM.hand} mm, forearm ${REACH_MM.forearm} mm, arm ${REACH_MM.arm} mm from the opening; openings, tools and two hands after MIL-STD-1472, unverified citation.`,
  `A way must be clear ${2 * HAND_RADIUS_MM} mm across for the hand, but for the last ${FINGER_MM} mm, where a fingertip is enough; it is looked for from ten places of the opening, straight or bent a little at the knuckles. Members count by their walls, so the hollow of a tube is open at its ends.`,
  'Reach is worked out as if a thing were farther off by its recorded tolerance; one without a tolerance is taken as recorded.',
  `Wires, hoses and pipes under ${STIFF_PIPE_MM} mm are taken as pushed aside; things without a recorded size are not in the way.`,
  'A node or a length of run that lies in no concealed zone, and that a hand and forearm get to straight, is exposed and needs no panel, unless its record names one.',
  'Before a panel an arm needs a forearm’s length clear, straight or slanting, and whoever opens it room to lie (510 mm high) or stand: MIL-STD-1472, unverified citation. The cab, axles and drive line are not on record and are not in the way here.',
];

function panelOpenings(model: Model): readonly PanelOpening[] {
  const { shell } = model;
  const sides = surfaces(model);
  const corners = shell.panels.flatMap((panel) => panel.outline);
  const { min, max } = corners.length > 0 ? boundsOf(corners) : boundsOf([[0, 0, 0]]);
  const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
  const byId = new Map(shell.panels.map((panel) => [panel.id, panel] as const));
  return shell.panels
    .filter((panel) => panel.panelKind === 'access')
    .flatMap((panel) => {
      const parent: Panel | undefined = panel.of === undefined ? undefined : byId.get(panel.of);
      const opening = panelOpening(panel, parent, middle, sides.get(panel.id));
      return opening ? [opening] : [];
    });
}

/** For each node, its reach through every opening near enough to matter. */
function nodeReaches(
  nodes: readonly PlacedNode[],
  openings: readonly PanelOpening[],
  solid: Obstacles,
): readonly (readonly PanelReach[])[] {
  const found: PanelReach[][] = nodes.map(() => []);
  const index = pointGrid(nodes.map(({ at }) => at));
  for (const opening of openings) {
    index.visit(grow(opening.bounds, NEAR_MM), (i) => {
      const { at, toleranceMm } = nodes[i] as PlacedNode;
      if (isBehind(at, opening, NEAR_MM)) (found[i] as PanelReach[]).push(reachThrough(opening, at, solid, { toleranceMm }));
      return false;
    });
  }
  return found;
}

function nodeAccess(
  node: PlacedNode,
  near: readonly PanelReach[],
  byPanel: ReadonlyMap<string, PanelOpening>,
  open: boolean,
): NodeAccess {
  const named = node.panel === undefined ? undefined : byPanel.get(node.panel);
  const missing = named && !near.some((one) => one.panel === node.panel);
  const far: readonly PanelReach[] = missing
    ? [
        {
          panel: named.panel.id,
          distanceMm: distance(node.at, nearestOfOpening(node.at, named)),
          reach: 'beyond',
          blockedBy: [],
          approach: named.approach,
        },
      ]
    : [];
  const panels = bestFirst([...near, ...far]);
  return { id: node.id, panels, inReach: panels.some(isClear), open };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
