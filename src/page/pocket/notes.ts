import { anchor } from '../../model/anchor.js';
import { element, make } from '../dom.js';
import type { Keep } from '../keep.js';
import type { NotesFile, PageNote } from '../notes-file.js';
import { type PocketData, searchEntries } from '../pocket-data.js';
import { saveFile } from '../save-file.js';
import { sha256Hex } from '../sha256.js';
import { smallPicture } from '../small-picture.js';
import type { PageWords } from '../words.js';
import { today } from './today.js';

export interface NoteLink {
  /** Shows it under the card with that anchor; none under other screens. */
  under(card: string): void;
}

/** Notes that a technician writes: kept where the phone keeps anything, and given back as one file. */
export function takeNotes(data: PocketData, keep: Keep, words: PageWords): NoteLink {
  const field = (name: string) => element<HTMLInputElement>(`note-${name}`);
  const said = element<HTMLParagraphElement>('note-said');
  const list = element<HTMLUListElement>('note-list');
  const ids = new Map(searchEntries(data).map(({ id }) => [id.toLowerCase(), id] as const));
  let notes = JSON.parse(keep.get('notes') ?? '[]') as readonly PageNote[];
  const say = (key: string, values?: Readonly<Record<string, string>>): void => {
    said.textContent = words(key, values);
  };
  const set = (changed: readonly PageNote[]): void => {
    notes = changed;
    say(keep.put('notes', JSON.stringify(notes)) ? 'tap.kept' : 'tap.refused');
    paint();
  };
  const paint = (): void => {
    list.replaceChildren(
      ...notes.map((note) => {
        const drop = make('button', { type: 'button' }, words('tap.note.drop'));
        drop.addEventListener('click', () => set(notes.filter((one) => one !== note)));
        return make(
          'li',
          {},
          make('span', {}, [note.date, note.by, note.of.join(', '), note.text].filter(Boolean).join(' · ')),
          drop,
        );
      }),
    );
  };
  const add = async (): Promise<void> => {
    const [text, by, of] = [field('text').value.trim(), field('by').value.trim(), field('of').value.trim()];
    if (text === '') return say('tap.note.empty');
    if (by === '') return say('tap.note.by');
    const typed = of.split(/[\s,;]+/u).filter(Boolean);
    const unknown = typed.find((id) => !ids.has(id.toLowerCase()));
    if (unknown !== undefined) return say('tap.note.unknown', { id: unknown });
    const [file] = field('picture').files ?? [];
    const jpeg = file && (await smallPicture(file));
    if (file && jpeg === undefined) return say('tap.note.picture');
    const note: PageNote = {
      date: field('date').value || today(),
      by,
      text,
      of: typed.map((id) => ids.get(id.toLowerCase()) as string),
      ...(jpeg === undefined ? {} : { picture: { jpeg, sha256: sha256Hex(bytesOf(jpeg)) } }),
    };
    for (const name of ['text', 'of', 'picture']) field(name).value = '';
    set([...notes, note]);
  };
  element<HTMLFormElement>('note').addEventListener('submit', (event) => {
    event.preventDefault();
    void add();
  });
  element<HTMLButtonElement>('note-save').addEventListener('click', () => {
    const { shell, edition, revision, fingerprint } = data;
    const file: NotesFile = { shellbook: 'notes', version: 1, shell, edition, revision, fingerprint, notes };
    const name = `${shell.replace(/[^\w.-]+/gu, '-')}-notes.json`;
    saveFile(name, 'application/json', `${JSON.stringify(file, undefined, 1)}\n`);
    say('tap.note.saved', { file: name });
  });
  field('date').value = today();
  if (!keep.lasts) say('tap.refused');
  paint();
  return noteLink(data, words, (id) => {
    field('of').value = id;
  });
}

/** Under each card the way to a note on it. */
function noteLink(data: PocketData, words: PageWords, write: (id: string) => void): NoteLink {
  const place = element<HTMLParagraphElement>('note-link');
  const byCard = new Map(searchEntries(data).map(({ id }) => [anchor(id), id] as const));
  let about = '';
  place.querySelector('a')?.addEventListener('click', () => write(about));
  return {
    under(card) {
      about = byCard.get(card) ?? '';
      place.hidden = about === '';
      const link = place.querySelector('a');
      if (link) link.textContent = words('tap.note.on', { id: about });
    },
  };
}

const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
