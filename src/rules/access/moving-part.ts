import type { TooNear } from '../../compute/access/clearances.js';
import type { Place } from '../../finding.js';
import { length, positionWords } from '../../quantity/format.js';
import type { Shell, Source } from '../../records/index.js';
import type { Rule } from '../rule.js';

export const movingPart: Rule = {
  name: 'access.moving-part',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A run, node, member or piece of equipment closer to a moving tire, or a run or node to a moving slide-out, than it may be.',
  why: 'The tire at full bump and lock, or the slide on its way in, cuts it through.',
  source: 'limit from shop.yaml; 50 mm: common practice, no source',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  frame: {rail_top_above_ground: 1 m, rail_spacing: 860 mm}
  axles:
    - {id: steer, x: 0 m, gawr: 5000 kg, track: 2 m}
    - {id: drive, x: 5 m, gawr: 9000 kg, track: 1.8 m, travel: {bump: 80 mm, rebound: 110 mm}, tyres: {count: 2, load_index: 152, diameter: 1 m, width: 300 mm, size: 295/75R22.5}}
# components.yaml
`,
    fails: `
- {id: BOX, name: step box, mass: 5 kg, at: [5.65 m, 0.9 m, -0.5 m], size: 300 mm x 300 mm x 300 mm}
`,
    passes: `
- {id: BOX, name: step box, mass: 5 kg, at: [7 m, 0.9 m, -0.5 m], size: 300 mm x 300 mm x 300 mm}
`,
  },
  check({ model: { shell, shop }, figures }) {
    return figures.clearances.tooNear
      .filter(({ kind }) => kind !== 'hot')
      .map((near) => ({
        message: `${near.id} (${near.what}) comes within ${length(near.distanceMm, shop.units)} of the room of ${near.name} at ${positionWords(near.at, shop.units)}${lessTolerance(near, shop.units)}, expected at least ${length(near.limitMm, shop.units)}: move it, or measure it and the travel again`,
        ids: [near.id, near.part],
        place: clearancePlace(near, shell),
      }));
  },
};

export const lessTolerance = ({ recordedMm, distanceMm }: TooNear, units: Parameters<typeof length>[1]): string =>
  recordedMm > distanceMm ? ` (${length(recordedMm, units)} as recorded, less its tolerance)` : '';

/** The line where the place of what stands too near was typed. */
export function clearancePlace({ id, what }: TooNear, shell: Shell): Place {
  const key = what === 'run' ? 'via' : what === 'member' ? 'from' : 'at';
  const record = [...shell.runs, ...shell.nodes, ...shell.members, ...shell.components].find((one) => one.id === id);
  return record ? (record.source as Source).place(key) : shell.source.place();
}
