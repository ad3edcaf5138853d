import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { simpleGit } from 'simple-git';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { runProgram } from '../../src/cli/program.js';
import type { Asker } from '../../src/entry/asker.js';
import { literalIo } from './literal-io.js';
import { FILES, laySmallStore, type SmallStore } from './small-store.js';

const CROSSED = `${FILES['shells/T-1/members.yaml']}# Across the trough
- {id: CB-1, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [85 in, -30 in, 0 in], to: [85 in, 30 in, 0 in]}
- {id: CB-2, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [120 in, -30 in, 0 in], to: [120 in, 30 in, 0 in]}
- {id: CB-3, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [130 in, -30 in, 0 in], to: [130 in, 30 in, 0 in]}
`;
const PEOPLE = '- {id: J2, name: J. Tolland, role: inspector, qualified: [{method: VT, from: 2026-01-01, until: 2028-01-01}]}\n';
const SERVICE = 'shells/T-1/services/dc.yaml';
const FINDINGS = 'shells/T-1/findings.yaml';

let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore({ 'shells/T-1/members.yaml': CROSSED, 'library/people.yaml': PEOPLE });
});
afterEach(() => store.remove());

const textOf = (file: string): string => readFileSync(path.join(store.root, file), 'utf8');

async function shellbook(args: readonly string[], ask?: Asker) {
  const io = literalIo(store.root);
  const status = await runProgram(args, ask ? { ...io, ask: async () => ask } : io);
  return { status, answer: io.answer(), messages: io.messages() };
}
const findings = async (rule: string) => {
  const { answer } = await shellbook(['check', 'T-1', '--json']);
  return (JSON.parse(answer).findings as { rule: string; ids: string[]; decided_by?: string }[]).filter(
    (one) => one.rule === rule,
  );
};

const says = (answer: boolean): Asker => ({
  text: async () => '',
  choose: async () => '',
  confirm: async () => answer,
});
const MEND = ['mend', 'T-1', 'service.no-grommet'];

describe('mend', () => {
  it('shows, then writes what like findings propose, and nothing else', async () => {
    expect(await findings('service.no-grommet')).toHaveLength(3);
    const before = textOf(SERVICE);
    const dry = await shellbook([...MEND, '--dry-run']);
    expect([dry.status, textOf(SERVICE)]).toEqual([0, before]);
    expect(dry.answer).toContain('run DC-1/2 (shells/T-1/services/dc.yaml): grommets: [CB-2, CB-3]');
    const { status, answer } = await shellbook([...MEND, '--yes', '--commit']);
    expect(status, answer).toBe(0);
    expect(await findings('service.no-grommet')).toEqual([]);
    const changed = textOf(SERVICE)
      .split('\n')
      .filter((line) => !before.includes(line));
    expect(changed.flatMap((line) => /grommets: \[.*\]/u.exec(line)?.[0] ?? [])).toEqual([
      'grommets: [CB-1]',
      'grommets: [CB-2, CB-3]',
    ]);
    const { latest } = await simpleGit({ baseDir: store.root }).log();
    expect(latest?.message).toBe('Mend 2 records of T-1 by service.no-grommet');
  });

  it('adds to a list that is there', async () => {
    writeFileSync(path.join(store.root, SERVICE), textOf(SERVICE).replace('id: DC-1/2,', 'id: DC-1/2, grommets: [CB-2],'));
    await shellbook([...MEND, '--yes']);
    expect(textOf(SERVICE)).toContain('id: DC-1/2, grommets: [CB-2, CB-3],');
  });

  it('writes nothing where nobody said that it is so', async () => {
    const before = textOf(SERVICE);
    const silent = await shellbook(MEND);
    expect([silent.status, silent.messages]).toEqual([2, expect.stringContaining('Look at the coach whether it is so')]);
    expect((await shellbook(MEND, says(false))).status).toBe(2);
    expect(textOf(SERVICE)).toBe(before);
    expect((await shellbook(MEND, says(true))).status).toBe(0);
    expect(textOf(SERVICE)).not.toBe(before);
  });

  it('takes one record alone, and tells a rule or record that is none', async () => {
    await shellbook([...MEND, '--yes', '--only', 'DC-1/1']);
    expect((await findings('service.no-grommet')).map(({ ids }) => ids[0])).toEqual(['DC-1/2', 'DC-1/2']);
    const none = await shellbook([...MEND, '--yes', '--only', 'FL-1']);
    expect([none.status, none.messages]).toEqual([2, expect.stringContaining('Nothing is proposed for FL-1')]);
    const typo = await shellbook(['mend', 'T-1', 'service.no-gromet', '--yes']);
    expect([typo.status, typo.messages]).toEqual([2, expect.stringContaining('service.no-grommet')]);
  });
});

const DECIDE = ['--as', 'use as is', '--by', 'J2', '--because', 'rubber-lined holes, seen'];

describe('decide', () => {
  it('decides several records in one step, and the check knows', async () => {
    const { status, messages } = await shellbook(['decide', 'service.no-grommet', 'DC-1/1', 'DC-1/2', ...DECIDE, '--commit']);
    expect(status, messages).toBe(0);
    const [record] = parse(textOf(FINDINGS)) as readonly Record<string, unknown>[];
    expect(record).toMatchObject({
      id: 'NC-01',
      of: ['DC-1/1', 'DC-1/2'],
      rules: ['service.no-grommet'],
      decision: 'use as is',
      approved_by: 'J2',
      reason: 'rubber-lined holes, seen',
    });
    expect((await findings('service.no-grommet')).map((one) => one.decided_by)).toEqual(['NC-01', 'NC-01', 'NC-01']);
    const again = await shellbook(['decide', 'service.no-grommet', 'DC-1/1', ...DECIDE]);
    expect([again.status, again.answer]).toEqual([0, expect.stringContaining('already decided, by NC-01')]);
  });

  const WRONG: readonly (readonly [string, readonly string[], RegExp])[] = [
    ['no id', ['service.no-grommet', ...DECIDE], /Name the records, as DC-1\/1, DC-1\/2; or --all/u],
    ['an id without that finding', ['service.no-grommet', 'FL-1', ...DECIDE], /finds nothing at FL-1, expected one of DC-1\/1/u],
    ['a rule that is none', ['service.no-gromet', 'FL-1', ...DECIDE], /service\.no-grommet/u],
    ['a decision that is none', ['service.no-grommet', 'DC-1/1', '--as', 'ok', ...DECIDE.slice(2)], /decision.*rework/su],
    ['no reason', ['service.no-grommet', 'DC-1/1', ...DECIDE.slice(0, 4), '--because', ' '], /the reason, in words/u],
  ];
  it('refuses what it cannot decide, and writes nothing', async () => {
    for (const [what, args, message] of WRONG) {
      const { status, messages } = await shellbook(['decide', ...args]);
      expect([status, messages], what).toEqual([2, expect.stringMatching(message)]);
    }
    expect(existsSync(path.join(store.root, FINDINGS))).toBe(false);
  });

  it('decides no error away', async () => {
    store.write(
      'shells/T-1/shell.yaml',
      (FILES['shells/T-1/shell.yaml'] as string).replace('1M8GDM9AXKP042788', '1M8GDM9A1KP042788'),
    );
    const { status, messages } = await shellbook(['decide', 'shell.vin-check-digit', 'T-1', ...DECIDE]);
    expect([status, messages]).toEqual([2, expect.stringMatching(/is an error, which nobody can decide away/u)]);
  });
});

describe('undo', () => {
  const ADD = [
    'add',
    'component',
    '--shell',
    'T-1',
    '--id',
    'CMP-9',
    '--name',
    'hook',
    '--mass',
    '1 lb',
    '--at',
    '100in,0in,60in',
    '--basis',
    'weighed',
  ];
  const COMPONENTS = 'shells/T-1/components.yaml';

  it('takes entries back, the last first, to the very bytes, until none is left', async () => {
    const before = textOf(SERVICE);
    await shellbook(ADD);
    await shellbook([...MEND, '--yes']);
    const dry = await shellbook(['undo', '--dry-run']);
    expect(dry.answer).toMatch(/^Would take back: mend T-1 service\.no-grommet/u);
    expect((await shellbook(['undo'])).status).toBe(0);
    expect(textOf(SERVICE)).toBe(before);
    expect((await shellbook(['undo'])).answer).toMatch(/^Took back: add component CMP-9 to T-1 .*components\.yaml/u);
    expect(existsSync(path.join(store.root, COMPONENTS))).toBe(false);
    const none = await shellbook(['undo']);
    expect([none.status, none.messages]).toEqual([2, expect.stringContaining('There is nothing of yours to take back')]);
  });

  it('takes back a sheet whose columns were kept too, and goes on where an undo was broken off', async () => {
    const sheet = path.join(store.root, 'cut.csv');
    store.write('cut.csv', 'id,name,mass,at,basis\nCMP-21,shelf,2 lb,"100 in, 0, 60 in",weighed\n');
    const taken = ['import', 'components', sheet, '--shell', 'T-1', '--yes', '--keep'];
    for (const brokenOff of [false, true]) {
      expect((await shellbook(taken)).status).toBe(0);
      expect(textOf('import.yaml')).toContain('cut.csv');
      if (brokenOff) rmSync(path.join(store.root, 'import.yaml'));
      const { status, messages } = await shellbook(['undo']);
      expect([status, messages]).toEqual([0, '']);
      expect([COMPONENTS, 'import.yaml'].map((file) => existsSync(path.join(store.root, file)))).toEqual([false, false]);
    }
  });

  it('refuses where a file has changed since, and leaves everything as it is', async () => {
    await shellbook(ADD);
    const later = `${textOf(COMPONENTS)}- {id: CMP-10, name: shelf, mass: 2 lb, at: [100 in, 0, 60 in], basis: weighed}\n`;
    store.write(COMPONENTS, later);
    const { status, messages } = await shellbook(['undo']);
    expect([status, messages]).toEqual([
      2,
      expect.stringContaining('components.yaml has changed since `add component CMP-9 to T-1`'),
    ]);
    expect(textOf(COMPONENTS)).toBe(later);
  });

  it('knows nothing of what another user entered', async () => {
    await shellbook(ADD);
    const mine = process.env.XDG_STATE_HOME;
    process.env.XDG_STATE_HOME = path.join(store.root, 'another-home');
    try {
      expect((await shellbook(['undo'])).messages).toContain('There is nothing of yours to take back');
    } finally {
      process.env.XDG_STATE_HOME = mine;
    }
    expect(textOf(COMPONENTS)).toContain('CMP-9');
  });

  it('commits where asked, and does not trust a journal that leads out of the store', async () => {
    await shellbook([...ADD, '--commit']);
    await shellbook(['undo', '--commit']);
    const { latest } = await simpleGit({ baseDir: store.root }).log();
    expect(latest?.message).toBe('Take back: add component CMP-9 to T-1');
  });
});
