import { columnsOf } from '../../entry/columns.js';
import { type SheetHeader, UNREAD } from '../../entry/headers.js';
import { LIST_FORMS } from '../../entry/lists/columns.js';
import { columnName, type SheetTable } from '../../entry/sheet.js';
import { isList, type SheetWord } from '../../entry/sheet-form.js';
import { textTable } from './tables.js';

/** The columns as they are understood. */
export function columnsText(sheet: SheetTable, heads: readonly SheetHeader[]): string {
  const rows = heads
    .filter(({ text }) => text !== '')
    .map((head) => [columnName(head.index), head.text, head.column?.key ?? 'not read', head.unit ?? '', NOTES[head.how]]);
  return `Columns of ${sheet.name}:\n${textTable([{ head: '' }, { head: 'column' }, { head: 'read as' }, { head: 'unit' }, { head: '' }], rows, '  ')}`;
}

const NOTES: Readonly<Record<SheetHeader['how'], string>> = {
  certain: '',
  close: 'by a close name: is it right?',
  unknown: 'fits no key',
  unread: '',
  wrong: 'wrong',
};

export function columnsAdvice(sheet: SheetTable, heads: readonly SheetHeader[]): string {
  const example = heads.find(({ how }) => how === 'close') ?? heads.find(({ how }) => how === 'unknown');
  return `${sheet.name}: some columns are not certain. If they are read right, add --yes (and --keep for the next sheet). Otherwise say what they are, as --map '${example?.text}=${example?.column?.key ?? UNREAD}', or in import.yaml. Nothing was written.`;
}

export function noColumns(kind: SheetWord, sheet: SheetTable): string {
  const columns = isList(kind) ? LIST_FORMS[kind]().columns : columnsOf(kind);
  const keys = columns.slice(0, 12).map(({ key }) => key);
  return `${sheet.name}: no column fits a ${kind}: ${sheet.heads.filter((head) => head !== '').join(', ')}. Expected some of ${keys.join(', ')}. If the column names are further down, say where: --header-row 3. A template: shellbook export ${kind} --template --out ${kind}.xlsx`;
}
