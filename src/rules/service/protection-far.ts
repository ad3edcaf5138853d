import { polylineLength } from '../../geometry/vector.js';
import { length } from '../../quantity/format.js';
import type { Run, ServiceNode, Shell } from '../../records/index.js';
import type { Rule } from '../rule.js';

/** Wire between a battery and its fuse, mm: 7 in, or 72 in in a sheath or enclosure all along; ABYC E-11.10.1.1, unverified citation. */
const BARE_MM = 177.8;
const SHEATHED_MM = 1828.8;

const ON_THE_WAY = ['terminal', 'connector', 'junction', 'splice', 'fitting'];

/** Runs from a battery up to the first node that holds a fuse or breaker, each with the way from the battery to its end. */
function bareRuns(battery: ServiceNode, shell: Shell): readonly { readonly run: Run; readonly wayMm: number }[] {
  const fused = new Set(shell.circuits.flatMap((circuit) => circuit.protection?.at ?? []));
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const found: { run: Run; wayMm: number }[] = [];
  const seen = new Set<Run>();
  const queue = [{ at: battery.id, wayMm: 0 }];
  for (let next = queue.shift(); next; next = queue.shift()) {
    const { at, wayMm } = next;
    for (const run of shell.runs) {
      if (seen.has(run) || run.medium !== 'dc' || (run.from !== at && run.to !== at)) continue;
      seen.add(run);
      const end = run.from === at ? run.to : run.from;
      const far = wayMm + (run.installedLengthMm ?? polylineLength(run.path));
      found.push({ run, wayMm: far });
      if (!fused.has(end) && ON_THE_WAY.includes(nodes.get(end)?.nodeKind ?? '')) queue.push({ at: end, wayMm: far });
    }
  }
  return found;
}

const mostMm = ({ sheathed }: Run): number => (sheathed ? SHEATHED_MM : BARE_MM);

/** A fuse on the battery’s own terminal. */
const fusedThere = (run: Run, battery: ServiceNode, { circuits }: Shell): boolean =>
  circuits.some((circuit) => circuit.id === run.circuit && circuit.protection?.at === battery.id);

export const protectionFar: Rule = {
  name: 'service.protection-far',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A wire from a battery that runs more than 7 in (180 mm) before its first fuse, or 72 in (1,829 mm) in a sheath.',
  why: 'Nothing but the battery itself limits a short on that stretch.',
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
    const batteries = shell.nodes.filter(
      (node) => node.medium === 'dc' && (node.role === 'battery' || (node.role === undefined && node.nodeKind === 'source')),
    );
    return batteries.flatMap((battery) =>
      bareRuns(battery, shell)
        .filter(({ run, wayMm }) => wayMm > mostMm(run) + 2.5 && !run.abandoned && !fusedThere(run, battery, shell))
        .map(({ run, wayMm }) => ({
          message: `${run.id} is ${length(wayMm, shop.units)} from ${battery.id} before a fuse, expected at most ${length(mostMm(run), shop.units)}: move the fuse to the battery${run.sheathed ? '' : ', or add `sheathed: yes` where it is in a sheath all along'}`,
          ids: [run.id, battery.id],
          place: run.source.place('to'),
        })),
    );
  },
};
