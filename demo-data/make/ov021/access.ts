import { BELLY_Z, CEILING_Z, CENTRE_BELLY_Z, LINING_Y } from '../coach/caps.js';
import type { Access } from '../coach/sheets.js';
import { counter } from '../ids.js';
import { GRID } from './plan.js';

/** Day on which each lined or closed panel went on: after the tests and the photos of what lies behind it. */
export const CLOSED = { ceiling: '2026-04-13', lining: '2026-04-15', belly: '2026-04-27' } as const;

/** Seams of the centre belly lie on the low cross tubes. */
export const CENTRE_SEAMS = [47, ...[1, 4, 8, 12, 16, 19].map((bay) => GRID.mid(bay)), 369] as const;
const CENTRE_AT = [57.5, 91.5, 145.75, 207.75, 269.75, 324, 358] as const;
/** Outboard lanes end ahead of the drive wheels and begin again behind the tag wheels. */
export const LANE_FRONT = [47, 103, 159, 214] as const;
export const LANE_REAR = [313, 369] as const;
const LEFT_AT = [61, 89, 117, 145, 170] as const;
const RIGHT_AT = [61, 89, 117, 145, 173, 201] as const;
const REAR_AT = [331, 357] as const;
/** Bays of the ceiling with an access panel under the dc chase, and under the ac chase. */
export const DC_BAYS = [1, 4, 6, 9, 11, 14, 16, 19] as const;
export const AC_BAYS = [3, 7, 13, 18] as const;
/** Wall bays that carry wires, with their lining panel. */
export const WALL_BAYS = [
  { side: 'right', bay: 2, lining: 'IP-R-1' },
  { side: 'right', bay: 7, lining: 'IP-R-2' },
  { side: 'right', bay: 12, lining: 'IP-R-4' },
  { side: 'right', bay: 17, lining: 'IP-R-6' },
  { side: 'left', bay: 6, lining: 'IP-L-3' },
] as const;

const laneOf = (x: number): number => LANE_FRONT.findIndex((seam, i) => x > seam && x < (LANE_FRONT[i + 1] ?? 0)) + 1;
/** Ceiling panels span three bays each. */
export const ceilingOf = (bay: number): string => `CL-${Math.floor(bay / 3) + 1}`;

const base = { count: 8, driver: '3/16 hex', stage: 'belly', date: CLOSED.belly, sealant: 'EPDM tape' } as const;

export function accessPanels(): readonly Access[] {
  const id = counter('AP');
  const centre = CENTRE_AT.map(
    (x, i): Access => ({
      id: id(),
      name: `centre trough ${i + 1}`,
      of: `BP-C-${i + 1}`,
      facing: 'down',
      at: [x, 0, CENTRE_BELLY_Z],
      clear: [i === 0 || i === 6 ? 14 : 18, i === 0 || i === 6 ? 18 : 14],
      ...base,
    }),
  );
  const lane = (name: string, y: number, x: number, parent: string): Access => ({
    id: id(),
    name: `${name}, station ${Math.round(x)}`,
    of: parent,
    facing: 'down',
    at: [x, y, BELLY_Z],
    clear: [18, 14],
    ...base,
  });
  const left = LEFT_AT.map((x) => lane('left lane', -36, x, `BP-L-${laneOf(x)}`));
  const right = RIGHT_AT.map((x) => lane('right lane', 36, x, `BP-R-${laneOf(x)}`));
  const rear = REAR_AT.map((x) => lane('right rear lane', 36, x, 'BP-RR-1'));
  const overhead = (bay: number, y: number, name: string): Access => ({
    id: id(),
    name: `${name}, bay ${bay}`,
    of: ceilingOf(bay),
    facing: 'down',
    at: [GRID.mid(bay), y, CEILING_Z],
    clear: [11, 16],
    count: 4,
    driver: 'quarter-turn, coin',
    stage: 'services',
    date: CLOSED.ceiling,
  });
  const dc = DC_BAYS.map((bay) => overhead(bay, -27.5, 'ceiling, low voltage'));
  const ac = AC_BAYS.map((bay) => overhead(bay, 27.5, 'ceiling, mains'));
  const wall = WALL_BAYS.map(
    ({ side, bay, lining }): Access => ({
      id: id(),
      name: `wall ${side}, bay ${bay}`,
      of: lining,
      facing: side === 'left' ? 'right' : 'left',
      at: [GRID.mid(bay), side === 'left' ? -LINING_Y : LINING_Y, 26],
      clear: [10, 14],
      count: 6,
      driver: 'PH2',
      stage: 'services',
      date: CLOSED.lining,
    }),
  );
  return [...centre, ...left, ...right, ...rear, ...dc, ...ac, ...wall];
}
