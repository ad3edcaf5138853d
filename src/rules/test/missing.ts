import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Model } from '../../model/shell.js';
import { number } from '../../quantity/format.js';
import { PA_PER_PSI } from '../../quantity/units.js';
import type { TestKind } from '../../records/closed-lists.js';
import type { Circuit, Medium, Test } from '../../records/index.js';
import type { Rule } from '../rule.js';

const INSULATES: readonly TestKind[] = ['insulation', 'dielectric withstand'];

interface Needed {
  readonly what: string;
  readonly is: (test: Test) => boolean;
}

const startsAt = (test: Test, leastPa: number): boolean =>
  test.start?.dimension === 'pressure' && test.start.value >= leastPa * 0.999;
const lasts = (test: Test, leastMin: number): boolean => (test.durationS ?? 0) >= leastMin * 60 - 1;

/** Least evidence for a finished line. The code of the place goes first. */
const NEEDED: Partial<Record<Medium, Needed>> = {
  // 24 CFR 3280.705(k)(1), a stand-in, unverified citation.
  gas: {
    what: 'a drop test from 3 psi or more over 10 min or more',
    is: (test) => startsAt(test, 3 * PA_PER_PSI) && lasts(test, 10),
  },
  // One state's text for medical units: working pressure, or 50 psi of air for 15 min.
  water: { what: 'a pressure test over 15 min or more', is: (test) => test.start?.dimension === 'pressure' && lasts(test, 15) },
  ac: {
    what: 'an insulation or dielectric test',
    is: (test) => INSULATES.includes(test.testKind as TestKind),
  },
};

/** Tests name a circuit, or the runs and nodes of it. */
function testsOf(circuit: Circuit, { shell }: Model): readonly Test[] {
  const own = new Set([circuit.id, ...shell.runs.filter((run) => run.circuit === circuit.id).map((run) => run.id)]);
  return shell.tests.filter((test) => test.of.some((id) => own.has(id)));
}

export const missing: Rule = {
  name: 'test.missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A gas, water or mains circuit without a passed test of its kind: gas 3 psi for 10 min, water 15 min under pressure, mains insulation.',
  why: 'A check without evidence is not verified; it never passes.',
  source:
    'gas: 24 CFR 3280.705(k)(1) as a stand-in, unverified citation; water and mains: state rules for commercial coaches, unverified citation. The code of the place goes first',
  examples: {
    given: `
# services/water.yaml
service: Water
medium: water
circuits: [{id: CW, size: 1/2 in PEX}]
nodes:
  - {id: W1, kind: source, at: [0 m, 0 m, 1 m]}
  - {id: W2, kind: drain, at: [3 m, 0 m, 0.9 m]}
runs:
  - {id: CW/1, circuit: CW, from: W1, to: W2, size: 1/2 in PEX}
# tests.yaml
`,
    fails: `
# nobody tested it
`,
    passes: `
- {id: TS-1, kind: pressure hold, of: [CW], limit: 1 psi, start: 80 psi, end: 80 psi, duration: 20 min, instrument: PG-1, date: 2026-04-02}
`,
  },
  check({ model }) {
    const { shell } = model;
    return shell.circuits.flatMap((circuit) => {
      const needed = NEEDED[circuit.medium];
      if (!needed || circuit.bonding || !shell.runs.some((run) => run.circuit === circuit.id)) return [];
      const all = testsOf(circuit, model);
      if (all.some((test) => needed.is(test) && judgeTest(test, model).verdict === 'passed')) return [];
      const had = all.length === 0 ? 'no test on record' : `${number(all.length)} on record that do not show it`;
      return [
        {
          message: `${circuit.id} has ${had}, expected ${needed.what}: test it, and record what the instrument said`,
          ids: [circuit.id, ...all.map((test) => test.id)],
          place: circuit.source.place(),
        } as const,
      ];
    });
  },
};
