import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import type { Asker } from '../../src/entry/asker.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
const folder = (name: string): string => path.join(store.root, '..', `${path.basename(store.root)}-${name}`);

/** Exif is written by libexif (within sharp), and read by another library. */
async function picture(dir: string, name: string, colour: string, when?: string, deg?: number): Promise<void> {
  const plain = sharp({ create: { width: 40, height: 30, channels: 3, background: colour } }).jpeg();
  const exif =
    when === undefined
      ? {}
      : {
          IFD2: { DateTimeOriginal: when },
          ...(deg === undefined ? {} : { IFD3: { GPSImgDirectionRef: 'M', GPSImgDirection: `${deg}/1` } }),
        };
  writeFileSync(path.join(dir, name), await (when === undefined ? plain : plain.withExif(exif)).toBuffer());
}

beforeAll(async () => {
  store = await laySmallStore();
  mkdirSync(folder('phone'));
  await picture(folder('phone'), 'IMG_0001.jpg', '#a03020', '2026:04:07 14:30:05', 210);
  await picture(folder('phone'), 'IMG_0002.jpg', '#20a030', '2026:05:20 09:00:00');
  await picture(folder('phone'), 'IMG_0002 copy.jpg', '#20a030', '2026:05:20 09:00:00');
  await picture(folder('phone'), 'IMG_0003.jpg', '#2030a0');
  const whole = readFileSync(path.join(folder('phone'), 'IMG_0001.jpg'));
  writeFileSync(path.join(folder('phone'), 'IMG_0005.jpg'), whole.subarray(0, whole.length - 120));
  // The head of an HEIC file and nothing that could be decoded.
  writeFileSync(path.join(folder('phone'), 'IMG_0004.HEIC'), Buffer.from('00000020667479706865696300000000', 'hex'));
  writeFileSync(path.join(folder('phone'), 'list.txt'), 'milk');
});
afterAll(() => store.remove());

async function photos(args: readonly string[], ask?: () => Promise<Asker>) {
  const io = literalIo(store.root);
  const status = await runProgram(['photos', 'T-1', ...args], ask ? { ...io, ask } : io);
  return { status, answer: io.answer(), messages: io.messages() };
}
const records = (): string => readFileSync(path.join(store.root, 'shells/T-1/photos/photos.yaml'), 'utf8');

describe('photos', () => {
  it('takes pictures in as they are, with time and direction, and says what it could not', async () => {
    const { status, answer } = await photos([folder('phone'), '--json']);
    const told = JSON.parse(answer);
    expect(status).toBe(1);
    expect(told.already_there).toEqual(['IMG_0002.jpg']);
    expect(told.refused).toEqual([
      { file: 'IMG_0004.HEIC', reason: expect.stringContaining('cut short or of another kind') },
      { file: 'IMG_0005.jpg', reason: expect.stringContaining('cut short') },
    ]);
    const bytes = readFileSync(path.join(folder('phone'), 'IMG_0001.jpg'));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    expect(told.taken[0]).toEqual({
      id: 'P-0001',
      file: 'IMG_0001.jpg',
      view: 'towards 210 degrees by the compass',
      taken: '2026-04-07T14:30:05',
      sha256,
      // Both runs of that day; the splice between them has no date.
      proposed: expect.arrayContaining(['DC-1/1', 'DC-1/2']),
    });
    expect(readFileSync(path.join(store.root, 'shells/T-1/photos/IMG_0001.jpg')).equals(bytes)).toBe(true);
    expect(told.taken[1]).toMatchObject({ id: 'P-0002', file: 'P-0002.jpg', proposed: [] });
    expect(told.taken[2]).toMatchObject({ id: 'P-0003', file: 'IMG_0003.jpg' });
    expect(told.taken[2]).not.toHaveProperty('taken');
    expect(told.missing).toEqual(['DC-1/1', 'DC-1/2', 'DC-1/S1']);
  });

  it('proposes subjects and never takes them for facts', async () => {
    expect(records()).toMatch(
      /# of: \[DC-1\/1, DC-1\/2.*\] +which of these does it show\?\n- \{id: P-0001, file: IMG_0001.jpg, view/u,
    );
    const io = literalIo(store.root);
    await runProgram(['check', 'T-1', '--json'], io);
    const { findings } = JSON.parse(io.answer());
    expect(findings.filter(({ rule }: { rule: string }) => rule.startsWith('format.'))).toEqual([]);
    expect(findings.filter(({ rule }: { rule: string }) => rule === 'order.not-verified').length).toBeGreaterThan(0);
  });

  it('takes nothing in twice', async () => {
    const before = records();
    const { answer } = await photos([folder('phone')]);
    expect(answer).toContain('Took in 0 pictures');
    expect(records()).toBe(before);
  });

  it('writes what all of them show where that is said, and refuses what is nowhere in the records', async () => {
    mkdirSync(folder('trough'));
    await picture(folder('trough'), 'IMG_0001.jpg', '#ffffff', '2026:04:08 08:00:00');
    const wrong = await photos([folder('trough'), '--of', 'TROUGHS']);
    expect(wrong.status).toBe(2);
    expect(wrong.messages).toContain('Did you mean `TROUGH`');
    const { status, answer } = await photos([folder('trough'), '--of', 'TROUGH', '--stage', 'belly']);
    expect(status).toBe(0);
    expect(records()).toMatch(
      /\{id: P-0004, file: P-0004.jpg, of: \[TROUGH\], taken: 2026-04-08T08:00:00,\s+sha256: \w{64}, original: \{name: IMG_0001.jpg\},\s+stage: belly\}/u,
    );
    // A photo of the cavity shows the runs in it.
    expect(answer).not.toMatch(/No photo yet of .*DC-1\/1/u);
  });

  it('asks the person at the terminal what each shows', async () => {
    mkdirSync(folder('ask'));
    await picture(folder('ask'), 'A.jpg', '#101010', '2026:04:07 10:00:00');
    await picture(folder('ask'), 'B.jpg', '#202020', '2026:04:07 10:01:00');
    const asker: Asker = {
      text: async () => '',
      confirm: async () => true,
      choose: async ({ choices }) => choices.find(({ name }) => name?.startsWith('the same'))?.value ?? 'DC-1/2',
    };
    expect((await photos([folder('ask')], async () => asker)).status).toBe(0);
    expect(records().match(/of: \[DC-1\/2\]/gu)).toHaveLength(2);
  });

  /** phone.heic was made by libheif 1.15 with x265 from a blue picture with a red corner and a date. */
  it('reads HEIC, keeps its own name, and takes a caption from a name that says something', async () => {
    mkdirSync(folder('heic'));
    const heic = readFileSync(new URL('../store/pictures/phone.heic', import.meta.url));
    writeFileSync(path.join(folder('heic'), 'trough_before-closing.HEIC'), heic);
    const { status, answer } = await photos([folder('heic'), '--json']);
    const [taken] = JSON.parse(answer).taken;
    expect(status).toBe(0);
    expect(taken).toMatchObject({
      file: 'trough_before-closing.jpg',
      caption: 'trough before closing',
      taken: '2026-04-30T08:15:00',
      original: { name: 'trough_before-closing.HEIC', sha256: createHash('sha256').update(heic).digest('hex') },
    });
    const kept = readFileSync(path.join(store.root, 'shells/T-1/photos', taken.file));
    expect(createHash('sha256').update(kept).digest('hex')).toBe(taken.sha256);
    const { data, info } = await sharp(kept).raw().toBuffer({ resolveWithObject: true });
    const at = (x: number, y: number) => [...data.subarray((y * info.width + x) * 3, (y * info.width + x) * 3 + 3)];
    expect([info.width, info.height]).toEqual([320, 240]);
    const [red, blue] = [at(30, 30), at(200, 150)];
    expect(red?.[0]).toBeGreaterThan(180);
    expect(blue?.[2]).toBeGreaterThan(140);
    const again = JSON.parse((await photos([folder('heic'), '--json'])).answer);
    expect([again.taken, again.already_there]).toEqual([[], ['trough_before-closing.HEIC']]);
  });

  it('says so where there is no such folder', async () => {
    expect(await photos([folder('none')])).toMatchObject({ status: 2, messages: expect.stringContaining('no such folder') });
  });
});
