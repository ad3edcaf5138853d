import type { Component } from '../../records/index.js';
import type { Rule } from '../rule.js';
import { kg } from './text.js';

const LIMIT_KG = 227;
/** Floors, lockers and the like on a larger footprint do not stand in one place. Common practice, no source. */
const SPREAD_MM2 = 2e6;

export const concentratedLoad: Rule = {
  name: 'weight.concentrated-load',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A single component over 227 kg (500 lb) on less than 2 m², or whose size is not on record, that nothing is declared for.',
  why: 'What carries it, and what holds it in a crash, needs an engineer’s name in the file; this tool infers no strength.',
  source: "one state's rule for vendor units asks for an engineer over 500 lb; elsewhere common practice, no source",
  examples: {
    given: `
# components.yaml
- {id: CMP-1, name: Platen press, mass: 520 kg, at: [4 m, 0.7 m, 0.6 m], basis: weighed}
# declared.yaml
`,
    fails: `
# nobody has declared its mounting
`,
    passes: `
- {id: MOUNT-1, kind: mounting, of: [CMP-1], rating: 24 kN, by: "An engineer, licence 1234", date: 2026-05-01}
`,
  },
  check({ model }) {
    const declared = new Set(model.shell.declared.flatMap(({ of }) => of));
    return model.shell.components.flatMap((component) =>
      component.massKg <= LIMIT_KG || isSpread(component) || declared.has(component.id)
        ? []
        : [
            {
              message: `${component.name} (${component.id}) weighs ${kg(model, component.massKg)} in one place, expected an engineer's document for its mounting over ${kg(model, LIMIT_KG)}: record it in declared.yaml with \`of: [${component.id}]\` and its author`,
              ids: [component.id],
              place: component.source.place('mass'),
            } as const,
          ],
    );
  },
};

const isSpread = ({ sizeMm }: Component): boolean => sizeMm !== undefined && sizeMm[0] * sizeMm[1] >= SPREAD_MM2;
