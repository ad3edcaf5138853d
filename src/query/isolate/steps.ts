import type { Medium, NodeRole, ServiceNode } from '../../records/index.js';
import { behaviourOf, isElectric } from './graph/behaviour.js';
import type { Solution } from './graph/solve.js';
import type { Surroundings } from './surroundings.js';
import type { Targets } from './targets.js';
import type { IsolationAction } from './types.js';

/** What is switched off at its own control before anything upstream of it is. */
const LOADS: readonly NodeRole[] = ['appliance', 'heater', 'pump', 'compressor', 'charger', 'inverter', 'inverter charger'];
const FLUIDS: readonly Medium[] = ['water', 'drain', 'air', 'hydraulic', 'fuel', 'gas'];

const isTargeted = (targets: Targets): ((id: string) => boolean) => {
  const ids = new Set(targets.nodes);
  return (id) => ids.has(id);
};

/**
 * Loads off first, so that nothing is switched or pulled under load: 29 CFR 1910.147(d)(2), orderly shutdown. One line a piece of
 * equipment: those worked on, and those that hang on the same wires.
 */
export function loadSteps(
  targets: Targets,
  { joined }: Solution,
  { nodes, placed, mediaOf }: Surroundings,
): readonly IsolationAction[] {
  const media = mediaOf(targets);
  const targeted = isTargeted(targets);
  const told = new Set<string>();
  return [...targets.nodes, ...joined].flatMap((id) => {
    const node = nodes.get(id);
    if (!node || !media.includes(node.medium) || !(isLoad(node) || (targeted(id) && isOwnLoad(node)))) return [];
    const things = node.of ?? [id];
    if (things.some((thing) => told.has(thing))) return [];
    for (const thing of things) told.add(thing);
    const named = node.of ? `${node.of.join(', ')} (at ${id})` : id;
    return [{ id, kind: 'load', action: 'open', say: `Switch ${named} off at its own control.`, step: 'load', ...placed(id) }];
  });
}

const isLoad = ({ role, medium }: ServiceNode): boolean => role !== undefined && LOADS.includes(role) && isElectric(medium);
/** What is worked on itself is switched off whatever runs in it. */
const isOwnLoad = (node: ServiceNode): boolean =>
  behaviourOf(node).way === 'end' && node.nodeKind !== 'drain' && ['dc', 'ac', 'gas', 'fuel'].includes(node.medium);

/** A tank with several nodes is emptied once, at all of them. */
export function emptiedOnce(steps: readonly IsolationAction[], { nodes }: Surroundings): readonly IsolationAction[] {
  const tankOf = ({ id }: IsolationAction): string | undefined => {
    const node = nodes.get(id);
    return node?.role === 'tank' ? node.of?.toSorted().join(' ') : undefined;
  };
  return steps.flatMap((step, at) => {
    const tank = tankOf(step);
    if (tank === undefined) return [step];
    const same = steps.filter((one) => tankOf(one) === tank);
    if (same[0] !== steps[at]) return [];
    const lines = same.flatMap((one) => one.lines ?? []);
    const say = `Empty the tank at ${same.map(({ id }) => id).join(', ')}.`;
    return [{ ...step, say, ...(lines.length > 0 ? { lines } : {}) }];
  });
}

/** What is still held when all is shut: 29 CFR 1910.147(d)(5), stored energy. */
export function storedSteps(targets: Targets, solution: Solution, around: Surroundings): readonly IsolationAction[] {
  const { nodes, placed } = around;
  const held = [...new Set([...solution.storing, ...targets.nodes])].flatMap((id) => {
    const node = nodes.get(id);
    const how = node && HELD[node.role as string];
    return node && how ? [{ id, ...how(id, node), step: 'stored' as const, ...placed(id) }] : [];
  });
  return [...held, ...letOut(solution, targets, around)];
}

const HELD: Readonly<
  Record<string, ((id: string, node: ServiceNode) => Pick<IsolationAction, 'kind' | 'action' | 'say'>) | undefined>
> = {
  heater: (id) => ({
    kind: 'heater',
    action: 'drain',
    say: `Let ${id} cool, then let its pressure and hot water out. It scalds.`,
  }),
  accumulator: (id) => ({ kind: 'accumulator', action: 'drain', say: `Let the pressure out of ${id} to zero.` }),
  capacitor: (id) => ({
    kind: 'capacitor',
    action: 'drain',
    say: `Discharge ${id} and short it: it holds its charge when switched off.`,
  }),
};

/** Pressure and contents of the pipes that were cut off: by their drains, the lowest last; without one by a tap or gauge tapping. */
function letOut({ joined }: Solution, targets: Targets, around: Surroundings): readonly IsolationAction[] {
  const { nodes, placed, mediaOf } = around;
  return mediaOf(targets)
    .filter((medium) => FLUIDS.includes(medium))
    .flatMap((medium) => {
      const here = joined.flatMap((id) => {
        const node = nodes.get(id);
        return node && node.medium === medium ? [node] : [];
      });
      const drains = here
        .filter((node) => node.nodeKind === 'drain' || node.role === 'drain cock')
        .sort((a, b) => (b.at?.[2] ?? 0) - (a.at?.[2] ?? 0))
        .map(({ id }) => ({ id, kind: 'drain', action: 'drain' as const, say: `Open drain ${id} and leave it open.` }));
      // Gas is never let out into the room on purpose: it burns off, or comes out where the line is opened.
      const vents =
        medium === 'gas' ? [] : here.filter((node) => node.role === 'tap' || node.nodeKind === 'test-point').slice(0, 1);
      const found =
        drains.length > 0
          ? drains
          : vents.length > 0
            ? vents.map(({ id }) => ({
                id,
                kind: 'vent',
                action: 'drain' as const,
                say: `Let the pressure out at ${id} to zero.`,
              }))
            : atTheWork(medium, targets, here, around);
      return found.map((one) => ({ ...one, step: 'stored' as const, ...placed(one.id) }));
    });
}

/** Under pressure, and nothing is recorded to let it out by: it comes out where the line is opened. */
function atTheWork(medium: Medium, targets: Targets, here: readonly ServiceNode[], { nodes, runs }: Surroundings) {
  const say = LOOSENED[medium];
  const ends = targets.runs.flatMap((id) => (runs.get(id)?.medium === medium ? endsOf(id, runs) : []));
  const id = [...targets.nodes, ...ends].find((one) => nodes.get(one)?.medium === medium) ?? here[0]?.id;
  return say === undefined || id === undefined ? [] : [{ id, kind: 'joint', action: 'drain' as const, say: say(id) }];
}

const LOOSENED: Readonly<Partial<Record<Medium, (id: string) => string>>> = {
  water: (id) => `No drain or tap is recorded here: loosen the joint at ${id} slowly and catch what comes.`,
  air: (id) => `No drain or tapping is recorded here: loosen the joint at ${id} slowly, face turned away, until nothing comes.`,
  hydraulic: (id) =>
    `No tapping is recorded here: loosen the joint at ${id} slowly under a rag, hands away from the jet, until nothing comes.`,
  gas: (id) => `What is left in the pipe comes out at ${id} when it is opened: no flame, doors and windows open.`,
  fuel: (id) => `What is left in the line comes out at ${id} when it is opened: no flame, and a pan under it.`,
};

/** Proof at the place of work, in every medium of it: 29 CFR 1910.147(d)(6), verification of isolation. */
export function proofSteps(targets: Targets, solution: Solution, around: Surroundings): readonly IsolationAction[] {
  const { nodes, runs, placed, mediaOf } = around;
  return mediaOf(targets).map((medium) => {
    const own = [...targets.nodes, ...targets.runs.flatMap((id) => endsOf(id, runs))].filter(
      (id) => nodes.get(id)?.medium === medium,
    );
    const here = solution.joined.filter((id) => nodes.get(id)?.medium === medium);
    const tapping = here.find((id) => nodes.get(id)?.nodeKind === 'test-point');
    const id =
      (isElectric(medium) || medium === 'data' ? own[0] : (tapping ?? own[0])) ??
      touching(medium, targets, around) ??
      targets.runs[0] ??
      '';
    return { id, kind: 'proof', action: 'open', say: PROOF[medium](id), step: 'proof', ...placed(id) };
  });
}

/** The target at which a run of a medium ends, where none is of that medium itself. */
const touching = (medium: Medium, { nodes }: Targets, { shell }: Surroundings): string | undefined =>
  nodes.find((id) => shell.runs.some((run) => run.medium === medium && (run.from === id || run.to === id)));

const endsOf = (id: string, runs: Surroundings['runs']): readonly string[] => {
  const run = runs.get(id);
  return run ? [run.to, run.from] : [];
};

const METER = (id: string): string =>
  `Try the controls: nothing may start. Try the meter on a live wire, measure at ${id} between all conductors and to ground, 0 V, then try the meter again.`;
const EMPTY = (id: string): string => `Open ${id}: nothing may come out, and a gauge there must stay at zero.`;

const PROOF: Readonly<Record<Medium, (id: string) => string>> = {
  dc: METER,
  ac: METER,
  data: (id) => `See that nothing at ${id} lights or answers.`,
  water: EMPTY,
  drain: EMPTY,
  fuel: EMPTY,
  air: EMPTY,
  hydraulic: EMPTY,
  gas: (id) => `A gauge at ${id} must stay at zero with every shut-off above it shut; try the air with a gas detector.`,
  duct: (id) => `No air may move at ${id}, and it must have cooled.`,
  refrigerant: (id) => `Only a licensed technician opens ${id}: a gauge there must read zero.`,
};
