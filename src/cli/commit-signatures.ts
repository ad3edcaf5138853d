import type { CommitSignature } from '../rules/rule.js';
import { gitText } from '../store/git/look.js';
import { type AllowedSigner, knowing } from './allowed-signers.js';

/** What Git says of the signatures of these commits, with the keys of these people and no other. */
export async function commitSignatures(
  root: string,
  commits: readonly string[],
  people: readonly AllowedSigner[],
): Promise<ReadonlyMap<string, CommitSignature>> {
  if (commits.length === 0) return new Map();
  const asked = ['log', '--no-walk=unsorted', '--format=%H%x1f%G?%x1f%GS', '--end-of-options', ...commits, '--'];
  const told = await knowing(people, (settings) => gitText(root, [...settings, ...asked]));
  return new Map(
    told.split('\n').flatMap((line): readonly [string, CommitSignature][] => {
      const [commit, sign = '', by = ''] = line.split('\u001f');
      return commit ? [[commit, asSignature(sign, by)]] : [];
    }),
  );
}

/** Git's letters: G a key that is known, U a good one that is not, N none; B, E and the rest hold for nothing. */
function asSignature(letter: string, by: string): CommitSignature {
  if (letter === 'N') return { is: 'none' };
  if (letter === 'G') return { is: 'known', by };
  return { is: letter === 'U' ? 'unknown' : 'bad' };
}
