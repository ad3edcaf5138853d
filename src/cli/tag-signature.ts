import type { ShopCertificate } from '../signing/certificate.js';
import { sshPublicKey } from '../signing/ssh.js';
import { GitFailed } from '../store/git/failed.js';
import { askGit, runGit } from '../store/git/look.js';
import { type AllowedSigner, knowing } from './allowed-signers.js';

/** What Git itself says of the signature on a close-out’s tag. */
export interface TagSignature {
  readonly tag: string;
  /** none: not signed; known: by one of the keys given; unknown: by a key that nobody here knows; bad: changed since it was signed. */
  readonly is: 'none' | 'known' | 'unknown' | 'bad';
  /** One sentence. */
  readonly words: string;
}

/**
 * Asks `git verify-tag`, with the shop's keys and those of the people who may close, and no other. Undefined where the store has no
 * such tag.
 */
export async function tagSignature(
  root: string,
  tag: string,
  keys: readonly ShopCertificate[],
  people: readonly AllowedSigner[] = [],
): Promise<TagSignature | undefined> {
  const object = await askGit(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', `refs/tags/${tag}`]).catch(() => '');
  if (object === '') return undefined;
  const text = await askGit(root, ['cat-file', '-p', object]);
  if (!text.includes('-----BEGIN SSH SIGNATURE-----')) return { tag, is: 'none', words: `The tag ${tag} is not signed.` };
  const shop = keys.map(({ key }) => ({ name: 'shop', key: sshPublicKey(key) }));
  const groups = [{ whose: 'a key that this store knows', known: shop }].concat(
    people.map((person) => ({ whose: `the key of ${person.name}, who may close`, known: [person] })),
  );
  let said = '';
  // Git tells of a tag whether a known key signed it, not which: one after another is asked for.
  for (const { whose, known } of groups) {
    try {
      await knowing(known, (settings) => runGit(root, [...settings, 'verify-tag', '--raw', object]));
      return { tag, is: 'known', words: `The tag ${tag} is signed with ${whose}, by git verify-tag.` };
    } catch (error) {
      if (!(error instanceof GitFailed)) throw error;
      said = `${error.said}\n${error.message}`;
    }
  }
  return /^Good "git" signature with|no principal matched/imu.test(said)
    ? { tag, is: 'unknown', words: `The tag ${tag} is signed with a key that nobody here knows: not proved.` }
    : { tag, is: 'bad', words: `The signature on the tag ${tag} does not hold: the tag was changed after it was signed.` };
}
