import type { Part } from '../coach/types.js';
import type { P } from '../inches.js';
import type { Shot } from '../photo-files.js';
import { PARTS, STAGE_DAYS } from './plan.js';
import { services } from './services.js';

type Row = readonly [readonly string[], P, P, number, string, string, string, string];

const UP: P = [0.2, 0.3, 1];
const ROWS: readonly Row[] = [
  [
    ['SF-L', 'SF-R', 'SX-02'],
    [114, 0, 3],
    [0.6, 0.5, -0.7],
    84,
    'from above, looking aft',
    '2026-06-18',
    'SUBFRAME',
    'rails and tubes before the dampers',
  ],
  [
    ['CB-06', 'SI-R'],
    [138, 10, 9],
    [0.5, -0.6, -0.6],
    100,
    'from above, right',
    '2026-07-16',
    'FLOOR',
    'cross beams in the sills',
  ],
  [['G-01', 'SO-1'], [111, 48, 17], [0.35, 0.9, -0.15], 34, 'from inside', '2026-09-11', 'G-01', 'lower front corner'],
  [['T03-TC'], [91, 0, 95], [0.8, 0.35, -0.3], 90, 'along the trusses', '2026-11-12', 'ROOF', 'five up, eight to go'],
  [['LL'], [104, -36, 4], UP, 60, 'from below, belly off', '2026-11-04', 'LL', 'left lane before close-in'],
  [['TC-F'], [92, 0, 4], UP, 44, 'from below, belly off', '2026-11-05', 'TC-F', 'front half of the trough'],
  [['TC-F'], [138, 0, 4], UP, 44, 'from below, belly off', '2026-11-05', 'TC-F', 'trough about the pier'],
  [['RL'], [90, 36, 4], UP, 60, 'from below, belly off', '2026-10-29', 'RL', 'right lane before close-in'],
  [['T05-TC'], [122, 0, 95], [0.8, 0.35, -0.3], 90, 'along the trusses', '2026-11-18', 'ROOF', 'fifth truss in'],
];

const COLOURS: Readonly<Record<string, string>> = {
  dc: '#b3261e',
  ac: '#e0e0d8',
  data: '#2f6f3a',
  water: '#2456a6',
  gas: '#c7a500',
};

export const partsOn = (taken: string): readonly Part[] => PARTS.filter((part) => (STAGE_DAYS[part.stage]?.[0] ?? '') <= taken);

export function shots(): readonly Shot[] {
  return ROWS.map(([of, target, look, across, view, taken, card, caption], i): Shot => {
    const late = taken >= '2026-10-01' && !card.startsWith('ROOF');
    const runs = late
      ? services().flatMap((service) =>
          service.runs.map((run) => ({
            colour: COLOURS[service.medium] ?? '#888888',
            wide: 0.6,
            path: service.wayOf(String(run.id)),
          })),
        )
      : [];
    return {
      id: `PH-${String(i + 1).padStart(3, '0')}`,
      of,
      view,
      taken,
      caption,
      by: late ? 'E1' : 'A1',
      ...(i === 2 ? { upright: true } : {}),
      ...(i === 8 ? { copyOf: 'PH-004' } : {}),
      scene: { target, look, across, depth: late ? 16 : across, card: [card, 'OV-024', taken], runs, light: 0.3 + i * 0.08 },
    };
  });
}
