import { isMap, isScalar, type Node, type Pair } from 'yaml';
import { readDocument } from '../source/document.js';
import { COLUMNS_FILE } from '../store/layout.js';
import { UserError } from '../user-error.js';
import { setValue } from './change.js';
import { plainHeader, type SheetHeader, UNREAD } from './headers.js';
import { COLUMNS_HEAD, LAYERS_KEY, SHEETS_KEY } from './kept-keys.js';
import type { RecordIndex } from './record-index.js';
import { type SheetWord, sheetNamed } from './sheet-form.js';
import { Splices, wireRootOf } from './splices.js';
import { isData } from './yaml-text.js';

const EXAMPLE = '`member:` and below it `Profile: section`';

/** What the shop calls the columns of its sheets of one kind: plain name of the head → key. Throws {@link UserError} with the line. */
export function keptColumns(text: string | undefined, kind: SheetWord): ReadonlyMap<string, string> {
  if (text === undefined) return new Map();
  const { data, findings } = readDocument(COLUMNS_FILE, text);
  const [fault] = findings;
  if (fault) throw new UserError(`${COLUMNS_FILE}:${fault.place.line}: ${fault.message}`);
  if (data === null) return new Map();
  if (!isData(data)) throw new UserError(`${COLUMNS_FILE} is not a block of keys, expected ${EXAMPLE}`);
  const kept = new Map<string, string>();
  for (const [word, columns] of Object.entries(data)) {
    if (word === SHEETS_KEY || word === LAYERS_KEY) continue;
    const named = sheetNamed(word);
    if (named === undefined)
      throw new UserError(`Found \`${word}\` in ${COLUMNS_FILE}, expected a kind of record, as ${EXAMPLE}`);
    if (named !== kind || columns === null) continue;
    if (!isData(columns)) throw new UserError(`Found a value for \`${word}\` in ${COLUMNS_FILE}, expected ${EXAMPLE}`);
    for (const [head, key] of Object.entries(columns)) kept.set(plainHeader(head), key === null ? UNREAD : String(key));
  }
  return kept;
}

/** `Profile=section`, `Cost=skip`. */
export function saidColumns(pairs: readonly string[]): ReadonlyMap<string, string> {
  return new Map(
    pairs.map((pair) => {
      const at = pair.lastIndexOf('=');
      if (at < 1)
        throw new UserError(`Found --map \`${pair}\`, expected the column’s head and a key, as 'Profile=section' or 'Cost=skip'`);
      return [plainHeader(pair.slice(0, at)), pair.slice(at + 1).trim()] as const;
    }),
  );
}

/** The file’s new text with these columns kept for the next sheet. */
export function withKept(old: string | null, kind: SheetWord, heads: readonly SheetHeader[]): string {
  const start = old ?? COLUMNS_HEAD;
  const root = wireRootOf(COLUMNS_FILE, start);
  const word = isMap(root) ? wordFor(root.items as Pair<Node>[], kind) : undefined;
  const pairs = heads
    .filter(({ how, text, mapped, implied }) => text !== '' && !implied && (mapped || how === 'close' || how === 'unknown'))
    .map(({ text, column }) => [text, column?.key ?? UNREAD] as const);
  if (pairs.length === 0) return start;
  const splices = new Splices(start);
  if (root !== null && word !== undefined) for (const [head, key] of pairs) setValue(splices, root, [word, head], key);
  else splices.insert(start.length, `${kind}:\n${pairs.map(([head, key]) => `  ${JSON.stringify(head)}: ${key}\n`).join('')}`);
  return splices.apply();
}

function wordFor(items: readonly Pair<Node>[], kind: SheetWord): string | undefined {
  const words = items.flatMap(({ key }) => (isScalar(key) ? String(key.value) : []));
  return words.find((one) => sheetNamed(one) === kind);
}

/** Words that only this shell knows: its axles at the head of a ticket’s column, its tanks and what is in them. */
export function ownWords(kind: SheetWord, known: RecordIndex): ReadonlyMap<string, string> {
  const words = new Map<string, string>();
  if (kind !== 'ticket') return words;
  for (const { data } of known.ofKind('tank')) {
    for (const word of [data.contents, data.id]) words.set(plainHeader(String(word)), `condition.${String(word)}`);
  }
  for (const { id } of known.ofKind('axle')) {
    for (const end of ['left', 'right']) words.set(plainHeader(`${id}${end}`), `readings.${id}.${end}`);
    for (const tail of ['', 'axle', 'weight']) words.set(plainHeader(`${id}${tail}`), `readings.${id}`);
  }
  return words;
}
