import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inShare, readShare } from '../../src/cli/commands/check-share.js';
import { runProgram } from '../../src/cli/program.js';
import { CacheDir } from '../../src/store/kept.js';
import { Sections } from '../../src/store/sections.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
const SHELL = (id: string): string => `shell: ${id}\ntitle: Coach ${id}\n`;
beforeEach(async () => {
  store = await laySmallStore({
    'library/certificates.yaml': '- {id: MC-1, heats: [H-1, H-2], alloy: 6061-T6, type: 3.1, document: mill paper 4707}\n',
    'shells/T-2/shell.yaml': SHELL('T-2'),
    'shells/T-2/members.yaml': `- {id: M-1, part: rail, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, heat: H-1, from: [0 in, 0 in, 0 in], to: [9 in, 0 in, 0 in]}
- id: M-2
  part: rail
  stage: floor
  section: RT2x2x1/8
  alloy: 6061-T6
  heat: "h-1"
  from: [0 in, 9 in, 0 in]
  to: [9 in, 9 in, 0 in]
- {id: M-3, part: rail, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, heat: H-11, from: [0 in, 4 in, 0 in], to: [9 in, 4 in, 0 in]}
`,
    'shells/T-2/panels.yaml':
      '- {id: SK-1, kind: skin, alloy: 5052-H32, thickness: 0.090 in, stage: floor, outline: [[0 in, 0 in, 0 in], [9 in, 0 in, 0 in], [9 in, 9 in, 0 in]], fixing: {method: bonded, adhesive: two-part, lot: A-2231}}\n',
    'shells/T-2/welds.yaml':
      '- {id: W-1, joins: [[M-1, M-2]], type: fillet, size: 1/8 in, length: 2 in, process: GMAW, procedure: WPS-1, welder: K7, date: 2026-03-01, note: H-1 beside it}\n',
    'shells/T-3/shell.yaml': SHELL('T-3'),
    'shells/T-3/components.yaml':
      '- {id: C-1, name: "Pump, diaphragm", part: DP-20, serial: 0017, mass: 4 lb, at: [0 in, 0 in, 0 in]}\n',
  });
});
afterEach(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, out: io.answer(), err: io.messages() };
}
const trace = async (key: string, value: string) => {
  const { status, out } = await shellbook('trace', key, value, '--json');
  return {
    status,
    hits: JSON.parse(out).hits.map(
      (hit: Record<string, unknown>) => `${hit.shell} ${hit.kind} ${hit.id} ${hit.file}:${hit.line}`,
    ),
  };
};
const git = (...args: readonly string[]): string => execFileSync('git', args, { cwd: store.root, encoding: 'utf8' });

const HEAT = ['T-2 member M-1 shells/T-2/members.yaml:1', 'T-2 member M-2 shells/T-2/members.yaml:7'];

describe('trace', () => {
  it('finds a heat in whatever case, whole, and only where it is a heat', async () => {
    expect(await trace('heat', 'H-1')).toEqual({ status: 0, hits: HEAT });
    expect((await shellbook('trace', 'heat', 'H-1')).err).toContain('heat H-1: 2 places in 1 shell.');
  });

  it.each([
    ['lot', 'A-2231', ['T-2 panel SK-1 shells/T-2/panels.yaml:1']],
    ['welder', 'K7', ['T-2 weld W-1 shells/T-2/welds.yaml:1']],
    ['procedure', 'WPS-1', ['T-2 weld W-1 shells/T-2/welds.yaml:1']],
    ['instrument', 'M-1', ['T-1 test TS-1 shells/T-1/tests.yaml:1']],
    ['instrument', 'SC-1', ['T-1 ticket T-1/W shells/T-1/weights.yaml:4']],
    ['part', 'pump,  diaphragm', ['T-3 component C-1 shells/T-3/components.yaml:1']],
    ['part', 'DP-20', ['T-3 component C-1 shells/T-3/components.yaml:1']],
    ['part', '0017', ['T-3 component C-1 shells/T-3/components.yaml:1']],
    ['certificate', 'MC-1', HEAT],
    ['certificate', 'mill paper 4707', HEAT],
  ])('finds %s %s', async (key, value, hits) => {
    expect(await trace(key, value)).toEqual({ status: 0, hits });
  });

  it('takes whatever is typed as the words to look for', async () => {
    for (const odd of ['-rf', '--output=x', '../x', '$(id)', '.*', '\\', "a'b", 'H-1\n']) {
      const { status, out } = await shellbook('trace', '--quiet', 'heat', '--', odd);
      expect([status, out], odd).toEqual(
        odd.trim() === 'H-1' ? [0, expect.stringContaining('M-1')] : [1, expect.stringContaining('No record')],
      );
    }
  });

  it('looks at what is not committed, ignored or outside Git as well', async () => {
    store.write('shells/T-3/members.yaml', '- {id: N-1, part: rail, heat: H-1}\n');
    store.write('.gitignore', 'shells/T-3/members-2.yaml\n');
    store.write('shells/T-3/members-2.yaml', '- {id: N-2, part: rail, heat: H-1}\n');
    store.write('shells/T-3/members-3.yaml', '- {id: N-3, part: rail, heat: "\\x48-1"}\n');
    const all = [
      ...HEAT,
      'T-3 member N-1 shells/T-3/members.yaml:1',
      'T-3 member N-2 shells/T-3/members-2.yaml:1',
      'T-3 member N-3 shells/T-3/members-3.yaml:1',
    ].sort();
    expect([...(await trace('heat', 'H-1')).hits].sort()).toEqual(all);
    rmSync(path.join(store.root, '.git'), { recursive: true });
    expect([...(await trace('heat', 'H-1')).hits].sort()).toEqual(all);
  });

  it('says "no" with status 1, and what it can trace by', async () => {
    expect(await trace('heat', 'H-9')).toEqual({ status: 1, hits: [] });
    expect((await shellbook('trace', 'heet', 'H-1')).err).toContain('Nothing is traced by `heet`, expected heat');
    expect((await shellbook('trace', '--', 'welder', '-e')).status).toBe(1);
    expect((await shellbook('trace', '--', 'welder', '--open-files-in-pager=x')).status).toBe(1);
  });
});

describe('list', () => {
  const list = async () => {
    const { out } = await shellbook('list', '--json');
    return JSON.parse(out).shells as { shell: string; title: string; state: string; counts: Record<string, number> }[];
  };
  const titles = async (): Promise<readonly string[]> => (await list()).map(({ title }) => title);

  it('answers the same from what it kept as anew', async () => {
    const anew = await list();
    expect(anew.map(({ shell }) => shell)).toEqual(['T-1', 'T-2', 'T-3']);
    expect(await list()).toEqual(anew);
    rmSync(path.join(store.root, '.git/shellbook'), { recursive: true });
    expect(await list()).toEqual(anew);
  });

  it('says what its counts leave out', async () => {
    const { out, err } = await shellbook('list');
    expect(out).not.toContain('Counted');
    expect(err.replace(/\s+/gu, ' ')).toContain(
      'Counted from the records alone, without what pictures say by themselves and when records were entered. For those: shellbook check SHELL',
    );
    expect(JSON.parse((await shellbook('list', '--json')).out).not_counted).toHaveLength(2);
  });

  it('sees every change, committed or not, whatever Git was told about the file', async () => {
    await list();
    store.write('shells/T-3/shell.yaml', SHELL('T-3').replace('Coach', 'Train'));
    expect(await titles()).toContain('Train T-3');
    git('commit', '--quiet', '--all', '-m', 'renamed');
    expect(await titles()).toContain('Train T-3');
    git('update-index', '--assume-unchanged', 'shells/T-3/shell.yaml');
    store.write('shells/T-3/shell.yaml', SHELL('T-3').replace('Coach', 'Bus__'));
    utimesSync(path.join(store.root, 'shells/T-3/shell.yaml'), 1e9, 1e9);
    expect(await titles()).toContain('Bus__ T-3');
  });

  it('sees an ignored file, a new shell, one that went, and a link that changed its end', async () => {
    await list();
    store.write('.gitignore', 'shells/T-4/\n');
    store.write('shells/T-4/shell.yaml', SHELL('T-4'));
    expect(await titles()).toContain('Coach T-4');
    rmSync(path.join(store.root, 'shells/T-4'), { recursive: true });
    rmSync(path.join(store.root, 'shells/T-3'), { recursive: true });
    expect((await list()).map(({ shell }) => shell)).toEqual(['T-1', 'T-2']);
    store.write('shells/T-2/other.txt', SHELL('T-2').replace('Coach', 'Linked'));
    rmSync(path.join(store.root, 'shells/T-2/shell.yaml'));
    symlinkSync('other.txt', path.join(store.root, 'shells/T-2/shell.yaml'));
    git('add', '--all');
    git('commit', '--quiet', '-m', 'linked');
    expect(await titles()).toContain('Linked T-2');
    store.write('shells/T-2/other.txt', SHELL('T-2').replace('Coach', 'Again'));
    expect(await titles()).toContain('Again T-2');
  });

  it('judges anew what a change of the library or of another shell touches', async () => {
    const before = await list();
    store.write('library/sections.yaml', '# none\n');
    const errors = async (shell: string) => (await list()).find((one) => one.shell === shell)?.counts.error ?? 0;
    expect(await errors('T-2')).toBeGreaterThan(before.find(({ shell }) => shell === 'T-2')?.counts.error ?? 0);
  });

  it('believes no kept answer that is spoilt, cut, of another store or without this user’s mark', async () => {
    const before = await list();
    const file = path.join(store.root, '.git/shellbook/list/summaries');
    const whole = readFileSync(file);
    const [head = ''] = whole.toString('latin1').split('\n');
    const { stamp } = JSON.parse(head.slice(65)) as { readonly stamp: string };
    const forged = Sections.open({
      room: CacheDir.in(path.join(store.root, '.git'), 'list'),
      name: 'summaries',
      stamp,
      settled: true,
    });
    const told = forged.get('summaries') as Map<string, { summary: { title: string } }>;
    // The test of the test: what is kept is what is told.
    forged.put(
      'summaries',
      new Map([...told].map(([key, one]) => [key, { ...one, summary: { ...one.summary, title: 'kept' } }])),
    );
    await forged.save();
    expect((await titles()).every((title) => title === 'kept')).toBe(true);
    const marked = readFileSync(file);
    const unmarked = Buffer.concat([Buffer.from('0'.repeat(64)), marked.subarray(64)]);
    const odd = [
      unmarked,
      marked.subarray(0, -1),
      Buffer.concat([marked.subarray(0, -20), Buffer.alloc(20)]),
      Buffer.from('{"summary": {"title": "cut'),
      Buffer.from(marked.toString('latin1').replace(stamp, stamp.replace(/^./u, 'x')), 'latin1'),
    ];
    for (const one of odd) {
      writeFileSync(file, one);
      expect(await list()).toEqual(before);
    }
  });
});

describe('check, shared between machines', () => {
  const checked = async (...args: readonly string[]): Promise<readonly string[]> => {
    const { out } = await shellbook('check', '--format', 'junit', ...args);
    return [...out.matchAll(/<testsuite name="([^"]+)"/gu)]
      .map((one) => one[1] as string)
      .filter((name) => /^T-\d+$/u.test(name));
  };

  it('gives each shell to one share, and every shell to some', async () => {
    const shares = [];
    for (const share of ['1/3', '2/3', '3/3']) shares.push(await checked('--share', share));
    expect(shares.flat().sort()).toEqual(['T-1', 'T-2', 'T-3']);
  });

  it('finds in the shares together what it finds in the whole, and one share at least ends as the whole does', async () => {
    const asked = async (...args: readonly string[]) => {
      const { status, out } = await shellbook('check', '--json', ...args);
      const { findings } = JSON.parse(out) as { findings: { rule: string; file: string; line: number; message: string }[] };
      return { status, found: findings.map(({ rule, file, line, message }) => `${file}:${line} ${rule} ${message}`) };
    };
    const whole = await asked();
    const shares = [];
    for (const share of ['1/3', '2/3', '3/3']) shares.push(await asked('--share', share));
    expect(whole.found.some((one) => one.startsWith('shells/'))).toBe(true);
    // What is wrong with the library stands in every share.
    expect([...new Set(shares.flatMap(({ found }) => found))].sort()).toEqual([...new Set(whole.found)].sort());
    expect(Math.max(...shares.map(({ status }) => status))).toBe(whole.status);
  });

  it('shares a thousand shells evenly, whatever their number', () => {
    const shells = Array.from({ length: 1000 }, (_, i) => `S-${String(i).padStart(4, '0')}`);
    for (const count of [2, 3, 8]) {
      const sizes = Array.from(
        { length: count },
        (_, i) => shells.filter((shell) => inShare(shell, { index: i + 1, count })).length,
      );
      expect(sizes.reduce((a, b) => a + b)).toBe(1000);
      for (const size of sizes) expect(Math.abs(size - 1000 / count)).toBeLessThan(4 * Math.sqrt(1000 / count));
    }
  });

  it.each(['0/8', '9/8', '1', 'a/b', '1/0', '-1/2', '1/8/2'])('takes %s for no share', (text) => {
    expect(() => readShare(text)).toThrow(/expected a share such as 1\/8/u);
  });

  it('looks only at what changed since a revision: committed, not committed, new, or all where the library did', async () => {
    store.write('shells/T-2/zones.yaml', '');
    git('add', '--all');
    git('commit', '--quiet', '-m', 'two');
    store.write('shells/T-3/zones.yaml', '');
    expect(await checked('--since', 'HEAD')).toEqual(['T-3']);
    expect(await checked('--since', 'HEAD~1')).toEqual(['T-2', 'T-3']);
    store.write('library/people.yaml', '');
    expect(await checked('--since', 'HEAD')).toEqual(['T-1', 'T-2', 'T-3']);
    expect((await shellbook('check', '--since', 'nope')).err).toContain('No revision `nope`');
  });
});
