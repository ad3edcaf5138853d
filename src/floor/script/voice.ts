import { make } from '../../page/dom.js';
import { sha256Hex } from '../../page/sha256.js';
import type { PageWords } from '../../page/words.js';
import type { FloorFile } from '../hand-over.js';
import { MOST_SOUND_BYTES, soundEnding } from '../sound.js';

const MEGABYTE = 1024 * 1024;

/** A voice note: the phone's own recorder makes it, since a page from a file has no microphone. */
export function voiceField(words: PageWords): HTMLElement {
  return make(
    'div',
    { class: 'wide' },
    make('label', { for: 'f-voice' }, words('floor.tap.voice', { most: MOST_SOUND_BYTES / MEGABYTE })),
    make('input', { id: 'f-voice', type: 'file', accept: 'audio/*', capture: '' }),
  );
}

/** The note that is in the form, if any; or what is wrong with it, as a key of the page's words. */
export async function voiceTaken(): Promise<
  NonNullable<FloorFile['sounds']>[number] | 'floor.tap.voicelong' | 'floor.tap.voicebad' | undefined
> {
  const [file] = (document.getElementById('f-voice') as HTMLInputElement | null)?.files ?? [];
  if (!file) return undefined;
  if (file.size > MOST_SOUND_BYTES) return 'floor.tap.voicelong';
  const url = await dataUrl(file);
  const sound = url?.slice(url.indexOf(',') + 1) ?? '';
  const bytes = Uint8Array.from(atob(sound), (sign) => sign.charCodeAt(0));
  if (soundEnding(bytes) === undefined) return 'floor.tap.voicebad';
  return { sha256: sha256Hex(bytes), name: file.name.slice(0, 200), sound };
}

const dataUrl = (file: File): Promise<string | undefined> =>
  new Promise((done) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => done(String(reader.result)));
    reader.addEventListener('error', () => done(undefined));
    reader.readAsDataURL(file);
  });
