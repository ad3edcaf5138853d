import type { Medium, NodeKind, NodeRole } from '../../../records/index.js';
import type { NodeFacts } from './facts.js';

/**
 * What a node does to its line. `parts`: joins its sides while closed. `one way`: from in to out. `drives`: passes in to out, and
 * drives its out side while its equipment is supplied. `unknown`: the record does not say.
 */
export type NodeWay = 'source' | 'parts' | 'changeover' | 'one way' | 'inverter charger' | 'drives' | 'joins' | 'end' | 'unknown';

export interface Behaviour {
  readonly way: NodeWay;
  /** Sides that a run may end on; empty where it has none. A changeover has `supply 1`, `supply 2` … as well as `load`. */
  readonly sides: readonly string[];
  /** It holds energy when it is cut off. */
  readonly stores?: boolean;
}

const ELECTRIC: readonly Medium[] = ['dc', 'ac'];
const WIRED: readonly Medium[] = ['dc', 'ac', 'data'];
const FLUID: readonly Medium[] = ['water', 'drain', 'gas', 'air', 'hydraulic', 'duct', 'refrigerant', 'fuel'];
const ANY: readonly Medium[] = [...WIRED, ...FLUID];

const SOURCE: Behaviour = { way: 'source', sides: [] };
const PARTS: Behaviour = { way: 'parts', sides: ['line', 'load'] };
const ONE_WAY: Behaviour = { way: 'one way', sides: ['in', 'out'] };
const DRIVES: Behaviour = { way: 'drives', sides: ['in', 'out'] };
const JOINS: Behaviour = { way: 'joins', sides: [] };
const END: Behaviour = { way: 'end', sides: [] };
const STORES: Behaviour = { way: 'joins', sides: [], stores: true };

/** Every role: what it does, and the media that it is found in. */
const ROLES: Readonly<Record<NodeRole, readonly [Behaviour, readonly Medium[]]>> = {
  battery: [SOURCE, ['dc']],
  generator: [SOURCE, ELECTRIC],
  alternator: [SOURCE, ELECTRIC],
  'shore inlet': [SOURCE, ELECTRIC],
  'solar panel': [SOURCE, ['dc']],
  tank: [{ ...SOURCE, stores: true }, ['water', 'drain', 'fuel', 'hydraulic', 'gas']],
  cylinder: [{ ...SOURCE, stores: true }, ['gas', 'air', 'refrigerant']],
  'city inlet': [SOURCE, ['water']],
  reservoir: [{ ...SOURCE, stores: true }, ['air', 'hydraulic', 'water']],
  switch: [PARTS, WIRED],
  breaker: [PARTS, ELECTRIC],
  fuse: [PARTS, WIRED],
  'shut-off': [PARTS, FLUID],
  plug: [PARTS, ANY],
  changeover: [{ way: 'changeover', sides: ['load'] }, [...ELECTRIC, 'gas', 'water', 'fuel']],
  charger: [ONE_WAY, ELECTRIC],
  converter: [ONE_WAY, WIRED],
  inverter: [ONE_WAY, ELECTRIC],
  'solar regulator': [ONE_WAY, ['dc']],
  'gas regulator': [ONE_WAY, ['gas', 'air']],
  'check valve': [ONE_WAY, FLUID],
  diode: [ONE_WAY, ['dc']],
  'inverter charger': [{ way: 'inverter charger', sides: ['ac in', 'ac out', 'dc'] }, ELECTRIC],
  pump: [DRIVES, ['water', 'drain', 'fuel', 'hydraulic', 'refrigerant', 'duct', 'gas']],
  compressor: [DRIVES, ['air', 'refrigerant', 'gas']],
  heater: [{ ...ONE_WAY, stores: true }, ['water', 'duct', 'air', 'fuel', 'gas']],
  accumulator: [STORES, ['water', 'air', 'hydraulic', 'fuel']],
  capacitor: [STORES, ELECTRIC],
  busbar: [JOINS, WIRED],
  junction: [JOINS, ANY],
  splice: [JOINS, ANY],
  terminal: [JOINS, ANY],
  outlet: [END, ANY],
  appliance: [END, ANY],
  lamp: [END, ELECTRIC],
  tap: [END, FLUID],
  fixture: [END, FLUID],
  'drain cock': [END, FLUID],
};

/** What a kind does where no role is recorded. */
const KINDS: Readonly<Record<NodeKind, Behaviour>> = {
  source: SOURCE,
  splice: JOINS,
  junction: JOINS,
  terminal: JOINS,
  connector: JOINS,
  fitting: JOINS,
  'test-point': JOINS,
  load: END,
  drain: END,
  valve: PARTS,
  panel: { way: 'unknown', sides: [] },
  device: { way: 'unknown', sides: [] },
};

/** What a node does to its line, by its role, else by its kind. */
export function behaviourOf({ role, nodeKind, medium }: Pick<NodeFacts, 'role' | 'nodeKind' | 'medium'>): Behaviour {
  const found = role === undefined ? KINDS[nodeKind] : ROLES[role][0];
  // Waste comes out of what stands on the line.
  const wastes = medium === 'drain' && found.way === 'end' && nodeKind !== 'drain' && role !== 'drain cock';
  return wastes ? SOURCE : found;
}

/** The media that a role is found in. */
export const mediaOfRole = (role: NodeRole): readonly Medium[] => ROLES[role][1];

export const isElectric = (medium: Medium): boolean => medium === 'dc' || medium === 'ac';

export const isSide = (side: string, { way, sides }: Behaviour): boolean =>
  sides.includes(side) || (way === 'changeover' && /^supply [1-9]\d?$/u.test(side));
