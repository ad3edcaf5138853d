import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { hashPhotosAt, readStoreTextAt } from '../../src/store/at-revision.js';
import { hashPhotos } from '../../src/store/hash-photos.js';
import { readStoreText } from '../../src/store/read.js';
import { CLOSABLE } from './closable.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
const file = (name: string): string => readFileSync(path.join(store.root, name), 'utf8');

function commit(day: string, author: string, message: string): void {
  const who = {
    GIT_AUTHOR_NAME: author,
    GIT_AUTHOR_EMAIL: 'x@example.org',
    GIT_COMMITTER_NAME: author,
    GIT_COMMITTER_EMAIL: 'x@example.org',
  };
  const when = { GIT_AUTHOR_DATE: `${day}T16:00:00-05:00`, GIT_COMMITTER_DATE: `${day}T16:00:00-05:00` };
  const options = { cwd: store.root, env: { ...process.env, ...who, ...when } };
  execFileSync('git', ['add', '--all'], options);
  execFileSync('git', ['commit', '--quiet', '-m', message], options);
}

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, out: io.answer(), err: io.messages() };
}
const lines = async (...args: readonly string[]): Promise<readonly string[]> =>
  (await shellbook('compare', 'T-1', ...args)).out
    .replace(/\n {2}/gu, ' ')
    .split('\n')
    .filter((line) => line.startsWith('- '));

beforeAll(async () => {
  store = await laySmallStore({ ...CLOSABLE });
  // Made anew, so that the days are known.
  execFileSync('git', ['update-ref', '-d', 'HEAD'], { cwd: store.root });
  commit('2026-02-01', 'K. Marrow', 'Start');
  execFileSync('git', ['tag', 'start'], { cwd: store.root });
  store.write('shells/T-1/welds.yaml', file('shells/T-1/welds.yaml').replace('size: 1/8 in', 'size: 3/16 in'));
  commit('2026-02-12', 'Corvina Thessel', 'W-1 is larger');
  store.write(
    'shells/T-1/welds.yaml',
    file('shells/T-1/welds.yaml').replace(
      'result: accept}]',
      'result: accept}, {method: PT, by: J2, date: 2026-03-03, result: accept}], note: under the sill',
    ),
  );
  store.write('shells/T-1/photos/p-1.jpg', 'another');
  commit('2026-03-04', 'Perpetua Vannock', 'W-1 looked at again');
  // Moved to other files, in another order, with comments: nobody changed anything.
  store.write(
    'shells/T-1/members-rails.yaml',
    `# rails\n${file('shells/T-1/members.yaml').split('\n').reverse().join('\n').trim()}\n`,
  );
  store.write('shells/T-1/members.yaml', '');
  commit('2026-03-20', 'K. Marrow', 'Rails to a file of their own');
  store.write('shells/T-1/tests.yaml', '');
  store.write('shells/T-1/zones.yaml', file('shells/T-1/zones.yaml').replace('closed_by: [BP-1]', 'closed_by: [BP-1, AP-1]'));
  commit('2026-04-01', 'K. Marrow', 'Tests are void');
});
afterAll(() => store.remove());

describe('compare', () => {
  it('says what differs by record and field, in words, with who and when', async () => {
    expect(await lines('start', '2026-02-28')).toEqual(['- W-1: size 1/8 in → 3/16 in, by K7, 12 Feb 2026']);
  });

  it('says of each field who changed it, where several did', async () => {
    const [weld] = await lines('start', '2026-03-10');
    expect(weld).toContain('size 1/8 in → 3/16 in');
    expect(weld).toContain('inspection 2 (PT, J2, 2026-03-03, accept) added');
    expect(weld).toContain('note under the sill added');
    expect(weld).toContain('by J2, 4 Mar 2026');
  });

  it('tells of a picture that became another, of records that went, and of lists that grew', async () => {
    const all = await lines('start');
    expect(all).toContain('- p-1.jpg: picture replaced by another');
    expect(all).toContain('- test taken out: TS-1');
    expect(all).toContain('- TROUGH: closed by AP-1 added, by A1, 1 Apr 2026');
  });

  it('sees no change where records moved to another file', async () => {
    const { status, out } = await shellbook('compare', 'T-1', '2026-03-10', '2026-03-25');
    expect([status, out]).toEqual([0, 'Nothing of T-1 differs between 2026-03-10 and 2026-03-25.\n']);
  });

  it('turns round where the revisions are turned round', async () => {
    expect(await lines('2026-02-28', 'start')).toEqual(['- W-1: size 3/16 in → 1/8 in']);
  });

  it('answers in JSON', async () => {
    const { out } = await shellbook('compare', 'T-1', 'start', '2026-02-28', '--json');
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ command: 'compare', shell: 'T-1', from: expect.stringMatching(/^[0-9a-f]{40}$/u) });
    expect(answer.to).toBe(answer.revision);
    expect(answer.changes).toEqual([
      {
        kind: 'weld',
        id: 'W-1',
        change: 'changed',
        text: 'W-1: size 1/8 in → 3/16 in',
        by: 'K7',
        date: '2026-02-12',
        commit: answer.to,
        fields: [{ field: 'size', from: '1/8 in', to: '3/16 in', by: 'K7', date: '2026-02-12', commit: answer.to }],
      },
    ]);
  });

  it.each(['--all', '-p', 'nope', 'HEAD:shop.yaml', 'start..HEAD', '2026-13-01T', ''])(
    'takes %j for no revision, and for no option',
    async (revision) => {
      // Behind `--`, so that the command line itself has no say in it.
      const { status, out, err } = await shellbook('compare', '--', 'T-1', revision, 'HEAD');
      expect([status, out]).toEqual([2, '']);
      expect(err).toMatch(/^shellbook: No (?:revision|commit)/mu);
    },
  );

  it('says from when on there is something', async () => {
    expect((await shellbook('compare', 'T-1', '2020-01-01', 'HEAD')).err).toContain(
      'No commit on or before 2020-01-01: the first is from 2026-02-01.',
    );
    expect((await shellbook('compare', 'T-9', 'start', 'HEAD')).err).toContain('No shell T-9');
  });
});

describe('history of a record', () => {
  it('tells each step, newest first', async () => {
    const { status, out, err } = await shellbook('history', 'T-1', 'W-1');
    expect(status).toBe(0);
    expect(err).toBe(
      'K7 is Corvina Thessel, welder.\nJ2 is Perpetua Vannock, inspector.\nA1 is K. Marrow, shop administrator.\n',
    );
    expect(
      out
        .replace(/\n {2}/gu, ' ')
        .trim()
        .split('\n'),
    ).toEqual([
      '- W-1: inspection 2 (PT, J2, 2026-03-03, accept) added; note under the sill added, by J2, 4 Mar 2026',
      '- W-1: size 1/8 in → 3/16 in, by K7, 12 Feb 2026',
      '- weld recorded: W-1, by A1, 1 Feb 2026',
    ]);
  });

  it('follows a record to another file, and tells when it went', async () => {
    expect((await shellbook('history', 'T-1', 'FL-2')).out).toBe('- member recorded: FL-2, by A1, 1 Feb 2026\n');
    expect((await shellbook('history', 'T-1', 'TS-1')).out.split('\n')[0]).toBe('- test taken out: TS-1, by A1, 1 Apr 2026');
    expect((await shellbook('history', 'T-1', 'W-9')).err).toContain('No record W-9 in the history of T-1');
  });

  it('tells of a record that is there and not committed, and why another shell’s commits are listed', async () => {
    const other = await laySmallStore();
    const told = async (...args: readonly string[]) => {
      const io = literalIo(other.root);
      return { status: await runProgram(args, io), err: io.messages().replace(/\s+/gu, ' ') };
    };
    try {
      expect((await told('history', 'T-1')).err).not.toContain('other shells');
      other.write('shells/T-2/shell.yaml', 'shell: T-2\ntitle: Second\n');
      other.write('library/stages.yaml', '- {id: floor, name: Floor}\n- {id: belly, name: Belly panels}\n');
      await other.commit('T-2: begun, stage renamed');
      expect((await told('history', 'T-1')).err).toContain('Commits for other shells are listed if they changed the library');
      other.write('shells/T-2/components.yaml', '- {id: CMP-1, name: hook, mass: 1 lb, at: [0 in, 0 in, 0 in]}\n');
      expect(await told('history', 'T-2', 'CMP-1')).toEqual({
        status: 2,
        err: expect.stringContaining('CMP-1 of T-2 is not committed yet, so it has no history'),
      });
    } finally {
      other.remove();
    }
  });

  it('answers in JSON with the kind of every step', async () => {
    const { changes } = JSON.parse((await shellbook('history', 'T-1', 'W-1', '--json')).out);
    expect(changes.map((one: { kind: string; change: string }) => [one.kind, one.change])).toEqual([
      ['weld', 'changed'],
      ['weld', 'changed'],
      ['weld', 'added'],
    ]);
  });
});

describe('a store at a revision', () => {
  it('is the work tree’s where nothing differs, photos by their hashes', async () => {
    const [now, then] = [await readStoreText(store.root), await readStoreTextAt(store.root, 'HEAD')];
    expect([...then.files].sort()).toEqual([...now.files].sort());
    expect([...then.photos].sort()).toEqual([...now.photos].sort());
    expect([...(await hashPhotosAt(store.root, 'HEAD', 'T-1'))].sort()).toEqual([...(await hashPhotos(now, 'T-1'))].sort());
  });

  it('has the photo of that day, by the system’s own SHA-256', async () => {
    const old = (await hashPhotosAt(store.root, 'start', 'T-1')).get('shells/T-1/photos/p-1.jpg');
    const tool = execFileSync('sh', ['-c', 'git show start:shells/T-1/photos/p-1.jpg | (sha256sum || shasum -a 256)'], {
      cwd: store.root,
      encoding: 'utf8',
    });
    expect(tool.slice(0, 64)).toBe(old);
  });
});
