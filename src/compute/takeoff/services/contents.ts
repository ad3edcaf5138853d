import type { Run, Service } from '../../../records/index.js';

/** What stays in a line when the coach stands unladen, kg/m³. Water and drain lines are empty then; gas weighs next to nothing. */
const CONTENTS = {
  /** 50 % ethylene glycol, 1065–1075 at 20 °C: handbook, unverified citation. */
  coolant: 1070,
  /** Mineral hydraulic oil, ISO VG 32 to 46, 860–880: handbook, unverified citation. */
  'hydraulic oil': 870,
} as const;

export type Contents = keyof typeof CONTENTS;

/** What stays in a run; a water line is a coolant line where its service says so (`contents: coolant`). */
export function contentsOf(run: Run, service?: Service): Contents | undefined {
  if (run.medium === 'hydraulic') return 'hydraulic oil';
  return run.medium === 'water' && service?.contents === 'coolant' ? 'coolant' : undefined;
}

/** Mass of what fills a bore, kg/m. */
export const contentsKgM = (insideMm: number, contents: Contents): number =>
  (Math.PI / 4) * insideMm ** 2 * 1e-6 * CONTENTS[contents];
