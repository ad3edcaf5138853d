import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { ShopCertificate } from '../signing/certificate.js';
import { sshPublicKey } from '../signing/ssh.js';
import { GitFailed } from '../store/git/failed.js';
import { askGit, runGit } from '../store/git/look.js';

/** What Git itself says of the signature on a close-out’s tag. */
export interface TagSignature {
  readonly tag: string;
  /** none: not signed; known: by one of the keys given; unknown: by a key that nobody here knows; bad: changed since it was signed. */
  readonly is: 'none' | 'known' | 'unknown' | 'bad';
  /** One sentence. */
  readonly words: string;
}

/** Asks `git verify-tag`, with the keys given and no other. Undefined where the store has no such tag. */
export async function tagSignature(
  root: string,
  tag: string,
  keys: readonly ShopCertificate[],
): Promise<TagSignature | undefined> {
  const object = await askGit(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', `refs/tags/${tag}`]).catch(() => '');
  if (object === '') return undefined;
  const text = await askGit(root, ['cat-file', '-p', object]);
  if (!text.includes('-----BEGIN SSH SIGNATURE-----')) return { tag, is: 'none', words: `The tag ${tag} is not signed.` };
  const folder = await mkdtemp(path.join(tmpdir(), 'shellbook-keys-'));
  try {
    const file = path.join(folder, 'allowed');
    const lines = keys.map(({ key }) => `shop namespaces="git" ${sshPublicKey(key)}\n`);
    await writeFile(file, lines.join(''), { mode: 0o600 });
    const settings = ['-c', 'gpg.format=ssh', '-c', `gpg.ssh.allowedSignersFile=${file}`];
    await runGit(root, [...settings, 'verify-tag', '--raw', object]);
    return { tag, is: 'known', words: `The tag ${tag} is signed with a key that this store knows, by git verify-tag.` };
  } catch (error) {
    if (!(error instanceof GitFailed)) throw error;
    return /^Good "git" signature with|no principal matched/imu.test(`${error.said}\n${error.message}`)
      ? { tag, is: 'unknown', words: `The tag ${tag} is signed with a key that nobody here knows: not proved.` }
      : { tag, is: 'bad', words: `The signature on the tag ${tag} does not hold: the tag was changed after it was signed.` };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
