/** The page for the floor: what is done at the coach is entered here, kept on the phone and handed over as one file. */
import { z } from 'zod';
import type { EntryColumn } from '../../entry/columns.js';
import { dataOf, element, make } from '../../page/dom.js';
import { saveFile } from '../../page/save-file.js';
import { openShelf } from '../../page/shelf.js';
import { wordsFrom } from '../../page/words.js';
import type { FloorData } from '../floor-data.js';
import type { FloorEntry } from '../hand-over.js';
import { TASKS, type TaskName, taskOf } from '../tasks.js';
import { coachModel } from './coach-model.js';
import { drawingScreen } from './drawing.js';
import { Entries } from './entries.js';
import { Extras } from './extras.js';
import { type FilledForm, makeForm, readFilled, showFaults } from './form.js';
import { phoneDay } from './moment.js';
import { PhotoPlace, type PlacingPhoto } from './photo-place.js';
import { type FloorScreen, type FloorSession, recordNamed } from './session.js';
import { photoFields, pictureTaken, type TakenPicture } from './taken-picture.js';
import { voiceField, voiceTaken } from './voice.js';
import { warningsNow } from './warnings.js';

// The page’s policy lets no text become code, which schemas would try for speed.
z.config({ jitless: true });

const data = dataOf<FloorData>('data');
const words = wordsFrom(data.words);
const said = element<HTMLParagraphElement>('said');
const place = element<HTMLElement>('form-place');
const list = element<HTMLUListElement>('kept-list');
const warnings = element<HTMLElement>('warnings');
const who = element<HTMLSelectElement>('who');
/** What the last entry of each task had in its fields. */
const last = new Map<TaskName, Readonly<Record<string, string>>>();
let shown: { readonly name: TaskName; readonly form: FilledForm } | undefined;

let entries: Entries;
let extras: Extras;
let onPhoto: PhotoPlace;

const tell = (text: string): void => {
  said.textContent = text;
};
const screen = (name: FloorScreen): void => {
  for (const one of document.querySelectorAll('.screen')) one.classList.toggle('here', one.id === name);
  window.scrollTo(0, 0);
};
const typedIn = (key: string): string => shown?.form.fields.get(key)?.value.trim() ?? '';

const session: FloorSession = {
  data,
  words,
  model: coachModel(data.coach),
  get entries() {
    return entries;
  },
  form: () => shown,
  tell,
  show: screen,
  fill(key, text) {
    const field = key === 'record' ? document.getElementById('f-record') : shown?.form.fields.get(key);
    if (field) (field as HTMLInputElement).value = text;
    field?.closest('details')?.setAttribute('open', '');
    warn();
  },
};

/** Of the same batch of adhesive, the same circuit: as last time. */
const LASTS = [
  ...['stage', 'circuit', 'method', 'of', 'inspections.1.method', 'scale', 'instrument'],
  ...['fixing.adhesive', 'fixing.lot', 'fixing.expires', 'bond.open_time_limit', 'bond.air', 'bond.humidity'],
];

/** What a field begins with: the day, who enters, and as last time what its kind says stays the same. */
function before(name: TaskName, column: EntryColumn): string {
  const { key, form, traits } = column;
  const own = key.split('.').at(-1);
  const isOfBlock = column.path.length > 1 && taskOf(name).does === 'add';
  if (isOfBlock) return '';
  if (form.as === 'date' && (column.required || own === 'date' || own === 'applied')) return phoneDay();
  if (own === 'by' || (name === 'weld' && own === 'welder')) return entries.person;
  const lasts = traits.asLast === true || LASTS.includes(key);
  return (lasts && last.get(name)?.[key]) || '';
}

function open(name: TaskName): void {
  if (entries.person === '') return void tell(words('floor.tap.who'));
  const form = makeForm(name, data, words, (column) => before(name, column));
  shown = { name, form };
  onPhoto.used = undefined;
  tell('');
  element('form-title').textContent = words(`floor.task.${name}`);
  const head: HTMLElement[] = [];
  if (taskOf(name).does !== 'add') head.push(recordField(name));
  if (name === 'photo') head.push(pictureField());
  // What is behind a panel is seen before anything is filled in.
  const first = name === 'closed' ? [warnings] : [];
  place.replaceChildren(...head, ...first, ...extras.forTask(name), form.node, voiceField(words));
  if (first.length === 0) place.after(warnings);
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

/** Beside each field that is set, what the record says already: what is typed over it is seen to be. */
function showOnRecord(): void {
  const known = shown && taskOf(shown.name).does === 'set' ? (data.typed[recordNamed()] ?? {}) : {};
  for (const field of place.querySelectorAll<HTMLElement>('[data-field]')) {
    const now = known[field.dataset.field ?? ''];
    const text =
      now === undefined
        ? ''
        : words('floor.tap.onrecord', { value: typeof now === 'object' ? JSON.stringify(now) : String(now) });
    field.querySelector('.on-record')?.replaceChildren(text);
  }
}

/** What is likely wrong, as it is typed. */
function warn(): void {
  showOnRecord();
  warnings.replaceChildren(...warningsNow(session).map((text) => make('p', { class: 'caution' }, text)));
}

async function keep(): Promise<void> {
  if (!shown) return;
  const { name, form } = shown;
  const { kind, does, list: blocks } = taskOf(name);
  const picture = name === 'photo' ? await takenPicture() : undefined;
  if (name === 'photo' && picture === undefined) return;
  const sound = await voiceTaken();
  if (typeof sound === 'string') return void tell(words(sound));
  const record = recordNamed();
  if (does !== 'add' && !isKnown(kind, record))
    return void showFaults(
      form,
      new Map([
        [
          '',
          record === ''
            ? `${data.words['field.record']}: ${words('floor.tap.needed')}`
            : words('floor.tap.unknown', { id: record }),
        ],
      ]),
    );
  const id = does === 'add' ? typedIn('id') || newId(kind) : record;
  const base = picture === undefined ? {} : photoFields(id, picture, vouching());
  const read = readFilled(name, form, { id, base, data, entered: new Set([...entries.all.map((one) => one.id), id]), words });
  if (!read.ok) return void showFaults(form, read.faults);
  last.set(name, { ...read.typed });
  const from = onPhoto.used && name === 'node' ? await keepPlacingPhoto(id, onPhoto.used) : undefined;
  const known = data.typed[id] ?? {};
  const was = Object.fromEntries(Object.keys(read.data).flatMap((key) => (Object.hasOwn(known, key) ? [[key, known[key]]] : [])));
  const kept = await entries.add(
    {
      kind,
      id,
      does,
      ...(blocks === undefined ? {} : { list: blocks }),
      data: { ...read.data, ...(from === undefined ? {} : { photos: [from.id] }) } as FloorEntry['data'],
      ...(does === 'set' ? { was: was as NonNullable<FloorEntry['was']> } : {}),
      ...(picture === undefined ? {} : { picture: picture.sha256 }),
      ...(sound === undefined ? {} : { sound: sound.sha256 }),
    },
    { ...(picture === undefined ? {} : { picture: pictureOnly(picture) }), ...(sound === undefined ? {} : { sound }) },
  );
  const lasts = kept && from?.kept !== false;
  open(name);
  tell(words(lasts ? 'floor.tap.kept' : entries.shelf.lasts ? 'floor.tap.lost' : 'floor.tap.refused', { id }));
  count();
  if (!lasts) await handOver();
}

const pictureOnly = ({ sha256, name, jpeg }: TakenPicture) => ({ sha256, name, jpeg });
const vouching = () => ({ by: entries.person, why: words('floor.tap.why') });

const isKnown = (kind: string, id: string): boolean =>
  (data.refs[kind as keyof FloorData['refs']] ?? []).some(([one]) => one === id) ||
  entries.all.some((one) => one.kind === kind && one.does === 'add' && one.id === id);

/** The photo that a node's place was read from, with its known points: the shop can work the place out again. */
async function keepPlacingPhoto(
  node: string,
  { picture, seen }: PlacingPhoto,
): Promise<{ readonly id: string; readonly kept: boolean }> {
  const id = newId('photo');
  const kept = await entries.add(
    {
      kind: 'photo',
      id,
      does: 'add',
      data: { ...photoFields(id, picture, vouching()), of: [node], seen: seen.map((one) => ({ ...one, px: [...one.px] })) },
      picture: picture.sha256,
    },
    { picture: pictureOnly(picture) },
  );
  return { id, kept };
}

const newId = (kind: string): string =>
  `${data.heads[kind as keyof FloorData['heads']] ?? ''}${entries.tag}-${String(entries.next()).padStart(3, '0')}`;

async function takenPicture(): Promise<TakenPicture | undefined> {
  const [file] = element<HTMLInputElement>('f-picture').files ?? [];
  if (!file) return void tell(words('floor.tap.nopicture'));
  const taken = await pictureTaken(file);
  if (taken === undefined) tell(words('floor.tap.picture'));
  return taken;
}

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
      return make(
        'li',
        {},
        make(
          'span',
          {},
          `${entries.isHanded(one.key) ? '✓ ' : ''}${titleOf(one)}: ${one.id}${one.sound === undefined ? '' : ' ♪'}`,
        ),
        drop,
      );
    }),
  );
}

/** What was done, as on its button. */
function titleOf({ kind, does, list: blocks }: FloorEntry): string {
  const name = TASKS.find((one) => taskOf(one).kind === kind && taskOf(one).does === does && taskOf(one).list === blocks);
  return name === undefined ? kind : words(`floor.task.${name}`);
}

async function start(): Promise<void> {
  entries = new Entries(await openShelf(`shellbook floor ${data.shell}`), {
    shell: data.shell,
    fingerprint: data.fingerprint,
    name: navigator.userAgent.slice(0, 80),
  });
  await entries.open();
  onPhoto = new PhotoPlace(session);
  extras = new Extras(session, drawingScreen(session), onPhoto, (name) => last.get(name));
  for (const name of TASKS) element(`task-${name}`).addEventListener('click', () => open(name));
  for (const back of document.querySelectorAll('[data-to]'))
    back.addEventListener('click', () => screen((back as HTMLElement).dataset.to as FloorScreen));
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
