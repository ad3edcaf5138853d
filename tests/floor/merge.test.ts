import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { columnsOf } from '../../src/entry/columns.js';
import { type FloorEntry, type FloorFile, MOST_ENTRIES } from '../../src/floor/hand-over.js';
import { planFloor } from '../../src/floor/merge.js';
import { MOST_SOUND_BYTES, soundEnding, soundFile } from '../../src/floor/sound.js';
import { formFields } from '../../src/floor/tasks.js';
import { isBackedUp } from '../../src/store/backup/manifest.js';
import { readStoreText } from '../../src/store/read.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

let store: SmallStore;
let jpeg: Buffer;
beforeAll(async () => {
  store = await laySmallStore();
  store.write('library/people.yaml', '- {id: K7, name: A. Welder, role: welder}\n- {id: J2, name: B. Looker, role: inspector}\n');
  jpeg = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#446688' } })
    .jpeg()
    .toBuffer();
});
afterAll(() => store.remove());

type Made = Partial<FloorEntry> & Pick<FloorEntry, 'id' | 'data'>;

/** What one phone hands over; entries a minute apart from `minute` on. */
function phone(tag: string, minute: number, entries: readonly Made[], pictures: FloorFile['pictures'] = []): FloorFile {
  return {
    shellbook: 'floor',
    version: 1,
    shell: 'T-1',
    device: { tag, name: 'phone' },
    fingerprint: 'ab',
    at: '2026-05-04T17:00:00Z',
    entries: entries.map((one, i) => ({
      key: `${tag}/${String(i + 1).padStart(4, '0')}`,
      at: new Date(Date.UTC(2026, 4, 4, 8, minute + i)).toISOString(),
      person: 'K7',
      kind: 'weld',
      does: 'add',
      ...one,
    })),
    pictures,
  };
}
const weld = (id: string, size = '1/4 in'): Made => ({
  id,
  data: { joins: ['FL-1', 'FL-2'], type: 'fillet', size, length: '2 in', process: 'GMAW', welder: 'K7', date: '2026-05-04' },
});
const look = (id: string): Made => ({
  id,
  does: 'append',
  list: 'inspections',
  data: { method: 'VT', by: 'J2', date: '2026-05-04', result: 'accept' },
});
const fiveQueues = (): readonly FloorFile[] =>
  ['AAAA', 'BBBB', 'CCCC', 'DDDD', 'EEEE'].map((tag, i) =>
    phone(tag, i * 7, [weld(`W-${tag}-1`), look(`W-${tag}-1`), weld(`W-${tag}-2`, '3/16 in'), look(`W-${tag}-2`)]),
  );

const write = (name: string, file: unknown): string => {
  store.write(name, typeof file === 'string' ? file : JSON.stringify(file));
  return path.join(store.root, name);
};
const read = (name: string, encoding: BufferEncoding = 'utf8'): string => readFileSync(path.join(store.root, name), encoding);
const take = (...args: readonly string[]) => shellbook(store.root, 'import', 'floor', ...args, '--quiet');

describe('what phones hand over', () => {
  it('gives the same files whatever the order of the phones', async () => {
    const text = await readStoreText(store.root, 'T-1');
    const queues = fiveQueues();
    const told = (order: readonly FloorFile[]): unknown => {
      const { texts, taken, faults, clashes } = planFloor(order, text, 'T-1');
      return { texts: [...texts], taken: taken.length, faults, clashes };
    };
    const first = told(queues);
    expect(first).toMatchObject({ taken: 20, faults: [], clashes: [] });
    // Every tenth of the 120 orders.
    const orders = permutations(queues).filter((_, i) => i % 10 === 0);
    expect(orders.length).toBe(12);
    for (const order of orders) expect(told(order)).toEqual(first);
  });

  it('gives the same records where each comes in by itself, in any order, more than once', async () => {
    const records = async (order: readonly FloorFile[]): Promise<unknown> => {
      const files = new Map((await readStoreText(store.root, 'T-1')).files);
      for (const one of [...order, ...order]) {
        const { texts } = planFloor([one], { root: store.root, files, photos: new Map() }, 'T-1');
        for (const [name, text] of texts) files.set(name, text);
      }
      return (files.get('shells/T-1/welds.yaml') ?? '').split(/(?=^- )/mu).sort();
    };
    const queues = fiveQueues();
    const wanted = await records(queues);
    expect(wanted).toHaveLength(10 + ((await readStoreText(store.root, 'T-1')).files.has('shells/T-1/welds.yaml') ? 1 : 0));
    for (const order of permutations(queues).filter((_, i) => i % 25 === 3)) expect(await records(order)).toEqual(wanted);
  });

  it('comes in through the command, pictures too, and a second time changes nothing', async () => {
    const sha256 = createHash('sha256').update(jpeg).digest('hex');
    const photo: Made = {
      id: 'P-AAAA-9',
      kind: 'photo',
      picture: sha256,
      data: { file: 'P-AAAA-9.jpg', of: ['W-AAAA-1'], taken: '2026-05-04T10:00:00', sha256 },
    };
    const file = write(
      'a.json',
      phone('AAAA', 0, [weld('W-AAAA-1'), look('W-AAAA-1'), photo], [{ sha256, name: 'IMG.jpg', jpeg: jpeg.toString('base64') }]),
    );
    const dry = await take(file, '--shell', 'T-1', '--dry-run');
    expect([dry.status, dry.answer]).toEqual([
      0,
      expect.stringContaining('Would take in 1 weld, 1 photo, 1 change to records, 1 picture.'),
    ]);
    const first = await take(file, '--shell', 'T-1');
    expect([first.status, first.messages]).toEqual([0, '']);
    expect(first.answer).toContain('K7  + weld W-AAAA-1');
    expect(read('shells/T-1/photos/P-AAAA-9.jpg', 'latin1')).toBe(jpeg.toString('latin1'));
    const welds = read('shells/T-1/welds.yaml');
    expect(welds).toContain('inspections: [{method: VT, by: J2, date: 2026-05-04, result: accept}]');
    const again = await take(file, '--shell', 'T-1');
    expect([again.status, again.answer]).toEqual([0, 'Nothing new.\n3 entries were in the record already.\n']);
    // What the shop types since stays.
    store.write('shells/T-1/welds.yaml', welds.replace('size: 1/4 in', 'size: 5/16 in'));
    expect((await take(file, '--shell', 'T-1')).answer).toContain('Nothing new.');
    expect(read('shells/T-1/welds.yaml')).toContain('size: 5/16 in');
    const checked = await shellbook(store.root, 'check', 'T-1', '--json', '--quiet');
    expect(checked.answer).not.toContain('x-floor');
  });

  it('asks by name where the record says otherwise, and leaves it as it is', async () => {
    const set = (tag: string, date: string): FloorFile =>
      phone(tag, 40, [{ id: 'BP-1', kind: 'panel', does: 'set', data: { date }, was: { date: '2026-04-10' } }]);
    const one = write('one.json', set('FFFF', '2026-05-02'));
    const two = write('two.json', set('GGGG', '2026-05-03'));
    expect((await take(one, '--shell', 'T-1')).status).toBe(0);
    const clash = await take(two, '--shell', 'T-1');
    expect(clash.status).toBe(1);
    expect(clash.answer).toContain('panel BP-1, date: the record says 2026-05-02, K7 entered 2026-05-03');
    expect(read('shells/T-1/panels.yaml')).toContain('date: 2026-05-02');
    const text = await readStoreText(store.root, 'T-1');
    const decided = planFloor([set('GGGG', '2026-05-03')], text, 'T-1', { decisions: new Map([['GGGG/0001', 'phone']]) });
    expect([...decided.texts.values()].join('')).toContain('date: 2026-05-03');
    // The phone saw what stands there: no clash.
    const seen = set('HHHH', '2026-05-09');
    const was = { ...seen, entries: seen.entries.map((entry) => ({ ...entry, was: { date: '2026-05-02' } })) };
    expect(planFloor([was], text, 'T-1')).toMatchObject({ clashes: [], taken: [{ id: 'BP-1' }] });
  });

  it('names what cannot come in, and takes the rest only where asked', async () => {
    const file = write('bad.json', phone('JJJJ', 60, [weld('W-JJJJ-1', '1/4'), weld('W-JJJJ-2'), { ...look('W-none') }]));
    const refused = await take(file, '--shell', 'T-1');
    expect([refused.status, refused.answer]).toEqual([2, expect.stringContaining('!  W-JJJJ-1 (K7): ')]);
    expect(refused.answer).toContain('there is no weld W-none');
    expect(read('shells/T-1/welds.yaml')).not.toContain('JJJJ');
    expect((await take(file, '--shell', 'T-1', '--yes')).status).toBe(2);
    const welds = read('shells/T-1/welds.yaml');
    expect([welds.includes('W-JJJJ-2'), welds.includes('W-JJJJ-1')]).toEqual([true, false]);
  });

  it.each([
    ['no JSON', 'not complete JSON', '{"shellbook": "floor"'],
    ['another file', 'not a file of a floor page', { shellbook: 'notes', version: 1 }],
    ['a version to come', 'version', { ...phone('AAAA', 0, []), version: 2 }],
    ['a key of its own', 'run', { ...phone('AAAA', 0, []), run: 'x' }],
    ['another shell', 'is of shell `T-2`, expected T-1', { ...phone('AAAA', 0, []), shell: 'T-2' }],
    ['an id that climbs', 'entries.0.id', phone('AAAA', 0, [{ ...weld('../../x') }])],
    ['a picture that is none', 'is no JPEG', phone('AAAA', 0, [], [pictureOf(Buffer.from('MZ'))])],
    [
      'a picture of other bytes',
      'is not what its SHA-256 says',
      phone('AAAA', 0, [], [{ ...pictureOf(Buffer.from('MZ')), sha256: '0'.repeat(64) }]),
    ],
    ['a sound that is none', 'is no sound', { ...phone('AAAA', 0, []), sounds: [soundOf(Buffer.from('MZ'))] }],
    [
      'a sound of other bytes',
      'is not what its SHA-256 says',
      { ...phone('AAAA', 0, []), sounds: [{ ...soundOf(Buffer.from('OggS')), sha256: '0'.repeat(64) }] },
    ],
    [
      'a sound that is too long',
      'sounds.0.sound',
      { ...phone('AAAA', 0, []), sounds: [soundOf(Buffer.concat([Buffer.from('OggS'), Buffer.alloc(MOST_SOUND_BYTES)]))] },
    ],
    ['a name without end', 'pictures.0.name', phone('AAAA', 0, [], [{ ...pictureOf(Buffer.from('MZ')), name: 'x'.repeat(300) }])],
    [
      'more entries than a day has',
      'entries',
      phone(
        'AAAA',
        0,
        Array.from({ length: MOST_ENTRIES + 1 }, () => weld('W-1')),
      ),
    ],
    ['a key that is a path', 'entries.0.key', phone('AAAA', 0, [{ ...weld('W-1'), key: '../../etc/passwd' }])],
    ['a tag that is a path', 'device.tag', { ...phone('AAAA', 0, []), device: { tag: '../..', name: 'x' } }],
    ['a time that is none', 'entries.0.at', phone('AAAA', 0, [{ ...weld('W-1'), at: 'yesterday' }])],
    ['a text without end', 'entries.0.data', phone('AAAA', 0, [{ id: 'W-1', data: { note: 'x'.repeat(5000) } }])],
    ['a bomb of a picture', 'cannot be read', phone('AAAA', 0, [], [pictureOf(hugeJpeg())])],
    [
      'a picture that climbs',
      'expected a plain name',
      phone('AAAA', 0, [{ id: 'P-1-9', kind: 'photo', picture: 'x', data: { file: '../p.jpg' } }]),
    ],
  ])('refuses %s with one message', async (_, message, file) => {
    const { status, messages, answer } = await take(write('hostile.json', file), '--shell', 'T-1');
    expect([status, answer]).toEqual([2, '']);
    expect(messages).toContain(message);
    expect(messages.trim().split('\n')).toHaveLength(1);
  });

  it('puts a voice note beside its record, by the entry’s own key whatever its name is', async () => {
    const sound = soundOf(Buffer.from('OggS and so on'));
    const note: Made = { ...weld('W-KKKK-1'), sound: sound.sha256 };
    const file = { ...phone('KKKK', 90, [note]), sounds: [{ ...sound, name: '../../../x.ogg' }] };
    const taken = await take(write('voice.json', file), '--shell', 'T-1', '--json');
    expect([taken.status, JSON.parse(taken.answer).files]).toEqual([
      0,
      ['shells/T-1/welds.yaml', 'shells/T-1/voice/KKKK-0001.ogg'],
    ]);
    expect(read('shells/T-1/voice/KKKK-0001.ogg')).toBe('OggS and so on');
    expect(read('shells/T-1/welds.yaml')).toContain(`x-voice: [{file: voice/KKKK-0001.ogg, sha256: ${sound.sha256}}]`);
    expect((await take(write('voice.json', file), '--shell', 'T-1')).answer).toContain('Nothing new.');
    const { sounds, photos } = await readStoreText(store.root, 'T-1');
    expect([sounds, sounds?.every(isBackedUp), [...photos.keys()].filter((one) => one.includes('voice'))]).toEqual([
      ...[['shells/T-1/voice/KKKK-0001.ogg'], true, []],
    ]);
    const without = planFloor(
      [phone('LLLL', 99, [{ ...weld('W-LLLL-1'), sound: sound.sha256 }])],
      await readStoreText(store.root, 'T-1'),
      'T-1',
    );
    expect(without.faults.map(({ message }) => message)).toEqual(['its voice note is not in the file']);
  });

  it('never puts a picture or a sound over one that is there', async () => {
    store.write('shells/T-1/photos/there.jpg', 'a picture of before');
    const [one, two] = await Promise.all(
      ['#112233', '#332211'].map(async (background) =>
        pictureOf(
          await sharp({ create: { width: 40, height: 30, channels: 3, background } })
            .jpeg()
            .toBuffer(),
        ),
      ),
    );
    const photo = (id: string, file: string, picture = one): Made => ({
      ...{ id, kind: 'photo', picture: picture?.sha256 ?? '' },
      data: { file, of: ['FL-1'], taken: '2026-05-04', sha256: picture?.sha256 },
    });
    const pictures = [one, two].flatMap((each) => (each ? [each] : []));
    for (const entries of [[photo('P-MMMM-1', 'there.jpg')], [photo('P-MMMM-2', 'new.jpg'), photo('P-MMMM-3', 'new.jpg', two)]]) {
      const refused = await take(write('over.json', phone('MMMM', 120, entries, pictures)), '--shell', 'T-1');
      expect([refused.status, refused.messages]).toEqual([2, expect.stringContaining('is there already with other contents')]);
    }
    expect(read('shells/T-1/photos/there.jpg')).toBe('a picture of before');
    expect((await readStoreText(store.root, 'T-1')).photos.has('shells/T-1/photos/new.jpg')).toBe(false);
  });

  it('knows a sound by how its bytes begin', () => {
    const of = (text: string) => soundEnding(Buffer.from(text, 'latin1'));
    expect(['\0\0\0\x20ftyp3gp4', 'OggS', '\x1aE\xdf\xa3', 'RIFF\0\0\0\0WAVE', '#!AMR\n', 'caff', '\xff\xf1'].map(of)).toEqual([
      ...['m4a', 'ogg', 'webm', 'wav', 'amr', 'caf', 'aac'],
    ]);
    expect(['RIFF\0\0\0\0AVI ', '<svg', 'MZ', ''].map(of)).toEqual([undefined, undefined, undefined, undefined]);
    expect(soundFile('7KQ2/0003', 'm4a')).toBe('voice/7KQ2-0003.m4a');
  });

  it('wants a shell, and one file for any other kind', async () => {
    expect((await take(write('a.json', phone('AAAA', 0, [])))).messages).toContain('--shell');
    const two = await shellbook(store.root, 'import', 'members', 'a.csv', 'b.csv', '--shell', 'T-1');
    expect([two.status, two.messages]).toEqual([2, expect.stringContaining('Found b.csv after a.csv')]);
  });
});

const pictureOf = (bytes: Buffer) => ({
  sha256: createHash('sha256').update(bytes).digest('hex'),
  name: 'p.jpg',
  jpeg: bytes.toString('base64'),
});

const soundOf = (bytes: Buffer) => ({
  sha256: createHash('sha256').update(bytes).digest('hex'),
  name: 'n.ogg',
  sound: bytes.toString('base64'),
});

/** A JPEG whose head says 65,000 by 65,000 pixels (ITU-T T.81, B.2.2). */
const hugeJpeg = (): Buffer =>
  Buffer.from([
    ...[0xff, 0xd8, 0xff, 0xc0, 0x00, 0x0b, 0x08, 0xfd, 0xe8, 0xfd, 0xe8, 0x01, 0x01, 0x11, 0x00],
    ...[0xff, 0xda, 0x00, 0x08, 0x01, 0x01, 0x00, 0x00, 0x3f, 0x00, 0x00, 0xff, 0xd9],
  ]);

function permutations<T>(all: readonly T[]): readonly (readonly T[])[] {
  if (all.length < 2) return [all];
  return all.flatMap((one, i) => permutations(all.filter((_, j) => j !== i)).map((rest) => [one, ...rest]));
}

describe('the sheet of paper', () => {
  it('has the open hold points, lines to fill in and drawings to mark, in either language', async () => {
    for (const [language, words] of [
      ['en', ['Hold points that are open today', 'Weld inspected', 'Which one', 'Mark on the drawing']],
      ['es', ['Puntos de espera abiertos', 'Soldadura inspeccionada', 'Cuál', 'Marque en el dibujo']],
    ] as const) {
      const out = path.join(store.root, 'sheet.html');
      const { status } = await shellbook(store.root, 'floor', 'T-1', '--sheet', '--language', language, '--out', out, '--quiet');
      const html = readFileSync(out, 'utf8');
      expect([status, ...words.map((word) => html.includes(word))]).toEqual([0, true, true, true, true]);
      expect(html.match(/<figure>/gu)?.length).toBeGreaterThan(1);
      expect(html).not.toContain('<script');
    }
  });
});

describe('a page for entering', () => {
  it('is not printed as a PDF', async () => {
    const { status, messages } = await shellbook(
      store.root,
      'floor',
      'T-1',
      '--out',
      path.join(store.root, 'floor.pdf'),
      '--quiet',
    );
    expect([status, messages]).toEqual([2, expect.stringContaining('add --sheet')]);
  });
});

describe('the page', () => {
  it('has every field of a kind in its form, so that a new one is there by itself', () => {
    const { first, more } = formFields('weld');
    const there = [...first, ...more].map(({ key }) => key);
    const all = columnsOf('weld').filter(({ traits }) => traits.private !== true);
    expect(all.map(({ key }) => key).filter((key) => !there.includes(key))).toEqual(['id']);
  });

  it('draws outlines in the size of the whole view, so that they stay with all else when a part is shown', async () => {
    const out = path.join(store.root, 'drawn.html');
    expect((await shellbook(store.root, 'floor', 'T-1', '--out', out, '--quiet')).status).toBe(0);
    const drawn = [
      ...readFileSync(out, 'utf8').matchAll(
        /<svg class="plan" viewBox="0 0 (\d+) (\d+)".*?<use href="#s-[\w-]+" width="(\d+)" height="(\d+)"/gsu,
      ),
    ];
    expect(drawn.length).toBeGreaterThan(0);
    for (const [, width, height, useWidth, useHeight] of drawn) expect([useWidth, useHeight]).toEqual([width, height]);
  });

  it('keeps what a record says as words', async () => {
    store.write('library/people.yaml', '- {id: K7, name: "</script><img src=x onerror=alert(1)>", role: welder}\n');
    const out = path.join(store.root, 'floor.html');
    expect((await shellbook(store.root, 'floor', 'T-1', '--out', out, '--quiet')).status).toBe(0);
    const html = readFileSync(out, 'utf8');
    expect(html).not.toContain('<img src');
    expect(html.match(/<\/script>/gu)).toHaveLength(3);
  });
});
