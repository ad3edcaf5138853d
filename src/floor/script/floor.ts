/** The page for the floor: what is done at the coach is entered here, kept on the phone and handed over as one file. */
import { z } from 'zod';
import type { EntryColumn } from '../../entry/columns.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import { dataOf, element, make } from '../../page/dom.js';
import { saveFile } from '../../page/save-file.js';
import { sha256Hex } from '../../page/sha256.js';
import { openShelf } from '../../page/shelf.js';
import { smallPicture } from '../../page/small-picture.js';
import { wordsFrom } from '../../page/words.js';
import type { FloorData } from '../floor-data.js';
import type { FloorEntry } from '../hand-over.js';
import { TASKS, type TaskName, taskOf } from '../tasks.js';
import { Entries } from './entries.js';
import { type FilledForm, makeForm, readFilled, showFaults } from './form.js';
import { warningsFor } from './warnings.js';

// The page’s policy lets no text become code, which schemas would try for speed.
z.config({ jitless: true });

const data = dataOf<FloorData>('data');
const words = wordsFrom(data.words);
const said = element<HTMLParagraphElement>('said');
const place = element<HTMLElement>('form-place');
const list = element<HTMLUListElement>('kept-list');
const who = element<HTMLSelectElement>('who');
/** What the last entry of each task had in its fields. */
const last = new Map<TaskName, Readonly<Record<string, string>>>();
let shown: { readonly name: TaskName; readonly form: FilledForm } | undefined;

let entries: Entries;

const tell = (text: string): void => {
  said.textContent = text;
};
const screen = (name: 'home' | 'form' | 'kept'): void => {
  for (const one of document.querySelectorAll('.screen')) one.classList.toggle('here', one.id === name);
  window.scrollTo(0, 0);
};
const typedIn = (key: string): string => shown?.form.fields.get(key)?.value.trim() ?? '';

/** The phone's own day and time, without a zone: as the shop's records have them. */
function now(day = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  const date = `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  return `${date}T${two(day.getHours())}:${two(day.getMinutes())}:${two(day.getSeconds())}`;
}
const today = (): string => now().slice(0, 10);

/** What a field begins with: the day, who enters, and as last time what its kind says stays the same. */
function before(name: TaskName, column: EntryColumn): string {
  const { key, form, traits } = column;
  const own = key.split('.').at(-1);
  const isOfBlock = column.path.length > 1 && taskOf(name).does === 'add';
  if (isOfBlock) return '';
  if (form.as === 'date' && (column.required || own === 'date' || own === 'applied')) return today();
  if (own === 'by' || (name === 'weld' && own === 'welder')) return entries.person;
  const lasts = traits.asLast === true || ['stage', 'circuit', 'method', 'of'].includes(key);
  return (lasts && last.get(name)?.[key]) || '';
}

function open(name: TaskName): void {
  if (entries.person === '') return void tell(words('floor.tap.who'));
  const form = makeForm(name, data, words, (column) => before(name, column));
  shown = { name, form };
  tell('');
  element('form-title').textContent = words(`floor.task.${name}`);
  const head: HTMLElement[] = [];
  if (taskOf(name).does !== 'add') head.push(recordField(name));
  if (name === 'photo') head.push(pictureField());
  place.replaceChildren(...head, form.node, ...extras(name));
  screen('form');
  warn();
}

/** Of what record a look, a bond or a closing is. */
function recordField(name: TaskName): HTMLElement {
  const { kind } = taskOf(name);
  const input = make('input', { id: 'f-record', list: 'f-record-list', autocomplete: 'off' });
  const mine = entries.all.filter((one) => one.kind === kind && one.does === 'add').map(({ id }) => [id, ''] as const);
  const own = data.refs[kind as keyof FloorData['refs']] ?? [];
  const options = [...own, ...mine].map(([id, text]) => make('option', { value: id }, text));
  input.addEventListener('input', warn);
  return make(
    'div',
    { class: 'wide' },
    make('label', { for: 'f-record' }, data.words['field.record'] ?? 'id'),
    input,
    make('datalist', { id: 'f-record-list' }, ...options),
  );
}

function pictureField(): HTMLElement {
  const input = make('input', { id: 'f-picture', type: 'file', accept: 'image/*', capture: 'environment' });
  return make('div', { class: 'wide' }, make('label', { for: 'f-picture' }, data.words['field.picture'] ?? 'picture'), input);
}

/** What helps with this task: joints near what is named, a clock, what was just entered. */
function extras(name: TaskName): readonly HTMLElement[] {
  if (name === 'weld') return [chips('floor.tap.joints', nearJoints(), 'joins')];
  if (name === 'photo')
    return [
      chips(
        'floor.tap.recent',
        entries.all
          .slice(-6)
          .map(({ id }) => id)
          .reverse(),
        'of',
      ),
    ];
  if (name === 'bond') return [clock('bond.open_time')];
  return name === 'test' ? [clock('duration')] : [];
}

/** Taps that fill a field. */
function chips(title: string, values: readonly string[], key: string): HTMLElement {
  const buttons = values.map((value) => {
    const button = make('button', { type: 'button' }, value);
    button.addEventListener('click', () => {
      const field = shown?.form.fields.get(key);
      if (field) field.value = value;
      warn();
    });
    return button;
  });
  const row = make('div', { class: 'pick', id: `chips-${key}` }, ...buttons);
  return make('div', {}, make('p', { class: 'quiet' }, values.length > 0 ? words(title) : ''), row);
}

const MOST_JOINTS = 12;

/** Joints without a weld, those nearest to what was welded last first. */
function nearJoints(): readonly string[] {
  const at = new Map([...(data.refs.member ?? []), ...(data.refs.panel ?? [])].map(([id, , where]) => [id, where] as const));
  const done = new Set(entries.all.filter(({ kind }) => kind === 'weld').map(({ data: one }) => [one.joins].flat().join(' ')));
  const open = data.joints.filter((pair) => !done.has(pair.join(' ')));
  const from = (last.get('weld')?.joins ?? '')
    .split(',')
    .map((id) => at.get(id.trim()))
    .find(Boolean);
  const away = ([a, b]: readonly [string, string]): number => {
    const middles = [at.get(a), at.get(b)].filter((one): one is Vec3 => one !== undefined);
    return from ? Math.min(...middles.map((one) => distance(one, from)), Number.MAX_VALUE) : 0;
  };
  return [...open]
    .sort((a, b) => away(a) - away(b))
    .slice(0, MOST_JOINTS)
    .map((pair) => pair.join(', '));
}

/** Counts from a tap on and fills a duration in seconds. */
function clock(key: string): HTMLElement {
  const button = make('button', { type: 'button' }, words('floor.tap.start'));
  const running = make('span', { role: 'timer' }, '');
  let from: number | undefined;
  const tick = (): void => {
    const field = shown?.form.fields.get(key);
    if (from === undefined || !field || !button.isConnected) return;
    const seconds = Math.round((Date.now() - from) / 1000);
    running.textContent = ` ${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
    field.value = `${seconds} s`;
    warn();
    window.setTimeout(tick, 1000);
  };
  button.addEventListener('click', () => {
    from = from === undefined ? Date.now() : undefined;
    button.textContent = words(from === undefined ? 'floor.tap.start' : 'floor.tap.stop');
    tick();
  });
  return make('p', { class: 'pick' }, button, running);
}

/** What is likely wrong, as it is typed. */
function warn(): void {
  if (!shown) return;
  const record = (document.getElementById('f-record') as HTMLInputElement | null)?.value.trim() ?? '';
  const found = warningsFor(shown.name, typedIn, record, data, words);
  element('warnings').replaceChildren(...found.map((text) => make('p', { class: 'caution' }, text)));
}

async function keep(): Promise<void> {
  if (!shown) return;
  const { name, form } = shown;
  const { kind, does, list: blocks } = taskOf(name);
  const picture = name === 'photo' ? await takenPicture() : undefined;
  if (name === 'photo' && picture === undefined) return;
  const record = (document.getElementById('f-record') as HTMLInputElement | null)?.value.trim() ?? '';
  if (does !== 'add' && record === '')
    return void showFaults(form, new Map([['', `${data.words['field.record']}: ${words('floor.tap.needed')}`]]));
  const id = does === 'add' ? typedIn('id') || newId(kind) : record;
  const base = picture === undefined ? {} : photoFields(id, picture);
  const read = readFilled(name, form, { id, base, data, entered: new Set([...entries.all.map((one) => one.id), id]), words });
  if (!read.ok) return void showFaults(form, read.faults);
  last.set(name, { ...read.typed });
  const known = data.typed[id] ?? {};
  const was = Object.fromEntries(Object.keys(read.data).flatMap((key) => (Object.hasOwn(known, key) ? [[key, known[key]]] : [])));
  const kept = await entries.add(
    {
      kind,
      id,
      does,
      ...(blocks === undefined ? {} : { list: blocks }),
      data: read.data as FloorEntry['data'],
      ...(does === 'set' ? { was: was as NonNullable<FloorEntry['was']> } : {}),
      ...(picture === undefined ? {} : { picture: picture.sha256 }),
    },
    picture && { sha256: picture.sha256, name: picture.name, jpeg: picture.jpeg },
  );
  open(name);
  tell(words(kept ? 'floor.tap.kept' : entries.shelf.lasts ? 'floor.tap.lost' : 'floor.tap.refused', { id }));
  count();
  if (!kept) await handOver();
}

const newId = (kind: string): string =>
  `${data.heads[kind as keyof FloorData['heads']] ?? ''}${entries.tag}-${String(entries.next()).padStart(3, '0')}`;

interface TakenPicture {
  readonly sha256: string;
  readonly name: string;
  readonly jpeg: string;
  readonly taken: string;
}

async function takenPicture(): Promise<TakenPicture | undefined> {
  const [file] = element<HTMLInputElement>('f-picture').files ?? [];
  if (!file) return void tell(words('floor.tap.nopicture'));
  const jpeg = await smallPicture(file);
  if (jpeg === undefined) return void tell(words('floor.tap.picture'));
  const bytes = Uint8Array.from(atob(jpeg), (sign) => sign.charCodeAt(0));
  return { sha256: sha256Hex(bytes), name: file.name.slice(0, 200), jpeg, taken: now(new Date(file.lastModified)) };
}

/** A small picture has no camera's date any more: who took it vouches for the phone's. */
const photoFields = (id: string, { sha256, taken }: TakenPicture) => ({
  file: `${id.replace(/[^\w.-]+/gu, '-')}.jpg`,
  sha256,
  taken,
  vouched: { by: entries.person, date: today(), why: words('floor.tap.why') },
});

async function handOver(): Promise<void> {
  const file = await entries.handOver();
  const name = `${data.shell.replace(/[^\w.-]+/gu, '-')}-floor-${entries.tag}.json`;
  saveFile(name, 'application/json', `${JSON.stringify(file)}\n`);
  tell(words('floor.tap.handed', { count: file.entries.length, file: name }));
  count();
}

function count(): void {
  element('count').textContent = words('floor.tap.count', { count: entries.all.length });
  list.replaceChildren(
    ...entries.all.map((one) => {
      const drop = make('button', { type: 'button' }, words('floor.tap.drop'));
      drop.addEventListener('click', () => void entries.drop(one.key).then(count));
      return make('li', {}, make('span', {}, `${entries.isHanded(one.key) ? '✓ ' : ''}${one.kind} ${one.id}`), drop);
    }),
  );
}

async function start(): Promise<void> {
  entries = new Entries(await openShelf(`shellbook floor ${data.shell}`), {
    shell: data.shell,
    fingerprint: data.fingerprint,
    name: navigator.userAgent.slice(0, 80),
  });
  await entries.open();
  for (const name of TASKS) element(`task-${name}`).addEventListener('click', () => open(name));
  for (const back of document.querySelectorAll('[data-to]'))
    back.addEventListener('click', () => screen((back as HTMLElement).dataset.to as 'home' | 'kept'));
  place.addEventListener('input', warn);
  element<HTMLFormElement>('form-of').addEventListener('submit', (event) => {
    event.preventDefault();
    void keep();
  });
  who.value = entries.person;
  who.addEventListener('change', () => void entries.setting({ person: who.value }));
  element('hand').addEventListener('click', () => void handOver());
  element('clear').addEventListener('click', () => void entries.clearHanded().then(count));
  if (!entries.shelf.lasts) tell(words('floor.tap.refused'));
  count();
  document.documentElement.dataset.ready = 'yes';
}

void start();
