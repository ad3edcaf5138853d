import { VIN_FORM, vinCheckDigit } from '../records/vin.js';
import { askField, askRecord, withinBlock } from './ask-record.js';
import type { Asker } from './asker.js';
import { valueAt, withValue } from './change.js';
import type { ChassisEntry } from './chassis-text.js';
import { columnFor, type EntryColumn } from './columns.js';
import type { RecordIndex } from './record-index.js';
import { type Data, isData } from './yaml-text.js';

const HEAD = ['vin', 'title', 'envelope.length', 'envelope.width', 'envelope.height'];
const CHASSIS = [
  ...['description', 'document', 'gvwr', 'gcwr'],
  ...['frame.rail_top_above_ground', 'frame.rail_spacing', 'frame.rail_depth', 'frame.rail_width'],
];

/** Asks for the vehicle number, the ratings, the axles and the bare weights of a shell: what is there already is not asked again. */
export async function askChassis(known: RecordIndex, asker: Asker): Promise<ChassisEntry> {
  const held = known.files.get(`shells/${known.shell}/shell.yaml`)?.open?.document.data;
  const old: Data = isData(held) ? held : {};
  const head = await askKeys(known, 'shell', HEAD, old, asker);
  const oldChassis: Data = isData(old.chassis) ? old.chassis : {};
  const chassis = await askKeys(known, 'chassis', CHASSIS, oldChassis, asker);
  const axles = await askMore('axle', (count) => count < 2, known, asker);
  const tanks = await askMore('tank', (count) => count < 1, known, asker);
  const ids = [...known.ofKind('axle').map(({ data }) => data), ...axles].map(({ id }) => String(id));
  const allTanks = [...known.ofKind('tank').map(({ data }) => data), ...tanks];
  const bare = oldChassis.bare === undefined ? await askBare(ids, allTanks, known, asker) : undefined;
  return { head, chassis: { ...chassis, ...(bare ? { bare } : {}) }, axles, tanks };
}

async function askKeys(
  known: RecordIndex,
  kind: 'shell' | 'chassis',
  keys: readonly string[],
  old: Data,
  asker: Asker,
): Promise<Data> {
  let data: Data = {};
  for (const key of keys) {
    const column = columnFor(kind, key) as EntryColumn;
    const there = valueAt(old, column.path);
    if (there !== undefined && there !== null && String(there) !== 'Untitled shell') continue;
    // A block is written whole: half of one that is there stays for the hand.
    if (column.path.length > 1 && old[String(column.path[0])] !== undefined) continue;
    const asked = withinBlock(column, data, keys);
    if (asked === undefined) continue;
    const value = await askField({ kind: kind as never, given: {}, known, model: undefined }, asked, data, asker, faultOf(key));
    if (value !== undefined) data = withValue(data, column.path, value) as Data;
  }
  return data;
}

/** What the form alone does not see. */
const faultOf =
  (key: string) =>
  (typed: string): string | undefined => {
    if (key !== 'vin' || typed.trim() === '') return undefined;
    const vin = typed.trim();
    if (!VIN_FORM.test(vin))
      return `\`${vin}\` is not a vehicle number: expected 17 capital letters and digits, without I, O and Q`;
    const digit = vinCheckDigit(vin);
    return vin[8] === digit
      ? undefined
      : `position 9 is \`${vin[8]}\`, and \`${digit}\` by the others: read the plate again, or leave it out and type it by hand`;
  };

type Asked = 'axle' | 'tank';
const FIRST: Readonly<Record<Asked, string>> = {
  axle: 'Record an axle (the front one first)?',
  tank: 'Record a tank (the chassis’ own fuel tank first)?',
};

/** One record of a kind after the other. */
async function askMore(
  kind: Asked,
  usual: (count: number) => boolean,
  known: RecordIndex,
  asker: Asker,
): Promise<readonly Data[]> {
  const added: Data[] = [];
  for (;;) {
    const count = known.ofKind(kind).length + added.length;
    const text = count === 0 ? FIRST[kind] : `Another ${kind} (${count} so far)?`;
    if (!(await asker.confirm({ text, usual: usual(count) }))) return added;
    added.push(await askRecord({ kind, given: {}, known, model: undefined }, asker));
  }
}

async function askBare(
  axles: readonly string[],
  tanks: readonly Data[],
  known: RecordIndex,
  asker: Asker,
): Promise<Data | undefined> {
  if (axles.length === 0 || !(await asker.confirm({ text: 'Was the bare chassis weighed?', usual: false }))) return undefined;
  let bare: Data = { condition: {}, readings: {} };
  const levels = tanks.map(
    ({ id, contents }) => [`condition.${String(id)}`, `How full ${String(id)} (${String(contents)}) was, as 1/4`] as const,
  );
  const readings = axles.map((axle) => [`readings.${axle}`, 'What the scale said, as 9,840 lb'] as const);
  for (const [key, help] of [...levels, ...readings]) {
    const column = columnFor('bare', key);
    if (!column) continue;
    const value = await askField(
      { kind: 'bare' as never, given: {}, known, model: undefined },
      { ...column, required: false, help },
      bare,
      asker,
    );
    if (value !== undefined) bare = withValue(bare, column.path, value) as Data;
  }
  return Object.keys(bare.readings as Data).length === 0 ? undefined : bare;
}
