import { bestFirst, isClear } from '../../compute/access/sight.js';
import { surfaces } from '../../compute/access/surfaces.js';
import type { PanelReach } from '../../compute/access/types.js';
import type { Computed } from '../../compute/figures.js';
import { circuitTree, wayTo } from '../../compute/services/branches.js';
import type { Vec3 } from '../../geometry/vector.js';
import { polylineLength } from '../../geometry/vector.js';
import type { Circuit, Run } from '../../records/index.js';
import { aheadOfProtection } from '../isolate/graph/ahead.js';
import { targetsOf } from '../isolate/targets.js';
import { placesOf } from '../place.js';
import { extentOf } from '../place-words.js';
import { factsOf } from './facts.js';
import { matching } from './matching.js';
import { type Findable, findables } from './records.js';
import type { Match, MatchQuality, ProtectionFound } from './types.js';

/** Records by id, name or marking, best first, each with its place, how to get to it and what protects it. */
export function where(assessment: Computed, query: string): readonly Match[] {
  const { shell } = assessment.model;
  const match = matcher(assessment);
  return matching(query, findables(shell), extentOf(shell)).map(([one, quality]) => match(one, quality));
}

/** Tells of one record after another; what they share is looked up once. */
export function matcher(assessment: Computed): (one: Findable, quality: MatchQuality) => Match {
  const look = lookUps(assessment);
  return (one, quality) => matched(one, quality, look);
}

type LookUps = ReturnType<typeof lookUps>;

function lookUps(assessment: Computed) {
  const {
    model: { shell },
    figures,
  } = assessment;
  const circuitsAt = new Map<string, string>();
  for (const run of shell.runs) {
    if (run.circuit === undefined) continue;
    for (const end of [run.from, run.to]) if (!circuitsAt.has(end)) circuitsAt.set(end, run.circuit);
  }
  return {
    assessment,
    shell,
    figures,
    circuitsAt,
    placeOf: placesOf(assessment.model),
    circuits: new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const)),
    runs: new Map(shell.runs.map((run) => [run.id, run] as const)),
    nodes: new Map(shell.nodes.map((node) => [node.id, node] as const)),
    nodeAccess: new Map(figures.access.nodes.map((node) => [node.id, node] as const)),
    runAccess: new Map(figures.access.runs.map((run) => [run.id, run] as const)),
    runLength: new Map(figures.takeOff.runs.map((run) => [run.id, run.lengthMm] as const)),
    memberLength: new Map(figures.takeOff.members.map((member) => [member.id, member.lengthMm] as const)),
    circuitFigure: new Map(figures.services.circuits.map((circuit) => [circuit.id, circuit] as const)),
  };
}

function matched(one: Findable, quality: MatchQuality, look: LookUps): Match {
  const { id, kind, name, marking, service, position } = one;
  const base = {
    id,
    kind,
    quality,
    name,
    marking,
    service,
    position,
    place: look.placeOf(id),
    open: false,
    follow: [] as readonly string[],
    facts: factsOf(one, look.assessment),
  };
  switch (kind) {
    case 'node': {
      const access = look.nodeAccess.get(id);
      const circuit = look.nodes.get(id)?.circuit ?? look.circuitsAt.get(id);
      const open = access?.open ?? false;
      return { ...base, panels: access?.panels ?? [], open, protection: protectionOf(circuit, look, id), path: [] };
    }
    case 'run': {
      const access = look.runAccess.get(id);
      const protection = protectionOf(look.runs.get(id)?.circuit, look, id);
      const lengthMm = look.runLength.get(id);
      const open = one.path.length > 0 && access?.openMm !== undefined && access.openMm >= access.lengthMm - 1;
      return { ...base, open, panels: access?.panels ?? [], follow: access?.follow ?? [], protection, path: one.path, lengthMm };
    }
    case 'circuit':
      return circuitMatch(base, look.circuits.get(id) as Circuit, look);
    case 'member': {
      const lengthMm = look.memberLength.get(id);
      return { ...base, panels: panelsOnto([id], look), path: one.path, lengthMm };
    }
    case 'weld': {
      const weld = look.shell.welds.find((other) => other.id === id);
      return { ...base, panels: panelsOnto(weld?.joins.flat() ?? [], look), path: [] };
    }
    case 'component':
    case 'tank': {
      const at = nodesAt(id, look);
      const circuit = at
        .map((node) => look.nodes.get(node)?.circuit ?? look.circuitsAt.get(node))
        .find((found) => found !== undefined);
      // Its own body first; where none of it is near a panel, what is connected to it.
      const own = panelsOnto([id], look);
      const panels = bestFirst([...own, ...panelsOnto(at, look).filter(({ panel }) => own.every((one) => one.panel !== panel))]);
      return { ...base, panels, protection: protectionOf(circuit, look), path: [] };
    }
    case 'panel':
      return { ...base, surface: surfaces(look.assessment.model).get(id), panels: panelsOnto([id], look), path: one.path };
    default:
      return { ...base, panels: panelsOnto([id], look), path: one.path };
  }
}

/** The connections at a tank or piece of equipment, electric ones first. */
function nodesAt(id: string, { assessment, shell, nodes }: LookUps): readonly string[] {
  const entry = shell.byId.get(id);
  const at = (entry && targetsOf(entry, assessment)?.nodes) ?? [];
  const isElectric = (node: string): number => (['dc', 'ac'].includes(nodes.get(node)?.medium ?? '') ? 0 : 1);
  return [...at].sort((a, b) => isElectric(a) - isElectric(b));
}

function circuitMatch(base: Omit<Match, 'panels' | 'path'>, circuit: Circuit, look: LookUps): Match {
  const figure = look.circuitFigure.get(circuit.id);
  const runs = look.shell.runs.filter((run) => run.circuit === circuit.id);
  const ends = new Set(runs.flatMap((run) => [run.from, run.to]).filter((end) => !look.nodeAccess.get(end)?.open));
  const best = new Map<string, PanelReach>();
  for (const end of ends) {
    for (const reach of look.nodeAccess.get(end)?.panels ?? []) {
      const before = best.get(reach.panel);
      best.set(reach.panel, before ? (bestFirst([before, reach])[0] as PanelReach) : reach);
    }
  }
  const all = bestFirst([...best.values()]);
  const clear = all.filter(isClear);
  const path = circuitPath(circuit, runs, look);
  return {
    ...base,
    position: look.nodes.get(figure?.root ?? '')?.at ?? path[0],
    place: figure?.root === undefined ? base.place : look.placeOf(figure.root),
    // The panels that open onto some of its nodes; where none does, those that come nearest.
    panels: clear.length > 0 ? clear : all,
    protection: protectionOf(circuit.id, look),
    path,
    lengthMm: figure?.lengthMm,
    circuit: figure,
  };
}

/** From the root to the worst load; without loads, the whole way of the first run. */
function circuitPath(circuit: Circuit, runs: readonly Run[], look: LookUps): readonly Vec3[] {
  const figure = look.circuitFigure.get(circuit.id);
  if (figure?.root === undefined || figure.worstLoad === undefined) return runs[0]?.path ?? [];
  const tree = circuitTree(figure.root, runs, (run) => look.runLength.get(run.id) ?? polylineLength(run.path));
  return wayTo(figure.worstLoad, tree).flatMap(({ run, from }, i) => {
    const path = run.from === from ? run.path : [...run.path].reverse();
    return i === 0 ? path : path.slice(1);
  });
}

/** `of`: the run or node that is asked for; what lies before the device is not protected by it. */
function protectionOf(id: string | undefined, look: LookUps, of?: string): ProtectionFound | undefined {
  if (of !== undefined && aheadOfProtection(look.shell).has(of)) return undefined;
  const circuit = id === undefined ? undefined : look.circuits.get(id);
  if (!circuit?.protection) return undefined;
  const { kind, ratingA } = circuit.protection;
  const at = circuit.protection.at ?? look.circuitFigure.get(circuit.id)?.root;
  const access = at === undefined ? undefined : look.nodeAccess.get(at);
  const open = access?.open ?? false;
  return { circuit: circuit.id, kind, ratingA, at, panels: open ? [] : (access?.panels ?? []), open };
}

/** Panels that have any of these records behind them within reach, best first. */
function panelsOnto(ids: readonly string[], { figures }: LookUps): readonly PanelReach[] {
  const wanted = new Set(ids);
  return bestFirst(
    Object.entries(figures.access.behind).flatMap(([panel, items]) =>
      items
        .filter((item) => wanted.has(item.id))
        .slice(0, 1)
        .map(({ distanceMm, reach, blockedBy, toleranceMm, approach }) => ({
          panel,
          distanceMm,
          reach,
          blockedBy,
          toleranceMm,
          approach,
        })),
    ),
  );
}
