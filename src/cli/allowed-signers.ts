import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Whose key it is, in a word without blanks, and its public half as SSH writes it. */
export interface AllowedSigner {
  readonly name: string;
  readonly key: string;
}

/** Asks with settings of Git by which these keys and no other are known (`git help config`, gpg.ssh.allowedSignersFile). */
export async function knowing<T>(
  signers: readonly AllowedSigner[],
  ask: (settings: readonly string[]) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(path.join(tmpdir(), 'shellbook-keys-'));
  try {
    const file = path.join(folder, 'allowed');
    await writeFile(file, signers.map(({ name, key }) => `${name} namespaces="git" ${key}\n`).join(''), { mode: 0o600 });
    return await ask(['-c', 'gpg.format=ssh', '-c', `gpg.ssh.allowedSignersFile=${file}`]);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
