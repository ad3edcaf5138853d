import { length, positionWords } from '../../quantity/format.js';
import type { Rule } from '../rule.js';
import { clearancePlace, lessTolerance } from './moving-part.js';

export const hotPart: Rule = {
  name: 'access.hot-part',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A run or node closer to an exhaust or other hot part than it may be, unless it ends on it.',
  why: 'Insulation and hose go hard and crack long before they burn.',
  source: 'limit from the part’s maker or shop.yaml; 230 mm dry and 50 mm wet: ABYC E-11, unverified citation',
  examples: {
    given: `
# components.yaml
- {id: FLUE, name: heater flue, mass: 1 kg, at: [1 m, 0 m, 1 m], size: 100 mm x 100 mm x 100 mm, hot: dry}
# services/dc.yaml
service: Lights
medium: dc
nodes:
`,
    fails: `
  - {id: S1, kind: splice, at: [1.15 m, 0 m, 1 m]}
`,
    passes: `
  - {id: S1, kind: splice, at: [1.6 m, 0 m, 1 m]}
`,
  },
  check({ model: { shell, shop }, figures }) {
    return figures.clearances.tooNear
      .filter(({ kind }) => kind === 'hot')
      .map((near) => ({
        message: `${near.id} (${near.what}) comes within ${length(near.distanceMm, shop.units)} of the hot ${near.name} at ${positionWords(near.at, shop.units)}${lessTolerance(near, shop.units)}, expected at least ${length(near.limitMm, shop.units)}: move it, or write what its maker asks as \`keep_clear\``,
        ids: [near.id, near.part],
        place: clearancePlace(near, shell),
      }));
  },
};
