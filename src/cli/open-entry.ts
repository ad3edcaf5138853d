import path from 'node:path';
import type { EntryKind } from '../entry/homes.js';
import type { RecordIndex } from '../entry/record-index.js';
import type { SheetWord } from '../entry/sheet-form.js';
import type { StoreText } from '../model/load-types.js';
import type { Writer } from '../store/write.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';

/** A store with one shell of it read for an entry; `writer` while its lock is held. */
export interface OpenEntry {
  readonly root: string;
  readonly text: StoreText;
  readonly known: RecordIndex;
}

/** Reads the library and, where one is named, a shell; of kinds that are not `wanted` the ids alone. Throws {@link UserError} where there is no such shell. */
export async function readEntry(root: string, shell: string | undefined, wanted?: ReadonlySet<EntryKind>): Promise<OpenEntry> {
  const [{ readStoreText }, { readKnown }] = await Promise.all([import('../store/read.js'), import('../entry/record-index.js')]);
  const text = await readStoreText(root, shell ?? '');
  if (shell !== undefined && ![...text.files.keys()].some((file) => file.startsWith(`shells/${shell}/`)))
    await noShell(root, shell);
  return { root, text, known: readKnown(text, shell, wanted) };
}

async function noShell(root: string, shell: string): Promise<never> {
  const [{ readdir }, { didYouMean }] = await Promise.all([import('node:fs/promises'), import('../source/nearest.js')]);
  const known = await readdir(path.join(root, 'shells')).catch(() => []);
  const close = didYouMean(shell, known);
  throw new UserError(`No shell ${shell} in this store${close === '' ? `. Start it: shellbook new-shell ${shell}` : close}`);
}

/** The store's folder that a command works on. */
export async function storeOf(context: Context): Promise<string> {
  const { findStore } = await import('../store/find.js');
  return findStore(context.io.cwd, context.settings.store);
}

/** Writes whole texts; what stands in a file must be what was read, as the lock promises. */
export async function writeTexts(writer: Writer, texts: ReadonlyMap<string, string>, known: RecordIndex): Promise<void> {
  for (const [file, text] of texts) {
    await writer.update(file, (old) => {
      if ((old ?? '') === (known.files.get(file)?.text ?? '')) return text;
      throw new UserError(`${file} was changed by another program in this moment: try again`);
    });
  }
}

/** Commits what was written, where asked; what to say of it. */
export async function committed(root: string, files: readonly string[], message: string): Promise<string> {
  const { commitFiles } = await import('../store/commit-files.js');
  const commit = await commitFiles(root, files, message);
  return commit === undefined ? 'Nothing to commit.' : `Committed ${commit.slice(0, 7)}: ${message.split('\n')[0]}`;
}

/** What a sheet is of, by its word: a kind of record, or one of the lists; and the shell. Throws {@link UserError}. */
export async function sheetAndShell(
  word: string,
  shell: string | undefined,
): Promise<{ readonly kind: SheetWord; readonly shell: string | undefined }> {
  const { isList, sheetNamed } = await import('../entry/sheet-form.js');
  const named = sheetNamed(word);
  if (named === undefined || !isList(named)) return kindAndShell(word, shell, ['wires', 'pipes', 'notes']);
  if (shell === undefined) throw new UserError(`Whose ${named}s are they? Name the shell, as --shell QF-007`);
  return { kind: named, shell };
}

/** The kind that a word means, and the shell that its records are of: none for the library’s. Throws {@link UserError}. */
export async function kindAndShell(
  word: string,
  shell: string | undefined,
  alsoKnown: readonly string[] = [],
): Promise<{ readonly kind: EntryKind; readonly shell: string | undefined }> {
  const { ENTRY_KINDS, homeOf, kindNamed } = await import('../entry/homes.js');
  const kind = kindNamed(word);
  if (kind === undefined) {
    const { didYouMean } = await import('../source/nearest.js');
    const close = didYouMean(word, [...ENTRY_KINDS.flatMap((one) => [one, `${one}s`]), ...alsoKnown]);
    const all = [...alsoKnown, ...ENTRY_KINDS].join(', ');
    throw new UserError(`No record kind ${word}${close === '' ? `, expected one of ${all}` : close}`);
  }
  const inLibrary = homeOf(kind).in === 'library';
  if (!inLibrary && shell === undefined) throw new UserError(`Whose ${kind} is it? Name the shell, as --shell QF-007`);
  return { kind, shell: inLibrary ? undefined : shell };
}
