import { BELLY_Z, belly, CENTRE_BELLY_Z, type Lining } from '../coach/caps.js';
import { type Access, accessRecord } from '../coach/sheets.js';
import { type Bonding, skins } from '../coach/skins.js';
import { spread } from '../dates.js';
import { counter } from '../ids.js';
import { at, type P } from '../inches.js';
import { scatter } from '../random.js';
import type { Rec } from '../yaml.js';
import { GRID } from './plan.js';

const SEAMS = [47, ...[1, 4, 7, 10].map((bay) => GRID.mid(bay)), 245] as const;
const CLOSED: Readonly<Record<string, string>> = {
  'BP-C-1': '2026-11-09',
  'BP-C-2': '2026-11-09',
  'BP-C-3': '2026-11-10',
  'BP-L-1': '2026-11-06',
  'BP-R-1': '2026-10-30',
};
const LANE = [47, 160] as const;

function accessPanels(): readonly Access[] {
  const id = counter('AP');
  const panel = (name: string, of: string, place: P, clear: readonly [number, number]): Access => ({
    id: id(),
    name,
    of,
    facing: 'down',
    at: place,
    clear,
    count: 8,
    driver: '3/16 hex',
    stage: 'belly',
    ...(CLOSED[of] ? { date: CLOSED[of] } : {}),
  });
  return [
    ...[57.5, 91.5, 138, 184.5, 226].map((x, i) =>
      panel(`centre trough ${i + 1}`, `BP-C-${i + 1}`, [x, 0, CENTRE_BELLY_Z], i === 0 ? [14, 18] : [18, 20]),
    ),
    ...[75, 130].map((x) => panel('left lane', 'BP-L-1', [x, -36, BELLY_Z], [18, 14])),
    ...[75, 130].map((x) => panel('right lane', 'BP-R-1', [x, 36, BELLY_Z], [18, 14])),
    panel('left lane, by the tank', 'BP-L-1', [104, -36, BELLY_Z], [14, 14]),
  ];
}

const LOT: Bonding = {
  adhesive: 'two-part structural, grey',
  lot: 'B-4519',
  expires: '2026-12-31',
  open: '21 min',
  cure: '24 h',
  coupon: 'TS-201',
};

export function skinRecords(): readonly Rec[] {
  const random = scatter(24);
  return skins({
    grid: GRID,
    seams: [0, 3, 5, 8, 10, 12, 13],
    skirts: [],
    bonded: (n) => ({
      date: spread('2026-10-05', '2026-10-09', n, 7),
      bonding: LOT,
      surface: `${17 + Math.round(random() * 3)} C`,
      air: `${18 + Math.round(random() * 3)} C`,
      humidity: `${44 + Math.round(random() * 10)} %`,
    }),
    until: 6,
  });
}

const access = accessPanels();

export function bellyRecords(): readonly Rec[] {
  const job: Lining = { grid: GRID, access, date: (id) => CLOSED[id] };
  return [
    ...SEAMS.slice(1).map((to, i) =>
      belly(job, `BP-C-${i + 1}`, [SEAMS[i] as number, to], [-15.4, 15.4], CENTRE_BELLY_Z, `centre trough ${i + 1}`),
    ),
    belly(job, 'BP-L-1', LANE, [-49.5, -18.6], BELLY_Z, 'left lane'),
    belly(job, 'BP-R-1', LANE, [18.6, 49.5], BELLY_Z, 'right lane'),
    ...[
      ['BP-L-2', -49.5, -18.6],
      ['BP-R-2', 18.6, 49.5],
    ].map(([id, from, to]) =>
      belly(job, id as string, [222, 245], [from as number, to as number], BELLY_Z, 'behind the wheels, cut and hung'),
    ),
  ];
}

export const accessRecords = (): readonly Rec[] => access.map((one) => accessRecord(one, '3003-H14', '0.080 in'));

const box = (a: P, b: P): { readonly box: readonly unknown[] } => ({ box: [at(a), at(b)] });

export const zoneRecords = (): readonly Rec[] => [
  {
    id: 'TC-F',
    name: 'centre trough, front',
    ...box([47, -15.2, 3.5], [161, 15.2, 6.6]),
    concealed: true,
    closed_by: ['BP-C-1', 'BP-C-2', 'BP-C-3'],
    carries: ['dc', 'data'],
    pull_cord: true,
    drains: [at([50, 0, 3.5]), at([158, 0, 3.5])],
  },
  {
    id: 'TC-B',
    name: 'centre trough, rear',
    ...box([161, -15.2, 3.5], [245, 15.2, 6.6]),
    concealed: true,
    closed_by: ['BP-C-4', 'BP-C-5'],
    carries: ['dc', 'data'],
    drains: [at([242, 0, 3.5])],
  },
  {
    id: 'LL',
    name: 'left lane',
    ...box([47, -47.5, 0.6], [160, -25, 6.6]),
    concealed: true,
    closed_by: ['BP-L-1'],
    carries: ['water'],
    drains: [at([50, -36, 0.6])],
  },
  {
    id: 'RL',
    name: 'right lane',
    ...box([47, 25, 0.6], [160, 47.5, 6.6]),
    concealed: true,
    closed_by: ['BP-R-1'],
    carries: ['ac'],
    drains: [at([50, 36, 0.6])],
  },
];
