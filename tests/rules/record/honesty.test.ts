import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { sameLook } from '../../../src/compute/record/same-look.js';
import { loadStore } from '../../../src/model/load.js';
import type { LoadedShell } from '../../../src/model/load-types.js';
import type { Photo } from '../../../src/records/index.js';
import { beforeBuild } from '../../../src/rules/record/before-build.js';
import { datedAhead } from '../../../src/rules/record/dated-ahead.js';
import { lateEntry } from '../../../src/rules/record/late-entry.js';
import { photoChanged } from '../../../src/rules/record/photo-changed.js';
import { photoDate } from '../../../src/rules/record/photo-date.js';
import { photoTwice } from '../../../src/rules/record/photo-twice.js';
import { recordRepeats } from '../../../src/rules/record/repeats.js';
import { vinTwice } from '../../../src/rules/record/vin-twice.js';
import { enteredOn } from '../../../src/store/entered.js';
import { photoFacts } from '../../../src/store/photo-facts.js';
import { readStoreText } from '../../../src/store/read.js';
import { buildModel, record } from '../../support/build.js';
import { storeText } from '../../support/store.js';
import { weld } from '../../support/structure.js';
import { judgeOne } from '../judge-one.js';

const made: string[] = [];
const folder = (): string => {
  const dir = mkdtempSync(path.join(tmpdir(), 'shellbook-record-'));
  made.push(dir);
  return dir;
};
afterAll(() => {
  for (const dir of made) rmSync(dir, { recursive: true, force: true });
});

describe('record.late-entry', () => {
  const judged = (date: string | undefined, entered: string | undefined) =>
    judgeOne(lateEntry, buildModel({ welds: [{ ...weld('W-1', [['A', 'B']]), date }] }), {
      entered: new Map(entered === undefined ? [] : [['W-1', entered]]),
    });

  it('a week is in time, a day more is not', () => {
    // R50: common practice, no source
    expect(judged('2026-02-01', '2026-02-08T23:59:00-05:00')).toEqual([]);
    expect(judged('2026-02-01', '2026-02-09T00:01:00-05:00')[0]).toMatchObject({ severity: 'note', ids: ['W-1'] });
  });

  it('is silent on what was entered ahead, has no date, is in no commit, or where nobody looked', () => {
    expect(judged('2026-02-20', '2026-02-01T08:00:00Z')).toEqual([]);
    expect(judged(undefined, '2026-02-01T08:00:00Z')).toEqual([]);
    expect(judged('2025-02-01', undefined)).toEqual([]);
    expect(judgeOne(lateEntry, buildModel({ welds: [{ ...weld('W-1', [['A', 'B']]), date: '2020-01-01' }] }))).toEqual([]);
  });

  it('is one note for each day of entry', () => {
    const welds = ['2026-01-01', '2026-01-05', '2026-01-06'].map((date, i) => ({ ...weld(`W-${i}`, [['A', 'B']]), date }));
    const entered = new Map([
      ['W-0', '2026-03-01T10:00:00Z'],
      ['W-1', '2026-03-01T10:00:00Z'],
      ['W-2', '2026-04-01T10:00:00Z'],
    ]);
    const found = judgeOne(lateEntry, buildModel({ welds }), { entered });
    expect(found.map(({ ids }) => ids)).toEqual([['W-0', 'W-1'], ['W-2']]);
    expect(found[0]?.message).toContain('of 2026-01-01 to 2026-01-05 came into Git on 2026-03-01, up to 59 days later');
  });
});

describe('record.dated-ahead', () => {
  const judged = (date: string, more: Parameters<typeof judgeOne>[2] = {}) =>
    judgeOne(datedAhead, buildModel({ welds: [{ ...weld('W-1', [['A', 'B']]), date }] }), {
      lastCommit: '2026-11-20T16:30:00-05:00',
      ...more,
    }).map(({ ids, severity }) => [ids, severity]);

  it('the day of the last commit is within, the day after it is not', () => {
    expect(judged('2026-11-20')).toEqual([]);
    expect(judged('2026-11-21')).toEqual([[['W-1'], 'note']]);
    expect(judged('2027-02-11')).toEqual([[['W-1'], 'note']]);
  });

  it('waits while something is not committed, and where nobody asked Git', () => {
    expect(judged('2026-11-21', { uncommitted: ['shells/T-1/welds.yaml'] })).toEqual([]);
    expect(judged('2026-11-21', { lastCommit: undefined })).toEqual([]);
  });
});

describe('enteredOn', () => {
  it('gives the first commit of each record, however it is written, and stays with it when the record changes or moves', async () => {
    const dir = folder();
    const git = (date: string, ...args: string[]) =>
      execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@b.example', ...args], {
        cwd: dir,
        env: { ...process.env, GIT_AUTHOR_DATE: date, GIT_COMMITTER_DATE: date },
      });
    const commit = (date: string) => {
      git(date, 'add', '-A');
      git(date, 'commit', '-q', '-m', 'x');
    };
    git('2026-01-01T00:00:00Z', 'init', '-q');
    mkdirSync(path.join(dir, 'shells/T-1'), { recursive: true });
    const welds = path.join(dir, 'shells/T-1/welds.yaml');
    writeFileSync(welds, '- {id: W-1, size: 3 mm}\n- id: "W-2"\n  size: 3 mm\n');
    commit('2026-01-02T12:00:00Z');
    writeFileSync(welds, '- {id: W-1, size: 4 mm}\n- id: "W-2"\n  size: 3 mm\n-\n  size: 1 mm\n  id: W/3.a\n');
    commit('2026-01-09T12:00:00Z');
    writeFileSync(welds, '- {size: 4 mm, id: W-4}\n');
    writeFileSync(path.join(dir, 'shells/T-1/welds-floor.yaml'), '- {id: W-1, size: 4 mm}\n');
    commit('2026-02-01T12:00:00Z');
    const days = [...(await enteredOn(dir, 'T-1'))].map(([id, date]) => [id, date.slice(0, 10)]);
    expect(Object.fromEntries(days)).toEqual({
      'W-1': '2026-01-02',
      'W-2': '2026-01-02',
      'W/3.a': '2026-01-09',
      'W-4': '2026-02-01',
    });
    expect((await enteredOn(dir, 'T-9')).size).toBe(0);
    expect((await enteredOn(folder(), 'T-1')).size).toBe(0);
  });
});

describe('record.repeats', () => {
  const drop = (id: string, more = ''): string =>
    `- {id: ${id}, kind: drop, of: [T-1], limit: 0 psi, start: 3 psi, end: 3 psi, duration: 15 min, date: 2026-04-02${more}}\n`;
  const judged = (own: Readonly<Record<string, string>>, other: Readonly<Record<string, string>>) => {
    const files: Record<string, string> = {
      'shop.yaml': 'shop: {name: Test}\n',
      'shells/T-1/shell.yaml': 'shell: T-1\ntitle: T\n',
      'shells/T-0/shell.yaml': 'shell: T-0\ntitle: T\n',
      // What makes the other one the earlier shell.
      'shells/T-0/weights.yaml': '- {id: T-5, date: 2020-01-01}\n',
    };
    for (const [name, text] of Object.entries(own)) files[`shells/T-1/${name}`] = text;
    for (const [name, text] of Object.entries(other)) files[`shells/T-0/${name}`] = text;
    const store = loadStore(storeText(files));
    const of = (shell: string) => judgeOne(recordRepeats, (store.shells.get(shell) as LoadedShell).model);
    return { own: of('T-1'), earlier: of('T-0') };
  };

  it('tells a test with the readings and the date of an earlier shell’s, in the later shell only', () => {
    const { own, earlier } = judged({ 'tests.yaml': drop('TS-9') }, { 'tests.yaml': drop('TS-1', ', by: F6') });
    expect(own.map(({ ids, severity }) => [ids, severity])).toEqual([[['TS-9'], 'note']]);
    expect(own[0]?.message).toContain('TS-9 (TS-1) are those of T-0');
    expect(earlier).toEqual([]);
  });

  it('another day or another reading is another test', () => {
    expect(judged({ 'tests.yaml': drop('TS-9').replace('04-02', '04-03') }, { 'tests.yaml': drop('TS-1') }).own).toEqual([]);
    expect(judged({ 'tests.yaml': drop('TS-9').replace('end: 3', 'end: 2.9') }, { 'tests.yaml': drop('TS-1') }).own).toEqual([]);
  });

  it('leaves values that agree by chance: one reading, two welds, shared heats of a few members', () => {
    const rain = '- {id: TS-9, kind: rain, of: [T-1], limit: 0, measured: 0, duration: 30 min, date: 2026-04-02}\n';
    expect(judged({ 'tests.yaml': rain }, { 'tests.yaml': rain }).own).toEqual([]);
    const welds = (n: number) =>
      Array.from(
        { length: n },
        (_, i) =>
          `- {id: W-${i}, joins: [A, B], type: fillet, size: 6 mm, length: 9 mm, process: GMAW, welder: K7, date: 2026-01-05, inspections: [{method: VT, by: J2, date: 2026-01-05, result: accept}]}\n`,
      ).join('');
    expect(judged({ 'welds.yaml': welds(2) }, { 'welds.yaml': welds(2) }).own).toEqual([]);
    expect(judged({ 'welds.yaml': welds(3) }, { 'welds.yaml': welds(3) }).own.map(({ ids }) => ids.length)).toEqual([3]);
    const members = (n: number, heat: (i: number) => string) =>
      Array.from(
        { length: n },
        (_, i) => `- {id: M-${i}, alloy: X, heat: ${heat(i)}, section: S, from: [0, 0, 0], to: [1 m, 0, 0]}\n`,
      ).join('');
    const all = members(12, (i) => `H-${i % 4}`);
    expect(judged({ 'members.yaml': all }, { 'members.yaml': all }).own.map(({ ids }) => ids.length)).toEqual([12]);
    expect(judged({ 'members.yaml': all }, { 'members.yaml': members(12, (i) => (i < 5 ? `H-${i % 4}` : 'H-9')) }).own).toEqual(
      [],
    );
  });
});

describe('record.vin-twice', () => {
  const judged = (mine: string, other: string, otherDay = '2020-01-01') => {
    const store = loadStore(
      storeText({
        'shop.yaml': 'shop: {name: Test}\n',
        'shells/T-1/shell.yaml': `shell: T-1\ntitle: T\nvin: ${mine}\n`,
        'shells/T-1/welds.yaml': weldOn('2024-01-01'),
        'shells/T-0/shell.yaml': `shell: T-0\ntitle: T\nvin: ${other}\n`,
        'shells/T-0/welds.yaml': weldOn(otherDay),
      }),
    );
    return judgeOne(vinTwice, (store.shells.get('T-1') as LoadedShell).model);
  };
  const weldOn = (day: string): string =>
    `- {id: W-1, joins: [A, B], type: fillet, size: 6 mm, length: 9 mm, process: GMAW, date: ${day}}\n`;

  it('is told in the shell that was begun later, whatever the case of its letters', () => {
    expect(judged('1Z9FBV5T0T0418021', '1Z9FBV5T0T0418021')[0]).toMatchObject({ severity: 'warning', ids: ['T-1'] });
    expect(judged('1Z9FBV5T0T0418021', '"1z9fbv5t0t0418021"').length).toBe(1);
    expect(judged('1Z9FBV5T0T0418021', '1Z9FBV5T0T0418022')).toEqual([]);
    expect(judged('1Z9FBV5T0T0418021', '1Z9FBV5T0T0418021', '2025-01-01')).toEqual([]);
  });
});

describe('record.before-build', () => {
  const judged = (testDay: string) =>
    judgeOne(
      beforeBuild,
      buildModel({
        welds: [
          { ...weld('W-1', [['A', 'B']]), date: '2026-02-01' },
          { ...weld('W-2', [['A', 'B']]), date: '2026-01-15' },
        ],
        tests: [{ ...record('TS-1'), testKind: 'drop', of: ['A'], date: testDay }],
      }),
    ).map(({ ids }) => ids);

  it('the day of the first weld is within, the day before is not', () => {
    expect(judged('2026-01-15')).toEqual([]);
    expect(judged('2026-01-14')).toEqual([['TS-1']]);
  });
});

describe('record.photo-twice and record.photo-date', () => {
  const picture = (turn: number): Buffer => {
    const bars = Array.from({ length: 14 }, (_, i) => {
      const [x, y, w] = [((i * 97 + turn * 61) % 640) | 0, ((i * 57 + turn * 89) % 400) | 0, 60 + ((i * 31 + turn * 17) % 120)];
      return `<rect x="${x}" y="${y}" width="${w}" height="${w * 0.7}" fill="hsl(${i * 25},60%,${20 + ((i * 13 + turn * 7) % 60)}%)"/>`;
    });
    return Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="720" height="480"><rect width="720" height="480" fill="#888"/>${bars.join('')}</svg>`,
    );
  };
  const photo = (id: string, more: Partial<Photo> = {}): Photo => ({ ...record(id), file: `${id}.jpg`, of: [], ...more });
  const store = async () => {
    const dir = folder();
    const photos = path.join(dir, 'shells/T-1/photos');
    mkdirSync(photos, { recursive: true });
    const first = sharp(picture(1)).jpeg({ quality: 88 });
    const original = await first.toBuffer();
    await sharp(original)
      .withExif({ IFD0: { DateTime: '2026:04:07 16:04:00' } })
      .toFile(path.join(photos, 'A.jpg'));
    writeFileSync(path.join(photos, 'B.jpg'), await sharp(picture(2)).jpeg().toBuffer());
    writeFileSync(path.join(photos, 'C.jpg'), await sharp(original).resize(480).jpeg({ quality: 60 }).toBuffer());
    writeFileSync(path.join(photos, 'D.jpg'), await sharp(picture(2)).jpeg().toBuffer());
    writeFileSync(path.join(photos, 'E.jpg'), 'no picture at all');
    return { dir, photos };
  };

  it('finds the same file and a copy that was made smaller; different pictures and broken ones are left alone', async () => {
    const { dir } = await store();
    const photos = await photoFacts(await readStoreText(dir), 'T-1', undefined);
    expect(photos.size).toBe(5);
    const model = buildModel({ photos: ['A', 'B', 'C', 'D', 'E'].map((id) => photo(id)) });
    const found = judgeOne(photoTwice, model, { photos });
    expect(found.map(({ ids }) => ids)).toEqual([
      ['C', 'A'],
      ['D', 'B'],
    ]);
    expect(found[0]?.message).toContain('looks the same as');
    expect(found[1]?.message).toContain('is the same picture as');
  });

  it('two records on one file are one picture too', async () => {
    const { dir } = await store();
    const photos = await photoFacts(await readStoreText(dir), 'T-1', undefined);
    const model = buildModel({ photos: [photo('A'), photo('Z', { file: 'A.jpg' })] });
    expect(judgeOne(photoTwice, model, { photos }).map(({ ids }) => ids)).toEqual([['Z', 'A']]);
  });

  it('sets the camera’s day against the record’s, with the limit for late entries', async () => {
    const { dir } = await store();
    const photos = await photoFacts(await readStoreText(dir), 'T-1', undefined);
    const judged = (taken: string) => judgeOne(photoDate, buildModel({ photos: [photo('A', { taken })] }), { photos }).length;
    expect([judged('2026-04-14'), judged('2026-04-15'), judged('2026-03-31'), judged('2026-03-30')]).toEqual([0, 1, 0, 1]);
    expect(judgeOne(photoDate, buildModel({ photos: [photo('B', { taken: '2020-01-01' })] }), { photos })).toEqual([]);
  });

  it('tells a file that is not the one recorded, whatever the case of the hash', async () => {
    const { dir } = await store();
    const photos = await photoFacts(await readStoreText(dir), 'T-1', undefined);
    const real = photos.get('shells/T-1/photos/B.jpg')?.sha256 ?? '';
    const judged = (sha256: string | undefined) =>
      judgeOne(photoChanged, buildModel({ photos: [photo('B', { sha256 })] }), { photos }).map(({ severity }) => severity);
    expect([judged(undefined), judged(real), judged(real.toUpperCase())]).toEqual([[], [], []]);
    expect(judged(real.replace(/^./u, (first) => (first === '0' ? '1' : '0')))).toEqual(['warning']);
  });

  it('opens a picture again only when it has changed', async () => {
    const { dir, photos } = await store();
    const gitDir = folder();
    const file = path.join(photos, 'B.jpg');
    // Whole seconds: file systems differ in what they keep below.
    const [then, later] = [new Date('2026-04-07T12:00:00Z'), new Date('2026-04-07T12:00:05Z')];
    utimesSync(file, then, then);
    const text = await readStoreText(dir);
    const name = 'shells/T-1/photos/B.jpg';
    const factOf = async () => (await photoFacts(text, 'T-1', gitDir)).get(name);
    const before = await factOf();
    // What was kept is told again, marked so that it shows.
    const keptFile = path.join(gitDir, 'shellbook/photos/T-1.json');
    const kept = JSON.parse(readFileSync(keptFile, 'utf8'));
    const forge = (fact: unknown): void =>
      writeFileSync(keptFile, JSON.stringify({ ...kept, photos: { ...kept.photos, [name]: fact } }));
    forge({ ...kept.photos[name], sha256: 'kept' });
    expect((await factOf())?.sha256).toBe('kept');
    for (const fact of [null, 7, {}, { ...kept.photos[name], sha256: 7 }, { ...kept.photos[name], look: ['0'] }]) {
      forge(fact);
      expect(await factOf()).toEqual(before);
    }
    utimesSync(file, later, later);
    expect((await factOf())?.sha256).toBe(before?.sha256);
    // Other bytes of the same size and time of writing.
    writeFileSync(file, Buffer.alloc(statSync(file).size));
    utimesSync(file, later, later);
    expect((await factOf())?.sha256).not.toBe(before?.sha256);
  });

  it('a picture without edges is like no other', () => {
    expect(sameLook('1'.repeat(256), '1'.repeat(256))).toBe(false);
    const look = '02'.repeat(128);
    expect(sameLook(look, look)).toBe(true);
    expect(sameLook(look, `${'11'.repeat(5)}${look.slice(10)}`)).toBe(true);
    expect(sameLook(look, `${'11'.repeat(6)}${look.slice(12)}`)).toBe(false);
  });
});
