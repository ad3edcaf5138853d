import type { Computed } from '../../compute/figures.js';
import { judgeTest } from '../../compute/verdicts/verdict.js';
import { isPlanned } from '../../model/planned.js';
import { amps, unitSigns } from '../../quantity/format.js';
import type { Circuit, Conductor, Member, Panel, Run, Shell, Weld } from '../../records/index.js';
import { readingWords } from '../topics/tested.js';
import { type Fact, facts } from '../topics/topic.js';
import { torqueSpecified } from '../topics/torque-uses.js';
import type { Findable } from './records.js';
import { upstream } from './upstream.js';

/** What else there is to know of a record that was looked for: its ends, its make, its fasteners, its tests and repairs. */
export function factsOf(one: Findable, assessment: Computed): readonly Fact[] {
  const { shell } = assessment.model;
  const planned = facts(['planned', isPlanned(shell, one.id) ? 'yes: not in the coach yet' : undefined]);
  return [...planned, ...ownFacts(one, assessment), ...evidence(one.id, assessment)];
}

/** Each radius that a member is bent on, once. */
const bendRadii = (member: Member | undefined): readonly number[] =>
  member?.shape.kind === 'line' ? [...new Set(member.shape.bends?.map(({ radiusMm }) => radiusMm))] : [];

/** What each record is told from, gathered once a shell. */
function gather(shell: Shell) {
  const runsAt = new Map<string, Run[]>();
  const runsOf = new Map<string, Run[]>();
  const put = (map: Map<string, Run[]>, key: string, run: Run): void => {
    const list = map.get(key);
    if (list) list.push(run);
    else map.set(key, [run]);
  };
  for (const run of shell.runs) {
    for (const end of new Set([run.from, run.to])) put(runsAt, end, run);
    if (run.circuit !== undefined) put(runsOf, run.circuit, run);
  }
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
  const welds = new Map<string, Weld[]>();
  for (const weld of shell.welds) {
    for (const part of new Set(weld.joins.flat())) welds.set(part, [...(welds.get(part) ?? []), weld]);
  }
  return { nodes, circuits, runs, runsAt, runsOf, welds };
}

const gathered = new WeakMap<Shell, ReturnType<typeof gather>>();

function of(shell: Shell): ReturnType<typeof gather> {
  let found = gathered.get(shell);
  if (!found) {
    found = gather(shell);
    gathered.set(shell, found);
  }
  return found;
}

function ownFacts({ id, kind }: Findable, { model, figures }: Computed): readonly Fact[] {
  const { shell } = model;
  switch (kind) {
    case 'circuit': {
      const circuit = of(shell).circuits.get(id);
      return circuit ? circuitFacts(circuit, of(shell).runsOf.get(id) ?? [], model) : [];
    }
    case 'run': {
      const run = of(shell).runs.get(id);
      const circuit = of(shell).circuits.get(run?.circuit ?? '');
      return run ? runFacts(run, circuit) : [];
    }
    case 'node': {
      const node = of(shell).nodes.get(id);
      const joined = (of(shell).runsAt.get(id) ?? []).map((run) => run.id);
      return facts(
        ['stands', node?.position],
        ['rating', node?.rating?.text],
        ['torque', node?.torqueNm, 'nm'],
        ['joins', joined.slice(0, 8)],
        ['note', node?.note],
      );
    }
    case 'panel': {
      const panel = shell.panels.find((other) => other.id === id);
      return panel ? panelFacts(panel, shell.panels) : [];
    }
    case 'zone': {
      const zone = shell.zones.find((other) => other.id === id);
      const fill = figures.services.zones.find((other) => other.id === id);
      return facts(
        ['filled', fill?.fill ?? 0, 'fraction'],
        ['free', Math.max(0, 1 - (fill?.fill ?? 0)), 'fraction'],
        ['spare', zone?.spare ?? 'no spare conduit recorded'],
        ['pull cord', zone?.pullCord === undefined ? 'not recorded' : zone.pullCord ? 'yes' : 'no'],
        ['cord ends', zone?.cordEnds],
        ['closed by', zone?.closedBy],
        ['runs', fill?.runs.slice(0, 12)],
      );
    }
    case 'member': {
      const member = shell.members.find((other) => other.id === id);
      const welds = of(shell).welds.get(id) ?? [];
      const distinct = (values: readonly (string | undefined)[]): readonly string[] => [
        ...new Set(values.filter((value): value is string => value !== undefined)),
      ];
      return facts(
        ['alloy', member?.alloy],
        ['section', member?.shape.kind === 'line' ? member.shape.section : undefined],
        ...bendRadii(member).map((mm) => ['bend radius', mm, 'mm'] as const),
        ['thickness', member?.shape.kind === 'plate' ? member.shape.thicknessMm : undefined, 'mm'],
        ['heat', member?.heat],
        ['filler', distinct(welds.map((weld) => weld.filler))],
        ['procedure', distinct(welds.map((weld) => weld.procedure))],
        ['welds', welds.map((weld) => weld.id).slice(0, 8)],
        ['before welding', WELDING],
      );
    }
    case 'weld': {
      const weld = shell.welds.find((other) => other.id === id);
      return facts(
        ['joins', weld?.joins.flat()],
        ['filler', weld?.filler],
        ['procedure', weld?.procedure],
        ['before welding', WELDING],
      );
    }
    case 'clamp': {
      const clamp = shell.clamps.find((other) => other.id === id);
      return facts(
        ['bolt', clamp?.bolt],
        ['torque', clamp?.torqueNm ?? 'not recorded', 'nm'],
        ['specified, at least', torqueSpecified(shell, [id])?.leastNm, 'nm'],
        ['check again', clamp?.checkAgain],
        ['insulating pad', clamp?.insulator === undefined ? undefined : clamp.insulator ? 'yes' : 'no'],
        ['joins', clamp?.joins],
        ['note', clamp?.note],
      );
    }
    case 'declared':
    case 'component':
      return facts(['note', (shell.byId.get(id)?.record as { readonly note?: string } | undefined)?.note]);
    default:
      return [];
  }
}

const WELDING =
  'batteries, controllers and radios off and their leads apart; look behind for adhesive, foam and wires; a qualified welder by the procedure';

function circuitFacts(circuit: Circuit, runs: readonly Run[], { shell }: Computed['model']): readonly Fact[] {
  const { nodes: known } = of(shell);
  const nodes = [...new Set(runs.flatMap((run) => [run.from, run.to]))];
  const counted = new Map<string, number>();
  for (const end of runs.flatMap((run) => [run.from, run.to])) counted.set(end, (counted.get(end) ?? 0) + 1);
  const ends = nodes.filter((node) => counted.get(node) === 1);
  const joints = nodes.filter((node) => ['splice', 'connector', 'junction', 'fitting'].includes(known.get(node)?.nodeKind ?? ''));
  return facts(
    ['ends', ends.length <= 8 ? ends : [...ends.slice(0, 8), `and ${ends.length - 8} more`]],
    ['joints', joints],
    ['colour', circuit.colour],
    ['made of', wireWords(circuit)],
    ['fed through', upstream(shell, circuit).map(fedThrough)],
  );
}

const fedThrough = ({ id, protection }: Circuit): string =>
  [protection?.kind, protection?.ratingA === undefined ? '' : amps(protection.ratingA), `at ${protection?.at ?? id}`]
    .filter(Boolean)
    .join(' ');

const runFacts = (run: Run, circuit: Circuit | undefined): readonly Fact[] =>
  facts(
    ['ends', [run.from, run.to]],
    ['circuit', run.circuit],
    ['colour', run.colour ?? circuit?.colour],
    ['made of', wireWords(run) ?? (circuit && wireWords(circuit))],
    ['through', run.zones],
    ['known to', run.toleranceMm, 'mm'],
    ['state', run.abandoned ? 'abandoned' : run.spare ? 'spare' : undefined],
  );

function wireWords({ conductor, size }: { readonly conductor?: Conductor; readonly size?: { readonly text: string } }) {
  if (size) return size.text;
  if (!conductor) return undefined;
  const metal = conductor.awg ? `${conductor.awg} AWG` : conductor.areaMm2 ? `${conductor.areaMm2} mm²` : conductor.type;
  return metal && `${conductor.conductors} × ${metal}`;
}

function panelFacts(panel: Panel, panels: readonly Panel[]): readonly Fact[] {
  const { fixing } = panel;
  const fasteners = [fixing?.count, fixing?.method].filter((one) => one !== undefined).join(' ');
  const inIt = panels.filter((other) => other.of === panel.id).map((other) => other.id);
  return facts(
    ['opens', fasteners],
    ['tool', fixing?.driver],
    ['torque', fixing?.torqueNm, 'nm'],
    ['seal', fixing?.sealant && `renew: ${fixing.sealant}`],
    ['set in', panel.of],
    ['holds', inIt],
    [
      'order',
      [fixing?.order, panel.facing === 'down' ? 'support it before the last fastener' : undefined].filter(Boolean).join('; ') ||
        undefined,
    ],
  );
}

/** Tests, findings, changes and photos that name a record. */
function evidence(id: string, { model }: Computed): readonly Fact[] {
  const { shell } = model;
  const tests = shell.tests
    .filter((test) => test.of.includes(id))
    .map((test) => {
      const read = readingWords(test) ?? 'no value';
      return `${test.id} ${test.testKind}: ${read}, limit ${test.limit ? unitSigns(test.limit.text) : 'none'}, ${judgeTest(test, model).verdict}`;
    });
  return facts(
    ['tested', tests],
    ['findings', shell.findings.filter((one) => one.of.includes(id)).map((one) => `${one.id} ${one.decision ?? 'undecided'}`)],
    ['changed', shell.amendments.filter((one) => one.changes.includes(id)).map((one) => `${one.id} ${one.date}`)],
    [
      'photos',
      shell.photos
        .filter((one) => one.of.includes(id))
        .map((one) => one.id)
        .slice(0, 6),
    ],
  );
}
