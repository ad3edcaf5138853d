import type { Model } from '../model/shell.js';
import { EXAMPLES } from '../quantity/units.js';
import { checkForm } from '../records/form/form.js';
import { kindOf } from '../records/kinds.js';
import { Schemas } from '../records/schema.js';
import type { Path } from '../source/source.js';
import type { Asker, MenuChoice } from './asker.js';
import { readCell, writeCell } from './cells.js';
import { valueAt, withValue } from './change.js';
import { choicesFor } from './choices.js';
import { blockColumns, columnFor, columnsOf, type EntryColumn } from './columns.js';
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
  /** Undefined for a record of the library, which names no other. */
  readonly model: Model | undefined;
}

/** Asks for what is missing of a record, each answer checked as it is given. An empty answer leaves an optional field out. */
export async function askRecord(of: AskFor, asker: Asker): Promise<Data> {
  let data: Data = of.given;
  const keys = await keysToAsk(of, asker);
  for (const key of keys) {
    const found = columnFor(of.kind, key);
    const column = found && {
      ...found,
      required: found.required || (kindOf(of.kind).more.needed as readonly string[] | undefined)?.includes(key) === true,
    };
    const asked = column && valueAt(data, column.path) === undefined ? withinBlock(column, data, keys) : undefined;
    if (!column || !asked) continue;
    const value = await askField(of, asked, data, asker);
    if (value !== undefined) data = withValue(data, column.path, value) as Data;
  }
  return of.kind === 'ticket' ? askReadings(of, data, asker) : data;
}

/**
 * A field of a block as it is asked: of a block that must be whole the first answer says whether it is wanted at all, and the others are
 * needed then, or (undefined) not asked.
 */
export function withinBlock(column: EntryColumn, data: Data, keys: readonly string[]): EntryColumn | undefined {
  const [block, inner] = column.path;
  if (inner === undefined || !column.required) return column;
  if (data[String(block)] !== undefined) return column;
  const first = keys.find((key) => key.startsWith(`${String(block)}.`));
  return first === column.key ? { ...column, required: false } : undefined;
}

async function keysToAsk({ kind, given }: AskFor, asker: Asker): Promise<readonly string[]> {
  const columns = columnsOf(kind);
  const { asked, askedOtherwise } = kindOf(kind).more;
  // What stands in shell.yaml is of the coach as a whole, of no stage or day.
  const more = homeOf(kind).in === 'head' ? [] : ['stage', 'date'];
  const usual = asked ?? [...columns.filter(({ required }) => required).map(({ key }) => key), ...more];
  if (kind !== 'member' || given.section !== undefined) return usual;
  const plate = given.plate !== undefined || (await asker.confirm({ text: 'Is it a plate?', usual: false }));
  return plate ? (askedOtherwise ?? usual) : usual;
}

/** Asks for one field; `more` sees what the form does not. */
export async function askField(
  of: AskFor,
  column: EntryColumn,
  data: Data,
  asker: Asker,
  more?: (typed: string) => string | undefined,
): Promise<unknown> {
  if (blockColumns(of.kind, column.path, 0)) return askBlocks(of, column, data, asker);
  if (column.form.as === 'places') return askPlaces(of, column, data, asker);
  const text = `${column.key}${column.required ? '' : ' (optional)'}: ${column.help}${exampleOf(column)}`;
  const last = usualOf(of, column);
  const choices =
    column.form.as === 'choice'
      ? column.form.values.map((value) => ({ value }))
      : of.model && choicesFor(of.kind, column, data, of.model);
  if (choices && choices.length > 0) {
    if (column.list) return askSeveral(of, column, data, asker);
    const none = column.required ? [] : [{ value: DONE, name: '(leave it out)' }];
    const before = choices
      .filter(({ value }) => value === last)
      .map((one) => ({ ...one, name: `${nameOf(one)}  (as last time)` }));
    const others = choices.filter(({ value }) => value !== last);
    // What may be left out is left out by an empty answer.
    const usual = column.required ? before[0]?.value : DONE;
    const chosen = await asker.choose({
      text,
      choices: [...none, ...before, ...others],
      ...(usual === undefined ? {} : { usual }),
    });
    return chosen === DONE ? undefined : chosen;
  }
  const typed = await asker.text({
    text,
    ...(last === undefined ? {} : column.required ? { usual: last } : { last }),
    wrong: (answer) => wrongAnswer(of, column, data, answer) ?? more?.(answer),
  });
  return typed.trim() === '' ? undefined : typedValue(column, typed);
}

const nameOf = ({ name, value }: MenuChoice): string => name ?? value;

/** One block after the other, as the looks at a weld, until no more is wanted. */
async function askBlocks(of: AskFor, column: EntryColumn, data: Data, asker: Asker): Promise<unknown> {
  let whole: Data = data;
  for (let i = 0; ; i++) {
    const text = i === 0 ? `${column.key}: ${column.help}. Record one?` : `${column.key}: another one?`;
    if (!(await asker.confirm({ text, usual: false }))) break;
    for (const field of blockColumns(of.kind, column.path, i) ?? []) {
      const value = await askField(of, field, whole, asker);
      if (value !== undefined) whole = withValue(whole, field.path, value) as Data;
    }
  }
  return valueAt(whole, column.path);
}

/** Corner after corner; an empty answer ends. */
async function askPlaces(of: AskFor, column: EntryColumn, data: Data, asker: Asker): Promise<unknown> {
  const places: unknown[] = [];
  for (;;) {
    const least = column.required && places.length < LEAST_CORNERS;
    const typed = await asker.text({
      text: `${column.key}, place ${places.length + 1}${least ? '' : ' (Enter: no more)'}: ${column.help}, as 64 in, -48 in, 96 in`,
      wrong: (answer) => {
        if (answer.trim() === '') return least ? `Needed: at least ${LEAST_CORNERS}` : undefined;
        const read = readCell(answer, { ...column, form: { as: 'place' }, list: true });
        if (!read.ok) return read.message;
        // One place alone is no outline yet: the others stand in for those that come.
        const tried = [...places, read.value];
        return faultAt(
          of.kind,
          { ...column, path: [...column.path, places.length] },
          withValue(data, column.path, tried) as Data,
        );
      },
    });
    if (typed.trim() === '') break;
    const read = readCell(typed, { ...column, form: { as: 'place' }, list: true });
    if (read.ok) places.push(read.value);
  }
  return places.length === 0 ? undefined : places;
}

const LEAST_CORNERS = 3;

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
    const choices = (severalFor(of, column, { ...data, [column.key]: chosen }) ?? []).filter(
      ({ value }) => !chosen.includes(value),
    );
    const may = chosen.length > 0 || !column.required;
    const text = `${column.key}: ${column.help}${chosen.length > 0 ? ` (so far ${chosen.join(', ')})` : ''}`;
    const one = await asker.choose({
      text,
      choices: [
        ...(may && enough > 2 ? [{ value: DONE, name: chosen.length === 0 ? '(leave it out)' : '(that is all)' }] : []),
        ...choices,
      ],
      ...(may && enough > 2 ? { usual: DONE } : {}),
    });
    if (one === DONE) break;
    chosen.push(one);
  }
  return chosen.length === 0 ? undefined : chosen;
}

const severalFor = ({ kind, model }: AskFor, column: EntryColumn, data: Data): readonly MenuChoice[] | undefined =>
  column.form.as === 'choice' ? column.form.values.map((value) => ({ value })) : model && choicesFor(kind, column, data, model);

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
    if (taken !== undefined) return `\`${String(read.value)}\` is already the ID of a ${taken}, expected a new one`;
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
    const here = column.path.every((step, i) => String(step) === String(last[i])) && rule !== 'format.missing-key';
    if (here) wrong ??= message;
  });
  return wrong;
}
