import type { Assessment } from '../assess.js';
import { judgeTest } from '../compute/verdicts/verdict.js';
import { methodName } from '../compute/welding/inspection.js';
import type { Model } from '../model/shell.js';
import { concealed } from '../query/concealment.js';
import { checkOf, type HoldPointCheck, holdPointWords } from '../records/hold-point.js';
import type { Clamp, Panel, Photo, Shell, Test, Weld } from '../records/index.js';
import type { DecidedFinding } from '../rules/decide.js';
import { evidenceOf, firstTooLate, lineName, photoDay, testDay } from '../rules/order/evidence.js';
import type { Duty } from '../rules/rule.js';
import { ownRecords, plannedRecords } from './coverage.js';

/** What a hold point still lacks. */
export interface UnmetHoldPoint {
  /** As the shop wrote it in library/stages.yaml. */
  readonly holdPoint: string;
  /** What was found and what was expected, then what to do. One sentence. */
  readonly message: string;
  readonly ids: readonly string[];
  readonly duty: Duty;
  /** It waits for what is only planned: nothing was looked at yet. */
  readonly planned?: true;
}

/** A stage of a shell with what stands in it. */
export interface StageCase {
  readonly id: string;
  readonly model: Model;
  readonly findings: readonly DecidedFinding[];
  readonly own: ReadonlySet<string>;
  /** Ids of its records that are not in the coach yet. */
  readonly planned: readonly string[];
}

type Look = (stage: StageCase, words: string) => readonly Pick<UnmetHoldPoint, 'message' | 'ids'>[];

/** What each check looks at, and whose it is to put right. */
const CHECKS: Readonly<Record<HoldPointCheck, { readonly duty: Duty; readonly look: Look }>> = {
  'welds accepted': { duty: 'inspector', look: weldsAccepted },
  'clamps torqued': { duty: 'trade', look: clampsTorqued },
  'openings square': { duty: 'inspector', look: openingsSquare },
  photos: { duty: 'trade', look: pictured },
  'photos before close-in': { duty: 'trade', look: photosBeforeCloseIn },
  'tests passed before close-in': { duty: 'trade', look: testsBeforeCloseIn },
  'bond coupons': { duty: 'trade', look: bonds },
  'bare chassis weighed': { duty: 'administrator', look: bareWeighed },
  weighed: { duty: 'administrator', look: weighed },
  'findings decided': { duty: 'inspector', look: findingsDecided },
};
const TESTED = { duty: 'trade', look: tested } as const;

type JudgedModel = Pick<Assessment, 'model'> & { readonly findings: readonly DecidedFinding[] };

/** A hold point and what it still lacks: nothing where it is met. */
export interface HoldPointState {
  /** As the shop wrote it in library/stages.yaml. */
  readonly holdPoint: string;
  /** What the program looks at; undefined where it asks for a passed test so named. */
  readonly check: HoldPointCheck | undefined;
  readonly unmet: readonly UnmetHoldPoint[];
}

/** A stage with its own records gathered. */
export function stageCase({ model, findings }: JudgedModel, id: string): StageCase {
  const ids = (records: ReturnType<typeof ownRecords>): readonly string[] => records.map(({ record }) => record.id);
  const own = new Set(ids(ownRecords(model, id)));
  return { id, model, findings, own, planned: ids(plannedRecords(model, id)) };
}

/**
 * Every hold point of a stage, in their order. One in words of the shop’s own asks for a passed test so named. None is met while
 * something of the stage is only planned.
 */
export function holdPointStates(stage: StageCase): readonly HoldPointState[] {
  const points = stage.model.library.stages.find((one) => one.id === stage.id)?.holdPoints ?? [];
  return points.map((point) => {
    const check = checkOf(point);
    const { duty, look } = check === undefined ? TESTED : CHECKS[check];
    const holdPoint = holdPointWords(point);
    const planned = stillPlanned(stage).map((found) => ({ ...found, planned: true as const }));
    const unmet = [...planned, ...look(stage, holdPoint)];
    return { holdPoint, check, unmet: unmet.map((found) => ({ holdPoint, duty, ...found })) };
  });
}

/** Hold points of a stage that are not met, in their order. */
export const unmetHoldPoints = (judged: JudgedModel, id: string): readonly UnmetHoldPoint[] =>
  holdPointStates(stageCase(judged, id)).flatMap(({ unmet }) => unmet);

const mine = <T extends { readonly id: string }>(all: readonly T[], { own }: StageCase): readonly T[] =>
  all.filter(({ id }) => own.has(id));

const one = (message: string, ids: readonly string[] = []): ReturnType<Look>[number] => ({ message, ids });

const NAMED = 6;

function stillPlanned({ planned, own }: StageCase): ReturnType<Look> {
  if (planned.length === 0) return [];
  const more = planned.length > NAMED ? ` and ${planned.length - NAMED} more` : '';
  const named = `${planned.slice(0, NAMED).join(', ')}${more}`;
  return [
    one(`${planned.length} of ${planned.length + own.size} records of this stage are planned, not built: ${named}`, planned),
  ];
}

/** Nothing on record is no proof: a shell has welds and clamps in every stage that asks for them. */
function noneOf(what: string, file: string, stage: StageCase, holdPoint: string): ReturnType<Look> {
  if (stage.planned.length > 0) return [];
  return [
    one(
      `No ${what} of stage ${stage.id} is on record, so \`${holdPoint}\` is not verified, expected them in ${file}; if the stage has none, take the hold point out of library/stages.yaml`,
    ),
  ];
}

/** Looked at before paint and panels hide it. */
function weldsAccepted(stage: StageCase, holdPoint: string): ReturnType<Look> {
  const welds = mine<Weld>(stage.model.shell.welds, stage);
  if (welds.length === 0) return noneOf('weld', 'welds.yaml', stage, holdPoint);
  return welds.flatMap(({ id, inspections }) => {
    const last = inspections.filter(({ method }) => methodName(method) === 'VT').at(-1);
    if (last?.result === 'accept') return [];
    return [
      one(
        `Weld ${id} ${last ? `was rejected on ${last.date}` : 'was not looked at'}, expected a visual inspection that accepts it`,
        [id],
      ),
    ];
  });
}

function clampsTorqued(stage: StageCase, holdPoint: string): ReturnType<Look> {
  const clamps = mine<Clamp>(stage.model.shell.clamps, stage);
  if (clamps.length === 0) return noneOf('clamp', 'clamps.yaml', stage, holdPoint);
  const loose = clamps.filter(({ torqueNm }) => torqueNm === undefined);
  return loose.map(({ id }) => one(`Clamp ${id} has no torque on record, expected what the wrench was set to`, [id]));
}

function openingsSquare(stage: StageCase): ReturnType<Look> {
  return mine(stage.model.shell.openings, stage).flatMap(({ id, measured }) => {
    if (!measured?.diagonalsMm) return [one(`Opening ${id} is not measured, expected both diagonals`, [id])];
    const open = stage.findings.find(
      ({ rule, ids, severity, decidedBy }) =>
        rule.startsWith('opening.') && ids[0] === id && severity !== 'note' && decidedBy === undefined,
    );
    return open ? [one(open.message, open.ids)] : [];
  });
}

/** Panels of a stage that are bonded on. */
export const bondedOf = (stage: StageCase): readonly Panel[] =>
  mine<Panel>(stage.model.shell.panels, stage).filter(({ fixing }) => fixing?.method?.startsWith('bonded') === true);

function bonds(stage: StageCase): ReturnType<Look> {
  return bondedOf(stage).flatMap(({ id, bond }) => {
    const coupon = stage.model.shell.tests.find((test) => test.id === bond?.coupon);
    if (coupon && judgeTest(coupon, stage.model).verdict === 'passed') return [];
    const found = coupon ? `coupon ${coupon.id} did not pass` : bond ? 'no coupon is named' : 'its bond is not on record';
    return [one(`Panel ${id} is bonded and ${found}, expected \`bond\` with a coupon that passed its pull`, [id])];
  });
}

/** Photos that show something of a stage. */
export function photosOf(stage: StageCase): readonly Photo[] {
  const shows = (of: readonly string[]): boolean => of.some((id) => stage.own.has(id));
  const { shell } = stage.model;
  const named = new Set(shell.panels.flatMap(({ id, photos }) => (stage.own.has(id) ? photos : [])));
  return shell.photos.filter(
    (photo) => photo.stage === stage.id || shows(photo.of) || named.has(photo.id) || inZones(photo.of, stage),
  );
}

function pictured(stage: StageCase): ReturnType<Look> {
  return photosOf(stage).length > 0 ? [] : [one(`No photo shows anything of stage ${stage.id}, expected at least one photo`)];
}

/** A picture of a cavity shows the runs in it. */
function inZones(of: readonly string[], { own, model }: StageCase): boolean {
  const zones = new Set(of);
  return model.shell.runs.some((run) => own.has(run.id) && run.zones.some((zone) => zones.has(zone)));
}

/** What the panels of this stage close in. */
export const closedHere = ({ model, own }: StageCase) =>
  concealed(model).filter(({ panels }) => panels.some(({ id }) => own.has(id)));

function photosBeforeCloseIn(stage: StageCase): ReturnType<Look> {
  return closedHere(stage).flatMap((item) => {
    const days = evidenceOf(item, stage.model).photos.map(photoDay);
    return late(item, days, 'photo', 'photographed', stage);
  });
}

function testsBeforeCloseIn(stage: StageCase): ReturnType<Look> {
  return closedHere(stage).flatMap((item) => {
    const { tests, needsTest } = evidenceOf(item, stage.model);
    return needsTest ? late(item, tests.map(testDay), 'passed test', 'tested', stage) : [];
  });
}

function late(
  item: ReturnType<typeof closedHere>[number],
  days: readonly (string | undefined)[],
  evidence: string,
  done: string,
  { findings }: StageCase,
): ReturnType<Look> {
  const { id } = item.record;
  const panels = item.panels.map((panel) => panel.id).join(', ');
  if (!days.some((day) => day !== undefined))
    return [one(`${lineName(item)} has no dated ${evidence}, expected one of before ${panels} closed it in`, [id])];
  const day = item.closed && firstTooLate(days, item.closed.date);
  const decided = findings.some(
    ({ rule, ids, decidedBy }) => rule.startsWith('order.') && ids[0] === id && decidedBy !== undefined,
  );
  if (day === undefined || decided) return [];
  return [
    one(
      `${lineName(item)} was first ${done} on ${day}, expected on or before ${item.closed?.date}, when ${panels} closed it in`,
      [id],
    ),
  ];
}

function bareWeighed({ model: { shell } }: StageCase): ReturnType<Look> {
  if (shell.chassis.bare) return [];
  return [one('The bare chassis is not weighed, expected `bare` with its readings in shell.yaml', [shell.id])];
}

function weighed({ id, model: { shell } }: StageCase): ReturnType<Look> {
  if (shell.tickets.some((ticket) => ticket.stage === id)) return [];
  return [one(`No scale ticket is for stage ${id}, expected one in weights.yaml`, [shell.id])];
}

function findingsDecided({ model: { shell } }: StageCase): ReturnType<Look> {
  const open = shell.findings.filter(({ decision, approvedBy }) => decision === undefined || approvedBy === undefined);
  return open.map(({ id, of }) =>
    one(`Finding ${id} of ${of.join(', ')} is not decided, expected \`decision\` and \`approved_by\``, [id, ...of]),
  );
}

/** Kinds of test that are pressure tests. */
const PRESSURE = ['pressure', 'drop', 'hold'];
/** Words of a hold point that name no kind of test. */
const FILLING = new Set(['and', 'or', 'the', 'of', 'with', 'test', 'tests', 'tested', 'passed', 'done', 'log', 'all']);

/** The kinds of test that a hold point in words of the shop’s own asks for. */
export function kindsAsked(holdPoint: string): readonly string[] {
  const kinds = holdPoint.split(/[^\p{L}\p{N}-]+/u).filter((word) => word !== '' && !FILLING.has(word.toLowerCase()));
  return /\band\b|,/iu.test(holdPoint) ? kinds : [kinds.join(' ')];
}

/** A passed test of each kind that the hold point names, of something of the stage. */
function tested(stage: StageCase, holdPoint: string): ReturnType<Look> {
  const passed = stage.model.shell.tests.filter(
    (test) => isTestOf(test, stage) && judgeTest(test, stage.model).verdict === 'passed',
  );
  return kindsAsked(holdPoint).flatMap((kind) => {
    if (passed.some(({ testKind }) => isTestKind(testKind, kind))) return [];
    return [
      one(
        `No passed test of kind \`${kind}\` is of stage ${stage.id}, so \`${holdPoint}\` is not verified, expected a test in tests.yaml`,
      ),
    ];
  });
}

/** True where the words asked for stand in a test's kind, in their order; a plural is no other word. */
export function isTestKind(testKind: string, asked: string): boolean {
  const kind = testKind.toLowerCase();
  if (asked.toLowerCase() === 'pressure') return PRESSURE.some((one) => kind.includes(one));
  let from = 0;
  return asked.split(' ').every((word) => {
    const stem = word.toLowerCase().replace(/s$/u, '');
    const at = kind.indexOf(stem, from);
    from = at + stem.length;
    return at >= 0;
  });
}

/** Of the stage itself, or of something that is in it. */
export function isTestOf(test: Test, { id, own, model }: StageCase): boolean {
  return test.stage === id || test.of.some((of) => own.has(of) || ofCircuit(of, own, model.shell));
}

const ofCircuit = (circuit: string, own: ReadonlySet<string>, { runs }: Shell): boolean =>
  runs.some((run) => run.circuit === circuit && own.has(run.id));
