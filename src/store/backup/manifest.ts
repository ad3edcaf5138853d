import { z } from 'zod';
import { takenAs } from '../taken.js';

const sha256 = z.string().regex(/^[0-9a-f]{64}$/u);
const bytes = z.number().int().nonnegative();

/** What a backup holds, as its first entry says: everything else in it is held against this. */
const form = z.strictObject({
  shellbook_backup: z.literal(1),
  program: z.string().max(200),
  /** Folder of the store in its work tree, with a stroke at its end; empty where they are one. */
  prefix: z.string().max(1000),
  /** The branch that was at work, and its commit; null outside Git. */
  head: z.strictObject({ branch: z.string().max(250).nullable(), commit: z.string().regex(/^[0-9a-f]{40,64}$/u) }).nullable(),
  /** Files that no commit holds as they are in it. */
  uncommitted: z.array(z.string().max(1000)),
  shells: z.array(z.strictObject({ shell: z.string().max(100), fingerprint: z.string().max(200) })),
  history: z.strictObject({ bytes, sha256 }).nullable(),
  files: z.array(z.strictObject({ path: z.string().min(1).max(1000), bytes, sha256 })).max(1_000_000),
});
export type BackupManifest = z.infer<typeof form>;

/** The manifest in these bytes; a sentence on what is wrong with it otherwise. */
export function readBackupManifest(text: string): BackupManifest | string {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return 'its manifest is not JSON';
  }
  const parsed = form.safeParse(read);
  if (!parsed.success) return `its manifest is not one of this program (${parsed.error.issues[0]?.path.join('.') ?? ''})`;
  const { files, prefix } = parsed.data;
  const strange = files.find((one) => !isBackedUp(one.path));
  if (strange) return `it holds \`${strange.path}\`, which is not part of a store`;
  if (new Set(files.map((one) => one.path.toLowerCase())).size !== files.length) return 'it holds one file twice';
  const parts = prefix.split('/').slice(0, -1);
  if (!/^(?:[^/\\\p{Cc}]+\/)*$/u.test(prefix) || parts.some((part) => /^\.|^\.git$/iu.test(part)))
    return `it would lie in \`${prefix}\``;
  return parsed.data;
}

/** Files of the top that make a store what it is in Git, beside its records and pictures. */
const BESIDE: readonly string[] = ['.gitattributes', '.gitignore'];

/** Records, pictures, voice notes and the two files that tell Git how to treat them; nothing with `..`, nothing hidden, nothing of Git’s own. */
export const isBackedUp = (file: string): boolean =>
  BESIDE.includes(file) ||
  (takenAs(file) !== undefined && !/[\\\p{Cc}]/u.test(file) && !file.split('/').some((part) => part === '' || part === '..'));

export const MANIFEST_NAME = 'manifest.json';
export const HISTORY_NAME = 'history.bundle';
export const FILES_FOLDER = 'store/';
/** No manifest of a shop is larger. */
export const LARGEST_MANIFEST = 256 * 1024 * 1024;
