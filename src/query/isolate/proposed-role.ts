import type { Medium, NodeRole, ServiceNode } from '../../records/index.js';
import { mediaOfRole } from './graph/behaviour.js';

/** What a name suggests that a node does. For a person to look at and type: nothing is answered by it. First that fits. */
const SUGGESTS: readonly (readonly [RegExp, NodeRole])[] = [
  [/\btransfer|change-?over\b/iu, 'changeover'],
  [/\binverter.*charger\b/iu, 'inverter charger'],
  [/\bfuse\b/iu, 'fuse'],
  [/\bbreaker\b/iu, 'breaker'],
  [/\b(?:switch|disconnect|isolator)\b/iu, 'switch'],
  [/\b(?:solar|mppt).*(?:regulator|controller)\b/iu, 'solar regulator'],
  [/\bregulator\b/iu, 'gas regulator'],
  [/\binverter\b/iu, 'inverter'],
  [/\bcharger\b/iu, 'charger'],
  [/\bconverter\b/iu, 'converter'],
  [/\bbatter(?:y|ies)\b/iu, 'battery'],
  [/\b(?:generator|genset)\b/iu, 'generator'],
  [/\balternator\b/iu, 'alternator'],
  [/\bshore\b/iu, 'shore inlet'],
  [/\bsolar\b/iu, 'solar panel'],
  [/\bcity|hose inlet\b/iu, 'city inlet'],
  [/\b(?:propane|cylinder|bottle)\b/iu, 'cylinder'],
  [/\b(?:receiver|reservoir)\b/iu, 'reservoir'],
  [/\baccumulator\b/iu, 'accumulator'],
  [/\bcompressor\b/iu, 'compressor'],
  [/\bpump|power pack\b/iu, 'pump'],
  [/\b(?:heater|boiler)\b/iu, 'heater'],
  [/\btank\b/iu, 'tank'],
  [/\b(?:valve|shut-?off|cock|damper)\b/iu, 'shut-off'],
  [/\b(?:panel|bus|bar)\b/iu, 'busbar'],
  [/\b(?:outlet|socket|receptacle)\b/iu, 'outlet'],
];

/** Undefined where a name suggests nothing that is found in the node's medium. */
export function proposedRole({
  name = '',
  nodeKind,
  medium,
}: Pick<ServiceNode, 'name' | 'nodeKind' | 'medium'>): NodeRole | undefined {
  const named = SUGGESTS.find(([words, role]) => words.test(name) && fits(role, medium))?.[1];
  if (named !== undefined) return named;
  if (nodeKind === 'panel' && fits('busbar', medium)) return 'busbar';
  return nodeKind === 'device' ? 'appliance' : undefined;
}

const fits = (role: NodeRole, medium: Medium): boolean => mediaOfRole(role).includes(medium);
