import type { Place } from '../finding.js';
import type { Model } from '../model/shell.js';
import { openByZone } from '../query/release/index.js';
import type { RecordBase } from '../records/index.js';
import type { DecidedFinding } from '../rules/decide.js';
import { answerable } from '../rules/index.js';
import { stageOf } from './coverage.js';
import { dutyOf } from './duty.js';
import { unmetHoldPoints } from './hold-points.js';
import { signedStages } from './signed.js';

/**
 * Something open. completion: work that is not done, or not on record. punch: work that is done and not acceptable.
 * A blocks sign-off and close-out until it is put right. B blocks close-out until it is put right or decided, or, of a hold point, its
 * stage’s sign-off. C is accepted and travels with the shell.
 */
export interface OpenItem {
  readonly list: 'completion' | 'punch';
  readonly grade: 'A' | 'B' | 'C';
  readonly message: string;
  readonly ids: readonly string[];
  /** Who must do it: a trade, with the person’s id where the record names one. */
  readonly who: string;
  /** A zone’s name, a stage, or the papers. */
  readonly where: string;
  /** The rule that found it, or the hold point that lacks it. */
  readonly because: string;
  /** The stage that it is of, where it is of one. */
  readonly stage?: string;
  readonly place?: Place;
}

export interface Judged {
  readonly model: Model;
  readonly findings: readonly DecidedFinding[];
}

/** Everything that is open in a shell; what blocks most first, as found within a grade. */
export function openItems(judged: Judged): readonly OpenItem[] {
  const found = ofFindings(judged);
  // What a finding blames already is not told again by the hold point that it keeps open.
  const told = new Set(found.map(({ ids }) => ids[0]));
  const stages = ofStages(judged).filter(({ because, ids }) => because === 'signoff' || !told.has(ids[0]));
  const items = [...found, ...stages, ...stillPlanned(judged.model), ...accepted(judged)];
  return items.sort((a, b) => (a.grade < b.grade ? -1 : a.grade > b.grade ? 1 : 0));
}

/** What stands in the way of closing. */
export const blocking = (items: readonly OpenItem[]): readonly OpenItem[] => items.filter(({ grade }) => grade !== 'C');

function ofFindings({ model, findings }: Judged): readonly OpenItem[] {
  const open = findings.filter(({ severity, decidedBy }) => severity !== 'note' && decidedBy === undefined);
  return openByZone(model, open).flatMap(({ zone, findings: inZone }) =>
    inZone.map((finding): OpenItem => {
      const stage = stageOfId(finding.ids[0], model);
      const { asks, duty } = answerable(finding.rule);
      return {
        list: asks === 'missing' ? 'completion' : 'punch',
        grade: finding.severity === 'error' ? 'A' : 'B',
        message: finding.message,
        ids: finding.ids,
        who: dutyOf(duty, finding.ids, model),
        where: zone?.name ?? (stage === undefined ? 'papers' : `stage ${stage}`),
        because: finding.rule,
        ...(stage === undefined ? {} : { stage }),
        place: finding.place,
      };
    }),
  );
}

/** What is planned and not in the coach: built, or taken out of the record, before the close. One item a kind. */
function stillPlanned(model: Model): readonly OpenItem[] {
  const kinds = new Map<string, RecordBase[]>();
  for (const { kind, record } of model.shell.byId.values()) {
    const base = record as Partial<RecordBase>;
    if (base.planned === true) kinds.set(kind, [...(kinds.get(kind) ?? []), record as RecordBase]);
  }
  return [...kinds].map(([kind, records]): OpenItem => {
    const some = records.slice(0, 6).map(({ id }) => id);
    const more = records.length > some.length ? ` and ${records.length - some.length} more` : '';
    return {
      list: 'completion',
      grade: 'B',
      message: `${some.join(', ')}${more} (${kind}): planned, not built. Build it, take \`planned: yes\` away and type its \`date\`; or take it out of the record`,
      ids: records.map(({ id }) => id),
      who: dutyOf('trade', [records[0]?.id ?? ''], model),
      where: 'planned',
      because: 'planned',
      ...(records[0] ? { place: records[0].source.place('planned') } : {}),
    };
  });
}

function ofStages(judged: Judged): readonly OpenItem[] {
  const { model } = judged;
  const standing = signedStages(model);
  return model.library.stages.flatMap(({ id, name }) => {
    const signed = standing.filter(({ signoff }) => signoff.stage === id);
    // A lapsed one is told by its rule.
    if (signed.length > 0 && signed.every(({ standing: now }) => now !== 'not verified')) return [];
    const message =
      signed.length === 0
        ? `Stage ${id} (${name}) is not signed off: \`shellbook signoff ${model.shell.id} ${id} --by …\``
        : `The sign-off of stage ${id} has no digest to compare, so it closes nothing: sign it again`;
    const unsigned: OpenItem = {
      ...base(id),
      grade: 'A',
      message,
      ids: [id],
      who: dutyOf('inspector', [], model),
      because: 'signoff',
    };
    return [unsigned, ...(signed.length === 0 ? holdPointItems(judged, id) : [])];
  });
}

const base = (stage: string) => ({ list: 'completion', where: `stage ${stage}`, stage }) as const;

/** Hold points of a stage that are not met, as items of the completion list. */
export const holdPointItems = (judged: Judged, stage: string): readonly OpenItem[] =>
  unmetHoldPoints(judged, stage).map(({ holdPoint, message, ids, duty }) => ({
    ...base(stage),
    grade: 'B',
    message,
    ids,
    who: dutyOf(duty, ids, judged.model),
    because: holdPoint,
  }));

/** Decided and not yet done, or decided as it is: told to whoever takes the shell over. */
function accepted({ model }: Judged): readonly OpenItem[] {
  return model.shell.findings
    .filter(({ decision, approvedBy, closed }) => decision !== undefined && approvedBy !== undefined && closed === undefined)
    .map(({ id, of, description, decision, approvedBy, raised, source }) => ({
      list: 'punch',
      grade: 'C',
      message: `${id}: ${description}; ${decision}, by ${approvedBy}, raised ${raised}, not closed yet`,
      ids: [id, ...of],
      who: dutyOf('inspector', [id], model),
      where: 'papers',
      because: id,
      place: source.place(),
    }));
}

function stageOfId(id: string | undefined, model: Model): string | undefined {
  const entry = id === undefined ? undefined : model.shell.byId.get(id);
  return entry && stageOf(model, { kind: entry.kind, record: entry.record as RecordBase });
}
