import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { travelFacts } from '../../src/book/overall.js';
import { showIn } from '../../src/book/show.js';
import { runProgram } from '../../src/cli/program.js';
import { widthOf } from '../../src/cli/report/wrap.js';
import { amps } from '../../src/quantity/format.js';
import { readerOf } from '../../src/words/index.js';
import { type ReadPdf, readPdf } from '../book/read-pdf.js';
import { plainShell } from '../book/thirty/plain-records.js';
import { THIRTY } from '../book/thirty/questions.js';
import { missingFrom } from '../book/thirty/walk-thirty.js';
import { TRAILS, walk } from '../book/three-steps.js';
import { judged } from '../demo/store.js';
import { labelWords, saidByAnswers } from '../support/figures/answers.js';
import { disagreements, saidInTable } from '../support/figures/facts.js';
import { type PrintedDemo, printedDemo } from '../support/printed-demo.js';
import { literalIo } from './literal-io.js';

let top: string;
let first: PrintedDemo;
let pdf: ReadPdf;
let owner: ReadPdf;
let shop: ReadPdf;

async function shellbook(...args: readonly string[]) {
  return inFolder(top, args);
}
async function inFolder(cwd: string, args: readonly string[]) {
  const io = literalIo(cwd);
  const status = await runProgram(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
}
const onDemo = async (...args: readonly string[]) => {
  const { status, answer } = await inFolder(first.top, [...args, '--store', 'demo', '--json', '--quiet']);
  return { status, json: JSON.parse(answer) };
};

beforeAll(async () => {
  top = mkdtempSync(path.join(tmpdir(), 'shellbook-demo-'));
  first = await printedDemo();
  const read = (edition: string) =>
    readPdf(readFileSync(path.join(first.top, 'demo', 'books', `OV-021-${edition}.pdf`)), { tables: true });
  pdf = await read('service');
  owner = await read('owner');
  shop = await read('shop');
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

describe('demo', () => {
  it('runs the whole job, to three finished books', () => {
    expect(first.status, first.messages).toBe(0);
    for (const edition of ['owner', 'service', 'shop']) {
      const file = path.join(first.top, 'demo', 'books', `OV-021-${edition}.pdf`);
      expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
      expect(first.answer).toContain(path.join('demo', 'books', `OV-021-${edition}.pdf`));
    }
  });

  it('tells its steps on standard error and what to try next on standard output', () => {
    for (const step of ['1. Laying', '2. Checking OV-021 and OV-024', '3. Printing']) expect(first.messages).toContain(step);
    expect(first.messages).toContain('kinds of planted mistake found, as they should be');
    expect(first.answer).toContain('Try next:');
    expect(first.answer.split('\n').filter((line) => line.startsWith('  ')).length).toBe(3);
    // Every drawing has the scale that stands beneath it.
    expect(first.messages).not.toMatch(/printed at \d+ %/u);
    const wide = `${first.answer}\n${first.messages}`.split('\n').filter((line) => widthOf(line) > 80 && !line.includes(' …'));
    expect(wide).toEqual([]);
  });

  it('leaves a store with a history, all of it committed', async () => {
    const { status, json } = await onDemo('history', 'OV-021');
    expect(status).toBe(0);
    expect(json.uncommitted).toEqual([]);
    expect(json.commits.length).toBeGreaterThan(10);
    expect(json.commits.flatMap((one: { tags: string[] }) => one.tags).length).toBeGreaterThan(0);
  });

  it('has one clean shell and one with mistakes', async () => {
    expect((await onDemo('check', 'OV-021')).status).toBe(0);
    const { status, json } = await onDemo('check', 'OV-024');
    expect(status).toBe(1);
    expect(json.counts.error).toBeGreaterThan(0);
    const both = await onDemo('check');
    expect(both.status).toBe(1);
    expect(both.json.shells.map((one: { shell: string }) => one.shell)).toEqual(['OV-021', 'OV-024']);
    expect(both.json.findings.length).toBe(
      both.json.shells.reduce((sum: number, one: { findings: unknown[] }) => sum + one.findings.length, 0),
    );
  });

  it('names the panel of the splice that it asks for, and its page in the book that it printed', async () => {
    const { json } = await onDemo('takeoff', 'OV-021');
    expect(json.members.length).toBeGreaterThan(100);
    const splice = /where OV-021 (\S+)/u.exec(first.answer)?.[1] as string;
    const { status, json: found } = await onDemo('where', 'OV-021', splice);
    expect(status).toBe(0);
    expect(found.matches[0]).toMatchObject({ id: splice, kind: 'node' });
    // The splice that the demo asks for names the panel to open, with nothing in the way of it.
    expect(found.matches[0].panels[0]).toMatchObject({ id: expect.stringMatching(/^AP-/u), blocked_by: [] });
    expect(found.matches[0].pages.length).toBeGreaterThan(0);
  });

  it('lists, weighs and isolates', async () => {
    expect((await onDemo('list')).json.shells.map((one: { state: string }) => one.state)).toEqual(['closed', 'in build']);
    const weights = await onDemo('weights', 'OV-021');
    expect(weights.status).toBe(0);
    expect(weights.json.conditions.map((one: { name: string }) => one.name)).toEqual(
      expect.arrayContaining(['unladen', 'occupants', 'water', 'loaded', 'waste', 'unladen / tag up']),
    );
    const isolation = await onDemo('isolate', 'OV-021', 'AC-01');
    expect(isolation).toMatchObject({ status: 0, json: { sources_left: [] } });
  });

  it('touches no folder but its own, and makes its own anew', async () => {
    writeFileSync(path.join(top, 'letter.txt'), 'Dear');
    cpSync(path.join(first.top, 'demo'), path.join(top, 'demo'), { recursive: true });
    expect(await shellbook('demo', '.')).toMatchObject({
      status: 2,
      answer: '',
      messages: expect.stringContaining('nothing was touched'),
    });
    expect(await shellbook('demo', 'letter.txt')).toMatchObject({
      status: 2,
      messages: expect.stringContaining('is not a folder'),
    });
    const { clearDemo } = await import('../../src/cli/demo/place.js');
    await clearDemo(path.join(top, 'demo'));
    expect(existsSync(path.join(top, 'demo', 'shop.yaml'))).toBe(false);
    expect(readFileSync(path.join(top, 'letter.txt'), 'utf8')).toBe('Dear');
  });
});

const words = (read: ReadPdf): string => read.pages.map((page) => page.text).join('\n');

describe('the editions of the demo', () => {
  const typed = (file: string): string => readFileSync(new URL(`../../demo-data/${file}`, import.meta.url), 'utf8');

  it('keep every word about the customer out of the service edition', () => {
    const customer = /customer:[^\n]*\n((?: {2}\S.*\n)+)/u.exec(typed('shells/OV-021/shell.yaml'))?.[1] ?? '';
    const told = [...customer.matchAll(/: (.+)$/gmu)].flatMap(([, value = '']) => [value, ...value.split(/[,@]/u)]);
    const names = told.map((one) => one.trim()).filter((one) => one.length > 3);
    expect(names.length).toBeGreaterThanOrEqual(6);
    expect(names.filter((one) => words(pdf).toLowerCase().includes(one.toLowerCase()))).toEqual([]);
    expect(words(owner)).toContain(names[0]);
  });

  it('keep every welder’s name and stamp out of the owner’s and the service edition', () => {
    const people = [...typed('library/people.yaml').matchAll(/id: (\S+?),?\s+name: ([^,\n]+),?\s+role: ([^,\n}]+)/gu)];
    const welders = people.filter(([, , , role = '']) => role.includes('welder'));
    expect(welders.length).toBeGreaterThanOrEqual(5);
    for (const [, stamp = '', name = ''] of welders) {
      for (const read of [owner, pdf]) {
        for (const part of name.trim().split(' ')) expect(words(read)).not.toMatch(new RegExp(`\\b${part}\\b`, 'u'));
        expect(words(read)).not.toMatch(new RegExp(`(?<![\\w/-])${stamp}(?![\\w/-])`, 'u'));
      }
    }
  });
});

describe('the figures of the printed editions', () => {
  const { assessment } = judged('OV-021');
  const { shell } = assessment.model;
  const isId = (word: string): boolean => shell.byId.has(word);
  const printed = () =>
    Object.entries({ owner, service: pdf, shop }).flatMap(([edition, { tables }]) =>
      tables.flatMap((table) => saidInTable(table, { edition, isId })),
    );

  it('are one figure an id, in every table of every edition, at the prompt and in JSON', () => {
    const [said, answered] = [printed(), saidByAnswers(assessment)];
    expect(said.length).toBeGreaterThan(8500);
    const keys = new Set(said.map(({ of, what }) => `${of} | ${what}`));
    expect(new Set(answered.map(({ of, what }) => `${of} | ${what}`).filter((key) => keys.has(key))).size).toBeGreaterThan(1400);
    expect(disagreements([...said, ...answered])).toEqual([]);
  });

  it('would be found out of step: a length in one edition, a limit at the prompt', () => {
    const said = printed();
    const run = said.find(({ of, what, where }) => of === 'DC-23/1' && what === 'length' && where.startsWith('shop'));
    const other = said.map((one) => (one === run ? { ...one, value: '9 8 2,946' } : one));
    expect(disagreements(other)).toEqual([expect.stringMatching(/^DC-23\/1 \| length: .* \(service.* ≠ 9 8 2,946 \(shop/u)]);
    const { takeOff } = assessment.figures;
    const members = takeOff.members.map((one) => (one.id === 'BW-F' ? { ...one, lengthMm: one.lengthMm + 10 } : one));
    const figures = { ...assessment.figures, takeOff: { ...takeOff, members } };
    const found = disagreements([...said, ...saidByAnswers({ ...assessment, figures })]);
    expect(found).toEqual([expect.stringMatching(/^BW-F \| length: .*\(shop.* ≠ .*takeoff --json/u)]);
  });

  it('name each fuse and breaker as it is recorded, wherever one is named', () => {
    const rated = new Map<string, Set<string>>();
    for (const { protection } of shell.circuits) {
      if (protection?.at === undefined || protection.ratingA === undefined) continue;
      const said = `${protection.kind} ${amps(protection.ratingA)}`;
      rated.set(protection.at, (rated.get(protection.at) ?? new Set()).add(said));
    }
    const texts = [owner, pdf, shop].flatMap(({ pages }) => pages.map(({ text }) => text));
    let named = 0;
    for (const text of [...texts, labelWords(assessment)]) {
      for (const [, said = '', at = ''] of text.matchAll(/\b((?:fuse|breaker) [\d.,]+ A) at ([\w./-]+)/gu)) {
        const known = rated.get(at);
        if (!known) continue;
        expect([at, said, known.has(said)]).toEqual([at, said, true]);
        named += 1;
      }
    }
    expect(named).toBeGreaterThan(300);
  });

  it('give the sizes over everything once: on the owner’s first page, at a glance, on the placard and in JSON', () => {
    const sizes = travelFacts({ assessment, show: showIn(assessment.model.shop.units) }, readerOf(assessment.model.shop)).map(
      ({ value }) => value.replaceAll('\u00a0', ' '),
    );
    expect(sizes.length).toBe(3);
    const texts = [owner.pages[0]?.text, ...[owner, pdf, shop].map(words), labelWords(assessment)].map((text) =>
      text?.replaceAll('\u00a0', ' '),
    );
    for (const size of sizes) for (const text of texts) expect(text).toContain(size);
  });
});

/** The printed service edition in the hands of somebody who has never seen the coach. */
describe('the service edition of the demo', () => {
  it.each(TRAILS)('answers in three steps at most: $question', (trail) => {
    expect(trail.steps.length).toBeLessThanOrEqual(3);
    expect(walk(pdf, trail)).toEqual({ pages: expect.any(Array) });
  });

  it.each(THIRTY)('says what the record files say, read apart from the program: $ask', (asked) => {
    const records = plainShell();
    // A question whose answer is empty would be answered by any page.
    expect(asked.says(records).length).toBeGreaterThan(2);
    expect(missingFrom(pdf, asked, records)).toEqual([]);
  });

  it.each(THIRTY.filter((asked) => asked.owner))('and the owner’s book says the same: $ask', (asked) => {
    expect(missingFrom(owner, asked, plainShell())).toEqual([]);
  });

  it('leads every link to a page that it has', () => {
    const links = pdf.pages.flatMap((page) => page.links);
    expect(links.length).toBeGreaterThan(5_000);
    expect(links.filter((link) => link.page < 1 || link.page > pdf.pages.length)).toEqual([]);
  });

  it('is known on every page by its shell, its vehicle number, its revision and its fingerprint', () => {
    const marks = [/Shell OV-021/u, /VIN 1Z9FBV5T7Z0418021/u, /Revision [0-9a-f]{10}/u, /Fingerprint [0-9a-f]{12}/u];
    const unmarked = pdf.pages.slice(1).filter((page) => !marks.every((mark) => mark.test(page.text)));
    expect(unmarked).toEqual([]);
  });
});
