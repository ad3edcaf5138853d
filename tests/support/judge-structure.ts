import type { Figures } from '../../src/assess.js';
import { bondFigures } from '../../src/compute/structure/bonds.js';
import { clampFigures } from '../../src/compute/structure/clamps.js';
import { joints, openings, weldTotals } from '../../src/compute/structure/index.js';
import { materials } from '../../src/compute/structure/materials.js';
import { spacings } from '../../src/compute/structure/spacing.js';
import { takeOff } from '../../src/compute/takeoff/index.js';
import { inspectionShares } from '../../src/compute/welding/inspection.js';
import type { Finding } from '../../src/finding.js';
import { type Outside, type Rule, runRule } from '../../src/rules/rule.js';
import type { Model } from './types.js';

/** What a rule about members, panels, welds or openings finds, from the figures that it may read. */
export function judgeStructure(rule: Rule, model: Model, outside: Outside = {}): readonly Finding[] {
  const taken = takeOff(model);
  const figures = {
    takeOff: taken,
    joints: joints(model),
    openings: openings(model),
    weldTotals: weldTotals(model),
    materials: materials(model, taken),
    inspection: inspectionShares(model),
    spacings: spacings(model),
    clamps: clampFigures(model),
    bonds: bondFigures(model),
  };
  return runRule(rule, { model, figures: figures as Figures, outside });
}

/** Names the places by their field, so that a test sees what is blamed: `at('welder')` in column 1 of line `welder`. */
export const blaming = (fields: string[]) => ({
  file: 'literal.yaml',
  place: (...path: readonly (string | number)[]) => {
    fields.push(path.join('.'));
    return { file: 'literal.yaml', line: 1, column: 1, endLine: 1, endColumn: 2 };
  },
});
