import type { Finding, Proposal } from '../finding.js';
import { Schemas } from '../records/schema.js';
import { valueAt, withValue } from './change.js';
import type { EntryKind } from './homes.js';
import type { IndexedRecord, RecordIndex } from './record-index.js';
import type { CellChange } from './sheet-changes.js';
import { NO_PLACE, validate } from './validate.js';
import type { Data } from './yaml-text.js';

/** What one record gets of what findings propose. */
export interface Mended {
  readonly kind: EntryKind;
  readonly id: string;
  readonly record: IndexedRecord;
  readonly data: Data;
  readonly changes: readonly CellChange[];
}

export interface MendPlan {
  readonly mended: readonly Mended[];
  /** Findings of the rule that propose nothing that could be written, and why. Sentences. */
  readonly left: readonly string[];
}

/** Puts what findings propose into the records, one record after the other; `only`: of these ids alone. Pure: nothing is written. */
export function mendPlan(findings: readonly Finding[], known: RecordIndex, only?: ReadonlySet<string>): MendPlan {
  const left: string[] = [];
  const byRecord = new Map<string, { readonly proposals: Proposal[] }>();
  for (const { proposes = [], message } of findings) {
    if (proposes.length === 0) left.push(message);
    for (const one of proposes) {
      if (only && !only.has(one.id)) continue;
      const key = `${one.kind} ${one.id}`;
      const held = byRecord.get(key) ?? { proposals: [] };
      held.proposals.push(one);
      byRecord.set(key, held);
    }
  }
  const mended = [...byRecord.values()].flatMap(({ proposals }) => {
    const made = mend(proposals, known);
    if (typeof made !== 'string') return [made];
    left.push(made);
    return [];
  });
  return { mended, left };
}

/** A record with its proposals in it; or why it cannot have them. */
function mend(proposals: readonly Proposal[], known: RecordIndex): Mended | string {
  const [{ id, kind: kindName }] = proposals as readonly [Proposal];
  const kind = kindName as EntryKind;
  const record = known.find(kind, id);
  if (!record) return `${kind} ${id} is not in the records any more: nothing was changed there.`;
  let data: Data = record.data;
  const changes: CellChange[] = [];
  for (const { path, value, adds } of proposals) {
    const old = valueAt(data, path);
    if (adds) {
      const list = old === undefined || old === null ? [] : [old].flat();
      if (list.map(String).includes(value)) continue;
      const now = [...list, value];
      data = withValue(data, path, now) as Data;
      // A list that is there is added to, one that is not (or a single word) is written whole.
      if (Array.isArray(valueAt(record.data, path))) changes.push({ path: [...path, list.length], old: undefined, new: value });
      else {
        const before = changes.findIndex((one) => one.path.join('.') === path.join('.'));
        if (before >= 0) changes.splice(before, 1);
        changes.push({ path, old: valueAt(record.data, path), new: now });
      }
    } else {
      data = withValue(data, path, value) as Data;
      changes.push({ path, old, new: value });
    }
  }
  const faults: string[] = [];
  const schemas = new Schemas(known.unitsOf(record.file));
  validate({ kind, data, known, schemas, source: NO_PLACE }, ({ message }) => faults.push(message));
  return faults.length > 0 ? `${kind} ${id}: ${faults.join('; ')}` : { kind, id, record, data, changes };
}
