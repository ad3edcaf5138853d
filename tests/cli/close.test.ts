import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs, { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import isoGit from 'isomorphic-git';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { revisionLetter } from '../../src/store/closings.js';
import { CLOSABLE } from './closable.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let model: SmallStore;
let root: string;
const made: string[] = [];
const folder = (): string => {
  const dir = mkdtempSync(path.join(tmpdir(), 'shellbook-close-'));
  made.push(dir);
  return dir;
};

const git = (dir: string, ...args: readonly string[]): string =>
  execFileSync('git', args, { cwd: dir, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

async function shellbook(dir: string, ...args: readonly string[]) {
  const io = literalIo(dir);
  const status = await runProgram(args, io);
  return { status, out: io.answer(), err: io.messages().replace(/\s+/gu, ' ') };
}
const close = (dir = root, ...more: readonly string[]) => shellbook(dir, 'close', 'T-1', '--no-books', ...more);
const write = (file: string, text: string): void => {
  mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
  writeFileSync(path.join(root, file), text);
};

/** A store whose shell can be closed, every stage signed and committed. */
beforeAll(async () => {
  model = await laySmallStore({ ...CLOSABLE, '.gitignore': 'books/\n' });
  for (const stage of ['floor', 'belly']) {
    const { status, out } = await shellbook(model.root, 'signoff', 'T-1', stage, '--by', 'J2', '--date', '2026-05-01');
    expect([status, out]).toEqual([0, expect.stringContaining('Signed')]);
  }
  git(model.root, 'add', '--all');
  git(model.root, 'commit', '--quiet', '-m', 'T-1: signed off');
});
afterAll(() => model.remove());
beforeEach(() => {
  root = path.join(folder(), 'store');
  cpSync(model.root, root, { recursive: true });
});
afterEach(() => {
  for (const dir of made.splice(0)) rmSync(dir, { recursive: true, force: true });
});

const tags = (): readonly string[] =>
  git(root, 'tag', '--list')
    .trim()
    .split('\n')
    .filter((one) => one !== '');

describe('close', () => {
  it('tags a clean shell with an annotated tag that git and isomorphic-git read alike, and writes the hand-over sheet', async () => {
    const head = git(root, 'rev-parse', 'HEAD').trim();
    const { status, out } = await close();
    expect([status, out]).toEqual([
      0,
      expect.stringContaining(`T-1 is closed: revision A, tag T-1-closed on ${head.slice(0, 8)}`),
    ]);
    expect(git(root, 'cat-file', '-t', 'T-1-closed').trim()).toBe('tag');
    const { tag } = await isoGit.readTag({
      fs,
      dir: root,
      oid: await isoGit.resolveRef({ fs, dir: root, ref: 'refs/tags/T-1-closed' }),
    });
    expect(tag).toMatchObject({
      object: head,
      type: 'commit',
      tag: 'T-1-closed',
      tagger: { name: 'K. Marrow', email: 'k@example.org' },
    });
    expect(tag.message).toMatch(/^T-1 closed, revision A\n\nFingerprint: [0-9a-f]{64}\n$/u);
    expect(readFileSync(path.join(root, 'books/T-1-hand-over.txt'), 'utf8')).toContain('T-1');
    expect(git(root, 'fsck', '--strict', '--full')).toBe('');
    expect(git(root, 'status', '--porcelain')).toBe('');
    expect(existsSync(path.join(root, '.shellbook.lock'))).toBe(false);
  });

  it('refuses with everything that is missing, by who and where, in two lists', async () => {
    write('shells/T-1/signoffs.yaml', '');
    write(
      'shells/T-1/welds.yaml',
      CLOSABLE['shells/T-1/welds.yaml']?.replace('result: accept', 'result: reject, reason: undercut') ?? '',
    );
    write(
      'shells/T-1/findings.yaml',
      '- {id: NC-1, raised: 2026-05-02, of: [FL-1], description: dent, decision: use as is, approved_by: A1}\n',
    );
    const { status, out } = await close(root, '--json');
    const { closed, missing } = JSON.parse(out) as { closed: boolean; missing: Record<string, unknown>[] };
    expect([status, closed]).toEqual([1, false]);
    // The small store says nowhere what its nodes do: that is asked of services, by a rule of their own.
    const asked = missing.filter(({ because }) => because !== 'service.role-missing');
    expect(asked.map(({ list, grade, who, where, because }) => [list, grade, who, where, because])).toEqual([
      ['punch', 'A', 'welder (K7)', 'stage floor', 'weld.rejected-open'],
      ['completion', 'A', 'inspector', 'stage floor', 'signoff'],
      ['completion', 'A', 'inspector', 'stage belly', 'signoff'],
      ['punch', 'C', 'inspector', 'papers', 'NC-1'],
    ]);
    const text = await close();
    expect(text.out).toContain('Completion list: work not done, or not on record (2)');
    expect(text.out).toContain('Punch list: work done and not acceptable (2)');
    expect(text.err).toContain('T-1 is not closed: 2 items on the completion list, 1 on the punch list to do first.');
    expect(tags()).toEqual([]);
    expect(git(root, 'log', '--format=%s', '-1').trim()).toBe('T-1: signed off');
  });

  it('commits what of the record is not committed, and nothing else that is staged', async () => {
    write(
      'shells/T-1/photos/photos.yaml',
      `${CLOSABLE['shells/T-1/photos/photos.yaml']}- {id: P-9, file: p-9.jpg, of: [FL-2], taken: 2026-06-01}\n`,
    );
    write('shells/T-1/photos/p-9.jpg', 'nine');
    write('notes.txt', 'mine');
    git(root, 'add', 'notes.txt');
    const { status, out } = await close();
    expect([status, out]).toEqual([
      0,
      expect.stringContaining('Committed: shells/T-1/photos/p-9.jpg, shells/T-1/photos/photos.yaml'),
    ]);
    expect(git(root, 'show', '--name-only', '--format=%s', 'T-1-closed^{commit}').trim().split('\n')).toEqual([
      'T-1: closed, revision A',
      '',
      'shells/T-1/photos/p-9.jpg',
      'shells/T-1/photos/photos.yaml',
    ]);
    expect(git(root, 'status', '--porcelain')).toBe('A  notes.txt\n');
  });

  it('says so where nothing has changed since, and makes the next revision where something has', async () => {
    expect((await close()).status).toBe(0);
    const again = await close();
    expect([again.status, again.out]).toEqual([
      0,
      expect.stringContaining('T-1 is closed already, and nothing has changed since: revision A'),
    ]);
    write(
      'shells/T-1/amendments.yaml',
      '- {id: AM-1, date: 2026-07-01, by: A1, reason: hook over the bench, changes: [CMP-1]}\n',
    );
    write(
      'shells/T-1/components.yaml',
      '- {id: CMP-1, name: hook, mass: 1 lb, at: [100 in, 0 in, 60 in], basis: weighed, date: 2026-07-01}\n',
    );
    expect(JSON.parse((await shellbook(root, 'list', '--json')).out).shells[0]).toMatchObject({
      state: 'amended',
      closed: { tag: 'T-1-closed', revision_letter: 'A' },
    });
    expect((await close()).out).toContain('T-1 is closed: revision B, tag T-1-closed-B');
    expect(git(root, 'cat-file', 'tag', 'T-1-closed-B')).toContain('Amendments: AM-1');
    expect(JSON.parse((await shellbook(root, 'list', '--json')).out).shells[0]).toMatchObject({
      state: 'closed',
      closed: { revision_letter: 'B' },
    });
  });

  it('closes once where two people close at once', async () => {
    const both = await Promise.all([close(), close()]);
    expect(both.map(({ status }) => status)).toEqual([0, 0]);
    expect(both.map(({ out }) => (out.includes('closed already') ? 'already' : 'closed')).sort()).toEqual(['already', 'closed']);
    expect(tags()).toEqual(['T-1-closed']);
  });

  it('goes past a tag of its name that somebody made by hand', async () => {
    git(root, 'tag', 'T-1-closed', 'HEAD~1');
    expect((await close()).out).toContain('revision B, tag T-1-closed-B');
  });
});

describe('close is told by Git', () => {
  const refused = async (dir: string, said: RegExp): Promise<void> => {
    const { status, out, err } = await close(dir);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(said);
  };

  it('of a detached head', async () => {
    git(root, 'checkout', '--quiet', '--detach');
    await refused(root, /Git is not on a branch \(detached HEAD\).*git switch main/u);
  });

  it('of a shallow clone', async () => {
    const clone = path.join(folder(), 'clone');
    git(root, 'clone', '--quiet', '--depth=1', `file://${root}`, clone);
    git(clone, 'config', 'user.name', 'K. Marrow');
    git(clone, 'config', 'user.email', 'k@example.org');
    await refused(clone, /This clone is shallow.*git fetch --unshallow --tags/u);
  });

  it('of a store outside Git', async () => {
    rmSync(path.join(root, '.git'), { recursive: true });
    await refused(root, /does not lie in a Git work tree.*git init/u);
  });

  it('of a merge under way', async () => {
    writeFileSync(path.join(root, '.git/MERGE_HEAD'), git(root, 'rev-parse', 'HEAD'));
    await refused(root, /A merge is under way.*git merge --abort/u);
  });

  it('of nobody, where Git does not know who closes', async () => {
    git(root, 'config', '--unset', 'user.email');
    const kept = { ...process.env };
    Object.assign(process.env, { GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1' });
    for (const name of ['EMAIL', 'GIT_COMMITTER_EMAIL', 'GIT_AUTHOR_EMAIL']) delete process.env[name];
    try {
      await refused(root, /Git does not know who you are.*git config user\.email/u);
    } finally {
      process.env = kept;
    }
    expect(tags()).toEqual([]);
  });

  it('of a signature that could not be made, and closes when it can be', async () => {
    const signer = path.join(folder(), 'signer');
    writeFileSync(signer, '#!/bin/sh\necho "no secret key" >&2\nexit 1\n');
    chmodSync(signer, 0o755);
    git(root, 'config', 'tag.gpgSign', 'true');
    git(root, 'config', 'gpg.program', signer);
    await refused(root, /Git did not make the tag:.*Nothing was closed/u);
    expect(tags()).toEqual([]);
    // What Git asks of a signer: a line on descriptor 2, the signature on standard output (gpg, DETAILS, "SIG_CREATED").
    writeFileSync(
      signer,
      '#!/bin/sh\ncat > /dev/null\necho "[GNUPG:] SIG_CREATED D" >&2\nprintf -- "-----BEGIN PGP SIGNATURE-----\\n\\nmade up\\n-----END PGP SIGNATURE-----\\n"\n',
    );
    expect((await close()).status).toBe(0);
    expect(git(root, 'cat-file', 'tag', 'T-1-closed')).toContain('-----BEGIN PGP SIGNATURE-----');
  });

  it('of a hook that refuses the commit; the files stay as they are', async () => {
    write('shells/T-1/amendments.yaml', '# none yet\n');
    const hook = path.join(root, '.git/hooks/pre-commit');
    mkdirSync(path.dirname(hook), { recursive: true });
    writeFileSync(hook, '#!/bin/sh\necho "not on Fridays" >&2\nexit 1\n');
    chmodSync(hook, 0o755);
    await refused(root, /Git did not take the commit: not on Fridays/u);
    expect(readFileSync(path.join(root, 'shells/T-1/amendments.yaml'), 'utf8')).toBe('# none yet\n');
  });
});

describe('close rests on what is in the commit', () => {
  const PHOTO = 'shells/T-1/photos/p-1.jpg';
  const refused = async (said: RegExp): Promise<void> => {
    const { status, err } = await close();
    expect([status, tags()]).toEqual([2, []]);
    expect(err).toMatch(said);
  };

  it('and refuses where Git is told to ignore a picture', async () => {
    git(root, 'rm', '--quiet', '--cached', PHOTO);
    git(root, 'commit', '--quiet', '-m', 'Pictures are kept elsewhere');
    write('.gitignore', 'books/\n*.jpg\n');
    await refused(/Git ignores shells\/T-1\/photos\/p-1\.jpg.*git add --force/u);
  });

  it.each(['--skip-worktree', '--assume-unchanged'])('and refuses where Git is told not to look: %s', async (mark) => {
    git(root, 'update-index', mark, PHOTO, 'shells/T-1/tests.yaml');
    write(PHOTO, 'another picture');
    await refused(/Git does not watch shells\/T-1\/photos\/p-1\.jpg.*--no-skip-worktree/u);
  });

  it('and refuses where a filter puts something else into the commit', async () => {
    git(root, 'config', 'filter.theirs.clean', 'tr a-z A-Z');
    write('.gitattributes', '*.jpg filter=theirs\n');
    write(PHOTO, 'another picture');
    await refused(/The commit [0-9a-f]{8} does not hold shells\/T-1\/photos\/p-1\.jpg as it lies in the store/u);
  });

  it('and takes a record whose line ends Git was set to change', async () => {
    git(root, 'config', 'core.autocrlf', 'true');
    const file = 'shells/T-1/tests.yaml';
    write(file, readFileSync(path.join(root, file), 'utf8').replaceAll('\n', '\r\n'));
    expect((await close()).out).toContain('T-1 is closed');
    expect((await close()).out).toContain('closed already');
  });

  it('and takes pictures that the commit names by their SHA-256', async () => {
    // A pointer as in the specification of Git LFS, version 1.
    const hash = createHash('sha256').update('one').digest('hex');
    write(PHOTO, `version https://git-lfs.github.com/spec/v1\noid sha256:${hash}\nsize 3\n`);
    git(root, 'commit', '--quiet', '--all', '-m', 'Pictures are kept by their hashes');
    write(PHOTO, 'one');
    expect((await shellbook(root, 'list', '--json')).out).not.toContain('uncommitted');
    expect((await close()).out).toContain('T-1 is closed');
    write(PHOTO, 'two');
    git(root, 'update-index', '--assume-unchanged', PHOTO);
    expect((await close()).err).toContain('Git does not watch');
  });
});

describe('close in a larger repository', () => {
  it('commits and tags only its own', async () => {
    const top = folder();
    mkdirSync(path.join(top, 'office'));
    cpSync(root, path.join(top, 'records'), { recursive: true, filter: (from) => path.basename(from) !== '.git' });
    writeFileSync(path.join(top, 'office/letter.txt'), 'Dear');
    git(top, 'init', '--quiet', '--initial-branch=main');
    git(top, 'config', 'user.name', 'K. Marrow');
    git(top, 'config', 'user.email', 'k@example.org');
    git(top, 'add', '.');
    git(top, 'commit', '--quiet', '-m', 'All');
    writeFileSync(path.join(top, 'office/letter.txt'), 'Dear all');
    writeFileSync(path.join(top, 'records/shells/T-1/amendments.yaml'), '# none yet\n');
    const { status, out } = await close(path.join(top, 'records'));
    expect([status, out]).toEqual([0, expect.stringContaining('Committed: shells/T-1/amendments.yaml')]);
    expect(git(top, 'show', '--name-only', '--format=', 'T-1-closed^{commit}').trim()).toBe('records/shells/T-1/amendments.yaml');
    expect(git(top, 'status', '--porcelain', 'office').trim()).toBe('M office/letter.txt');
    expect((await close(path.join(top, 'records'))).out).toContain('closed already');
  });
});

describe('revisionLetter', () => {
  it('counts A to Z, then AA', () => {
    expect([1, 2, 26, 27, 52, 53, 703].map(revisionLetter)).toEqual(['A', 'B', 'Z', 'AA', 'AZ', 'BA', 'AAA']);
  });
});
