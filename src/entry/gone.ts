import { isMap, isSeq, type Node } from 'yaml';
import { readDocument } from '../source/document.js';
import { COLUMNS_FILE } from '../store/layout.js';
import { setValue } from './change.js';
import type { EntryKind } from './homes.js';
import { COLUMNS_HEAD, SHEETS_KEY } from './kept-keys.js';
import type { RecordIndex } from './record-index.js';
import type { SheetPlan } from './sheet-changes.js';
import { isList, type SheetWord } from './sheet-form.js';
import { Splices, wireRootOf } from './splices.js';
import { isData } from './yaml-text.js';

/** The key that marks a record whose row is gone. */
const GONE_KEY = 'x-gone';

/** Rows of which kind a sheet is told by: of a list its runs. */
const kindIn = (word: SheetWord): EntryKind => (isList(word) ? 'run' : word);

const nameOf = (shell: string | undefined, word: SheetWord, sheet: string): string => `${shell ?? 'library'} ${word} ${sheet}`;

/** Ids that the sheet of this name held when it was last taken in. */
export function rememberedIds(
  text: string | undefined,
  shell: string | undefined,
  word: SheetWord,
  sheet: string,
): readonly string[] {
  const data: unknown = text === undefined ? undefined : readDocument(COLUMNS_FILE, text).data;
  const sheets = isData(data) ? data[SHEETS_KEY] : undefined;
  const ids = isData(sheets) ? sheets[nameOf(shell, word, sheet)] : undefined;
  return Array.isArray(ids) ? ids.map(String) : [];
}

/** Ids that the plan's rows have: of a list, those of its runs. */
export function idsInSheet(word: SheetWord, plan: SheetPlan, known: RecordIndex): readonly string[] {
  const kind = kindIn(word);
  const changed = plan.changed.flatMap(({ record, kind: of }) => (of === kind && record.id !== undefined ? [record.id] : []));
  return [
    ...plan.added.filter((one) => one.kind === kind).map(({ id }) => id),
    ...changed,
    ...plan.unchanged.filter((id) => known.find(kind, id) !== undefined),
  ];
}

/** Records that came with this sheet, are in it no more and still stand in the files. */
export function goneFrom(remembered: readonly string[], word: SheetWord, plan: SheetPlan, known: RecordIndex): readonly string[] {
  const here = new Set(idsInSheet(word, plan, known));
  return remembered.filter((id) => !here.has(id) && known.find(kindIn(word), id) !== undefined);
}

/** The plan with those records marked. */
export function withMarks(
  plan: SheetPlan,
  gone: readonly string[],
  word: SheetWord,
  known: RecordIndex,
  sheet: string,
): SheetPlan {
  const kind = kindIn(word);
  const marks = gone.flatMap((id): SheetPlan['changed'][number][] => {
    const record = known.find(kind, id);
    const old = record?.data[GONE_KEY];
    if (!record || old === sheet) return [];
    const data = { ...record.data, [GONE_KEY]: sheet };
    return [{ kind, record, data, changes: [{ path: [GONE_KEY], old, new: sheet }], row: 0 }];
  });
  return { ...plan, changed: [...plan.changed, ...marks] };
}

/** import.yaml with the ids that this sheet holds now. */
export function withRemembered(
  old: string | null,
  shell: string | undefined,
  word: SheetWord,
  sheet: string,
  ids: readonly string[],
): string {
  const start = old ?? COLUMNS_HEAD;
  const before = rememberedIds(start, shell, word, sheet);
  const now = [...new Set(ids)].sort();
  if (before.length === now.length && before.every((id, i) => id === now[i])) return old ?? '';
  const splices = new Splices(start);
  const root = wireRootOf(COLUMNS_FILE, start);
  const name = nameOf(shell, word, sheet);
  if (isMap(root)) {
    const held = root.get(SHEETS_KEY, true) as Node | undefined;
    if (isMap(held)) {
      const list = held.get(name, true) as Node | undefined;
      if (isSeq(list) || list === undefined) setValue(splices, held, [name], now);
      return splices.apply();
    }
  }
  const lines = `# Which records each sheet held, to name the rows that go missing.\n${SHEETS_KEY}:\n  ${JSON.stringify(name)}: ${JSON.stringify(now)}\n`;
  splices.insert(start.length, lines);
  return splices.apply();
}
