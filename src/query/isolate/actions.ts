import type { Medium, NodeRole, ServiceNode } from '../../records/index.js';
import type { Link } from './graph/graph.js';
import type { IsolationAction } from './types.js';

/** What a hand does at a link, and how gladly. */
export interface Handling extends Pick<IsolationAction, 'kind' | 'action'> {
  /** After the id, as `Switch X off …`: `%` stands for the id. */
  readonly say: string;
  /** A source's own leads or lines come off: done only where nothing else parts it from the work. */
  readonly lastResort?: boolean;
}

/** One action costs so much that no saving in reach outweighs one action more. */
export const ONE_ACTION = 1_000_000;
/** A source's own leads come off only where no number of switches and valves would do. */
const LAST_RESORT = 1000 * ONE_ACTION;
/** Sealed refrigerant: only a licensed technician may open it. Never chosen while anything else is there. */
const SEALED_COST = 1_000_000 * ONE_ACTION;

const SWITCH: Handling = { kind: 'switch', action: 'open', say: 'Switch % off and lock it off.' };
const VALVE: Handling = { kind: 'valve', action: 'shut', say: 'Shut valve % and tag it.' };

const PARTING: Readonly<Partial<Record<NodeRole, Handling>>> = {
  switch: SWITCH,
  breaker: { kind: 'breaker', action: 'open', say: 'Switch breaker % off and lock it off.' },
  fuse: { kind: 'fuse', action: 'open', say: 'Pull fuse % and tag its holder.' },
  'shut-off': VALVE,
  plug: { kind: 'connector', action: 'disconnect', say: 'Unplug %.' },
};

const lastResort = (kind: string, action: Handling['action'], say: string): Handling => ({ kind, action, say, lastResort: true });

const SOURCES: Readonly<Partial<Record<NodeRole, Handling>>> = {
  battery: lastResort('battery lead', 'disconnect', 'At % take the negative lead off first, then the positive; insulate both.'),
  generator: lastResort('generator', 'disconnect', 'Stop generator %, lock its starting, then take its output leads off.'),
  alternator: lastResort('alternator lead', 'disconnect', 'Engine off and key out, then take the lead off %.'),
  'shore inlet': { kind: 'shore cord', action: 'disconnect', say: 'Switch the pedestal off and unplug the shore cord at %.' },
  'solar panel': lastResort(
    'solar leads',
    'disconnect',
    'Cover the solar panels, then unplug or take off the leads at %. Light keeps the panels live.',
  ),
  tank: lastResort('tank', 'drain', 'Empty the tank at %.'),
  cylinder: lastResort('cylinder valve', 'disconnect', 'Shut the valve on %, then take the hose or regulator off it and cap it.'),
  'city inlet': { kind: 'supply hose', action: 'disconnect', say: 'Shut the tap outside and take the hose off %.' },
  reservoir: lastResort('reservoir', 'drain', 'Let the pressure out of % to zero and leave its drain open.'),
};

/** A source of no recorded kind, by what runs in it. */
const SOURCES_OF: Readonly<Record<Medium, Handling>> = {
  dc: lastResort('leads', 'disconnect', 'Switch % off, then take its leads off and insulate their ends.'),
  ac: lastResort('leads', 'disconnect', 'Switch % off, then take its leads off and insulate their ends.'),
  data: lastResort('plug', 'disconnect', 'Unplug the cable at %.'),
  gas: lastResort('cylinder valve', 'disconnect', 'Shut the valve on %, then take the hose or regulator off it and cap it.'),
  water: lastResort('tank connection', 'disconnect', 'Empty %, then take the line off it.'),
  drain: { kind: 'fixture', action: 'shut', say: 'Keep the taps of % shut and plug its waste.' },
  air: lastResort('hose', 'disconnect', 'Stop the compressor, let the pressure off to zero, then take the line off %.'),
  hydraulic: lastResort('hose', 'disconnect', 'Stop the pump, let the pressure off to zero, then take the line off %.'),
  duct: lastResort('duct joint', 'disconnect', 'Switch the blower off, then take the duct off %.'),
  fuel: lastResort('fuel line', 'disconnect', 'Shut or drain %, then take the line off and cap it.'),
  refrigerant: lastResort('sealed line', 'disconnect', 'Have a licensed technician recover the refrigerant at %.'),
};

/** What a hand does at a link. `protection`: the kind of fuse or breaker that a circuit has there. */
export function handlingOf(link: Link, node: Pick<ServiceNode, 'role' | 'medium' | 'nodeKind'>, protection?: string): Handling {
  if (link.of === 'protection') {
    const kind = protection ?? 'protection';
    const say =
      kind === 'breaker'
        ? `Switch the breaker of ${link.circuit} at % off and lock it off.`
        : `Pull the ${kind} of ${link.circuit} at % and tag its holder.`;
    return { kind, action: 'open', say };
  }
  if (link.of === 'source') return (node.role && SOURCES[node.role]) ?? SOURCES_OF[node.medium];
  return (node.role && PARTING[node.role]) ?? VALVE;
}

/** What is not in the coach yet parts nothing: only where there is nothing else, and then nothing is proved. */
const PLANNED = 1000 * LAST_RESORT;

/**
 * How dear a link is: one action, a last resort more, and `access` (0–999) for getting at it. So the cheapest set has the fewest actions;
 * of as many, those that need no panel off and no plug pulled; leads and tanks only where nothing else parts the source.
 */
export function costOfHandling(
  { lastResort: last, kind }: Handling,
  medium: Medium,
  { access, planned }: { readonly access: number; readonly planned: boolean },
): number {
  const unplug = kind === 'connector' ? 100 : kind === 'shore cord' || kind === 'supply hose' ? 400 : 0;
  if (last && medium === 'refrigerant') return SEALED_COST;
  return ONE_ACTION + (planned ? PLANNED : last ? LAST_RESORT : 0) + access + unplug;
}

export const sayAt = (say: string, id: string): string => say.replaceAll('%', () => id);
