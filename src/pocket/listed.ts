import { rescueItems } from '../drawing/rescue.js';
import { drainPlan } from '../query/lookup/index.js';
import type { ServiceNode } from '../records/index.js';
import type { Pocket } from './pocket.js';

/** What an owner works by hand: the rest is for whoever services the coach. */
const OWNERS_ROLES: readonly (ServiceNode['role'] | undefined)[] = [
  ...(['switch', 'breaker', 'fuse', 'shut-off', 'plug', 'changeover', 'drain cock'] as const),
  ...(['battery', 'generator', 'shore inlet', 'cylinder', 'city inlet', 'pump', 'heater'] as const),
];
const OWNERS_KINDS: readonly ServiceNode['nodeKind'][] = ['valve', 'drain', 'panel', 'source'];

/** The ids of everything that has a card in this edition, in the order of the lists. */
export function cardIds(p: Pocket): ReadonlySet<string> {
  const { shell } = p.assessment.model;
  const isOwner = p.edition === 'owner';
  const named = isOwner ? namedForOwner(p) : new Set<string>();
  const isOwners = (node: ServiceNode): boolean =>
    named.has(node.id) || OWNERS_KINDS.includes(node.nodeKind) || OWNERS_ROLES.includes(node.role);
  return new Set(
    [
      ...shell.panels.filter(({ panelKind }) => panelKind === 'access'),
      ...(isOwner ? shell.nodes.filter(isOwners) : shell.nodes),
      ...shell.circuits,
      ...(isOwner ? [] : shell.runs),
      ...shell.components,
      ...shell.tanks,
      ...shell.bays,
      ...(isOwner ? [] : [...shell.zones, ...shell.panels, ...(hasMemberCards(p) ? shell.members : [])]),
      ...shell.openings,
      ...shell.declared,
    ].map(({ id }) => id),
  );
}

/** With more frame members than this none has a card: the page would be larger than a mail takes. Taps name them all the same. */
const MOST_MEMBERS = 1000;
export const hasMemberCards = ({ assessment }: Pocket): boolean => assessment.model.shell.members.length <= MOST_MEMBERS;

/** What the emergency page and the winterizing steps name. */
function namedForOwner({ assessment }: Pocket): ReadonlySet<string> {
  return new Set([
    ...rescueItems(assessment.model.shell).items.map(({ id }) => id),
    ...drainPlan(assessment).steps.map(({ id }) => id),
  ]);
}
