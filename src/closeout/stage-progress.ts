import { judgeTest } from '../compute/verdicts/verdict.js';
import type { Model } from '../model/shell.js';
import type { HoldPointCheck } from '../records/hold-point.js';
import type { Person, Signoff } from '../records/index.js';
import { signers } from './bound.js';
import { coverageOf, ownRecords } from './coverage.js';
import { dutyOf } from './duty.js';
import {
  bondedOf,
  closedHere,
  type HoldPointState,
  holdPointStates,
  isTestKind,
  isTestOf,
  kindsAsked,
  photosOf,
  type StageCase,
  stageCase,
} from './hold-points.js';
import { type Judged, type OpenItem, openItems } from './items.js';
import { type Signed, signedStages } from './signed.js';
import { type WouldMeet, wouldMeet } from './would-meet.js';

/** A thing that a hold point lacks, whose it is, and what would meet it. */
export interface HoldPointGap {
  readonly message: string;
  readonly ids: readonly string[];
  readonly who: string;
  readonly wouldMeet: readonly WouldMeet[];
}

export interface HoldPointProgress {
  readonly holdPoint: string;
  /** nothing yet: no record of the stage is of the kind that is looked at, so nothing was looked at either. */
  readonly state: 'met' | 'unmet' | 'nothing yet';
  /** Records that meet it. */
  readonly metBy: readonly string[];
  readonly gaps: readonly HoldPointGap[];
}

export interface StageProgress {
  readonly stage: string;
  readonly name: string;
  /** Of all its sign-offs: open where there is none, lapsed where none holds. */
  readonly standing: 'open' | Signed['standing'];
  readonly signoffs: readonly { readonly signoff: Signoff; readonly standing: Signed['standing'] }[];
  readonly records: { readonly built: number; readonly planned: number };
  readonly holdPoints: readonly HoldPointProgress[];
  /** Errors in what a signature would cover. */
  readonly errors: readonly OpenItem[];
}

/** What somebody may do today: first for the stage that is next, then for those that are built already. */
export interface NextStep {
  /** A trade, with the person’s id where the record names one. */
  readonly who: string;
  readonly stage: string;
  readonly what: string;
  /** What to type, where it is known. */
  readonly type: string | null;
  readonly ids: readonly string[];
}

export interface ShellProgress {
  readonly stages: readonly StageProgress[];
  /** The first stage that is not signed off, or whose signature has lapsed; null where all hold. */
  readonly next: { readonly stage: string; readonly who: readonly string[] } | null;
  readonly today: readonly NextStep[];
}

/** How far a shell has come, by stage, from day one. `today` (ISO 8601) is the day for which a signature would be given. */
export function shellProgress(judged: Judged, today: string): ShellProgress {
  const { model } = judged;
  const errors = openItems(judged).filter(
    ({ grade, place, because }) => grade === 'A' && place !== undefined && !because.startsWith('signoff.'),
  );
  const stages = model.library.stages.map(({ id, name }) => stageProgress(judged, { id, name }, errors, today));
  const next = stages.find(({ standing }) => standing !== 'holds');
  const steps = next ? stepsOf(next, model) : [];
  // What is built already may be looked at before its turn.
  const later = stages.filter((one) => one !== next && one.standing !== 'holds' && one.records.built > 0);
  return {
    stages,
    next: next ? { stage: next.stage, who: [...new Set(steps.map(({ who }) => who))] } : null,
    today: [...steps, ...toDecide(judged), ...later.flatMap((one) => stepsOf(one, model))],
  };
}

function stageProgress(
  judged: Judged,
  { id, name }: { readonly id: string; readonly name: string },
  errors: readonly OpenItem[],
  today: string,
): StageProgress {
  const { model } = judged;
  const stage = stageCase(judged, id);
  const signoffs = signedStages(model).filter(({ signoff }) => signoff.stage === id);
  const own = ownRecords(model, id);
  const covered = new Set([...coverageOf(model, id, today).keys()].map((one) => one.slice(one.lastIndexOf(' ') + 1)));
  return {
    stage: id,
    name,
    standing: standingOf(signoffs),
    signoffs,
    records: { built: own.length, planned: stage.planned.length },
    holdPoints: holdPointStates(stage).map((state) => holdPointProgress(stage, state)),
    errors: errors.filter(({ ids: [first = ''] }) => covered.has(first)),
  };
}

function standingOf(signoffs: readonly Signed[]): StageProgress['standing'] {
  const order = ['holds', 'lapsed', 'not verified'] as const;
  return order.find((one) => signoffs.some(({ standing }) => standing === one)) ?? 'open';
}

function holdPointProgress(stage: StageCase, state: HoldPointState): HoldPointProgress {
  const { holdPoint, unmet } = state;
  const gaps = unmet.map((one) => ({
    message: one.message,
    ids: one.ids,
    who: dutyOf(one.duty, one.ids, stage.model),
    wouldMeet: wouldMeet(stage, state, one),
  }));
  if (gaps.length > 0) return { holdPoint, state: 'unmet', metBy: [], gaps };
  const metBy = state.check === undefined ? testsMeeting(stage, holdPoint) : LOOKED_AT[state.check](stage);
  return { holdPoint, state: metBy === null || metBy.length > 0 ? 'met' : 'nothing yet', metBy: metBy ?? [], gaps };
}

const inStage = <T extends { readonly id: string }>(all: readonly T[], { own }: StageCase): readonly string[] =>
  all.flatMap(({ id }) => (own.has(id) ? [id] : []));

/** What each check looked at, by id; null where there is nothing to name. */
const LOOKED_AT: Readonly<Record<HoldPointCheck, (stage: StageCase) => readonly string[] | null>> = {
  'welds accepted': (stage) => inStage(stage.model.shell.welds, stage),
  'clamps torqued': (stage) => inStage(stage.model.shell.clamps, stage),
  'openings square': (stage) => inStage(stage.model.shell.openings, stage),
  photos: (stage) => photosOf(stage).map(({ id }) => id),
  'photos before close-in': (stage) => closedHere(stage).map(({ record }) => record.id),
  'tests passed before close-in': (stage) => closedHere(stage).map(({ record }) => record.id),
  'bond coupons': (stage) => bondedOf(stage).map(({ id }) => id),
  'bare chassis weighed': () => null,
  weighed: (stage) => stage.model.shell.tickets.flatMap((ticket) => (ticket.stage === stage.id ? [ticket.id] : [])),
  'findings decided': () => null,
};

function testsMeeting(stage: StageCase, holdPoint: string): readonly string[] {
  const kinds = kindsAsked(holdPoint);
  return stage.model.shell.tests.flatMap((test) =>
    isTestOf(test, stage) &&
    kinds.some((kind) => isTestKind(test.testKind, kind)) &&
    judgeTest(test, stage.model).verdict === 'passed'
      ? [test.id]
      : [],
  );
}

/** What is to be done about the stage that is next: what it lacks, then the signature. */
function stepsOf(stage: StageProgress, model: Model): readonly NextStep[] {
  const steps = [
    ...stage.errors.map(
      ({ message, who, ids }): NextStep => ({
        who,
        stage: stage.stage,
        what: message,
        type: null,
        ids: ids.slice(0, 1),
      }),
    ),
    ...stage.holdPoints.flatMap(({ gaps }) => gaps.flatMap((gap) => gapSteps(stage.stage, gap))),
  ];
  if (steps.length > 0) return alike(steps);
  const again = stage.standing === 'open' ? 'Sign the stage off' : 'Look at what changed since, and sign the stage again';
  const { id } = model.shell;
  return signing(model, stage.stage).map((person) => ({
    who: `${person.role} (${person.id})`,
    stage: stage.stage,
    what: `${again}: nothing else is missing`,
    type: `shellbook signoff ${id} ${stage.stage} --by ${person.id}`,
    ids: [stage.stage],
  }));
}

/** Who may sign a stage: those whom the shop names, else whoever is qualified to inspect; never who welded in it. */
function signing(model: Model, stage: string): readonly Person[] {
  const named = signers(model);
  const may =
    named.length > 0
      ? named.filter(({ signs }) => signs?.includes(stage))
      : [...model.library.people.values()].filter(({ qualified }) => qualified.some(({ method }) => method !== undefined));
  const own = new Set(ownRecords(model, stage).map(({ record }) => record.id));
  const welded = new Set(model.shell.welds.flatMap((weld) => (own.has(weld.id) ? [weld.welder] : [])));
  return may.filter(({ id }) => !welded.has(id));
}

function gapSteps(
  stage: string,
  { message, ids, who, wouldMeet: [first] }: HoldPointGap,
): readonly (NextStep & Pick<WouldMeet, 'typeFor'>)[] {
  if (first === undefined) return [{ who, stage, what: message, type: null, ids }];
  const { id, kind, what, type, typeFor } = first;
  const of = ids.length > 0 ? ` for ${ids.join(', ')}` : '';
  const said = id === undefined ? `${article(kind)}${of} ${what}` : `${id} ${what}`;
  return [{ who, stage, what: said, type, ids: id === undefined ? ids : [id], ...(typeFor ? { typeFor } : {}) }];
}

const article = (kind: string): string => `${/^[aeiou]/u.test(kind) ? 'an' : 'a'} ${kind}`;

/** Forty welds that want the same are one step. */
function alike(steps: readonly (NextStep & Pick<Partial<WouldMeet>, 'typeFor'>)[]): readonly NextStep[] {
  const groups = new Map<string, (typeof steps)[number][]>();
  for (const step of steps) {
    const key = JSON.stringify([step.who, step.typeFor ? step.typeFor([]) : (step.type ?? step.what)]);
    groups.set(key, [...(groups.get(key) ?? []), step]);
  }
  return [...groups.values()].map((group) => {
    const [{ typeFor, ...first }] = group as [(typeof steps)[number]];
    const ids = group.flatMap((one) => one.ids);
    return { ...first, ids, type: typeFor ? typeFor(ids) : first.type };
  });
}

/** Findings that somebody wrote down and nobody has decided. */
function toDecide({ model }: Judged): readonly NextStep[] {
  return model.shell.findings
    .filter(({ decision, approvedBy }) => decision === undefined || approvedBy === undefined)
    .map(({ id, stage, description }) => ({
      who: dutyOf('inspector', [], model),
      stage: stage ?? '',
      what: `${id} is not decided: ${description}`,
      type: 'decision: … and approved_by: …',
      ids: [id],
    }));
}
