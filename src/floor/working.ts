import { valueAt, withValue } from '../entry/change.js';
import type { EntryKind } from '../entry/homes.js';
import type { IndexedRecord, RecordIndex } from '../entry/record-index.js';
import { sameTyped } from '../entry/same.js';
import type { CellChange } from '../entry/sheet-changes.js';
import { type Data, isData } from '../entry/yaml-text.js';
import type { Path } from '../source/source.js';

/** The key under which a record keeps which entries of floor pages went into it: taken in again they change nothing. */
export const FLOOR_KEY = 'x-floor';

/** The key under which a record names its voice notes: file in the shell’s folder, and SHA-256. */
export const VOICE_KEY = 'x-voice';

/** One record while entries go into it. */
export class WorkingRecord {
  private readonly touched = new Map<string, Path>();

  constructor(
    readonly kind: EntryKind,
    readonly id: string,
    /** As it stands in a file; undefined for a new one. */
    readonly record: IndexedRecord | undefined,
    public data: Data,
  ) {}

  /** Keys of the entries that went into it, in order. */
  get keys(): readonly string[] {
    return [this.data[FLOOR_KEY] ?? []].flat().map(String);
  }

  /** Puts a value in and remembers the entry that it came with. */
  put(path: Path, value: unknown): void {
    this.data = withValue(this.data, path, value) as Data;
    this.touched.set(path.join('.'), path);
  }

  /** The entry is in: taken in once more it changes nothing. */
  mark(key: string): void {
    this.put([FLOOR_KEY], [...new Set([...this.keys, key])].sort());
  }

  addVoice(note: { readonly file: string; readonly sha256: string }): void {
    const there = [this.data[VOICE_KEY] ?? []].flat() as unknown as readonly Data[];
    if (!there.some((one) => one.sha256 === note.sha256)) this.put([VOICE_KEY], [...there, note]);
  }

  /** What is written into the record's text: each new value where the record has its surroundings, a whole block where it has none. */
  get changes(): readonly CellChange[] {
    const old = this.record?.data ?? {};
    const found = new Map<string, CellChange>();
    for (const path of this.touched.values()) {
      const at = path.findIndex((_step, i) => i < path.length - 1 && !isHolder(valueAt(old, path.slice(0, i + 1))));
      const whole = at < 0 ? path : path.slice(0, at + 1);
      const value = valueAt(this.data, whole);
      if (!sameTyped(valueAt(old, whole), value))
        found.set(whole.join('.'), { path: whole, old: valueAt(old, whole), new: value });
    }
    return [...found.values()];
  }
}

const isHolder = (value: unknown): boolean => Array.isArray(value) || isData(value);

/** The records that entries go into, each read once. */
export class WorkingSet {
  private readonly byIdentity = new Map<string, WorkingRecord>();

  constructor(private readonly known: RecordIndex) {}

  /** The record, new or in a file; undefined where there is none. */
  find(kind: EntryKind, id: string): WorkingRecord | undefined {
    const here = this.byIdentity.get(`${kind} ${id}`);
    if (here) return here;
    const record = this.known.find(kind, id);
    return record && this.hold(new WorkingRecord(kind, id, record, record.data));
  }

  add(kind: EntryKind, id: string, data: Data): WorkingRecord {
    return this.hold(new WorkingRecord(kind, id, undefined, data));
  }

  /** Those that are new or have changed. */
  get written(): readonly WorkingRecord[] {
    return [...this.byIdentity.values()].filter(({ record, changes }) => record === undefined || changes.length > 0);
  }

  private hold(one: WorkingRecord): WorkingRecord {
    this.byIdentity.set(`${one.kind} ${one.id}`, one);
    return one;
  }
}
