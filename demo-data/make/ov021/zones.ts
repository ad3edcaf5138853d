import { at, type P } from '../inches.js';
import { list, type Rec } from '../yaml.js';
import { AC_BAYS, ceilingOf, DC_BAYS, LANE_FRONT, LANE_REAR, WALL_BAYS } from './access.js';
import { GRID } from './plan.js';

/** The smaller corner first, whichever way it was measured. */
const box = (a: P, b: P): { readonly box: readonly unknown[] } => ({
  box: [
    at([0, 1, 2].map((k) => Math.min(a[k] as number, b[k] as number)) as unknown as P),
    at([0, 1, 2].map((k) => Math.max(a[k] as number, b[k] as number)) as unknown as P),
  ],
});
/** Drain holes, 3/8 in, in a floor. */
const holes = (y: number, z: number, ...stations: readonly number[]): { readonly drains: readonly unknown[] } => ({
  drains: stations.map((x) => at([x, y, z])),
});
const numbered = (stem: string, count: number): readonly string[] => Array.from({ length: count }, (_, i) => `${stem}-${i + 1}`);

/** Height of the middle of the roof chases. */
export const CHASE_Z = 94.85;
/** The chases run between the webs at 22 and 33 in. */
export const CHASE_Y = 27.5;

export const zones = (): readonly Rec[] => [
  {
    '#': 'Belly',
    id: 'TC',
    name: 'centre trough between the subframe rails',
    ...box([47, -15.2, 3.5], [369, 15.2, 6.6]),
    concealed: true,
    closed_by: numbered('BP-C', 7),
    carries: ['dc', 'data', 'air'],
    spare: 'two 3/4 in conduits, front to rear, empty',
    pull_cord: true,
    cord_ends: ['AP-01', 'AP-07'],
    ...holes(0, 3.5, 52, 146, 208, 364),
  },
  ...[1, 2].map(
    (n): Rec => ({
      id: `CD-${n}`,
      name: `spare conduit ${n}, in the centre trough`,
      along: [at([52, n === 1 ? -12.5 : -13.6, 6]), at([364, n === 1 ? -12.5 : -13.6, 6])],
      conduit: '3/4 in EMT',
      concealed: true,
      carries: ['dc', 'data'],
      spare: 'empty',
      pull_cord: true,
      cord_ends: ['AP-01', 'AP-07'],
    }),
  ),
  ...leftLanes(),
  {
    id: 'RL',
    name: 'right lane, ahead of the drive wheels',
    ...box([47, 25, 0.6], [214, 47.5, 6.6]),
    concealed: true,
    closed_by: numbered('BP-R', 3),
    carries: ['ac'],
    pull_cord: true,
    cord_ends: ['AP-13', 'AP-18'],
    ...holes(36, 0.6, 52, 103, 159, 209),
  },
  {
    id: 'RR',
    name: 'right rear lane, behind the tag wheels',
    ...box([LANE_REAR[0], 25, 0.6], [LANE_REAR[1], 47.5, 6.6]),
    concealed: true,
    closed_by: ['BP-RR-1'],
    carries: ['ac'],
    ...holes(36, 0.6, 318, 364),
  },
  ...(
    [
      [2, GRID.mid(2), 42],
      [7, GRID.mid(7), 42],
      [17, GRID.mid(17) + 2, 45],
    ] as const
  ).map(
    ([bay, x, y]): Rec => ({
      id: `FD-${bay}`,
      name: `duct along the foot of the right wall, lane to bay ${bay}, cover screwed`,
      ...box([x - 1.5, y - 1.5, 6.6], [x + 1.5, 48, 13.2]),
      concealed: false,
      carries: ['ac'],
    }),
  ),
  {
    '#': ['', 'Roof. Chases run fore and aft between the webs; bays run across between two trusses.'],
    id: 'RC-L',
    name: 'roof chase left, low voltage and data',
    along: [at([47, -CHASE_Y, CHASE_Z]), at([369, -CHASE_Y, CHASE_Z])],
    clear: '9 in x 4-1/4 in',
    concealed: true,
    closed_by: numbered('CL', 7),
    carries: ['dc', 'data'],
    spare: 'one 1 in loom tube',
    pull_cord: true,
    cord_ends: ['AP-21', 'AP-28'],
  },
  {
    id: 'RC-R',
    name: 'roof chase right, mains',
    along: [at([47, CHASE_Y, CHASE_Z]), at([369, CHASE_Y, CHASE_Z])],
    clear: '9 in x 4-1/4 in',
    concealed: true,
    closed_by: numbered('CL', 7),
    carries: ['ac'],
    spare: 'one 1 in loom tube',
    pull_cord: true,
    cord_ends: ['AP-29', 'AP-32'],
  },
  ...DC_BAYS.map((bay) => roofBay(bay, 'dc')),
  ...AC_BAYS.map((bay) => roofBay(bay, 'ac')),
  ...[12, 17].map((bay) => riser(bay, 'right')),
  riser(6, 'left'),
  ...WALL_BAYS.map(({ side, bay, lining }, i): Rec => {
    const sign = side === 'left' ? -1 : 1;
    return {
      ...(i === 0 ? { '#': ['', 'Wall bays that carry anything'] } : {}),
      id: `W${side === 'left' ? 'L' : 'R'}-${bay}`,
      name: `wall cavity ${side}, bay ${bay}`,
      ...box([GRID.x(bay) + 1.6, sign * 48, 11.4], [GRID.x(bay + 1) - 1.6, sign * 49.9, 90.6]),
      concealed: true,
      closed_by: [lining],
      carries: [side === 'left' ? 'data' : 'ac'],
    };
  }),
];

/** The left lane is shut by three belly panels, with a baffle of foam between: three cavities. */
function leftLanes(): readonly Rec[] {
  return LANE_FRONT.slice(1).map((to, i) => ({
    id: `LL-${i + 1}`,
    name: `left lane ${i + 1}, ahead of the drive wheels`,
    ...box([LANE_FRONT[i] as number, -47.5, 0.6], [to, -25, 6.6]),
    concealed: true,
    closed_by: [`BP-L-${i + 1}`],
    carries: ['water', 'drain', 'duct'],
    ...holes(-36, 0.6, (LANE_FRONT[i] as number) + 6, to - 6),
  }));
}

/** `LL` → the cavities of the left lane that a way comes through. */
export function lanesOf(zone: string, path: readonly P[]): readonly string[] {
  if (zone !== 'LL') return [zone];
  const low = path.filter(([, , z]) => z <= 6.6 && z >= 0.6).map(([x]) => x);
  const [from, to] = [Math.min(...low), Math.max(...low)];
  return LANE_FRONT.slice(1).flatMap((end, i) => (from < end && to > (LANE_FRONT[i] as number) ? [`LL-${i + 1}`] : []));
}

function roofBay(bay: number, carries: string): Rec {
  return {
    id: `TB-${bay}`,
    name: `roof bay ${bay}, between trusses ${bay} and ${bay + 1}`,
    ...box([GRID.x(bay) + 1, -22.5, 91.1], [GRID.x(bay + 1) - 1, 22.5, 97]),
    concealed: true,
    closed_by: [ceilingOf(bay)],
    carries: [carries],
    spare: 'one plugged grommet in the front web',
    pull_cord: true,
  };
}

/** From a chase out over the top plate. */
function riser(bay: number, side: 'left' | 'right'): Rec {
  const sign = side === 'left' ? -1 : 1;
  return {
    id: `RS-${bay}`,
    name: `roof edge ${side}, bay ${bay}`,
    ...box([GRID.x(bay) + 1, sign * 32, 92.8], [GRID.x(bay + 1) - 1, sign * 49.6, 96.5]),
    concealed: true,
    closed_by: [ceilingOf(bay)],
    carries: [side === 'left' ? 'data' : 'ac'],
  };
}

export const zonesText = (): string =>
  list(
    [
      'Cavities that services run in. closed_by is what must come off before anybody sees it again.',
      `Lanes of the belly: ${LANE_FRONT[0]} to ${LANE_FRONT.at(-1)} in, and ${LANE_REAR.join(' to ')} in on the right.`,
    ],
    zones(),
  );
