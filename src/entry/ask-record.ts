import type { Model } from '../model/shell.js';
import { EXAMPLES } from '../quantity/units.js';
import { checkForm } from '../records/form/form.js';
import { kindOf } from '../records/kinds.js';
import { Schemas } from '../records/schema.js';
import type { Path } from '../source/source.js';
import type { Asker } from './asker.js';
import { readCell, writeCell } from './cells.js';
import { valueAt, withValue } from './change.js';
import { choicesFor } from './choices.js';
import { columnFor, columnsOf, type EntryColumn } from './columns.js';
import { type EntryKind, homeOf } from './homes.js';
import { nextId } from './numbering.js';
import type { RecordIndex } from './record-index.js';
import { NO_PLACE } from './validate.js';
import type { Data } from './yaml-text.js';

const DONE = '';

export interface AskFor {
  readonly kind: EntryKind;
  /** What was given as options: not asked again. */
  readonly given: Data;
  readonly known: RecordIndex;
  readonly model: Model;
}

/** Asks for what is missing of a record, each answer checked as it is given. An empty answer leaves an optional field out. */
export async function askRecord(of: AskFor, asker: Asker): Promise<Data> {
  let data: Data = of.given;
  for (const key of await keysToAsk(of, asker)) {
    const found = columnFor(of.kind, key);
    const column = found && {
      ...found,
      required: found.required || (kindOf(of.kind).more.needed as readonly string[] | undefined)?.includes(key) === true,
    };
    if (!column || valueAt(data, column.path) !== undefined) continue;
    const value = await askField(of, column, data, asker);
    if (value !== undefined) data = withValue(data, column.path, value) as Data;
  }
  return of.kind === 'ticket' ? askReadings(of, data, asker) : data;
}

async function keysToAsk({ kind, given }: AskFor, asker: Asker): Promise<readonly string[]> {
  const columns = columnsOf(kind);
  const { asked, askedOtherwise } = kindOf(kind).more;
  const usual = asked ?? [...columns.filter(({ required }) => required).map(({ key }) => key), 'stage', 'date'];
  if (kind !== 'member' || given.section !== undefined) return usual;
  const plate = given.plate !== undefined || (await asker.confirm({ text: 'Is it a plate?', usual: false }));
  return plate ? (askedOtherwise ?? usual) : usual;
}

async function askField(of: AskFor, column: EntryColumn, data: Data, asker: Asker): Promise<unknown> {
  const text = `${column.key}${column.required ? '' : ' (optional)'}: ${column.help}${exampleOf(column)}`;
  const usual = usualOf(of, column);
  const choices =
    column.form.as === 'choice' ? column.form.values.map((value) => ({ value })) : choicesFor(of.kind, column, data, of.model);
  if (choices && choices.length > 0) {
    if (column.list) return askSeveral(of, column, data, asker);
    const none = column.required ? [] : [{ value: DONE, name: '(leave it out)' }];
    const chosen = await asker.choose({ text, choices: [...choices, ...none], ...(usual === undefined ? {} : { usual }) });
    return chosen === DONE ? undefined : chosen;
  }
  const typed = await asker.text({
    text,
    ...(usual === undefined ? {} : { usual }),
    wrong: (answer) => wrongAnswer(of, column, data, answer),
  });
  return typed.trim() === '' ? undefined : typedValue(column, typed);
}

/** How it is typed, where the help does not say. */
function exampleOf({ form, help }: EntryColumn): string {
  if (help.includes(' as ')) return '';
  if (form.as === 'place') return ', as 64 in, -48 in, 96 in';
  if (form.as === 'date') return ', as 2026-02-11';
  return form.as === 'quantity' ? `, as ${EXAMPLES[form.dimension]}` : '';
}

/** One after the other, those near the first right behind it. */
async function askSeveral(of: AskFor, column: EntryColumn, data: Data, asker: Asker): Promise<unknown> {
  const chosen: string[] = [];
  const enough = column.key === 'joins' ? 2 : Number.POSITIVE_INFINITY;
  while (chosen.length < enough) {
    const choices = (choicesFor(of.kind, column, { ...data, [column.key]: chosen }, of.model) ?? []).filter(
      ({ value }) => !chosen.includes(value),
    );
    const may = chosen.length > 0 || !column.required;
    const text = `${column.key}: ${column.help}${chosen.length > 0 ? ` (so far ${chosen.join(', ')})` : ''}`;
    const one = await asker.choose({
      text,
      choices: [...(may && enough > 2 ? [{ value: DONE, name: '(that is all)' }] : []), ...choices],
    });
    if (one === DONE) break;
    chosen.push(one);
  }
  return chosen.length === 0 ? undefined : chosen;
}

async function askReadings({ known }: AskFor, data: Data, asker: Asker): Promise<Data> {
  let whole: Data = data;
  const fields = ['condition.fuel', ...known.ofKind('axle').map(({ id }) => `readings.${id}`)];
  for (const key of fields) {
    const column = columnFor('ticket', key) as EntryColumn;
    if (valueAt(whole, column.path) !== undefined) continue;
    const typed = await asker.text({
      text: key.startsWith('condition') ? `${key}: how full, as 3/4` : `${key}: reading with its unit`,
      wrong: () => undefined,
    });
    if (typed.trim() !== '') whole = withValue(whole, column.path, typedValue(column, typed)) as Data;
  }
  return whole;
}

const typedValue = (column: EntryColumn, typed: string): unknown => {
  const read = readCell(typed, column);
  return read.ok ? read.value : typed;
};

/** The next free number; else what the last record of the kind has. */
function usualOf({ kind, known }: AskFor, column: EntryColumn): string | undefined {
  if (column.key === 'id') return nextId(kind, known);
  const last = known.ofKind(kind).at(-1);
  if (!last || !column.traits.asLast) return undefined;
  const value = valueAt(last.data, column.path);
  return value === undefined ? undefined : writeCell(value, column, known.unitsOf(last.file));
}

/** What the schema says of this one answer. */
function wrongAnswer(
  { kind, known }: Pick<AskFor, 'kind' | 'known'>,
  column: EntryColumn,
  data: Data,
  typed: string,
): string | undefined {
  if (typed.trim() === '') return column.required ? `Needed: ${column.help}` : undefined;
  const read = readCell(typed, column);
  if (!read.ok) return read.message;
  if (column.key === 'id' && homeOf(kind).in !== 'library') {
    const taken = known.taken(kind, String(read.value));
    if (taken !== undefined) return `\`${String(read.value)}\` is the id of a ${taken} already, expected a new one`;
  }
  return faultAt(kind, column, withValue(data, column.path, read.value) as Data);
}

function faultAt(kind: EntryKind, column: EntryColumn, data: Data): string | undefined {
  let last: Path = [];
  const source = {
    place: (...path: Path) => {
      last = path;
      return NO_PLACE.place();
    },
    placeOfKey: NO_PLACE.placeOfKey,
  };
  let wrong: string | undefined;
  checkForm(new Schemas(), kind, { data, source }, ({ message, rule }) => {
    const here = column.path.every((step, i) => step === last[i]) && rule !== 'format.missing-key';
    if (here) wrong ??= message;
  });
  return wrong;
}
