import type { Service } from '../coach/service.js';
import type { Part } from '../coach/types.js';
import type { P } from '../inches.js';
import type { Shot } from '../photo-files.js';
import { scatter } from '../random.js';
import type { View } from '../scene.js';
import { AC_BAYS, accessPanels, DC_BAYS, WALL_BAYS } from './access.js';
import { GRID, STAGE_DAYS } from './plan.js';
import { PARTS } from './structure.js';

const COLOURS: Readonly<Record<string, string>> = {
  dc: '#b3261e',
  ac: '#e0e0d8',
  data: '#2f6f3a',
  water: '#2456a6',
  drain: '#3a3a3a',
  gas: '#c7a500',
  air: '#d9d9f2',
  hydraulic: '#6d4420',
  duct: '#9aa0a4',
};
const THICK: Readonly<Record<string, number>> = { duct: 3, drain: 1.6, water: 0.6, gas: 0.8 };

interface Plan {
  readonly of: readonly string[];
  readonly target: P;
  readonly look: P;
  readonly across: number;
  readonly view: string;
  readonly taken: string;
  readonly caption: string;
  readonly card: string;
  readonly by?: string;
  readonly boxes?: View['boxes'];
  readonly depth?: number;
}

/** The shop’s pictures: frames by stage, then every closed cavity before it was closed, context and close up. */
export function shots(services: readonly Service[]): readonly Shot[] {
  const random = scatter(64);
  const plans = [...frames(), ...openings(), ...closeIn(), ...late()];
  return plans.map((plan, i): Shot => {
    const id = `PH-${String(i + 1).padStart(3, '0')}`;
    const closed = plan.card !== '';
    return {
      id,
      of: plan.of,
      view: plan.view,
      taken: plan.taken,
      caption: plan.caption,
      by: plan.by ?? 'A1',
      upright: i % 9 === 4,
      located: i % 7 === 3,
      scene: {
        target: plan.target,
        look: plan.look,
        across: plan.across,
        depth: plan.depth ?? plan.across,
        card: [plan.card, 'OV-021', plan.taken],
        runs: closed && plan.taken >= '2026-03-01' ? runsNear(services) : [],
        ...(plan.boxes ? { boxes: plan.boxes } : {}),
        light: random(),
      },
    };
  });
}

function runsNear(services: readonly Service[]): View['runs'] {
  return services.flatMap((service) =>
    service.runs.map((run) => ({
      colour: COLOURS[service.medium] ?? '#888888',
      wide: THICK[service.medium] ?? 0.5,
      path: service.wayOf(String(run.id)),
    })),
  );
}

/** Saddle over the rail, damper under it, two legs. */
const saddle = (x: number, y: number): View['boxes'] => [
  { from: [x - 2, y - 2.4, 6.75], to: [x + 2, y + 2.4, 7.4], colour: '#6b6f73' },
  { from: [x - 3, y - 1.6, -0.2], to: [x + 3, y + 1.6, 0.75], colour: '#23272b' },
  { from: [x - 0.4, y - 2.3, -6], to: [x + 0.4, y - 1.6, 8.6], colour: '#c9b458' },
  { from: [x - 0.4, y + 1.6, -6], to: [x + 0.4, y + 2.3, 8.6], colour: '#c9b458' },
];

const UP: P = [0.2, 0.3, 1];

function frames(): readonly Plan[] {
  const [a, b, c] = [90, 210, 330];
  const subframe = [a, b, c].map(
    (x, i): Plan => ({
      of: ['SF-L', 'SF-R', `SX-${i === 0 ? '01' : i === 1 ? '03' : '06'}`],
      target: [x, 0, 3],
      look: [0.6, 0.5, -0.7],
      across: 84,
      view: 'from above, looking aft',
      taken: '2025-09-30',
      card: 'SUBFRAME',
      caption: `rails and cross tubes about station ${x}, before the dampers`,
    }),
  );
  const clamps = (['UB-01', 'UB-06', 'UB-15'] as const).map(
    (id, i): Plan => ({
      of: [id],
      target: [[38, 112, 322][i] as number, i === 1 ? 17 : -17, 2],
      look: [0.7, i === 1 ? -0.6 : 0.6, -0.4],
      across: 30,
      view: 'close up',
      taken: '2025-10-02',
      card: id,
      caption: 'saddle, damper and isolator, marked after the second round',
      by: 'R2',
      boxes: saddle([38, 112, 322][i] as number, i === 1 ? 17 : -17),
    }),
  );
  const floor = [120, 260].map(
    (x): Plan => ({
      of: ['CB-04', 'CB-14', 'SI-L'].slice(x === 120 ? 0 : 1),
      target: [x, -10, 9],
      look: [0.5, 0.6, -0.6],
      across: 110,
      view: 'from above, left',
      taken: '2025-10-29',
      card: 'FLOOR',
      caption: `cross beams in the sills about station ${x}`,
    }),
  );
  const knees = ['KG-06L', 'KG-14R'].map(
    (id, i): Plan => ({
      of: [id],
      target: [i === 0 ? 138 : 262, i === 0 ? -21 : 21, 5],
      look: [0.7, i === 0 ? 0.5 : -0.5, 0.3],
      across: 26,
      view: 'from below',
      taken: '2025-10-30',
      card: id,
      caption: 'knee, both sides welded',
    }),
  );
  const roof = [
    [107, 'T04-TC'],
    [231, 'T12-TC'],
    [324, 'T18-TC'],
  ].map(
    ([x, id]): Plan => ({
      of: [id as string],
      target: [x as number, 0, 95],
      look: [0.8, 0.35, -0.3],
      across: 90,
      view: 'along the trusses',
      taken: '2026-01-21',
      card: 'ROOF',
      caption: `truss ${String(id).slice(1, 3)} in the jig line`,
    }),
  );
  const walls = [
    [140, 49, 'P-R-07'],
    [300, 49, 'P-R-16'],
    [90, -49, 'P-L-03U'],
  ].map(
    ([x, y, id]): Plan => ({
      of: [id as string],
      target: [x as number, y as number, 50],
      look: [0.3, (y as number) > 0 ? 0.9 : -0.9, -0.15],
      across: 110,
      view: 'from inside',
      taken: '2025-12-10',
      card: 'WALLS',
      caption: `posts about station ${x}`,
      depth: 60,
    }),
  );
  return [...subframe, ...clamps, ...floor, ...knees, ...walls, ...roof];
}

function openings(): readonly Plan[] {
  const corner = (id: string, x: number, z: number): Plan => ({
    of: [id, 'SO-1'],
    target: [x, -48, z],
    look: [0.35, -0.9, -0.15],
    across: 34,
    view: 'from inside, square on',
    taken: '2025-12-12',
    card: id,
    caption: 'corner gusset, dye wiped off',
    boxes: [],
    depth: 40,
  });
  const [front, rear] = [GRID.x(8) + 4, GRID.x(16) - 4];
  return [
    corner('G-01', front, 17),
    corner('G-02', rear, 17),
    corner('G-03', front, 80),
    corner('G-04', rear, 80),
    {
      of: ['SO-1', 'HD-SO-1'],
      target: [231, -49, 50],
      look: [0.15, -0.95, -0.1],
      across: 150,
      view: 'whole opening',
      taken: '2025-12-12',
      card: 'SO-1',
      caption: 'long tape on the second diagonal',
      depth: 40,
    },
    {
      of: ['SK-L-05'],
      target: [140, -50, 20],
      look: [0.2, 0.95, -0.1],
      across: 60,
      view: 'from outside',
      taken: '2026-02-13',
      card: 'SK-L-05',
      caption: 'lower edge injected and taped, NC-05',
      by: 'S8',
    },
    {
      of: ['RF-03', 'RF-04'],
      target: [180, 0, 99],
      look: [0.3, 0.3, -0.9],
      across: 90,
      view: 'from the gantry',
      taken: '2026-02-16',
      card: 'ROOF SHEETS',
      caption: 'bead before the sheet went down',
      by: 'S8',
    },
  ];
}

/** Two pictures of each cavity: the whole of it, and one at each panel that will open onto it. */
function closeIn(): readonly Plan[] {
  const belly = accessPanels().filter((panel) => panel.stage === 'belly');
  const zone = (x: number, y: number): string =>
    y === 0 ? 'TC' : y > 0 ? (x > 300 ? 'RR' : 'RL') : `LL-${x < 103 ? 1 : x < 159 ? 2 : 3}`;
  const below = belly.map(
    (panel): Plan => ({
      of: [zone(panel.at[0], panel.at[1]), panel.id],
      target: [panel.at[0], panel.at[1], 4],
      look: UP,
      across: panel.at[1] === 0 ? 38 : 30,
      view: 'from below, belly off',
      taken: panel.at[0] < 150 ? '2026-04-21' : '2026-04-22',
      card: `${zone(panel.at[0], panel.at[1])} at ${panel.id}`,
      caption: `${panel.name} before close-in`,
      by: panel.at[0] < 150 ? 'A1' : 'F6',
      depth: 16,
    }),
  );
  const roofBays = [
    ...DC_BAYS.map((bay) => [bay, 'RC-L', -27.5] as const),
    ...AC_BAYS.map((bay) => [bay, 'RC-R', 27.5] as const),
  ].map(
    ([bay, chase, y]): Plan => ({
      of: [chase, `TB-${bay}`],
      target: [GRID.mid(bay), y, 94],
      look: [0.15, y < 0 ? 0.25 : -0.25, 1],
      across: 36,
      view: 'from below, ceiling off',
      taken: bay < 10 ? '2026-04-09' : '2026-04-10',
      card: `${chase} / TB-${bay}`,
      caption: `chase and bay ${bay} before the ceiling went up`,
      by: 'E1',
      depth: 12,
    }),
  );
  const edges = [
    [12, 'right'],
    [17, 'right'],
    [6, 'left'],
  ].map(
    ([bay, side]): Plan => ({
      of: [`RS-${bay}`],
      target: [GRID.mid(Number(bay)), side === 'left' ? -40 : 40, 94],
      look: UP,
      across: 34,
      view: 'from below, ceiling off',
      taken: '2026-04-10',
      card: `RS-${bay}`,
      caption: 'out over the top plate, grommet in',
      by: 'E1',
      depth: 12,
    }),
  );
  const walls = WALL_BAYS.map(
    ({ side, bay }): Plan => ({
      of: [`W${side === 'left' ? 'L' : 'R'}-${bay}`],
      target: [GRID.mid(bay), side === 'left' ? -49 : 49, 30],
      look: [0.1, side === 'left' ? -1 : 1, -0.1],
      across: 40,
      view: 'from inside, lining off',
      taken: '2026-04-10',
      card: `W${side === 'left' ? 'L' : 'R'}-${bay}`,
      caption: `wall bay ${bay} before the lining`,
      by: 'E1',
      depth: 14,
    }),
  );
  return [...roofBays, ...edges, ...walls, ...below];
}

function late(): readonly Plan[] {
  return [
    {
      of: ['CMP-32', 'MOUNT-2'],
      target: [178, 29, 32],
      look: [0.6, 0.5, -0.5],
      across: 80,
      view: 'from the door',
      taken: '2026-06-18',
      card: 'PLATEN PRESS',
      caption: 'bolted down to the stringers',
      boxes: [{ from: [158, 14, 12], to: [198, 44, 56], colour: '#55606a' }],
      depth: 40,
    },
    {
      of: ['CMP-52'],
      target: [50, -42, 40],
      look: [-0.8, -0.4, -0.3],
      across: 40,
      view: 'front cabinet open',
      taken: '2026-08-19',
      card: 'AM-02',
      caption: 'second regulator beside the first',
      boxes: [{ from: [47, -46, 36], to: [51, -39, 44], colour: '#3c5a7a' }],
      by: 'E1',
      depth: 30,
    },
    {
      of: ['UB-03', 'UB-04'],
      target: [74, -17, 1],
      look: [0.6, 0.6, -0.4],
      across: 30,
      view: 'from the left',
      taken: '2026-10-14',
      card: 'UB-03',
      caption: 'torque again after 640 mi, new paint mark',
      by: 'F6',
      boxes: saddle(74, -17),
    },
  ];
}

/** What stood on that day. */
export const partsOn = (taken: string): readonly Part[] => PARTS.filter((part) => (STAGE_DAYS[part.stage]?.[0] ?? '') <= taken);
