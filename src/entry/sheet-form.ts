import { columnFor, columnsOf, type EntryColumn } from './columns.js';
import { type EntryKind, kindNamed } from './homes.js';
import { LIST_FORMS, type ListWord } from './lists/columns.js';
import { type LeadWord, leadWords, tradeWords } from './trade-words.js';

/** What a sheet may be read as: records of one kind, or a list whose rows make several. */
export type SheetWord = EntryKind | ListWord;

/** The columns of such a sheet. */
export interface SheetForm {
  /** As messages and import.yaml name it. */
  readonly word: SheetWord;
  readonly columns: readonly EntryColumn[];
  /** Also of keys that only the records know, as `readings.steer.left`. */
  columnFor(key: string): EntryColumn | undefined;
  /** What people write at the head of a column, in small letters without signs → key. */
  readonly words: ReadonlyMap<string, string>;
  /** What stands before a field and fills another: `VT by`. */
  readonly leads: ReadonlyMap<string, LeadWord>;
  /** Those words leave no doubt: such a list has few columns, and nobody need confirm them. */
  readonly sure: boolean;
}

/** A list whose rows make several records. */
export const isList = (word: SheetWord): word is ListWord => Object.hasOwn(LIST_FORMS, word);

export function formOfSheet(word: SheetWord): SheetForm {
  if (!isList(word))
    return {
      word,
      columns: columnsOf(word),
      columnFor: (key) => columnFor(word, key),
      words: tradeWords(word),
      leads: leadWords(word),
      sure: false,
    };
  const { columns, words } = LIST_FORMS[word]();
  return { word, columns, columnFor: (key) => columns.find((one) => one.key === key), words, leads: new Map(), sure: true };
}

/** `wires` and `pipes` are lists; every other word is a kind of record; undefined for what is neither. */
export function sheetNamed(word: string): SheetWord | undefined {
  const plain = word.toLowerCase();
  const list = (Object.keys(LIST_FORMS) as ListWord[]).find((one) => one === plain || `${one}s` === plain);
  return list ?? kindNamed(word);
}
