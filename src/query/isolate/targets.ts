import type { Computed } from '../../compute/figures.js';
import { onceEach } from '../../compute/lazy-value.js';
import { zonesOfRuns } from '../../compute/services/zones-of-runs.js';
import { unplaced } from '../../model/placed.js';
import type { Entry, Shell } from '../../records/index.js';
import type { Unknown } from './graph/facts.js';
import type { DeadTargets as Parts } from './graph/solve.js';

/** What must be dead before work on a record. */
export interface Targets extends Parts {
  readonly note?: string;
  /** What the record would have to say for the list to be whole. */
  readonly unknown: readonly Unknown[];
}

/** Undefined for what no service can be at: a member, a weld, a seat. */
export function targetsOf({ kind, id }: Entry, { model, figures }: Computed): Targets | undefined {
  const { shell } = model;
  switch (kind) {
    case 'node': {
      const whole = shell.nodes.find((node) => node.id === id)?.of ?? [];
      const note = whole.length > 0 ? `For work on the whole of ${whole.join(' and ')} isolate that.` : undefined;
      return { nodes: [id], runs: [], unknown: [], ...(note === undefined ? {} : { note }) };
    }
    case 'run':
      return { nodes: [], runs: [id], unknown: [] };
    case 'circuit':
      return some({ nodes: [], runs: shell.runs.filter((run) => run.circuit === id).map((run) => run.id) }, id, 'circuit');
    case 'component':
    case 'tank': {
      const nodes = nodesOf(id, shell);
      if (nodes.length > 0) return { nodes, runs: [], unknown: [], note: `Its connections, as recorded: ${nodes.join(', ')}.` };
      const what = `no node is recorded \`of: ${id}\`: record its connections, in every service; where it has none, look and say so in its \`note\``;
      return { nodes, runs: [], unknown: [{ id, what }] };
    }
    case 'zone': {
      const all = { nodes: [], runs: shell.runs.filter((run) => touched(model).get(run.id)?.has(id)).map((run) => run.id) };
      return withUnplaced(some(all, id, 'run', 'Everything that runs in the cavity.'), id, shell, all);
    }
    case 'panel': {
      const items = figures.access.behind[id] ?? [];
      const of = (wanted: string): readonly string[] => items.filter((item) => item.kind === wanted).map((item) => item.id);
      const all = { nodes: of('node'), runs: of('run') };
      return withUnplaced(some(all, id, 'run', 'Everything within an arm’s length behind the panel.'), id, shell, all);
    }
    default:
      return undefined;
  }
}

/** The zones that each run comes into: a saw meets one that only crosses a cavity as well. */
const touched = onceEach((model: Computed['model']) => zonesOfRuns(model, 0));

function some(parts: Parts, id: string, of: string, note?: string): Targets | undefined {
  if (parts.nodes.length + parts.runs.length === 0) return of === 'circuit' ? nothingOf(id) : undefined;
  return { ...parts, unknown: [], ...(note === undefined ? {} : { note }) };
}

/** What has no recorded place may lie there too. */
function withUnplaced(found: Targets | undefined, id: string, shell: Shell, parts: Parts): Targets | undefined {
  const listed = new Set([...parts.nodes, ...parts.runs]);
  const lost = unplaced(shell).filter((one) => !listed.has(one));
  if (lost.length === 0) return found;
  const shown = lost.slice(0, MOST_NAMED).join(', ') + (lost.length > MOST_NAMED ? ` and ${lost.length - MOST_NAMED} more` : '');
  const what = `the place of ${shown} is not recorded: it may lie there too; record \`at\``;
  return { ...(found ?? { ...parts, unknown: [] }), unknown: [...(found?.unknown ?? []), { id, what }] };
}
const MOST_NAMED = 6;

const nothingOf = (id: string): Targets => ({
  nodes: [],
  runs: [],
  unknown: [{ id, what: 'no run of it is recorded: record its wires or pipes' }],
});

/** Every node that is recorded as belonging to a component or tank, and to a tank or component that is the same solid. */
export function nodesOf(id: string, { nodes, tanks }: Pick<Shell, 'nodes' | 'tanks'>): readonly string[] {
  const same = new Set([id]);
  for (const tank of tanks) {
    if (tank.id === id && tank.of !== undefined) same.add(tank.of);
    if (tank.of === id) same.add(tank.id);
  }
  return nodes.filter((node) => node.of?.some((one) => same.has(one))).map((node) => node.id);
}
