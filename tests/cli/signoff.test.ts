import { readFileSync } from 'node:fs';
import path from 'node:path';
import { simpleGit } from 'simple-git';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { runProgram } from '../../src/cli/program.js';
import { CLOSABLE, PHOTOS, SEEN, wholeWeld } from './closable.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

const weld = (more: string): string => wholeWeld('W-1', more);

let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore({ ...CLOSABLE, 'shells/T-1/signoffs.yaml': '# Signed when met\n' });
});
afterEach(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, out: io.answer(), err: io.messages() };
}
const sign = (stage: string, ...more: readonly string[]) => shellbook('signoff', 'T-1', stage, '--date', '2026-05-01', ...more);
const signoffs = (): string => readFileSync(path.join(store.root, 'shells/T-1/signoffs.yaml'), 'utf8');
const commit = async (message: string): Promise<void> => void (await simpleGit(store.root).add('.').commit(message));
const lapses = async () => {
  const { out } = await shellbook('check', 'T-1', '--json');
  return (JSON.parse(out).findings as { rule: string; message: string; severity: string; ids: string[] }[]).filter(
    ({ rule }) => rule === 'signoff.lapsed',
  );
};

describe('signoff', () => {
  it('signs in the person’s role, with a digest, and keeps what stood in the file', async () => {
    const { status, out, err } = await sign('floor', '--by', 'J2');
    expect([status, out]).toEqual([0, 'Signed: stage floor of T-1, by J2 (inspector), 2026-05-01.\n']);
    expect(err).toContain('git commit');
    expect(signoffs()).toMatch(
      /^# Signed when met\n- \{stage: floor, role: inspector, by: J2, date: 2026-05-01,\n {3}digest: c2-[0-9a-f]{64}\}\n$/u,
    );
    expect(parse(signoffs())[0]).toMatchObject({ stage: 'floor', by: 'J2' });
    expect(await lapses()).toEqual([]);
  });

  it('typed again, writes nothing twice', async () => {
    await sign('floor', '--by', 'J2');
    const once = signoffs();
    const { status, out } = await sign('floor', '--by', 'J2');
    expect([status, out]).toEqual([0, 'Signed already: stage floor of T-1, by J2 (inspector), 2026-05-01.\n']);
    expect(signoffs()).toBe(once);
  });

  it('answers in JSON', async () => {
    const { status, out } = await sign('floor', '--by', 'J2', '--json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      command: 'signoff',
      shell: 'T-1',
      signed: true,
      stage: 'floor',
      role: 'inspector',
      by: 'J2',
      missing: [],
    });
  });

  it.each([
    [
      'a weld that nobody looked at',
      weld('note: new'),
      /Weld W-1 was not looked at, expected a visual inspection/u,
      'welds accepted',
    ],
    [
      'a weld that was rejected',
      weld('inspections: [{method: VT, by: J2, date: 2026-03-02, result: reject}]'),
      /W-1 was rejected/u,
      'welds accepted',
    ],
  ])('refuses over %s, and says whose it is', async (_what, welds, message, because) => {
    store.write('shells/T-1/welds.yaml', welds);
    const { status, out } = await sign('floor', '--by', 'J2', '--json');
    const { missing } = JSON.parse(out);
    expect(status).toBe(1);
    expect(missing.find((one: { because: string }) => one.because === because)).toMatchObject({
      list: 'completion',
      who: 'inspector',
      where: 'stage floor',
      ids: ['W-1'],
    });
    expect(missing.some((one: { message: string }) => message.test(one.message))).toBe(true);
    expect(signoffs()).toBe('# Signed when met\n');
  });

  it('refuses where no photo shows the stage, or one was taken after it was closed in', async () => {
    store.write('shells/T-1/photos/photos.yaml', '- {id: P-2, file: p-2.jpg, of: [TROUGH], taken: 2026-04-11}\n');
    expect((await sign('floor', '--by', 'J2')).out).toContain('No photo shows anything of stage floor');
    const belly = await sign('belly', '--by', 'J2', '--all');
    expect(belly.status).toBe(1);
    expect(belly.out.replace(/\s+/gu, ' ')).toContain(
      'Run DC-1/1 was first photographed on 2026-04-11, expected on or before 2026-04-10, when BP-1 closed it in',
    );
  });

  it('refuses where what is closed in has no passed test', async () => {
    store.write(
      'shells/T-1/tests.yaml',
      '- {id: TS-1, kind: continuity, of: [DC-1], limit: 0.5 ohm, measured: 2 ohm, instrument: M-1, date: 2026-04-08}\n',
    );
    const { status, out } = await sign('belly', '--by', 'J2');
    expect(status).toBe(1);
    expect(out.replace(/\s+/gu, ' ')).toContain('Run DC-1/1 has no dated passed test, expected one of before BP-1 closed it in');
  });

  it('takes no signature of the welder for their own welds, nor in another’s role', async () => {
    expect((await sign('floor', '--by', 'K7')).out.replace(/\s+/gu, ' ')).toContain(
      'K7 welded W-1 of this stage, expected somebody else to sign it',
    );
    const role = await sign('floor', '--by', 'A1', '--role', 'inspector');
    expect([role.status, role.err]).toEqual([
      2,
      expect.stringContaining('A1 is shop administrator in library/people.yaml, expected somebody who is inspector'),
    ]);
    expect((await sign('floor', '--by', 'A1', '--role', 'administrator')).status).toBe(0);
  });

  it('tells of a stage, a person and a day that are none', async () => {
    expect((await sign('flor', '--by', 'J2')).err).toContain('No stage `flor` in library/stages.yaml, expected floor');
    expect((await sign('floor', '--by', 'J3')).err).toContain('No person `J3` in library/people.yaml, expected J2');
    expect((await shellbook('signoff', 'T-1', 'floor', '--by', 'J2', '--date', '2026-02-30')).err).toContain(
      'Found the day `2026-02-30`',
    );
    expect(signoffs()).toBe('# Signed when met\n');
  });

  it('keeps the line ends of Windows', async () => {
    store.write('shells/T-1/signoffs.yaml', '\uFEFF# Signed when met\r\n');
    expect((await sign('floor', '--by', 'J2')).status).toBe(0);
    expect(signoffs()).toMatch(/^\uFEFF# Signed when met\r\n- \{stage: floor[^\n]*\r\n {3}digest: [^\n]*\}\r\n$/u);
  });

  it('takes a day to come, which may be one of another time zone, and says that it is none yet', async () => {
    const { status, err } = await shellbook('signoff', 'T-1', 'floor', '--by', 'J2', '--date', '2999-01-01');
    expect([status, err]).toEqual([0, expect.stringMatching(/2999-01-01 is after today, \d{4}-\d\d-\d\d\. If it was mistyped/u)]);
    expect((await sign('floor', '--by', 'J2', '--date', '2026-02-28')).err).not.toContain('after today');
  });

  it('loses nothing in a file that cannot be added to', async () => {
    store.write('shells/T-1/signoffs.yaml', 'signoffs: {a: 1\n');
    expect((await sign('floor', '--by', 'J2')).status).not.toBe(0);
    expect(signoffs()).toBe('signoffs: {a: 1\n');
  });
});

describe('a sign-off lapses', () => {
  const both = async (): Promise<void> => {
    expect((await sign('floor', '--by', 'J2')).status).toBe(0);
    expect((await sign('belly', '--by', 'J2')).status).toBe(0);
    await commit('T-1: signed');
  };
  const replace = (file: string, from: string, to: string): void => {
    const text = readFileSync(path.join(store.root, file), 'utf8');
    expect(text).toContain(from);
    store.write(file, text.replace(from, to));
  };

  it('when a record of its stage changes, and names it', async () => {
    await both();
    replace('shells/T-1/members.yaml', 'cut_length: 160 in', 'cut_length: 160-1/16 in');
    const [lapsed, ...others] = await lapses();
    expect(others).toEqual([]);
    expect(lapsed).toMatchObject({ severity: 'error' });
    expect(lapsed?.message).toContain(
      'Sign-off of stage floor by J2 (inspector) of 2026-05-01 has lapsed: member FL-2 changed since',
    );
    expect(lapsed?.ids).toContain('FL-2');
  });

  it('when what a covered record rests on changes: the zone that the panel’s runs lie in, the section of a rail', async () => {
    await both();
    replace('library/sections.yaml', 'wall: 1/8 in', 'wall: 3/16 in');
    expect((await lapses())[0]?.message).toContain('library section RT2x2x1/8 changed since');
  });

  it('when something is added to its stage, but not when more evidence comes later', async () => {
    await both();
    store.write('shells/T-1/photos/photos.yaml', `${PHOTOS}- {id: P-3, file: p-1.jpg, of: [FL-1], taken: 2026-06-01}\n`);
    expect(await lapses()).toEqual([]);
    store.write('shells/T-1/welds-2.yaml', wholeWeld('W-2', SEEN));
    expect((await lapses())[0]?.message).toContain('weld W-2 changed since');
  });

  it('not when only the layout, comments, cards or calibrations change', async () => {
    await both();
    const text = readFileSync(path.join(store.root, 'shells/T-1/members.yaml'), 'utf8');
    store.write('shells/T-1/members.yaml', '# moved\n');
    store.write('shells/T-1/members-floor.yaml', `# the floor\n${text}`);
    replace('library/people.yaml', 'until: 2027-06-01', 'until: 2028-06-01');
    replace('library/instruments.yaml', 'calibrated: 2026-01-20', 'calibrated: 2026-07-20');
    expect(await lapses()).toEqual([]);
  });

  it('until it is signed again; list says so meanwhile', async () => {
    await both();
    const state = async () => JSON.parse((await shellbook('list', '--json')).out).shells[0];
    expect(await state()).toMatchObject({ state: 'signed off', stage: null, lapsed: [] });
    replace('shells/T-1/members.yaml', 'cut_length: 160 in', 'cut_length: 160-1/16 in');
    expect(await state()).toMatchObject({ state: 'in build', stage: 'floor', lapsed: ['floor'] });
    expect((await sign('floor', '--by', 'J2')).status).toBe(0);
    expect(await lapses()).toEqual([]);
    expect(await state()).toMatchObject({ state: 'signed off', stage: null, lapsed: [] });
  });

  it('and one typed by hand, without a digest, is not verified', async () => {
    store.write('shells/T-1/signoffs.yaml', '- {stage: floor, role: inspector, by: J2, date: 2026-05-01}\n');
    const { out } = await shellbook('check', 'T-1', '--json');
    expect(JSON.parse(out).findings.find(({ rule }: { rule: string }) => rule === 'signoff.not-verified')).toMatchObject({
      severity: 'note',
    });
  });
});
