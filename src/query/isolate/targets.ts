import { componentBox } from '../../compute/access/walls.js';
import type { Computed } from '../../compute/figures.js';
import { isInBox } from '../../geometry/box.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Component, Entry, Shell, Tank } from '../../model/shell.js';

/** What must be dead before work on a record: nodes and runs. */
export interface Targets {
  readonly nodes: readonly string[];
  readonly runs: readonly string[];
  readonly note?: string;
}

/** A connection this near to a tank or component belongs to it, mm. House value. */
const AT_IT_MM = 300;
/** Connections stand a little off a component's case, mm. House value. */
const OFF_CASE_MM = 50;

/** Undefined where nothing of a service is recorded at it: then nobody can say what feeds it. */
export function targetsOf({ kind, id, record }: Entry, { model: { shell }, figures }: Computed): Targets | undefined {
  switch (kind) {
    case 'node':
      return { nodes: [id], runs: [] };
    case 'run':
      return { nodes: [], runs: [id] };
    case 'circuit':
      return some({ nodes: [], runs: shell.runs.filter((run) => run.circuit === id).map((run) => run.id) });
    case 'component':
    case 'tank':
      return atIt(record as Component | Tank, shell);
    case 'zone': {
      const runs = figures.services.zones.find((zone) => zone.id === id)?.runs;
      const named = shell.runs.filter((run) => run.zones.includes(id)).map((run) => run.id);
      return some({ nodes: [], runs: [...new Set([...(runs ?? []), ...named])], note: 'Everything that runs in the cavity.' });
    }
    case 'panel': {
      const items = figures.access.behind[id] ?? [];
      const of = (wanted: string): readonly string[] => items.filter((item) => item.kind === wanted).map((item) => item.id);
      return some({ nodes: of('node'), runs: of('run'), note: 'Everything within an arm’s length behind the panel.' });
    }
    default:
      return undefined;
  }
}

const some = (targets: Targets): Targets | undefined => (targets.nodes.length + targets.runs.length > 0 ? targets : undefined);

function atIt(record: { readonly id: string; readonly at: Vec3; readonly sizeMm?: Vec3 }, shell: Shell): Targets | undefined {
  const box = componentBox(record);
  const isAt = (at: Vec3): boolean => (box ? isInBox(at, box, OFF_CASE_MM) : distance(at, record.at) <= AT_IT_MM);
  const own = `${record.id}/`;
  const nodes = shell.nodes.filter((node) => node.id.startsWith(own) || isAt(node.at)).map((node) => node.id);
  return some({ nodes, runs: [], note: `Taken as connected to ${record.id} by their id or place: ${nodes.join(', ')}.` });
}
