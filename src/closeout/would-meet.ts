import { judgeTest } from '../compute/verdicts/verdict.js';
import type { Place } from '../finding.js';
import type { Model } from '../model/shell.js';
import { concealed } from '../query/concealment.js';
import type { HoldPointCheck } from '../records/hold-point.js';
import type { RecordBase, RecordKind, Test } from '../records/index.js';
import { evidenceOf, photoDay, testDay } from '../rules/order/evidence.js';
import { stageOf } from './coverage.js';
import { type HoldPointState, isTestKind, isTestOf, kindsAsked, type StageCase, type UnmetHoldPoint } from './hold-points.js';

/** A record that would meet a hold point: one that is there and lacks something, or one that is still to be made. */
export interface WouldMeet {
  readonly kind: RecordKind;
  /** Absent for a record that is not there yet. */
  readonly id?: string;
  /** As the end of a sentence: `lacks \`stage: services\``. */
  readonly what: string;
  /** What to type: a key of that record, or a command. */
  readonly type: string;
  /** The same for several records at once, where one command does. */
  readonly typeFor?: (ids: readonly string[]) => string;
  readonly place?: Place;
}

/** So many records that might do are named; of more, none is likelier than another. */
const MOST = 3;

/** For each of what a hold point lacks, the records that would meet it; the likeliest first. */
export function wouldMeet(stage: StageCase, { check, holdPoint }: HoldPointState, unmet: UnmetHoldPoint): readonly WouldMeet[] {
  if (unmet.planned) return toBuild(unmet.ids, stage.model);
  return check === undefined ? tests(stage, holdPoint, unmet) : BY_CHECK[check](stage, unmet);
}

/** What is still to be built: the first of it stands for all. */
function toBuild([id = '', ...more]: readonly string[], { shell }: Model): readonly WouldMeet[] {
  const { kind, record } = shell.byId.get(id) as { readonly kind: RecordKind; readonly record: RecordBase };
  const what = more.length === 0 ? 'is planned, not built' : `and ${more.length} more of this stage are planned, not built`;
  return [{ kind, id, what, type: 'date: …, and without `planned: yes`', ...placeIn(record, 'planned') }];
}

type Find = (stage: StageCase, unmet: UnmetHoldPoint) => readonly WouldMeet[];

const BY_CHECK: Readonly<Record<HoldPointCheck, Find>> = {
  'welds accepted': (stage, { ids: [id] }) =>
    id === undefined
      ? staged('weld', stage, added('weld', stage))
      : [lacking('weld', id, stage.model, 'inspections: [{method: VT, by: …, date: …, result: accept}]')],
  'clamps torqued': (stage, { ids: [id] }) =>
    id === undefined ? staged('clamp', stage, added('clamp', stage)) : [lacking('clamp', id, stage.model, 'torque: … ft.lb')],
  'openings square': ({ model }, { ids: [id = ''], message }) => [
    model.shell.openings.some((one) => one.id === id && one.measured?.diagonalsMm)
      ? { kind: 'opening', id, what: `is measured and not right: ${message}`, type: 'measured: …, after it is put right' }
      : lacking('opening', id, model, 'measured: {top: …, bottom: …, front: …, rear: …, diagonals: [.., ..]}'),
  ],
  photos: (stage) => [
    ...unassigned('photo', stage, (record) => ((record as { readonly of?: readonly string[] }).of ?? []).length === 0),
    { kind: 'photo', what: 'is still to be taken', type: `shellbook photos ${stage.model.shell.id} FOLDER --stage ${stage.id}` },
  ],
  'photos before close-in': (stage, { ids: [id = ''] }) => photosOfLine(stage, id),
  'tests passed before close-in': (stage, { ids: [id = ''] }) => testsOfLine(stage, id),
  'bond coupons': (stage, { ids: [id = ''] }) => {
    const coupon = stage.model.shell.panels.find((one) => one.id === id)?.bond?.coupon;
    const test = stage.model.shell.tests.find((one) => one.id === coupon);
    if (test) return notPassed(test, stage.model);
    if (coupon !== undefined) return [added('test', stage, ` --id ${coupon} --kind 'coupon pull' --of ${id}`)];
    return [lacking('panel', id, stage.model, 'bond: {surface: … C, air: … C, humidity: … %, open_time: … min, coupon: …}')];
  },
  'bare chassis weighed': ({ model: { shell } }) => [
    {
      kind: 'shell' as RecordKind,
      id: shell.id,
      what: 'lacks `bare` of its chassis',
      type: `bare: {condition: {fuel: …}, readings: {${shell.chassis.axles.map((axle) => `${axle.id}: … lb`).join(', ')}}}`,
    },
  ],
  weighed: (stage) => staged('ticket', stage, added('ticket', stage)),
  'findings decided': ({ model }, { ids: [id = ''] }) => [
    lacking('finding', id, model, 'decision: rework | repair | use as is | reject', '`decision` and `approved_by`'),
  ],
};

/** A record that is there, and the key that it lacks. */
function lacking(kind: RecordKind, id: string, model: Model, type: string, what = `\`${type}\``): WouldMeet {
  const entry = model.shell.byId.get(id)?.record as Partial<RecordBase> | undefined;
  return { kind, id, what: `lacks ${what}`, type, ...(entry?.source ? { place: entry.source.place() } : {}) };
}

const added = (kind: RecordKind, { model, id }: StageCase, more = ''): WouldMeet => ({
  kind,
  what: 'is not on record',
  type: `shellbook add ${kind} --shell ${model.shell.id} --stage ${id}${more}`,
});

/** Records of a kind that are of no stage: one key makes them this stage’s. Else a new one. */
const staged = (kind: RecordKind, stage: StageCase, fresh: WouldMeet): readonly WouldMeet[] => {
  const open = unassigned(kind, stage);
  return open.length > 0 ? open : [fresh];
};

function unassigned(
  kind: RecordKind,
  { model, id: stage }: StageCase,
  isWanted: (record: RecordBase) => boolean = () => true,
): readonly WouldMeet[] {
  const open: Staged[] = [];
  for (const entry of model.shell.byId.values()) {
    if (entry.kind !== kind) continue;
    const record = entry.record as RecordBase;
    if (stageOf(model, { kind, record }) === undefined && isWanted(record)) open.push({ id: entry.id, source: record.source });
  }
  return open.length > MOST ? [] : open.map((record) => ofStage(kind, record, stage));
}

/** A record by its id. In a model that was kept, records have no source. */
interface Staged {
  readonly id: string;
  readonly source?: RecordBase['source'];
}

const ofStage = (kind: RecordKind, { id, source }: Staged, stage: string): WouldMeet => ({
  kind,
  id,
  what: `lacks \`stage: ${stage}\``,
  type: `stage: ${stage}`,
  ...placeIn({ source }),
});

/** Where a record stands in its file; nothing in a model that was kept, whose records have no source. */
const placeIn = ({ source }: { readonly source?: RecordBase['source'] | undefined }, ...path: readonly string[]) =>
  source ? { place: source.place(...path) } : {};

/** Of a hold point in words of the shop’s own: a test of that kind that passed and is of no part of the stage, or is of it and did not pass. */
function tests(stage: StageCase, holdPoint: string, { message }: UnmetHoldPoint): readonly WouldMeet[] {
  const kind = kindsAsked(holdPoint).find((one) => message.includes(`\`${one}\``)) ?? holdPoint;
  const { shell } = stage.model;
  const ofKind = shell.tests.filter(({ testKind }) => isTestKind(testKind, kind));
  const mine = ofKind.filter((test) => isTestOf(test, stage)).map((test) => notPassed(test, stage.model));
  const others = ofKind.filter(
    (test) => !isTestOf(test, stage) && test.stage === undefined && judgeTest(test, stage.model).verdict === 'passed',
  );
  const found = [...mine.flat(), ...others.map((test) => ofStage('test', test, stage.id))];
  return found.length > 0 ? found : [added('test', stage, ` --kind '${kind.replace(/'/gu, '')}'`)];
}

/** A test that counts for nothing yet, and why. */
function notPassed(test: Test, model: Model): readonly WouldMeet[] {
  const { verdict, reason } = judgeTest(test, model);
  if (verdict === 'passed') return [];
  const what = `${verdict === 'failed' ? 'failed' : 'does not count yet'}: ${reason}`;
  return [{ kind: 'test', id: test.id, what, type: keyMissing(test), ...placeIn(test) }];
}

function keyMissing(test: Test): string {
  if (!test.limit) return 'limit: …';
  if (!test.measured && !test.start) return 'measured: …';
  return test.instrument === undefined ? 'instrument: …' : 'a further test that passes';
}

const lineOf = ({ model }: StageCase, id: string) => concealed(model).find(({ record }) => record.id === id);

function photosOfLine(stage: StageCase, id: string): readonly WouldMeet[] {
  const item = lineOf(stage, id);
  const undated = item ? evidenceOf(item, stage.model).photos.filter((photo) => photoDay(photo) === undefined) : [];
  if (undated.length > 0)
    return undated.map((photo) => lacking('photo', photo.id, stage.model, 'taken: …', '`taken`, the day it was taken'));
  const known = item ? evidenceOf(item, stage.model).photos.length > 0 : false;
  if (item?.closed && known) return [decided(stage, 'order.photo-after-close-in', id)];
  const when = item?.closed ? `of before ${item.closed.date} is not on record` : 'is still to be taken, before the panel goes on';
  const type = `shellbook photos ${stage.model.shell.id} FOLDER`;
  return [{ kind: 'photo', what: when, type, typeFor: () => type }];
}

function testsOfLine(stage: StageCase, id: string): readonly WouldMeet[] {
  const { model } = stage;
  const item = lineOf(stage, id);
  const undated = item ? evidenceOf(item, model).tests.filter((test) => testDay(test) === undefined) : [];
  if (undated.length > 0) return undated.map((test) => lacking('test', test.id, model, 'date: …'));
  const circuit = item?.record.circuit;
  const tried = model.shell.tests.filter(({ of }) => of.some((one) => one === id || one === circuit));
  const open = tried.flatMap((test) => notPassed(test, model));
  if (open.length > 0) return open;
  if (item?.closed && evidenceOf(item, model).tests.length > 0) return [decided(stage, 'order.test-after-close-in', id)];
  return [added('test', stage, ` --of ${circuit ?? id}`)];
}

/** Too late to be met by evidence: the shop says what it makes of it. */
const decided = ({ model }: StageCase, rule: string, id: string): WouldMeet => ({
  kind: 'finding',
  what: 'must say what is decided, since the panel is on',
  type: decideText(rule, [id], model),
  typeFor: (ids) => decideText(rule, ids, model),
});

const decideText = (rule: string, ids: readonly string[], { shell }: Model): string =>
  `shellbook decide ${rule} ${ids.join(' ')} --shell ${shell.id} --as 'use as is' --by … --because …`;
