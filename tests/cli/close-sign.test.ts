import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { tagSignature } from '../../src/cli/tag-signature.js';
import { readCertificate } from '../../src/signing/certificate.js';
import { CLOSABLE } from './closable.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
let home: string;
const git = (...args: readonly string[]): string =>
  execFileSync('git', args, { cwd: store.root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const key = path.join(home, 'shop-key.pem');
  const status = await runProgram(args, { ...io, env: { ...io.env, HOME: home, SHELLBOOK_KEY: key } });
  return { status, answer: io.answer(), messages: io.messages() };
}

beforeAll(async () => {
  home = mkdtempSync(path.join(tmpdir(), 'shellbook-home-'));
  store = await laySmallStore({ ...CLOSABLE, '.gitignore': 'books/\n' });
  for (const stage of ['floor', 'belly']) await shellbook('signoff', 'T-1', stage, '--by', 'J2', '--date', '2026-05-01');
  await store.commit('Sign off');
});
afterAll(() => {
  store.remove();
  rmSync(home, { recursive: true, force: true });
});

describe('close --sign', () => {
  it('wants a key', async () => {
    const { status, messages } = await shellbook('close', 'T-1', '--no-books', '--sign');
    expect(status).toBe(2);
    expect(messages).toContain('shellbook key --new');
  });
  it('makes a tag that Git itself verifies, and no other key', async () => {
    expect((await shellbook('key', '--new', 'Test shop')).status).toBe(0);
    const { status, answer, messages } = await shellbook('close', 'T-1', '--no-books', '--sign');
    expect([status, answer, messages]).toEqual([0, expect.anything(), expect.stringContaining('Closed T-1 as T-1-closed')]);
    // Git's own word, with an allowed-signers file of the key's public half.
    const allowed = path.join(home, 'allowed');
    const publicKey = execFileSync('cat', [path.join(home, 'shop-key.pem.pub')], { encoding: 'utf8' });
    writeFileSync(allowed, `shop namespaces="git" ${publicKey}`);
    expect(() =>
      git('-c', 'gpg.format=ssh', '-c', `gpg.ssh.allowedSignersFile=${allowed}`, 'verify-tag', 'T-1-closed'),
    ).not.toThrow();
    const pem = execFileSync('cat', [path.join(home, 'shop-key.pem')], { encoding: 'utf8' });
    const der = Buffer.from(/CERTIFICATE-----([A-Za-z0-9+/=\s]+)-----END CERT/u.exec(pem)?.[1] ?? '', 'base64');
    const own = readCertificate(der)!;
    expect((await tagSignature(store.root, 'T-1-closed', [own]))?.is).toBe('known');
    expect((await tagSignature(store.root, 'T-1-closed', []))?.is).toBe('unknown');
    expect(await tagSignature(store.root, 'T-1-closed-B', [own])).toBeUndefined();
  });
  it('is told from a tag without a signature, and from one that was changed after', async () => {
    git('tag', '--annotate', '--message', 'not signed', 'plain');
    expect((await tagSignature(store.root, 'plain', []))?.is).toBe('none');
    const text = git('cat-file', '-p', 'T-1-closed').replace('Fingerprint: ', 'Fingerprint: 0');
    const object = execFileSync('git', ['hash-object', '-t', 'tag', '-w', '--stdin'], {
      cwd: store.root,
      input: text,
      encoding: 'utf8',
    });
    git('update-ref', 'refs/tags/forged', object.trim());
    expect((await tagSignature(store.root, 'forged', []))?.is).toMatch(/bad|unknown/u);
  });
});

describe('once people.yaml says who closes', () => {
  it('nobody else may', async () => {
    store.write(
      'library/people.yaml',
      (CLOSABLE['library/people.yaml'] as string).replace(
        '{id: J2,',
        '{id: J2, signs: [floor, belly, close], git: [j2@example.org],',
      ),
    );
    await store.commit('Name who closes');
    const { status, answer } = await shellbook('close', 'T-1', '--no-books');
    expect(status).toBe(1);
    expect(answer.replace(/\s+/gu, ' ')).toContain('identity that may not close, says library/people.yaml; expected that of J2');
  });
});
