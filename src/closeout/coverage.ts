import { canonical } from '../archive/canonical.js';
import { sha256 } from '../archive/fingerprint.js';
import { eachNamed, type Named } from '../model/link.js';
import { isPlanned } from '../model/planned.js';
import type { Model } from '../model/shell.js';
import { dayOf } from '../quantity/day.js';
import type { KindName, Library, LibraryKind, RecordBase, RecordKind, Shell, Weld } from '../records/index.js';
import { kindOf } from '../records/kinds.js';
import { recordIn } from '../records/library.js';
import { type DigestForm, substanceOf } from '../records/substance.js';

/** What a sign-off of a stage covers: `kind id` → SHA-256 of the record in canonical form, hex. */
export type Coverage = ReadonlyMap<string, string>;

/** Digest of what a sign-off covers, as typed into `digest`. */
export const digestOf = (coverage: Coverage, way: DigestForm = NEWEST): string =>
  `${way}-` +
  sha256(
    [...coverage]
      .map(([name, hash]) => `${name} ${hash}\n`)
      .sort(byUnits)
      .join(''),
  );

/** How digests are made now. A later way gets another mark, so that no old sign-off is judged by it. */
const NEWEST: DigestForm = 'c2';

/** The way in which a sign-off's digest was made; undefined where this program does not know it. */
export const wayOf = (digest: string): DigestForm | undefined =>
  /^(c[12])-[0-9a-f]{64}$/u.exec(digest)?.[1] as DigestForm | undefined;

const byUnits = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Judged by themselves, by whom and whenever: no part of what a stage's signature stands for. */
const hasOwnLife = (kind: RecordKind): boolean => kindOf(kind).more.stands === 'own life';
/** Evidence: that of a later day is more evidence, and no change of what was signed. */
const isEvidence = (kind: RecordKind): boolean => kindOf(kind).more.stands === 'evidence';
/** Cards and calibration go on after a stage is signed; the rules look at their dates. */
const isKeptUp = (kind: LibraryKind): boolean => kindOf(kind).more.stands === 'kept up';

/**
 * What the signature of a stage, given on `day`, stands for: the records of that stage, tests, photos and weighings of them up to that
 * day, and what each of these names: the section and alloy of a tube, the procedure of a weld, the circuit of a test with its runs
 * and nodes. So moving a pipe takes its pressure test with it.
 */
export function coverageOf(model: Model, stage: string, day: string, way: DigestForm = NEWEST): Coverage {
  const { shell } = model;
  const covered = new Map<string, string>();
  const put = (kind: KindName, record: RecordBase, name: string = kind): void =>
    void covered.set(`${name} ${record.id}`, hashOf(kind, name, record, way));
  const order = orderOf(model.library);
  // Nothing rests on what is built after it: a panel that closes a run in gets its own date later.
  const isLater = ({ record }: CoveredRecord): boolean =>
    record.stage !== undefined && (order.get(record.stage) ?? -1) > (order.get(stage) ?? Infinity);
  const own = ownRecords(model, stage);
  const ids = new Set(own.map(({ record }) => record.id));
  const evidence = all(shell).filter(
    ({ kind, record }) =>
      isEvidence(kind) &&
      dayOfRecord(record) <= day &&
      (record.stage === stage || named(kind, record).some(({ id }) => ids.has(id))),
  );
  const followed = new Set<string>();
  const cover = ({ kind, record }: CoveredRecord): void => {
    put(kind, record);
    for (const { id, target } of named(kind, record)) {
      if ('library' in target) {
        const used = isKeptUp(target.library) ? undefined : recordIn(model.library, target.library, id);
        if (used) put(target.library, used, `library ${target.library}`);
        continue;
      }
      for (const rest of restsOn(shell, id)) if (!isEvidence(rest.kind) && !isLater(rest)) put(rest.kind, rest.record);
    }
    hang({ kind, record });
  };
  // A place moves with whatever it hangs on, however far down the chain.
  const hang = ({ kind, record }: CoveredRecord): void => {
    for (const { id, place } of named(kind, record)) {
      const [rest] = place && !followed.has(id) ? restsOn(shell, id) : [];
      if (rest === undefined) continue;
      followed.add(id);
      put(rest.kind, rest.record);
      hang(rest);
    }
  };
  for (const one of [...own, ...evidence]) cover(one);
  return covered;
}

/** Records of the stage that are in the coach, evidence aside. */
export const ownRecords = (model: Model, stage: string): readonly CoveredRecord[] =>
  ofStage(model, stage).filter(({ record }) => !isPlanned(model.shell, record.id));

/** Records of the stage that are not in the coach yet: no signature covers them. */
export const plannedRecords = (model: Model, stage: string): readonly CoveredRecord[] =>
  ofStage(model, stage).filter(({ record }) => isPlanned(model.shell, record.id));

const ofStage = (model: Model, stage: string): readonly CoveredRecord[] =>
  all(model.shell).filter((one) => !isEvidence(one.kind) && !hasOwnLife(one.kind) && stageOf(model, one) === stage);

/** The stage of a record. A weld without one is of the latest stage of the parts that it joins. */
export function stageOf({ shell, library }: Model, { kind, record }: CoveredRecord): string | undefined {
  return record.stage ?? (kind === 'weld' ? latest((record as Weld).joins.flat(), shell, orderOf(library)) : undefined);
}

const orderOf = ({ stages }: Library): ReadonlyMap<string, number> => new Map(stages.map(({ id }, i) => [id, i]));

function latest(ids: readonly string[], shell: Shell, order: ReadonlyMap<string, number>): string | undefined {
  const stages = ids.flatMap((id) => (shell.byId.get(id)?.record as { readonly stage?: string } | undefined)?.stage ?? []);
  return stages.reduce<string | undefined>(
    (last, one) => (last === undefined || (order.get(one) ?? -1) > (order.get(last) ?? -1) ? one : last),
    undefined,
  );
}

export interface CoveredRecord {
  readonly kind: RecordKind;
  readonly record: RecordBase;
}

const known = new WeakMap<Shell, readonly CoveredRecord[]>();

/** Records with a text of their own; axles, tanks and the like are part of the shell's. */
function all(shell: Shell): readonly CoveredRecord[] {
  const kept =
    known.get(shell) ??
    [...shell.byId.values()].flatMap(({ kind, record }) =>
      (record as Partial<RecordBase>).typed === undefined ? [] : [{ kind, record: record as RecordBase }],
    );
  known.set(shell, kept);
  return kept;
}

const dayOfRecord = (record: RecordBase & { readonly taken?: string }): string => dayOf(record.taken ?? record.date ?? '');

function named(kind: RecordKind, record: RecordBase): readonly Named[] {
  const found: Named[] = [];
  eachNamed(kind, record.typed, (one) => found.push(one));
  return found;
}

/** A record that is named, and of a circuit everything that is its. */
function restsOn(shell: Shell, id: string): readonly CoveredRecord[] {
  const entry = shell.byId.get(id);
  if (entry === undefined || (entry.record as Partial<RecordBase>).typed === undefined) return [];
  const itself = { kind: entry.kind, record: entry.record as RecordBase };
  if (entry.kind !== 'circuit') return [itself];
  const runs = shell.runs.filter((run) => run.circuit === id);
  const ends = new Set(runs.flatMap((run) => [run.from, run.to]));
  const nodes = shell.nodes.filter((node) => node.circuit === id || ends.has(node.id));
  return [
    itself,
    ...runs.map((record) => ({ kind: 'run', record }) as const),
    ...nodes.map((record) => ({ kind: 'node', record }) as const),
  ];
}

const hashes: Readonly<Record<DigestForm, WeakMap<RecordBase, string>>> = { c1: new WeakMap(), c2: new WeakMap() };

function hashOf(kind: KindName, name: string, record: RecordBase, way: DigestForm): string {
  const known = hashes[way].get(record);
  const hash = known ?? sha256(canonical({ kind: name, id: record.id, data: substanceOf(kind, record.typed, way) }));
  hashes[way].set(record, hash);
  return hash;
}
