/**
 * Isolation the slow way, written apart from the program: every state of every switch, every position of every changeover and every
 * side that is not recorded, one after another, and in each what the sources reach by plain repetition.
 */
import type { ServiceFacts } from '../../../src/query/isolate/graph/facts.js';

type Node = ServiceFacts['nodes'][number];
type Run = ServiceFacts['runs'][number];

const SOURCE_ROLES = new Set(
  'battery,generator,alternator,shore inlet,solar panel,tank,cylinder,city inlet,reservoir'.split(','),
);
const SWITCH_ROLES = new Set('switch,breaker,fuse,shut-off,plug'.split(','));
const VALVE_ROLES = new Set('charger,converter,inverter,solar regulator,gas regulator,check valve,diode,heater'.split(','));
const PUMP_ROLES = new Set(['pump', 'compressor']);

const kindOf = ({ role, nodeKind, medium }: Node): string => {
  if (role !== undefined) {
    if (SOURCE_ROLES.has(role)) return 'source';
    if (SWITCH_ROLES.has(role)) return 'switch';
    if (VALVE_ROLES.has(role)) return 'one way';
    if (PUMP_ROLES.has(role)) return 'pump';
    if (role === 'changeover' || role === 'inverter charger') return role;
    return medium === 'drain' && ['outlet', 'appliance', 'tap', 'fixture'].includes(role) && nodeKind !== 'drain'
      ? 'source'
      : 'joint';
  }
  if (nodeKind === 'source' || (medium === 'drain' && nodeKind === 'load')) return 'source';
  return nodeKind === 'valve' ? 'switch' : 'joint';
};

const sidesFor = (kind: string): readonly string[] =>
  kind === 'switch' ? ['line', 'load'] : kind === 'one way' || kind === 'pump' ? ['in', 'out'] : ['ac in', 'ac out', 'dc'];

interface End {
  readonly run: Run;
  readonly key: string;
  readonly side: string | undefined;
}

const endsAt = ({ runs }: ServiceFacts, id: string): End[] =>
  runs.flatMap((run) => [
    ...(run.from === id ? [{ run, key: `${run.id}<`, side: run.fromSide }] : []),
    ...(run.to === id ? [{ run, key: `${run.id}>`, side: run.toSide }] : []),
  ]);

/** What may be done: `node` or `node circuit`. */
export function actionsOf(facts: ServiceFacts): readonly string[] {
  return [
    ...facts.nodes.filter((node) => ['switch', 'source'].includes(kindOf(node))).map((node) => node.id),
    ...facts.circuits.flatMap(({ id, protection }) => {
      const at = facts.nodes.find((node) => node.id === protection?.at);
      const used = facts.runs.some((run) => run.circuit === id && (run.from === at?.id || run.to === at?.id));
      return at && used && at.role !== 'fuse' && at.role !== 'breaker' ? [`${at.id} ${id}`] : [];
    }),
  ];
}

/** Every state that a hand, or a gap in the record, leaves possible: run end → side, changeover → supply. */
export function statesOf(facts: ServiceFacts): readonly ReadonlyMap<string, string>[] {
  let states: Map<string, string>[] = [new Map()];
  const vary = (key: string, options: readonly string[]): void => {
    states = states.flatMap((state) => options.map((one) => new Map(state).set(key, one)));
  };
  for (const node of facts.nodes) {
    const kind = kindOf(node);
    if (kind === 'source' || kind === 'joint') continue;
    const ends = endsAt(facts, node.id);
    if (kind === 'changeover') {
      const named = [...new Set(ends.flatMap((end) => (end.side?.startsWith('supply') ? [end.side] : [])))];
      for (const spare of ['supply 1', 'supply 2']) if (named.length < 2 && !named.includes(spare)) named.push(spare);
      vary(node.id, named);
      for (const end of ends) vary(end.key, end.side === undefined ? ['load', ...named] : [end.side]);
      continue;
    }
    const sides = sidesFor(kind);
    const fixed = new Map(
      ends.map((end) => {
        const byMedium =
          end.run.medium !== 'ac' ? undefined : ({ charger: 'in', inverter: 'out' } as Record<string, string>)[node.role ?? ''];
        return [end.key, end.side ?? byMedium] as const;
      }),
    );
    const free = ends.filter((end) => fixed.get(end.key) === undefined);
    if (sides.length === 2 && ends.length === 2 && free.length === 1) {
      const taken = [...fixed.values()].find((side) => side !== undefined);
      fixed.set(
        (free[0] as End).key,
        sides.find((side) => side !== taken),
      );
    } else if (kind === 'switch' && ends.length <= 2 && free.length > 0) {
      for (const [i, end] of free.entries()) fixed.set(end.key, sides[i]);
    }
    for (const end of ends) vary(end.key, fixed.get(end.key) === undefined ? sides : [fixed.get(end.key) as string]);
  }
  return states;
}

/** Sources that reach any of some nodes and runs, in one state, with some actions done. */
export function reachingIn(
  facts: ServiceFacts,
  targets: { readonly nodes: readonly string[]; readonly runs: readonly string[] },
  done: ReadonlySet<string>,
  state: ReadonlyMap<string, string>,
): readonly string[] {
  const ways: [from: string, to: string][] = [];
  const both = (a: string, b: string): void => void ways.push([a, b], [b, a]);
  const starts = new Map<string, string>();
  for (const node of facts.nodes) {
    const kind = kindOf(node);
    const at = (side: string): string => `${node.id}|${side}`;
    if (kind === 'source') {
      starts.set(node.id, at('core'));
      if (!done.has(node.id)) ways.push([at('core'), at('')]);
    }
    if (kind === 'switch' && !done.has(node.id)) both(at('line'), at('load'));
    if (kind === 'one way' || kind === 'pump') ways.push([at('in'), at('out')]);
    if (kind === 'inverter charger') ways.push([at('ac in'), at('dc')], [at('ac in'), at('ac out')], [at('dc'), at('ac out')]);
    if (kind === 'changeover') both(at(state.get(node.id) as string), at('load'));
    if (kind === 'pump') {
      const motors = facts.nodes.filter(
        (one) => (one.medium === 'dc' || one.medium === 'ac') && one.of?.some((id) => node.of?.includes(id)),
      );
      for (const motor of motors) for (const side of allSides(motor)) ways.push([`${motor.id}|${side}`, at('out')]);
      if (motors.length === 0) {
        starts.set(node.id, at('core'));
        ways.push([at('core'), at('out')]);
      }
    }
    for (const end of endsAt(facts, node.id)) {
      const side = kind === 'source' || kind === 'joint' ? '' : (state.get(end.key) as string);
      const circuit = facts.circuits.find((one) => one.id === end.run.circuit);
      const fused =
        circuit?.protection?.at === node.id &&
        ['fuse', 'breaker'].includes(circuit.protection.kind) &&
        node.role !== 'fuse' &&
        node.role !== 'breaker';
      if (!fused) both(at(side), `run|${end.run.id}`);
      else {
        const holder = `${at(side)}|${circuit.id}`;
        both(holder, `run|${end.run.id}`);
        if (!done.has(`${node.id} ${circuit.id}`)) both(at(side), holder);
      }
    }
  }
  const goals = new Set([
    ...targets.runs.map((id) => `run|${id}`),
    ...targets.nodes.flatMap((id) => {
      const node = facts.nodes.find((one) => one.id === id) as Node;
      const inside = kindOf(node) === 'source' && !stops(node) ? [`${id}|core`] : [];
      return [...allSides(node).map((side) => `${id}|${side}`), ...inside];
    }),
  ]);
  return [...starts].flatMap(([id, start]) => {
    const live = new Set([start]);
    for (let before = 0; before !== live.size; ) {
      before = live.size;
      for (const [from, to] of ways) if (live.has(from)) live.add(to);
    }
    return [...goals].some((goal) => live.has(goal)) ? [id] : [];
  });
}

const stops = ({ role, medium }: Node): boolean =>
  medium === 'drain' ||
  (medium !== 'gas' && ['generator', 'alternator', 'shore inlet', 'city inlet', 'tank', 'reservoir'].includes(role ?? ''));

function allSides(node: Node): readonly string[] {
  const kind = kindOf(node);
  if (kind === 'source' || kind === 'joint') return [''];
  if (kind === 'changeover') return ['load', ...[1, 2, 3, 4, 5].map((i) => `supply ${i}`)];
  return sidesFor(kind);
}
