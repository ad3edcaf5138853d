/** Of one voice note: a phone writes about half of it in four minutes. */
export const MOST_SOUND_BYTES = 2 * 1024 * 1024;

/** Kinds of sound by how their bytes begin, whatever a file is called: what phones and browsers write. */
const KINDS: readonly (readonly [ending: SoundEnding, at: number, begins: string])[] = [
  ['m4a', 4, 'ftyp'],
  ['ogg', 0, 'OggS'],
  ['webm', 0, '\x1aE\xdf\xa3'],
  ['wav', 0, 'RIFF'],
  ['mp3', 0, 'ID3'],
  ['mp3', 0, '\xff\xfb'],
  ['mp3', 0, '\xff\xf3'],
  ['aac', 0, '\xff\xf1'],
  ['aac', 0, '\xff\xf9'],
  ['amr', 0, '#!AMR'],
  ['caf', 0, 'caff'],
];

export type SoundEnding = 'm4a' | 'ogg' | 'webm' | 'wav' | 'mp3' | 'aac' | 'amr' | 'caf';

/** What kind of sound bytes are; undefined where they are none that is taken. */
export function soundEnding(bytes: Uint8Array): SoundEnding | undefined {
  const begins = (at: number, text: string): boolean => [...text].every((sign, i) => bytes[at + i] === sign.charCodeAt(0));
  const found = KINDS.find(([, at, text]) => begins(at, text))?.[0];
  return found === 'wav' && !begins(8, 'WAVE') ? undefined : found;
}

/** The file of a note in the shell’s folder: by its entry, which no other phone has. */
export const soundFile = (entryKey: string, ending: SoundEnding): string =>
  `voice/${entryKey.replace(/[^\w-]+/gu, '-')}.${ending}`;
