import type { Library, PipeSize } from '../../records/index.js';
import { metalOfKind } from '../../records/material.js';
import { isOfAluminium, pipeMaterialOf } from '../../records/pipe-material.js';
import type { Rule, RuleFinding } from '../rule.js';

export const gasAluminium: Rule = {
  name: 'service.gas-aluminium',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A gas line of aluminium tube; a warning where its material is not in the list of pipe materials.',
  why: 'Aluminium tube cracks with vibration and corrodes where it touches wet metal.',
  source: 'state liquefied-gas vehicle rules, unverified citation; a licensed gas fitter decides',
  examples: {
    given: `
# services/gas.yaml
service: Propane
medium: gas
nodes:
  - {id: G1, kind: source, at: [0 m, 0 m, 1 m]}
  - {id: G2, kind: load, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: GAS/1, from: G1, to: G2, size: 1/2 in aluminium}
`,
    passes: `
  - {id: GAS/1, from: G1, to: G2, size: 1/2 in copper}
`,
  },
  check({ model }) {
    const circuits = new Map(model.shell.circuits.map((circuit) => [circuit.id, circuit] as const));
    return model.shell.runs.flatMap((run): readonly RuleFinding[] => {
      const size = run.size ?? circuits.get(run.circuit ?? '')?.size;
      if (run.medium !== 'gas' || !size) return [];
      const found = ofAluminium(size, model.library);
      if (found === false) return [];
      const fault = { ids: [run.id], place: run.source.place('size') };
      if (found === undefined) {
        const message = `Not proved that ${run.id} is not of aluminium: \`${size.material}\` is not in the list of pipe materials, expected a word of the list behind the size, as \`size: 1/2 in copper tube\``;
        return [{ ...fault, severity: 'warning', message }];
      }
      const message = `${run.id} is ${size.text}, expected steel, copper or listed hose for gas: replace it, or correct \`size\``;
      return [{ ...fault, message }];
    });
  },
};

/** Undefined where neither the list nor the library knows the material. */
function ofAluminium({ text, material }: PipeSize, { conductors }: Library): boolean | undefined {
  const type = conductors.get(text) ?? conductors.get(material);
  if (type?.materialKind !== undefined) return metalOfKind(type.materialKind) === 'aluminium';
  const known = pipeMaterialOf(material);
  return known === undefined ? undefined : isOfAluminium(known);
}
