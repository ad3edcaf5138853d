import {
  ambientFactor,
  ampacityA,
  column,
  nextStandardA,
  smallConductorA,
  TABLE_AMBIENT_C,
  terminalLimitA,
} from '../../compute/services/ampacity.js';
import { type Wire, wireOf } from '../../compute/services/wire.js';
import { polylineLength } from '../../geometry/vector.js';
import { hasWay } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import { amps, number } from '../../quantity/format.js';
import type { Link } from '../../query/isolate/graph/graph.js';
import { guardsOf } from '../../query/isolate/graph/guards.js';
import type { Run, Shell } from '../../records/index.js';
import type { Rule } from '../rule.js';

/** A tap of this length may be smaller, where it ends in a device that it can carry: NEC 240.21(B)(1), 10 ft, unverified citation. */
const TAP_MM = 3048;
/** And carries at least this share of what guards it: NEC 240.21(B)(1)(4), unverified citation. */
const TAP_SHARE = 0.1;

export const linkTooSmall: Rule = {
  name: 'service.link-too-small',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A wire without a circuit of its own, as a link of a busbar, or one that changes size on the way, behind a larger fuse or breaker than it can carry. A link of at most 10 ft that ends in a device which it can carry, and carries a tenth of what guards it, is let pass.',
  why: 'A short on it draws what the nearest fuse upstream lets pass, and the wire is the fuse then.',
  source: 'NEC Table 310.16, 240.4(D), 110.14(C) for terminals, 240.21(B)(1) for taps; unverified citation',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
circuits:
  - {id: DC-0, voltage: 12 V, load: 60 A, protection: {kind: fuse, rating: 200 A, at: MF}, conductor: {awg: 4/0}}
  - {id: DC-1, voltage: 12 V, load: 60 A, protection: {kind: fuse, rating: 80 A, at: F1}, conductor: {awg: 2}}
nodes:
  - {id: BAT, kind: source, role: battery, at: [0 m, 0 m, 1 m]}
  - {id: MF, kind: device, role: fuse, at: [0.1 m, 0 m, 1 m]}
  - {id: BUS, kind: panel, role: busbar, at: [2 m, 0 m, 1 m]}
  - {id: F1, kind: device, role: fuse, at: [2.2 m, 0 m, 1 m]}
  - {id: L1, kind: load, at: [5 m, 0 m, 1 m]}
runs:
  - {id: DC-0/1, circuit: DC-0, from: BAT, to: MF}
  - {id: DC-0/2, circuit: DC-0, from: MF, to: BUS}
  - {id: DC-1/1, circuit: DC-1, from: F1, to: L1}
`,
    fails: `
  - {id: LINK, from: BUS, to: F1, conductor: {awg: 8}}
`,
    passes: `
  - {id: LINK, from: BUS, to: F1, conductor: {awg: 2, rating: 105 C}}
`,
  },
  check({ model }) {
    const { shell, library, shop } = model;
    const guards = guardsOf(shell);
    const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
    return shell.runs.flatMap((run) => {
      if ((run.medium !== 'dc' && run.medium !== 'ac') || run.spare || run.abandoned) return [];
      const circuit = run.circuit === undefined ? undefined : circuits.get(run.circuit);
      // One size all along, behind its own fuse: judged with the circuit.
      if (circuit && run.conductor === undefined) return [];
      const wire = wireOf(run.conductor ?? circuit?.conductor, library);
      const ambientC = circuit?.ambientC ?? shop.limits.ambientC ?? TABLE_AMBIENT_C;
      const limit = wire && limitA(wire, ambientC, terminalC(run, shell));
      if (!wire || limit === undefined || circuit?.bonding) return [];
      const guard = largest(guards(run.id).links, model);
      if (!guard || guard.ratingA <= limit || isTap(run, wire, guard.ratingA, model)) return [];
      return [
        {
          message: `${run.id} is ${wire.text} behind ${amps(guard.ratingA)} at ${guard.at}, expected at most ${number(limit)} A before it: a larger wire, or a fuse where it begins; a licensed electrician decides`,
          ids: [run.id, guard.at],
          place: run.source.place('conductor'),
        },
      ];
    });
  },
};

/** The temperature of the terminals at its ends where one is recorded, °C: the lesser. */
function terminalC(run: Run, { nodes }: Shell): number | undefined {
  const at = nodes.flatMap(({ id, terminalsC }) =>
    terminalsC !== undefined && (id === run.from || id === run.to) ? [terminalsC] : [],
  );
  return at.length > 0 ? at.reduce((low, one) => Math.min(low, one), Infinity) : undefined;
}

/** The most that may guard a wire alone in its air and on its terminals, A: NEC 110.14(C). */
function limitA(wire: Wire, ambientC: number, terminals: number | undefined): number | undefined {
  const inTable = ampacityA(wire);
  if (inTable === undefined) return undefined;
  const alone = Math.min(inTable * ambientFactor(ambientC, column(wire.ratingC)), terminalLimitA(wire, terminals));
  return smallConductorA(wire) ?? nextStandardA(alone);
}

/** What a fuse or breaker lets pass: by the circuit that it protects, else by its own rating. */
function ratingOf(link: Link, { shell }: Model): number | undefined {
  const circuit = shell.circuits.find((one) =>
    link.circuit === undefined ? one.protection?.at === link.id : one.id === link.circuit,
  );
  const own = shell.nodes.find((one) => one.id === link.id)?.rating;
  return circuit?.protection?.ratingA ?? (own?.dimension === 'current' ? own.value : undefined);
}

function largest(links: readonly Link[], model: Model): { readonly at: string; readonly ratingA: number } | undefined {
  const rated = links.flatMap((link) => {
    const ratingA = ratingOf(link, model);
    return ratingA === undefined ? [] : [{ at: link.id, ratingA }];
  });
  return rated.reduce<(typeof rated)[number] | undefined>((a, b) => (a && a.ratingA >= b.ratingA ? a : b), undefined);
}

function isTap(run: Run, wire: Wire, guardA: number, { shell }: Model): boolean {
  const carries = ampacityA(wire) as number;
  const lengthMm = run.installedLengthMm ?? (hasWay(run) ? polylineLength(run.path) : Infinity);
  if (lengthMm > TAP_MM || carries < TAP_SHARE * guardA) return false;
  return [run.from, run.to].some((end) =>
    shell.circuits.some(({ protection }) => protection?.at === end && (protection.ratingA ?? Infinity) <= carries),
  );
}
