import { readCell } from '../../entry/cells.js';
import { valueAt, withValue } from '../../entry/change.js';
import type { EntryColumn } from '../../entry/columns.js';
import type { Data } from '../../entry/yaml-text.js';
import { make } from '../../page/dom.js';
import type { PageWords } from '../../page/words.js';
import { checkForm } from '../../records/form/form.js';
import type { RecordKind } from '../../records/index.js';
import { referencesOf } from '../../records/references.js';
import { Schemas } from '../../records/schema.js';
import type { Path } from '../../source/source.js';
import type { FloorData, FloorRef } from '../floor-data.js';
import { formFields, type TaskName, taskOf } from '../tasks.js';

type Answered = HTMLInputElement | HTMLSelectElement;

/** A form that is filled in: its fields by key. */
export interface FilledForm {
  readonly fields: ReadonlyMap<string, Answered>;
  readonly columns: readonly EntryColumn[];
  readonly node: HTMLElement;
}

/** What was typed, as a record has it, or what is wrong with it, field by field. */
export type ReadFilled =
  | { readonly ok: true; readonly data: Data; readonly typed: Readonly<Record<string, string>> }
  | { readonly ok: false; readonly faults: ReadonlyMap<string, string> };

/** Makes the form of a task from the fields of its kind; `before` fills in what the last one like it had. */
export function makeForm(name: TaskName, data: FloorData, words: PageWords, before: (column: EntryColumn) => string): FilledForm {
  const { first, more } = formFields(name, name === 'ticket' ? ticketKeys(data) : []);
  const fields = new Map<string, Answered>();
  const line = (column: EntryColumn, isFirst: boolean): HTMLElement => {
    const id = `f-${column.key}`;
    const input = inputOf(column, id, name, data);
    // What nobody looks at is not filled in.
    input.value = isFirst ? before(column) : '';
    fields.set(column.key, input);
    const label = labelOf(column.key, data.words);
    // Few words: what has a name of its own says enough.
    const help =
      data.language === 'en' && label === column.key ? make('span', { class: 'quiet', id: `${id}-help` }, ` ${column.help}`) : '';
    if (help !== '') input.setAttribute('aria-describedby', `${id}-help`);
    return make(
      'div',
      { class: 'wide', 'data-field': column.key },
      make('label', { for: id }, label, column.required ? ` (${words('floor.tap.needed')})` : ''),
      input,
      help,
      make('p', { class: 'quiet on-record' }),
      make('p', { class: 'fault', role: 'alert' }),
    );
  };
  const node = make('div', {}, ...first.map((one) => line(one, true)));
  if (more.length > 0)
    node.append(make('details', {}, make('summary', {}, words('floor.more')), ...more.map((one) => line(one, false))));
  return { fields, columns: [...first, ...more], node };
}

/** What stood on the scale, and what was in the tanks: of this coach’s own axles. */
const ticketKeys = ({ coach }: FloorData): readonly string[] => [
  ...coach.shell.chassis.axles.map(({ id }) => `readings.${id}`),
  'condition.fuel',
];

/** A field by its name; a block's by the name of its last step. */
function labelOf(key: string, words: FloorData['words']): string {
  const short = key.replace(/^inspections\.\d+\./u, '');
  const [block = '', ...rest] = short.split('.');
  if (block === 'readings' || block === 'condition')
    return `${words[`field.${block}`] ?? block}: ${words[`field.${rest.join('.')}`] ?? rest.join('.')}`;
  return words[`field.${short}`] ?? words[`field.${short.split('.').at(-1)}`] ?? key;
}

function inputOf(column: EntryColumn, id: string, name: TaskName, data: FloorData): Answered {
  const { form } = column;
  if (form.as === 'choice' || form.as === 'yes or no') {
    const values = form.as === 'choice' ? form.values : ['yes', 'no'];
    return make(
      'select',
      { id },
      make('option', { value: '' }, ''),
      ...values.map((value) => make('option', { value }, data.words[`choice.${value}`] ?? value)),
    );
  }
  const input = make('input', { id, autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false' });
  if (form.as === 'date') input.inputMode = 'numeric';
  const list = refsOf(column, name, data);
  if (list.length > 0) {
    const listId = `${id}-list`;
    input.setAttribute('list', listId);
    // Beside it in the document, wherever the form is.
    queueMicrotask(() =>
      input.after(make('datalist', { id: listId }, ...list.map(([value, text]) => make('option', { value }, text)))),
    );
  }
  return input;
}

/** The records that a field may name. */
export function refsOf(column: EntryColumn, name: TaskName, { refs }: FloorData): readonly FloorRef[] {
  const { kind, list } = taskOf(name);
  const path = [
    ...(list === undefined ? [] : [list, '*']),
    ...column.path.map((step) => (typeof step === 'number' ? '*' : step)),
  ];
  const wanted = [path.join('.'), [...path, '*'].join('.'), [...path, '*', '*'].join('.')];
  const target = referencesOf(kind as RecordKind).find((one) => wanted.includes(one.path.join('.')))?.target;
  if (target === undefined) return [];
  if ('library' in target) return refs[target.library] ?? [];
  return 'kinds' in target ? target.kinds.flatMap((one) => refs[one] ?? []) : Object.values(refs).flat();
}

const SCHEMAS = new Schemas();

interface SchemaFault {
  readonly path: string;
  readonly message: string;
  readonly isMissing: boolean;
}

/** What to type, in few words of the reader’s language; what the schema says of it too where that is the same language. */
function inShort(column: EntryColumn | undefined, { language }: FloorData, words: PageWords, message: string): string {
  const { form } = column ?? {};
  const like = form === undefined ? undefined : 'dimension' in form ? TYPED_LIKE[form.dimension] : TYPED_LIKE[form.as];
  const short = like === undefined ? words('floor.tap.unread') : words('floor.tap.typelike', { like });
  return language === 'en' ? `${short} ${message}` : short;
}

/** Something that reads, by dimension or by kind of field. */
const TYPED_LIKE: Readonly<Record<string, string>> = {
  length: '3/8 in',
  temperature: '20 C',
  time: '20 min',
  pressure: '80 psi',
  mass: '120 lb',
  torque: '10 ft.lb',
  angle: '60 deg',
  level: '50 %',
  count: '4',
  date: '2026-07-23',
  place: '120 in, -40 in, 12 in',
  places: '120 in, -40 in, 12 in; 130 in, -40 in, 12 in',
  'any quantity': '80 psi',
  'two lengths': '14 in x 18 in',
};

/** What is wrong by the schema of the kind, by path. Of a record that is there already, what is not typed here is not missing. */
function schemaFaults(name: TaskName, id: string, data: Data): readonly SchemaFault[] {
  const { kind, does, list } = taskOf(name);
  const found: SchemaFault[] = [];
  const place = (...path: Path) => ({ file: path.join('.'), line: 1, column: 1, endLine: 1, endColumn: 2 });
  checkForm(SCHEMAS, kind, { id, data: { id, ...data }, source: { place, placeOfKey: place } }, (finding) => {
    const path = finding.place.file;
    const isMissing = finding.rule === 'format.missing-key';
    const isOfOthers = isMissing && (does === 'set' || (does === 'append' && !path.startsWith(`${list}.`)));
    if (!isOfOthers) found.push({ path, message: finding.message, isMissing });
  });
  return found;
}

/** What a form is read with. */
export interface FormReading {
  readonly id: string;
  /** Fields that the page fills in by itself. */
  readonly base: Data;
  readonly data: FloorData;
  /** Ids of what was entered here already. */
  readonly entered: ReadonlySet<string>;
  readonly words: PageWords;
}

const PLACES: ReadonlySet<string> = new Set(['place', 'places', 'outlines']);

const idsIn = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.flatMap(idsIn) : typeof value === 'string' ? [value] : [];

/** Reads the form by the very schemas that the shop’s records are held to. */
export function readFilled(
  name: TaskName,
  { fields, columns }: FilledForm,
  { id, base, data: page, entered, words }: FormReading,
): ReadFilled {
  const { does, list } = taskOf(name);
  const faults = new Map<string, string>();
  const typed: Record<string, string> = {};
  let data: Data = {};
  for (const column of columns) {
    const text = fields.get(column.key)?.value.trim() ?? '';
    if (text === '') {
      if (column.required && column.path.length === (list === undefined ? 1 : 3) && does !== 'set')
        faults.set(column.key, words('floor.tap.needed'));
      continue;
    }
    typed[column.key] = text;
    const read = readCell(text, column);
    if (!read.ok) {
      faults.set(column.key, inShort(column, page, words, read.message));
      continue;
    }
    data = withValue(data, column.path, read.value) as Data;
    // A place may hang on a record; its words are read by the shop.
    const refs = PLACES.has(column.form.as) ? [] : refsOf(column, name, page);
    const lost =
      refs.length === 0
        ? undefined
        : idsIn(read.value).find((one) => !entered.has(one) && !refs.some(([known]) => known === one));
    if (lost !== undefined) faults.set(column.key, words('floor.tap.unknown', { id: lost }));
  }
  if (faults.size > 0) return { ok: false, faults };
  const whole = does === 'add' ? { id, ...base, ...data } : data;
  for (const { path, message, isMissing } of schemaFaults(name, id, whole)) {
    const column =
      columns.find((one) => one.path.join('.') === path) ?? columns.find((one) => path.startsWith(`${one.path.join('.')}.`));
    faults.set(column?.key ?? '', isMissing ? words('floor.tap.needed') : inShort(column, page, words, message));
  }
  return faults.size > 0 ? { ok: false, faults } : { ok: true, data: entryData(name, whole, columns), typed };
}

/** As an entry has it: of a record that is set each field by its own key, of a block its fields, of a new record all but its id. */
function entryData(name: TaskName, data: Data, columns: readonly EntryColumn[]): Data {
  const { does, list } = taskOf(name);
  if (does === 'append') return ((data[list as string] as readonly Data[] | undefined) ?? [])[0] ?? {};
  if (does === 'add') return Object.fromEntries(Object.entries(data).filter(([key]) => key !== 'id'));
  return Object.fromEntries(
    columns.flatMap(({ key, path }) => (valueAt(data, path) === undefined ? [] : [[key, valueAt(data, path)]])),
  );
}

/** Shows what is wrong beside its field; what belongs to none above the form. */
export function showFaults({ node, columns }: FilledForm, faults: ReadonlyMap<string, string>): void {
  for (const place of node.querySelectorAll<HTMLElement>('[data-field]')) {
    const fault = place.querySelector('.fault');
    if (fault) fault.textContent = faults.get(place.dataset.field ?? '') ?? '';
    if (fault?.textContent) place.closest('details')?.setAttribute('open', '');
  }
  const own = new Set(columns.map(({ key }) => key));
  const others = [...faults].filter(([key]) => !own.has(key)).map(([, message]) => message);
  node.querySelector('.fault-of-all')?.remove();
  if (others.length > 0) node.prepend(make('p', { class: 'fault fault-of-all', role: 'alert' }, others.join(' ')));
  node.querySelector('.fault:not(:empty)')?.scrollIntoView({ block: 'center' });
}
