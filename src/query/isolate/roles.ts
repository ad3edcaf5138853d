import { rootOf } from '../../compute/services/branches.js';
import type { Circuit, Medium, ServiceNode } from '../../model/services.js';
import type { Shell } from '../../model/shell.js';
import type { IsolationAction } from '../lookup/types.js';

const SWITCHED = /\b(?:switch|disconnect|isolator|breaker|cut-?off|fuse|transfer)/iu;
const SHUT = /\b(?:valve|shut-?off|stop-?cock|cock)\b/iu;

const ELECTRIC: readonly Medium[] = ['dc', 'ac', 'data'];

/** How a node can be made to part the two sides of its line; undefined where it cannot. */
export function cutAction({ nodeKind, name = '' }: ServiceNode): Pick<IsolationAction, 'kind' | 'action'> | undefined {
  if (nodeKind === 'valve') return { kind: 'valve', action: 'shut' };
  if (nodeKind === 'connector') return { kind: 'connector', action: 'disconnect' };
  if (nodeKind !== 'device' && nodeKind !== 'fitting' && nodeKind !== 'junction') return undefined;
  if (SHUT.test(name)) return { kind: 'valve', action: 'shut' };
  return SWITCHED.test(name) ? { kind: 'switch', action: 'open' } : undefined;
}

/** What drives a line without being recorded as a source, by the words of its name. */
const DRIVES: readonly (readonly [readonly Medium[], RegExp])[] = [
  [['dc', 'ac'], /\b(?:batter(?:y|ies)|inverter|generator|genset|alternator|solar|shore|charger|converter)\b/iu],
  [['gas'], /\b(?:cylinder|gas tank|propane|bottle)\b/iu],
  [['water', 'hydraulic', 'refrigerant'], /\b(?:pump|city water|accumulator|pressure tank|compressor)\b/iu],
  [['air'], /\b(?:compressor|air tank|reservoir)\b/iu],
];

/**
 * A node of kind `source`, or a device, terminal or connector that is named as one: battery, inverter, shore inlet, pump … Waste
 * lines are fed by the fixtures that stand on them.
 */
export function isSource(node: ServiceNode): boolean {
  if (node.nodeKind === 'source' || (node.medium === 'drain' && node.nodeKind === 'load')) return true;
  const name = (node.name ?? '').replace(BOX, '');
  if (!['device', 'terminal', 'connector', 'junction'].includes(node.nodeKind) || cutsByName(node)) return false;
  return DRIVES.some(([media, words]) => media.includes(node.medium) && words.test(name));
}

/** `junction box, charger` is a box on the way to the charger. */
const BOX = /^.*\b(?:box|splice)\b.*$/iu;

/** A pump or compressor: without its own supply it drives nothing, so work on it needs that switched off and no more. */
export const isDriven = (node: ServiceNode): boolean =>
  node.nodeKind !== 'source' && isSource(node) && /\b(?:pump|compressor)\b/iu.test(node.name ?? '');

/** A battery switch is a switch, not a battery. */
const cutsByName = (node: ServiceNode): boolean => node.nodeKind !== 'connector' && cutAction(node) !== undefined;

/** The node at which an electric circuit is cut by its own fuse or breaker; undefined where none is recorded. */
export function protectionNode(circuit: Circuit, shell: Shell): string | undefined {
  if (!circuit.protection || !ELECTRIC.includes(circuit.medium)) return undefined;
  if (circuit.protection.at !== undefined) return circuit.protection.at;
  // Without a place, the panel that the circuit starts from holds it.
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const root = rootOf(
    circuit,
    shell.runs.filter((run) => run.circuit === circuit.id),
    nodes,
  );
  return root !== undefined && nodes.get(root)?.nodeKind === 'panel' ? root : undefined;
}
