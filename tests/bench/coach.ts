/** A made-up coach full of members, runs and access panels, as a checked model. The same coach for the same size. */
import type { Vec3 } from '../../src/geometry/vector.js';
import type { Model } from '../../src/model/shell.js';
import type { Chassis, Medium, Panel, Run, ServiceNode, Tank } from '../../src/records/index.js';
import { buildModel, record, section } from '../support/build.js';
import { component, lineMember, node, run, zone } from '../support/services.js';

/** A piece of a thousand records: of what is in a coach of 5,000 members, 2,000 runs and 300 panels, so much. */
export const PIECE = 1000;
const MEMBERS = 441;
const RUNS = 176;
const PANELS = 27;
const ZONES = 4;
const EQUIPMENT = 9;
const WAY_POINTS = 10;
const LENGTH_MM = 1060;
const HALF_WIDTH_MM = 1250;
const HEIGHT_MM = 2500;
const STEP_MM = 450;
/** Between one piece and the next, so wide that nothing of one touches or reaches the other: each finds as much as if it stood alone. */
const GAP_MM = 3000;

/** Members, runs with their ends, panels and zones: `count` records, by the piece. */
export function benchCoach(count: number): Model {
  const pieces = times(Math.round(count / PIECE), piece);
  const members = pieces.flatMap((one) => one.members);
  const nodes = pieces.flatMap((one) => one.nodes);
  const runs = pieces.flatMap((one) => one.runs);
  const zones = pieces.flatMap((one) => one.zones);
  const panels = pieces.flatMap((one) => one.panels);
  const components = pieces.flatMap((one) => one.components);
  const tanks = pieces.flatMap((one) => one.tanks);
  return buildModel(
    { members, nodes, runs, zones, panels, components, tanks, chassis: CHASSIS },
    { sections: new Map([[TUBE.id, TUBE]]) },
    {
      limits: {
        axleMargin: 0.03,
        diagonalDifferenceMm: 3,
        headerSagMm: 2,
        trussSpacingMm: 508,
        cavityFill: 0.4,
        voltageDrop: 0.03,
        flatnessMm: 3,
        lateEntryDays: 7,
        unexplainedMass: 0.01,
        keepApart: [
          { media: ['gas', 'ac'], distanceMm: 50 },
          { media: ['dc', 'ac'], distanceMm: 13 },
        ],
      } as unknown as Model['shop']['limits'],
    },
  );
}

function piece(number: number) {
  const random = scatter(17 + number);
  const start = number * (LENGTH_MM + GAP_MM);
  const end = start + LENGTH_MM;
  const place = (): Vec3 => [start + random() * LENGTH_MM, (2 * random() - 1) * HALF_WIDTH_MM, random() * HEIGHT_MM];
  const members = times(MEMBERS, (i) => {
    const from = place();
    const to = [...from] as [number, number, number];
    const axis = i % 3;
    to[axis] = (to[axis] as number) + 300 + 900 * random();
    return lineMember(`M-${number}-${i}`, 'TUBE', from, to);
  });
  const nodes: ServiceNode[] = [];
  const runs: Run[] = times(RUNS, (i) => {
    const medium = MEDIA[i % MEDIA.length] as Medium;
    const path = way(place(), random, [start, end]);
    const [from, to] = [path[0], path.at(-1)].map((at, k) =>
      node(`N-${number}-${i}-${k}`, at as Vec3, { medium, toleranceMm: 10 }),
    ) as [ServiceNode, ServiceNode];
    nodes.push(from, to);
    return run(`R-${number}-${i}`, from, to, path.slice(1, -1), { toleranceMm: 10 });
  });
  const bayMm = LENGTH_MM / ZONES;
  const zones = times(ZONES, (i) =>
    zone(`Z-${number}-${i}`, [
      [start + i * bayMm, -HALF_WIDTH_MM, 0],
      [start + (i + 1) * bayMm, HALF_WIDTH_MM, HEIGHT_MM],
    ]),
  );
  const panels = times(PANELS, (i) => accessPanel(`AP-${number}-${i}`, i % 4, start + random() * LENGTH_MM, random));
  const components = times(EQUIPMENT, (i) =>
    component(`C-${number}-${i}`, place(), [200 + 200 * random(), 200, 200 + 100 * random()]),
  );
  const tank: Tank = {
    id: `T-${number}`,
    contents: 'water',
    capacityM3: 0.1,
    at: [start + LENGTH_MM / 2, 0, -500],
    densityKgM3: 1000,
  };
  return { members, nodes, runs, zones, panels, components, tanks: [tank] };
}

const CHASSIS: Chassis = {
  axles: [],
  frame: { railTopAboveGroundMm: 1040, railSpacingMm: 864, railDepthMm: 260, railWidthMm: 80, lengthMm: 100_000 },
};
const MEDIA = ['dc', 'ac', 'gas', 'water'] as const;
const TUBE = section('TUBE', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: 3, cornerRadiusMm: 0 });

/** A way along the three directions in turn, kept inside the piece. */
function way(from: Vec3, random: () => number, along: readonly [number, number]): readonly Vec3[] {
  const limits = [along, [-HALF_WIDTH_MM, HALF_WIDTH_MM], [0, HEIGHT_MM]] as const;
  const path: Vec3[] = [from];
  while (path.length < WAY_POINTS) {
    const next = [...(path.at(-1) as Vec3)] as [number, number, number];
    const axis = random() < 0.7 ? 0 : random() < 0.5 ? 1 : 2;
    const [low, high] = limits[axis];
    const step = (random() < 0.5 ? -1 : 1) * STEP_MM * (0.5 + random());
    next[axis] = Math.min(high, Math.max(low, next[axis] + step));
    if (next[axis] !== (path.at(-1) as Vec3)[axis]) path.push(next);
  }
  return path;
}

/** In the belly, in a wall, or in the roof. */
function accessPanel(id: string, side: number, x: number, random: () => number): Panel {
  const [w, h] = [150 + 200 * random(), 150 + 150 * random()];
  const across = (2 * random() - 1) * (HALF_WIDTH_MM - 300);
  const up = 300 + random() * (HEIGHT_MM - 600);
  const at = (u: number, v: number): Vec3 => {
    if (side === 0) return [x + u, across + v, 0];
    if (side === 1) return [x + u, across + v, HEIGHT_MM];
    return [x + u, side === 2 ? -HALF_WIDTH_MM : HALF_WIDTH_MM, up + v];
  };
  return {
    ...record(id),
    panelKind: 'access',
    outline: [at(0, 0), at(w, 0), at(w, h), at(0, h)],
    holes: [],
    openingMm: [w - 30, h - 30],
    facing: (['down', 'up', 'left', 'right'] as const)[side] as 'down',
  };
}

const times = <T>(count: number, make: (i: number) => T): T[] => Array.from({ length: count }, (_, i) => make(i));

/** Numbers from 0 to 1 that scatter well enough for a bench (Park and Miller 1988). */
function scatter(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
