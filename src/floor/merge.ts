import { valueAt } from '../entry/change.js';
import { chooseFile } from '../entry/files.js';
import { type EntryKind, homeOf, kindNamed } from '../entry/homes.js';
import { inOrder } from '../entry/options.js';
import { type RecordIndex, readKnown } from '../entry/record-index.js';
import { sameTyped } from '../entry/same.js';
import { textsOf } from '../entry/texts.js';
import { NO_PLACE, validate } from '../entry/validate.js';
import { type Data, flow, isData } from '../entry/yaml-text.js';
import type { StoreText } from '../model/load-types.js';
import type { RecordKind } from '../records/index.js';
import { Schemas } from '../records/schema.js';
import type { Path } from '../source/source.js';
import type { FloorEntry, FloorFile } from './hand-over.js';
import { type SoundEnding, soundEnding, soundFile } from './sound.js';
import { FLOOR_KEY, VOICE_KEY, type WorkingRecord, WorkingSet } from './working.js';

/** Which of two answers stands, where the record and a phone say different things. */
export type ClashDecision = 'record' | 'phone';

/** The record says one thing, an entry another, and nobody can know from here which is right. */
export interface FloorClash {
  readonly key: string;
  readonly person: string;
  readonly kind: EntryKind;
  readonly id: string;
  /** Where in the record; empty for the whole of it. */
  readonly field: string;
  readonly record: string;
  readonly phone: string;
}

export interface FloorFault {
  readonly key: string;
  readonly person: string;
  readonly id: string;
  readonly message: string;
}

export interface TakenEntry {
  readonly key: string;
  readonly person: string;
  readonly kind: EntryKind;
  readonly id: string;
  readonly does: FloorEntry['does'];
  readonly data: Data;
}

/** What the files of any number of phones would do to the records of a shell. */
export interface FloorPlan {
  /** Entries that come in, in the order in which they were made. */
  readonly taken: readonly TakenEntry[];
  /** Entries that are in already, or say what the record says. */
  readonly already: number;
  readonly clashes: readonly FloorClash[];
  readonly faults: readonly FloorFault[];
  /** The whole text of every file that changes, by its path in the store. */
  readonly texts: ReadonlyMap<string, string>;
  /** Pictures that go into the shell’s photos folder: SHA-256 → file name. */
  readonly pictures: ReadonlyMap<string, string>;
  /** Voice notes that go into the shell’s folder: SHA-256 → path in it. */
  readonly sounds: ReadonlyMap<string, string>;
}

/**
 * Merges what phones hand over into the records of a shell. The order of files does not matter: entries go in by the time at which they
 * were made. An entry that is in already changes nothing; what the shop has typed since stays. Where the record says otherwise than the
 * phone saw, it is a clash: `decisions` (by the key of the entry) tell which stands; without one the entry stays out.
 */
export function planFloor(
  handOvers: readonly FloorFile[],
  text: StoreText,
  shell: string,
  { decisions = new Map(), leaveOut = new Set(), mostBytes }: FloorOptions = {},
): FloorPlan {
  const known = readKnown(text, shell);
  const handed = new Set(handOvers.flatMap(({ pictures }) => pictures.map(({ sha256 }) => sha256)));
  const merge = new Merge(known, decisions, handed, endingsOf(handOvers));
  // The same entry may come twice, as a phone hands over again: the later file has it as it was last changed.
  const inTurn = [...handOvers].sort((a, b) => order(a.at, b.at) || order(a.device.tag, b.device.tag));
  const entries = new Map(inTurn.flatMap((one) => one.entries.map((entry) => [entry.key, entry] as const)));
  const inTime = [...entries.values()].sort((a, b) => order(a.at, b.at) || order(a.key, b.key));
  for (const entry of inTime) if (!leaveOut.has(entry.key)) merge.take(entry);
  merge.validate();
  const { plan } = merge;
  return { ...plan, texts: plan.faults.length > 0 ? new Map() : textsWith(merge.written, text, shell, known, mostBytes) };
}

export interface FloorOptions {
  /** By the key of an entry. */
  readonly decisions?: ReadonlyMap<string, ClashDecision>;
  /** Keys of entries that stay out. */
  readonly leaveOut?: ReadonlySet<string>;
  /** Of a file of records, after which a further one is begun. */
  readonly mostBytes?: number;
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

class Merge {
  private readonly records: WorkingSet;
  private readonly taken: TakenEntry[] = [];
  private readonly clashes: FloorClash[] = [];
  private readonly faults: FloorFault[] = [];
  private readonly pictures = new Map<string, string>();
  private readonly sounds = new Map<string, string>();
  private already = 0;

  constructor(
    private readonly known: RecordIndex,
    private readonly decisions: ReadonlyMap<string, ClashDecision>,
    private readonly handed: ReadonlySet<string>,
    /** What kind of sound each voice note is. */
    private readonly endings: ReadonlyMap<string, SoundEnding>,
  ) {
    this.records = new WorkingSet(known);
  }

  get plan(): Omit<FloorPlan, 'texts'> {
    const { taken, already, clashes, faults, pictures, sounds } = this;
    return { taken, already, clashes, faults, pictures, sounds };
  }

  get written(): readonly WorkingRecord[] {
    return this.records.written;
  }

  take(entry: FloorEntry): void {
    const kind = kindNamed(entry.kind);
    if (kind === undefined || homeOf(kind).in === 'library')
      return void this.fault(entry, `no record kind \`${entry.kind}\` of a shell`);
    if (entry.sound !== undefined && !this.endings.has(entry.sound))
      return void this.fault(entry, 'its voice note is not in the file');
    const record = this.records.find(kind, entry.id);
    if (record?.keys.includes(entry.key)) this.already++;
    else if (entry.does === 'add') this.add(entry, kind, record);
    else if (record === undefined) this.fault(entry, `there is no ${kind} ${entry.id}`);
    else if (entry.does === 'append') this.append(entry, record);
    else this.set(entry, record);
  }

  private add(entry: FloorEntry, kind: EntryKind, record: WorkingRecord | undefined): void {
    const data: Data = { id: entry.id, ...entry.data };
    if (record !== undefined) {
      const { [FLOOR_KEY]: _, [VOICE_KEY]: __, ...own } = record.data;
      if (sameTyped(own, data)) this.already++;
      else if (this.stands(entry, record, '', own, data))
        for (const [key, value] of Object.entries(data)) record.put([key], value);
      else return;
      this.come(entry, record);
      return;
    }
    const other = this.known.taken(kind, entry.id);
    if (other !== undefined) return void this.fault(entry, `\`${entry.id}\` is the id of a ${other}`);
    if (entry.picture !== undefined) {
      if (!this.handed.has(entry.picture)) return void this.fault(entry, 'its picture is not in the file');
      this.pictures.set(entry.picture, String(entry.data.file));
    }
    this.known.register.claim(entry.id, kind as RecordKind, NO_PLACE, () => {});
    this.come(entry, this.records.add(kind, entry.id, inOrder(kind, data)));
  }

  private append(entry: FloorEntry, record: WorkingRecord): void {
    const list = entry.list ?? '';
    const items = record.data[list] ?? [];
    if (list === '' || !Array.isArray(items))
      return void this.fault(entry, `\`${list}\` is not a list of ${record.kind} ${record.id}`);
    if (items.some((one) => sameTyped(one, entry.data))) this.already++;
    else record.put([list, items.length], entry.data);
    this.come(entry, record);
  }

  private set(entry: FloorEntry, record: WorkingRecord): void {
    const fields = Object.entries(entry.data).map(([key, value]) => {
      const path: Path = key.split('.');
      const now = valueAt(record.data, path);
      const isNews = !sameTyped(now, value);
      const isFree = now === undefined || now === null || sameTyped(now, entry.was?.[key]);
      return {
        path,
        value,
        goesIn: isNews && (isFree || this.stands(entry, record, key, now, value)),
        clashes: isNews && !isFree,
      };
    });
    if (fields.some(({ clashes }) => clashes) && this.decisions.get(entry.key) === undefined) return;
    for (const { path, value, goesIn } of fields) if (goesIn) record.put(path, value);
    this.come(entry, record);
  }

  /** Whether the phone’s answer stands where the record says otherwise. Undecided, it is a clash. */
  private stands(entry: FloorEntry, { kind, id }: WorkingRecord, field: string, now: unknown, wanted: unknown): boolean {
    const decision = this.decisions.get(entry.key);
    if (decision === undefined) {
      const { key, person } = entry;
      this.clashes.push({ key, person, kind, id, field, record: flow(now), phone: flow(wanted) });
    }
    return decision === 'phone';
  }

  private come(entry: FloorEntry, record: WorkingRecord): void {
    record.mark(entry.key);
    if (entry.sound !== undefined) {
      const file = soundFile(entry.key, this.endings.get(entry.sound) as SoundEnding);
      record.addVoice({ file, sha256: entry.sound });
      this.sounds.set(entry.sound, file);
    }
    const { key, person, does, data } = entry;
    this.taken.push({ key, person, kind: record.kind, id: record.id, does, data });
  }

  /** Tells what is wrong with the records as they would be. */
  validate(): void {
    const { known } = this;
    for (const { kind, id, data, record, keys } of this.written) {
      const file = record?.file ?? placeFor(kind, data, known);
      if (typeof file !== 'string') {
        this.faultOf(keys, id, file.ask);
        continue;
      }
      const schemas = new Schemas(known.unitsOf(file));
      validate({ kind, data, known, schemas, source: NO_PLACE }, ({ message }) => this.faultOf(keys, id, message));
    }
  }

  private faultOf(keys: readonly string[], id: string, message: string): void {
    const last = this.taken.findLast((one) => keys.includes(one.key));
    this.faults.push({ key: last?.key ?? '', person: last?.person ?? '', id, message });
  }

  private fault({ key, person, id }: FloorEntry, message: string): void {
    this.faults.push({ key, person, id, message });
  }
}

function endingsOf(handOvers: readonly FloorFile[]): ReadonlyMap<string, SoundEnding> {
  return new Map(
    handOvers.flatMap(({ sounds = [] }) =>
      sounds.flatMap(({ sha256, sound }): readonly (readonly [string, SoundEnding])[] => {
        // Enough of it to know what it is.
        const ending = soundEnding(Uint8Array.from(atob(sound.slice(0, 64)), (sign) => sign.charCodeAt(0)));
        return ending === undefined ? [] : [[sha256, ending]];
      }),
    ),
  );
}

function placeFor(kind: EntryKind, data: Data, known: RecordIndex): string | { readonly ask: string } {
  const chosen = chooseFile(kind, data, known);
  return 'ask' in chosen ? chosen : chosen.place.file;
}

/** The new texts: kind after kind, since several kinds share a service’s file. */
function textsWith(
  written: readonly WorkingRecord[],
  text: StoreText,
  shell: string,
  known: RecordIndex,
  mostBytes?: number,
): ReadonlyMap<string, string> {
  const changed = new Map<string, string>();
  let now = known;
  for (const kind of new Set(written.map((one) => one.kind))) {
    const own = written.filter((one) => one.kind === kind);
    const added = own.flatMap(({ record, id, data }) => {
      const chosen = record ? undefined : chooseFile(kind, data, now);
      return chosen && 'place' in chosen ? [{ id, data, place: chosen.place, row: 0 }] : [];
    });
    const changes = own.flatMap(({ record, id, data, changes }) => {
      const at = record && now.find(kind, id);
      return at ? [{ record: at, data, changes, row: 0 }] : [];
    });
    const texts = textsOf(kind, { added, changed: changes }, now, undefined, mostBytes);
    for (const [file, one] of texts) changed.set(file, one);
    now = readKnown({ ...text, files: new Map([...text.files, ...changed]) }, shell);
  }
  return changed;
}

/** A field of a record as one line, for people. */
export const lineOf = (data: Data): string =>
  Object.entries(data)
    .filter(([key, value]) => key !== 'id' && value !== undefined && !isLong(value))
    .map(([key, value]) => `${key} ${flow(value)}`)
    .join(', ');

const isLong = (value: unknown): boolean => isData(value) && Object.keys(value).length > 6;
