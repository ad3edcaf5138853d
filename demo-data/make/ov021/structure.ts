import { BELLY_Z, belly, CENTRE_BELLY_Z, caps, ceiling, type Lining, lining } from '../coach/caps.js';
import { contacts } from '../coach/contact.js';
import { type Crew, weldRecords } from '../coach/joints.js';
import { type Heats, memberFiles } from '../coach/members.js';
import { roof } from '../coach/roof.js';
import { accessRecord } from '../coach/sheets.js';
import { type Bonding, skins } from '../coach/skins.js';
import { floor, subframe } from '../coach/subframe.js';
import type { Part } from '../coach/types.js';
import { walls } from '../coach/walls.js';
import { day, spread } from '../dates.js';
import { SHAPES } from '../library.js';
import { scatter } from '../random.js';
import { item, list, type Rec } from '../yaml.js';
import { accessPanels, CENTRE_SEAMS, CLOSED, LANE_FRONT, LANE_REAR } from './access.js';
import { GRID, STAGE_DAYS } from './plan.js';
import { repaired } from './repairs.js';

export const PARTS: readonly Part[] = [...subframe(GRID), ...floor(GRID), ...walls(GRID), ...roof(GRID)];

const HEATS: Heats = {
  'RT6x3x5/16': ['H-6120'],
  'RT2-1/2x2x1/4': ['H-6120', 'H-6133'],
  I4x3: ['H-6141', 'H-6142'],
  'RT4-1/2x2x3/16': ['H-6155'],
  'RT4x2x3/16': ['H-6155', 'H-6160'],
  'DH3x2x5/32': ['D31-0917', 'D31-0922'],
  'CR6x5/32': ['D44-0311'],
  'plate 5083-H116': ['PL-8830'],
  any: ['H-6204', 'H-6211', 'H-6219'],
};

const COMMENTS = {
  'SF-L': ['Rails came 30 ft from the mill; spliced by the mill, not by us. Both sit on the damper pads, never on the chassis.'],
  'SX-01': ['', 'Low tubes: flush with the bottom of the rails, so the trough runs over them'],
  'CB-01': ['', 'Cross beams on 15-1/2, butted into the sills, sat on the rails'],
  'KG-02L': ['', 'Knees, every second beam. Point down.'],
  'ST-06A': ['', 'Stringers under the presses and the guillotine. Coped to the beam webs.'],
  'P-L-08': ['Jambs of the slide: heavy tube, not our post die'],
  'HD-SO-1': ['', 'Measured for sag before and after the slide went in, see openings.yaml'],
  'T01-BC': ['', 'Truss 1 was the pattern; the rest came off the same jig'],
} as const;

export function memberText(): ReadonlyMap<string, string> {
  return memberFiles(
    PARTS,
    [
      { name: 'subframe', head: ['Subframe: rails on dampers, low cross tubes'] },
      { name: 'floor', head: ['Floor frame: sills, cross beams, stringers, knees'] },
      { name: 'walls', head: ['Walls. Number of a post is its station, front to rear; U over, D under an opening.'] },
      { name: 'roof', head: ['Roof: corner extrusions, end rails, trusses T01 to T20 (inches in this file)'], units: true },
    ],
    HEATS,
    COMMENTS,
  );
}

const CREW: Crew = {
  welders: (stage, process) =>
    process === 'GTAW'
      ? ['K7']
      : stage === 'subframe'
        ? ['K7', 'R2']
        : stage === 'roof'
          ? ['M3', 'B9', 'B9', 'K7']
          : ['K7', 'M3', 'B9'],
  inspectors: ['J2', 'J2', 'J5'],
  date: (stage, i, n) => spread(...(STAGE_DAYS[stage] as readonly [string, string]), i, n),
  next: (date) => day(date, 1),
};

export const PAIRS = contacts(PARTS, SHAPES);
export const WELDS: readonly Rec[] = repaired(weldRecords(PAIRS, CREW, scatter(21)));

const WELD_HEADS: Readonly<Record<string, string>> = {
  subframe: 'Subframe. All VT before the dampers went in.',
  floor: 'Floor frame',
  walls: 'Walls and openings',
  roof: 'Trusses: like webs are one record, left of the middle, middle, right of it',
};

export function weldText(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(WELD_HEADS).map(
      ([stage, head]) =>
        [
          `welds-${stage}.yaml`,
          list(
            [head],
            WELDS.filter((weld) => weld.stage === stage),
          ),
        ] as const,
    ),
  );
}

const LOTS: readonly Bonding[] = [
  { adhesive: 'two-part structural, grey', lot: 'B-4417', expires: '2026-06-30', open: '19 min', cure: '24 h', coupon: 'TS-101' },
  { adhesive: 'two-part structural, grey', lot: 'B-4452', expires: '2026-08-31', open: '22 min', cure: '24 h', coupon: 'TS-102' },
];

function skinRecords(): readonly Rec[] {
  const random = scatter(5);
  return skins({
    grid: GRID,
    seams: [0, 2, 4, 6, 8, 12, 16, 18, 20, 21],
    skirts: [
      [44, 107],
      [107, 169],
      [169, 216],
      [313, 371.5],
    ],
    bonded: (n) => ({
      date: spread('2026-01-28', '2026-02-16', n, 46),
      bonding: LOTS[n < 22 ? 0 : 1] as Bonding,
      surface: `${18 + Math.round(random() * 4)} C`,
      air: `${19 + Math.round(random() * 3)} C`,
      humidity: `${38 + Math.round(random() * 14)} %`,
    }),
  });
}

export function panelText(): ReadonlyMap<string, string> {
  const access = accessPanels();
  const job: Lining = {
    grid: GRID,
    access,
    date: (id) =>
      id.startsWith('CL')
        ? CLOSED.ceiling
        : id.startsWith('IP')
          ? CLOSED.lining
          : id.startsWith('BP')
            ? CLOSED.belly
            : '2026-02-18',
  };
  const bellies = [
    ...CENTRE_SEAMS.slice(1).map((to, i) =>
      belly(job, `BP-C-${i + 1}`, [CENTRE_SEAMS[i] as number, to], [-15.4, 15.4], CENTRE_BELLY_Z, `centre trough ${i + 1}`),
    ),
    ...([-1, 1] as const).flatMap((sign) =>
      LANE_FRONT.slice(1).map((to, i) =>
        belly(
          job,
          `BP-${sign < 0 ? 'L' : 'R'}-${i + 1}`,
          [LANE_FRONT[i] as number, to],
          sign < 0 ? [-49.5, -18.6] : [18.6, 49.5],
          BELLY_Z,
          `${sign < 0 ? 'left' : 'right'} lane ${i + 1}`,
        ),
      ),
    ),
    belly(job, 'BP-RR-1', LANE_REAR, [18.6, 49.5], BELLY_Z, 'right rear lane'),
  ];
  const linings = [
    ...lining(job, 'left', [
      [0, 2],
      [2, 4],
      [4, 8],
      [16, 18],
      [18, 20],
      [20, 21],
    ]),
    ...lining(job, 'right', [
      [0, 4],
      [6, 9],
      [9, 11],
      [11, 13],
      [13, 15],
      [15, 18],
      [18, 21],
    ]),
    ...ceiling(job, [0, 3, 6, 9, 12, 15, 18, 21]),
  ];
  return new Map([
    [
      'panels-skin.yaml',
      list(
        [
          'Bonded skins, skirts and roof sheets, in the order in which they went on.',
          'Sheet outlines on the sheet’s middle plane.',
        ],
        skinRecords(),
      ),
    ],
    [
      'panels-caps.yaml',
      list(
        ['Front and rear caps'],
        caps(GRID, () => '2026-02-18'),
      ),
    ],
    ['panels-belly.yaml', list(['Belly panels. Butyl comes off with a warm blade, not with a pry bar.'], bellies)],
    ['panels-lining.yaml', list(['Wall lining and ceiling: date is the day it was closed'], linings)],
    [
      'panels-access.yaml',
      `# Everything that opens without cutting. Opening is the clear one, tape inside the frame.\n${access.map((one) => item(accessRecord(one, '3003-H14', one.facing === 'down' && one.of.startsWith('BP') ? '0.080 in' : '0.050 in'))).join('')}`,
    ],
  ]);
}
