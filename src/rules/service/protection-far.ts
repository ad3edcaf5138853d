import { polylineLength } from '../../geometry/vector.js';
import { length } from '../../quantity/format.js';
import { behaviourOf } from '../../query/isolate/graph/behaviour.js';
import type { NodeKind, NodeRole, Run, ServiceNode, Shell } from '../../records/index.js';
import type { Rule } from '../rule.js';

/**
 * Wire before its fuse, mm: 7 in bare; in a sheath or enclosure all along 72 in from a battery’s own terminal and 40 in from any other
 * source of power, as a switch, a busbar or a generator. ABYC E-11.10.1.1, unverified citation.
 */
const BARE_MM = 177.8;
const SHEATHED_MM = { battery: 1828.8, other: 1016 } as const;
/** What a length is read to, mm. */
const READ_TO_MM = 2.5;

/** One conductor goes on through these. */
const ON_THE_WAY: readonly NodeKind[] = ['terminal', 'connector', 'junction', 'splice', 'fitting'];
const isOnTheWay = ({ role, nodeKind }: ServiceNode): boolean =>
  role === undefined ? ON_THE_WAY.includes(nodeKind) : ['splice', 'junction', 'terminal'].includes(role);
/** Give alternating current that nothing of their own limits. Chargers, regulators and alternators limit theirs. */
const AC_SOURCES: readonly (NodeRole | undefined)[] = ['generator', 'inverter'];

type From = keyof typeof SHEATHED_MM;

/** A run before its first fuse, and how far its end is from where its conductor begins. */
interface BareRun {
  readonly run: Run;
  readonly begins: string;
  readonly from: From;
  readonly wayMm: number;
}

const isSource = ({ role, nodeKind, medium }: ServiceNode): boolean => {
  if (medium === 'dc') return role === 'battery' || (role === undefined && nodeKind === 'source');
  return medium === 'ac' && AC_SOURCES.includes(role);
};

/** Every run that a short would take past no fuse or breaker, walking from the sources. */
function bareRuns(shell: Shell): readonly BareRun[] {
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const fusedAt = ({ circuit }: Run): string | undefined => circuits.get(circuit ?? '')?.protection?.at;
  const found: BareRun[] = [];
  const seen = new Set<Run>();
  const queue = shell.nodes
    .filter(isSource)
    .map(({ id, medium }) => ({ at: id, begins: id, from: (medium === 'dc' ? 'battery' : 'other') as From, wayMm: 0, medium }));
  for (let next = queue.shift(); next; next = queue.shift()) {
    const { at, medium, ...way } = next;
    for (const run of shell.runs) {
      if (run.medium !== medium || run.abandoned || run.spare || (run.from !== at && run.to !== at)) continue;
      if (seen.has(run) || circuits.get(run.circuit ?? '')?.bonding || fusedAt(run) === at) continue;
      seen.add(run);
      const end = run.from === at ? run.to : run.from;
      const wayMm = way.wayMm + (run.installedLengthMm ?? polylineLength(run.path));
      found.push({ ...way, run, wayMm });
      const node = nodes.get(end);
      if (!node || fusedAt(run) === end || isFuse(node)) continue;
      if (isOnTheWay(node)) queue.push({ ...way, at: end, wayMm, medium });
      else if (['parts', 'joins', 'changeover'].includes(behaviourOf(node).way))
        queue.push({ at: end, begins: end, from: 'other', wayMm: 0, medium });
    }
  }
  return found;
}

const isFuse = ({ role }: ServiceNode): boolean => role === 'fuse' || role === 'breaker';

const mostMm = ({ run, from }: BareRun): number => (run.sheathed ? SHEATHED_MM[from] : BARE_MM);

export const protectionFar: Rule = {
  name: 'service.protection-far',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A wire that runs more than 7 in (178 mm) from a battery, or from an unfused switch, busbar, generator or inverter, before its first fuse or breaker; in a sheath 72 in (1,829 mm) from the battery’s own terminal and 40 in (1,016 mm) from the others. Chargers, regulators and alternators, which limit their own current, and shore power, guarded at the pedestal, are not judged.',
  why: 'Nothing but the source itself limits a short on that stretch.',
  source: 'ABYC E-11.10.1.1, unverified citation',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
circuits: [{id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: F1}, conductor: {awg: 14}}]
runs:
  - {id: DC-1/1, circuit: DC-1, from: BAT, to: F1}
  - {id: DC-1/2, circuit: DC-1, from: F1, to: N2}
nodes:
  - {id: BAT, kind: source, role: battery, name: house battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, at: [3 m, 0 m, 1 m]}
`,
    fails: `
  - {id: F1, kind: device, role: fuse, at: [0.9 m, 0 m, 1 m]}
`,
    passes: `
  - {id: F1, kind: device, role: fuse, at: [0.1 m, 0 m, 1 m]}
`,
  },
  check({ model: { shell, shop } }) {
    return bareRuns(shell)
      .filter((one) => one.wayMm > mostMm(one) + READ_TO_MM)
      .map((one) => {
        const { run, begins, wayMm } = one;
        return {
          message: `${run.id} is ${length(wayMm, shop.units)} from ${begins} before a fuse, expected at most ${length(mostMm(one), shop.units)}: move the fuse nearer${run.sheathed ? '' : ', or add `sheathed: yes` where it is in a sheath all along'}`,
          ids: [run.id, begins],
          place: run.source.place('to'),
        };
      });
  },
};
