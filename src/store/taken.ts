/** A record file larger than this was not typed by a shop. */
export const LARGEST_BYTES = 20 * 1024 * 1024;
export const DEEPEST_FOLDER = 6;

export const TOO_DEEP = 'This folder is too deep in the store to be read';

/** What a file of the store is read as, by its path from the store's folder; undefined for what is no part of a record. */
export function takenAs(file: string): 'yaml' | 'photo' | 'sound' | undefined {
  const parts = file.split('/');
  // `.git` and the like are no part of a record, nor is anything beside library and shells.
  if (parts.some((part) => part.startsWith('.')) || (parts.length > 1 && !isTaken(parts[0] as string))) return undefined;
  if (/\.ya?ml$/iu.test(file)) return 'yaml';
  if (/^shells\/[^/]+\/voice\/[^/]+$/u.test(file)) return 'sound';
  return /^shells\/[^/]+\/photos\//u.test(file) ? 'photo' : undefined;
}

/** Folders at the store's top that hold records. */
export const isTaken = (folder: string): boolean => folder === 'library' || folder === 'shells';

export type Text = { readonly text: string; readonly refused?: undefined } | { readonly refused: string };

/** Why a record file of this size is not read; undefined where it may be. */
export const tooLarge = (bytes: number): string | undefined =>
  bytes > LARGEST_BYTES
    ? `This file is ${Math.ceil(bytes / 1048576)} MB, expected ${LARGEST_BYTES / 1048576} MB at most: split it`
    : undefined;

const UTF8 = new TextDecoder('utf-8', { fatal: true });

/** Text of a record file; the byte order mark that some editors put first is dropped. */
export function decode(bytes: Uint8Array): Text {
  try {
    return { text: UTF8.decode(bytes) };
  } catch {
    return { refused: 'This file is not UTF-8 text, so it is not read: save it as UTF-8' };
  }
}
