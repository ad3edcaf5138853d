import { samples } from '../../compute/access/samples.js';
import { zoneMap } from '../../compute/access/zones.js';
import { isPlaced } from '../../model/placed.js';
import type { RecordBase } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

function missing(what: string, record: RecordBase): RuleFinding {
  return {
    message: `${what} ${record.id} is concealed and does not say how well its place is known, expected a tolerance: add \`tolerance: 15 mm\``,
    ids: [record.id],
    place: record.source.place(),
  };
}

export const noTolerance: Rule = {
  name: 'service.no-tolerance',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A concealed node or run whose record does not say how well its place is known.',
  why: 'A map without a tolerance looks exact, and the next drill is set a finger’s breadth beside a pipe.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
- {id: TC, name: chase, box: [[0 m, -0.2 m, 0.9 m], [3 m, 0.2 m, 1.1 m]]}
# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m], tolerance: 10 mm}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m], tolerance: 10 mm}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [TC]}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [TC], tolerance: 10 mm}
`,
  },
  check({ model: { shell }, figures }) {
    const zones = zoneMap(shell.zones);
    const concealed = new Set(shell.zones.filter((zone) => zone.concealed).map((zone) => zone.id));
    const open = new Map(figures.access.nodes.map((node) => [node.id, node.open] as const));
    const nodes = shell.nodes.filter((node) => node.toleranceMm === undefined && isPlaced(node) && open.get(node.id) === false);
    const runs = shell.runs.filter(
      (run) =>
        run.toleranceMm === undefined &&
        (run.zones.some((id) => concealed.has(id)) ||
          samples(run.path).some((piece) => zones.holding(piece.at).some((zone) => zone.concealed))),
    );
    return [...nodes.map((node) => missing(node.nodeKind, node)), ...runs.map((run) => missing('run', run))];
  },
};
