import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { simpleGit } from 'simple-git';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from '../cli/literal-io.js';

/** A first day: a cut list, a wire list and a scale ticket as sheets, a folder of pictures, and the README’s commands. */
const SHEETS = fileURLToPath(new URL('newcomer/', import.meta.url));
let top: string;
const shop = (...names: readonly string[]): string => path.join(top, 'shop', ...names);

beforeAll(async () => {
  top = mkdtempSync(path.join(tmpdir(), 'shellbook-newcomer-'));
  for (const name of ['cutlist.csv', 'wirelist.csv', 'ticket.csv']) copyFileSync(path.join(SHEETS, name), path.join(top, name));
  mkdirSync(path.join(top, 'pictures'));
  const picture = sharp({ create: { width: 640, height: 480, channels: 3, background: '#707880' } }).jpeg();
  const dated = picture.withExif({ IFD2: { DateTimeOriginal: '2026:04:30 08:15:00' } });
  writeFileSync(path.join(top, 'pictures', 'IMG_0412.jpg'), await dated.toBuffer());
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

async function shellbook(...args: readonly string[]) {
  const io = literalIo(existsSync(shop()) ? shop() : top);
  const status = await runProgram(args, io);
  expect(status, `${args.join(' ')}\n${io.answer()}${io.messages()}`).toBe(0);
  return { answer: io.answer(), messages: io.messages() };
}

describe('a newcomer with three sheets and a folder of pictures', () => {
  it('starts a store and a shell, and copies the ratings from the chassis papers', async () => {
    await shellbook('new-store', 'shop');
    const { messages } = await shellbook('new-shell', 'NC-1');
    expect(messages).toContain('shellbook import');
    const file = shop('shells', 'NC-1', 'shell.yaml');
    const text = readFileSync(file, 'utf8');
    // The examples with their # taken away, from `chassis:` down.
    const examples = text.indexOf('# chassis:');
    writeFileSync(file, text.slice(0, examples) + text.slice(examples).replace(/^# /gmu, ''));
  });

  it('takes the sheets in', async () => {
    const shown = await shellbook('import', 'members', '../cutlist.csv', '--shell', 'NC-1', '--dry-run');
    expect(shown.messages).toMatch(/Profile +section/u);
    await shellbook('import', 'members', '../cutlist.csv', '--shell', 'NC-1', '--yes', '--keep');
    await shellbook('import', 'circuits', '../wirelist.csv', '--shell', 'NC-1', '--yes', '--keep');
    await shellbook(
      'add',
      'instrument',
      '--id',
      'SC-1',
      '--kind',
      'axle scale',
      '--resolution',
      '20 lb',
      '--calibrated',
      '2026-01-20',
      '--due',
      '2027-01-20',
    );
    const { messages } = await shellbook('import', 'tickets', '../ticket.csv', '--shell', 'NC-1', '--yes', '--keep');
    expect(messages).toContain('dates were read as month/day/year');
    await shellbook('photos', 'NC-1', '../pictures', '--stage', 'floor', '--of', 'CB-1');
  });

  it('gets a shell without errors, with the masses of its cut list and its weighing', async () => {
    // Joints without a weld are warnings, and right so: nobody has recorded one yet.
    const checked = literalIo(shop());
    await runProgram(['check', 'NC-1', '--json'], checked);
    const { counts, findings } = JSON.parse(checked.answer());
    expect(counts.error, JSON.stringify(findings)).toBe(0);
    expect(findings.map(({ rule }: { rule: string }) => rule)).not.toContain('weight.unexplained');
    const takeoff = JSON.parse((await shellbook('takeoff', 'NC-1', '--json')).answer);
    // Two rails of RT6x4x1/4 (4.75 in2), five beams of RT4x2x1/4 (2.75 in2), 2700 kg/m3: geometry.
    const inch3 = 2 * 180 * 4.75 + 5 * 96 * 2.75;
    const members = takeoff.members.reduce((sum: number, one: { mass_kg: number }) => sum + one.mass_kg, 0);
    expect(members).toBeCloseTo(inch3 * 25.4 ** 3 * 1e-9 * 2700, 3);
    const weights = JSON.parse((await shellbook('weights', 'NC-1', '--json')).answer);
    // 9,880 lb and 7,380 lb: 1 lb = 0.45359237 kg, NIST SP 811.
    expect(weights.tickets[0].as_weighed.steer).toBeCloseTo(9880 * 0.45359237, 5);
    expect(weights.tickets[0].as_weighed.drive).toBeCloseTo(7380 * 0.45359237, 5);
  });

  it('takes the same sheets in again without a change, and without a question', async () => {
    const before = readFileSync(shop('shells', 'NC-1', 'members.yaml'), 'utf8');
    for (const [kind, sheet] of [
      ['members', 'cutlist'],
      ['circuits', 'wirelist'],
      ['tickets', 'ticket'],
    ] as const) {
      const { answer } = await shellbook('import', kind, `../${sheet}.csv`, '--shell', 'NC-1', '--json');
      expect(JSON.parse(answer)).toMatchObject({ added: [], changed: [], files: [] });
    }
    expect(readFileSync(shop('shells', 'NC-1', 'members.yaml'), 'utf8')).toBe(before);
  });

  it('prints a first book', async () => {
    const git = simpleGit({ baseDir: shop() });
    await git.addConfig('user.name', 'N. Comer').addConfig('user.email', 'n@example.org');
    await git.add('.').commit('First records of NC-1');
    const { answer } = await shellbook('book', 'NC-1', '--edition', 'owner');
    expect(answer).toContain('NC-1-owner.pdf');
    expect(readFileSync(shop('books', 'NC-1-owner.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('is stopped where a row of a cut list stands for several pieces, or a ticket would lose a reading', async () => {
    writeFileSync(
      path.join(top, 'four.csv'),
      readFileSync(path.join(top, 'cutlist.csv'), 'utf8').replace('cross beam 5,1', 'cross beam 5,4'),
    );
    const four = literalIo(shop());
    expect(await runProgram(['import', 'members', '../four.csv', '--shell', 'NC-1'], four)).toBe(2);
    expect(four.answer()).toContain('row 8, column C (Qty): 4 pieces in one row');
    writeFileSync(path.join(top, 'tag.csv'), 'Ticket no,Date,Tag (lb)\n9,2026-05-01,4000\n');
    const tag = literalIo(shop());
    expect(await runProgram(['import', 'tickets', '../tag.csv', '--shell', 'NC-1', '--yes'], tag)).toBe(2);
    expect(tag.messages()).toContain('column `Tag (lb)` fits no axle, and this shell has steer, drive');
  });
});
