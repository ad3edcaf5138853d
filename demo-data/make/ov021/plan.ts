import { Grid, type Plan } from '../coach/types.js';

/** OV-021: letterpress and bindery studio. 21 bays of 15-1/2 in, slide-out left, presses on the right over stringers. */
export const PLAN: Plan = {
  x0: 44,
  bays: 21,
  pitch: 15.5,
  railFront: 30,
  slide: { id: 'SO-1', side: 'left', from: 8, to: 16, bottom: 13.25, top: 80.75 },
  doors: [{ id: 'DR-1', side: 'right', from: 4, to: 6, bottom: 11.25, top: 84.75 }],
  windows: [
    { id: 'WN-1', side: 'left', from: 2, to: 4, bottom: 48, top: 76 },
    { id: 'WN-2', side: 'left', from: 18, to: 20, bottom: 48, top: 76 },
    { id: 'WN-3', side: 'right', from: 9, to: 11, bottom: 48, top: 76 },
    { id: 'WN-4', side: 'right', from: 13, to: 15, bottom: 48, top: 76 },
  ],
  rearDoor: true,
  tubeBays: [1, 4, 8, 12, 16, 19],
  knees: [2, 4, 6, 8, 10, 12, 14, 16, 18, 20],
  stringerBays: [6, 7, 8, 9],
  stringerLines: [-37, -27, 27, 37],
  belts: { left: [0, 1, 4, 5, 7, 16, 17, 20], right: [0, 1, 3, 6, 8, 11, 15, 16, 18, 19, 20] },
  roofUnits: [7, 13],
};

export const GRID = new Grid(PLAN);
export const SHELL = 'OV-021';

/** First and last working day of each stage. */
export const STAGE_DAYS: Readonly<Record<string, readonly [string, string]>> = {
  subframe: ['2025-09-15', '2025-10-03'],
  floor: ['2025-10-06', '2025-10-31'],
  walls: ['2025-11-03', '2025-12-12'],
  roof: ['2025-12-15', '2026-01-23'],
  skin: ['2026-01-26', '2026-02-20'],
  services: ['2026-02-23', '2026-04-17'],
  belly: ['2026-04-20', '2026-05-01'],
  fitout: ['2026-05-04', '2026-06-19'],
  finished: ['2026-06-22', '2026-07-03'],
};
