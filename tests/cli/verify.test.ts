import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Manifest } from '../../src/archive/manifest.js';
import { openBook } from '../../src/archive/open-book.js';
import { CacheDir } from '../../src/store/kept.js';
import { Sections } from '../../src/store/sections.js';
import { readAttachments } from '../book/read-pdf.js';
import { everyByte, standsIn } from '../support/every-byte.js';
import { bookOf, printSmallBook, SECRETS, shellbook } from './printed-book.js';
import type { SmallStore } from './small-store.js';

let store: SmallStore;
const away = mkdtempSync(path.join(tmpdir(), 'shellbook-away-'));
beforeAll(async () => {
  store = await printSmallBook();
});
afterAll(() => {
  store?.remove();
  rmSync(away, { recursive: true, force: true });
});

const EDITIONS = ['owner', 'service', 'shop'] as const;
const read = (edition: string): Buffer => readFileSync(bookOf(store, edition));
const manifestOf = (edition: string): Manifest => {
  const { manifest } = openBook(read(edition));
  if ('fault' in manifest) throw new Error(manifest.fault);
  return manifest.manifest;
};
const verify = async (file: string, ...more: readonly string[]) => {
  const { status, answer, messages } = await shellbook(away, 'verify', file, '--json', '--quick', ...more);
  return { status, messages, told: answer === '' ? undefined : JSON.parse(answer) };
};
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Every file below a folder, by path, as hex. */
const filesIn = (root: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(root, { recursive: true, withFileTypes: true })
      .filter((one) => one.isFile())
      .map((one) => path.join(one.parentPath, one.name))
      .filter((file) => !/^(?:\.git|books)(?:\/|$)|^\.gitignore$/u.test(path.relative(root, file)))
      .map((file) => [path.relative(root, file), readFileSync(file).toString('hex')]),
  );

describe('what a book carries', () => {
  it('is read by another program, with the digests that the manifest tells', async () => {
    const attached = await readAttachments(read('shop'));
    const manifest = manifestOf('shop');
    expect([...attached.keys()].sort()).toEqual(
      ['shellbook-manifest.json', ...manifest.records.map((one) => one.path), ...manifest.photos.map((one) => one.path)].sort(),
    );
    for (const { path: name, sha256: digest, bytes } of [...manifest.records, ...manifest.photos]) {
      const content = attached.get(name) as Uint8Array;
      expect([name, content.length, sha256(content)]).toEqual([name, bytes, digest]);
    }
  });

  it('has the digests that the system’s own tool counts', () => {
    const file = path.join(store.root, 'shells/T-1/welds.yaml');
    // GNU coreutils, or Perl's shasum on other systems.
    const tool = spawnSync('sha256sum', ['--version']).status === 0 ? ['sha256sum'] : ['shasum', '-a', '256'];
    const told = execFileSync(tool[0] as string, [...tool.slice(1), file], { encoding: 'utf8' }).split(' ')[0];
    expect(manifestOf('shop').records.find((one) => one.path === 'shells/T-1/welds.yaml')?.sha256).toBe(told);
  });

  it('is the shop’s every byte, and what each other reader may see', async () => {
    for (const [edition, hidden, shown] of [
      ['owner', SECRETS.welder, SECRETS.customer[0]],
      ['service', [...SECRETS.customer, ...SECRETS.welder], 'splice'],
    ] as const) {
      const attached = [...(await readAttachments(read(edition)))];
      const text = attached.map(([name, bytes]) => `${name}\n${Buffer.from(bytes).toString('utf8')}`).join('\n');
      for (const word of hidden) expect(text).not.toMatch(new RegExp(`\\b${word}\\b`, 'u'));
      expect(text).toContain(shown);
      expect(text).not.toContain('#');
    }
    expect(manifestOf('owner').withheld.join()).toMatch(/welders.*findings/u);
    const findings = (await readAttachments(read('owner'))).get('shells/T-1/findings.yaml');
    expect(Buffer.from(findings as Uint8Array).toString()).toMatch(/NC-2/u);
    expect(Buffer.from(findings as Uint8Array).toString()).not.toMatch(/NC-1/u);
  });

  it.each([
    ['owner', SECRETS.welder],
    ['service', [...SECRETS.welder, ...SECRETS.customer]],
  ] as const)('gives nobody away in any byte of the %s edition, unpacked, in four encodings', async (edition, hidden) => {
    const every = await everyByte(read(edition));
    // The look finds what is there: each way that a name might stand in the file does.
    expect(standsIn(every, 'T-1')).toEqual(expect.arrayContaining(['text', 'UTF-8', 'hexadecimal']));
    for (const word of hidden.flatMap((one) => (one.includes('@') ? [one] : one.split(' ')))) {
      // Two signs stand by chance among the bytes of any picture.
      if (word.length > 2) expect([word, standsIn(every, word)]).toEqual([word, []]);
      else expect(every.text).not.toMatch(new RegExp(`\\b${word}\\b`, 'iu'));
    }
  });

  it('is the same to the byte when printed again', async () => {
    for (const edition of EDITIONS) {
      const again = path.join(away, `again-${edition}.pdf`);
      await shellbook(store.root, 'book', 'T-1', '--edition', edition, '--out', again, '--quiet');
      expect([edition, sha256(readFileSync(again))]).toEqual([edition, sha256(read(edition))]);
    }
  });
});

describe('verify', () => {
  it.each(EDITIONS)('says that the %s edition matches itself and the store', async (edition) => {
    const { status, told } = await verify(bookOf(store, edition), '--store', store.root);
    expect(status).toBe(0);
    expect(told).toMatchObject({ command: 'verify', shell: 'T-1', matches_itself: true, matches_store: true, differences: [] });
    expect(told.fingerprint).toMatch(/^[0-9a-f]{64}$/u);
    expect(told.revision).toMatch(/^[0-9a-f]{40}$/u);
  });

  it('knows no store where there is none', async () => {
    expect(await verify(bookOf(store, 'service'))).toMatchObject({
      status: 0,
      told: { matches_itself: true, matches_store: null },
    });
  });

  it('verifies from another clone', async () => {
    const clone = path.join(away, 'clone');
    execFileSync('git', ['clone', '--quiet', store.root, clone]);
    for (const edition of EDITIONS) {
      expect(await verify(bookOf(store, edition), '--store', clone)).toMatchObject({ status: 0, told: { matches_store: true } });
    }
  });

  it('names the record and the field where the store has gone on, and finds the book’s own revision in it', async () => {
    const clone = path.join(away, 'later');
    execFileSync('git', ['clone', '--quiet', store.root, clone]);
    const file = path.join(clone, 'shells/T-1/welds.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace('size: 1/4 in', 'size: 3/16 in'));
    const { status, told } = await verify(bookOf(store, 'service'), '--store', clone);
    expect(status).toBe(1);
    expect(told).toMatchObject({ matches_itself: true, matches_store: false, matches_revision: true });
    expect(told.differences).toEqual([
      expect.objectContaining({
        part: 'record',
        name: 'W-1',
        message: 'weld W-1: size is `1/4 in` in the book, `3/16 in` in the store.',
      }),
    ]);
  });

  it('sees that something changed which this edition withholds, and does not say what', async () => {
    const clone = path.join(away, 'sold');
    execFileSync('git', ['clone', '--quiet', store.root, clone]);
    const file = path.join(clone, 'shells/T-1/shell.yaml');
    writeFileSync(file, readFileSync(file, 'utf8').replace('Lower Fennimarsh', 'Upper Fennimarsh'));
    const service = await verify(bookOf(store, 'service'), '--store', clone);
    expect(service).toMatchObject({ status: 1, told: { matches_store: false, differences: [{ part: 'fingerprint' }] } });
    expect(JSON.stringify(service.told)).not.toContain('Fennimarsh');
    const shop = await verify(bookOf(store, 'shop'), '--store', clone);
    expect(JSON.stringify(shop.told.differences)).toContain('Upper Fennimarsh');
  });

  it('says that another program saved the file again, and that all it shows is as printed', async () => {
    const file = path.join(away, 'saved.pdf');
    const saved = await PDFDocument.load(read('service'), { updateMetadata: false });
    writeFileSync(file, await saved.save({ useObjectStreams: false }));
    const { status, told } = await verify(file);
    expect([status, told.matches_itself]).toEqual([1, false]);
    expect(told.differences).toEqual([
      expect.objectContaining({ part: 'seal', message: expect.stringContaining('saved it again') }),
    ]);
  });

  it('refuses what is no book, in one sentence', async () => {
    const other = path.join(away, 'other.pdf');
    writeFileSync(other, await (await PDFDocument.create()).save());
    for (const [file, said] of [
      [other, 'carries no record'],
      [path.join(store.root, 'shop.yaml'), 'not a PDF'],
      [path.join(away, 'none.pdf'), 'no file'],
      [away, 'is not a file'],
    ] as const) {
      const { status, messages } = await verify(file);
      expect([status, messages]).toEqual([2, expect.stringContaining(said)]);
      expect(messages.trim().split('\n')).toHaveLength(1);
    }
  });
});

describe('recover', () => {
  it('gives the store back byte for byte from the shop’s edition, and it works', async () => {
    const back = path.join(away, 'back');
    const { status, answer } = await shellbook(away, 'recover', bookOf(store, 'shop'), 'back', '--json');
    expect([status, JSON.parse(answer)]).toEqual([0, expect.objectContaining({ withheld: [], damaged: [] })]);
    expect(filesIn(back)).toEqual(filesIn(store.root));
    const [theirs, ours] = [await shellbook(store.root, 'check', '--json'), await shellbook(back, 'check', '--json')];
    const blocking = (answer: string) =>
      JSON.parse(answer).findings.filter((one: { severity: string }) => one.severity !== 'note');
    expect(blocking(ours.answer)).toEqual(blocking(theirs.answer));
    expect(await verify(bookOf(store, 'shop'), '--store', back)).toMatchObject({ status: 0, told: { matches_store: true } });
  });

  it('gives what the other editions carry, and says what they do not', async () => {
    const { status, answer } = await shellbook(away, 'recover', bookOf(store, 'service'), 'service');
    expect(status).toBe(0);
    expect(answer.replace(/\s+/gu, ' ')).toContain('who ordered the shell');
    expect(readFileSync(path.join(away, 'service/shells/T-1/members.yaml'), 'utf8')).toContain('160 in');
  });

  it('touches nothing where there is something', async () => {
    const full = path.join(away, 'full');
    mkdirSync(full);
    writeFileSync(path.join(full, 'mine'), 'mine');
    for (const target of ['full', 'full/mine']) {
      const { status, messages } = await shellbook(away, 'recover', bookOf(store, 'shop'), target);
      expect([status, messages]).toEqual([2, expect.stringContaining('nothing was written')]);
    }
    expect(readdirSync(full)).toEqual(['mine']);
    expect(readdirSync(away).filter((name) => name.endsWith('.new'))).toEqual([]);
  });
});

describe('a book alone', () => {
  it.each([
    ['where', 'DC-1'],
    ['behind', 'AP-1'],
    ['near', '100in,0in,0in'],
    ['isolate', 'DC-1'],
  ])('answers %s as the store does', async (command, asked) => {
    const alone = await shellbook(away, command, 'T-1', asked, '--json', '--book', bookOf(store, 'service'));
    const whole = await shellbook(store.root, command, 'T-1', asked, '--json');
    expect([alone.status, JSON.parse(alone.answer)]).toEqual([whole.status, JSON.parse(whole.answer)]);
  });

  it.each(['weights', 'takeoff'])('answers %s from the whole record as the store does', async (command) => {
    const alone = await shellbook(away, command, 'T-1', '--json', '--book', bookOf(store, 'shop'));
    const whole = await shellbook(store.root, command, 'T-1', '--json');
    expect([alone.status, JSON.parse(alone.answer)]).toEqual([whole.status, JSON.parse(whole.answer)]);
  });

  it('is checked by the same rules, at the revision that it was printed from', async () => {
    const alone = await shellbook(away, 'check', 'T-1', '--json', '--book', bookOf(store, 'shop'));
    const told = JSON.parse(alone.answer);
    expect(told.revision).toBe(manifestOf('shop').revision);
    const rules = (findings: readonly { rule: string; severity: string }[]) =>
      findings.filter(({ severity }) => severity === 'error').map(({ rule }) => rule);
    const whole = await shellbook(store.root, 'check', 'T-1', '--json');
    expect(rules(told.findings)).toEqual(rules(JSON.parse(whole.answer).findings));
    const service = await shellbook(away, 'check', 'T-1', '--book', bookOf(store, 'service'));
    expect(service.messages).toContain('The service edition leaves out who ordered the shell');
  });

  it('tells the page from the book itself', async () => {
    const { answer } = await shellbook(away, 'where', 'T-1', 'DC-1/S1', '--json', '--book', bookOf(store, 'shop'));
    const [match] = JSON.parse(answer).matches;
    const page = manifestOf('shop').homes['r-DC-1.2fS1'];
    expect(match.pages).toEqual([page]);
    const said = await shellbook(away, 'where', 'T-1', 'DC-1/S1', '--book', bookOf(store, 'shop'));
    expect(said.answer).toContain(`shop edition, page ${page}`);
  });

  it('is not for what needs a store', async () => {
    const history = await shellbook(away, 'history', 'T-1', '--book', bookOf(store, 'shop'));
    expect([history.status, history.messages]).toEqual([2, expect.stringContaining('--book')]);
    const both = await shellbook(away, 'where', 'T-1', 'DC-1', '--book', bookOf(store, 'shop'), '--store', store.root);
    expect(both.status).toBe(2);
  });
});

describe('a print that fails', () => {
  it('leaves the earlier book as it was, and nothing beside it', async () => {
    const out = path.join(away, 'out');
    mkdirSync(out);
    copyFileSync(bookOf(store, 'owner'), path.join(out, 'book.pdf'));
    const before = process.env.PUPPETEER_EXECUTABLE_PATH;
    process.env.PUPPETEER_EXECUTABLE_PATH = path.join(away, 'no-browser');
    try {
      const { status } = await shellbook(store.root, 'book', 'T-1', '--edition', 'owner', '--out', path.join(out, 'book.pdf'));
      expect(status).toBe(2);
    } finally {
      if (before === undefined) delete process.env.PUPPETEER_EXECUTABLE_PATH;
      else process.env.PUPPETEER_EXECUTABLE_PATH = before;
    }
    expect(readdirSync(out)).toEqual(['book.pdf']);
    expect(existsSync(path.join(out, 'book.pdf')) && readFileSync(path.join(out, 'book.pdf')).equals(read('owner'))).toBe(true);
  });
});

describe('a book that was opened before', () => {
  const own = path.join(away, 'cache');
  const room = path.join(own, 'shellbook', 'books');
  const before = process.env.XDG_CACHE_HOME;
  beforeAll(() => {
    process.env.XDG_CACHE_HOME = own;
  });
  afterAll(() => {
    process.env.XDG_CACHE_HOME = before;
  });
  const lines = [
    ['where', 'T-1', 'DC-1', '--json', '--book'],
    ['isolate', 'T-1', 'DC-1', '--json', '--proved', '--book'],
    ['verify', '--quick', '--json'],
    ['verify', '--quick'],
  ];
  const ask = async (line: readonly string[]) => shellbook(away, ...line, bookOf(store, 'service'));
  const entries = () => readdirSync(room).map((name) => path.join(room, name));

  it('answers as it did at first, what is said of its seal too', async () => {
    for (const line of lines) {
      rmSync(own, { recursive: true, force: true });
      const first = await ask(line);
      expect(entries()).toHaveLength(1);
      expect(await ask(line)).toEqual(first);
    }
  });

  it('is answered from what was kept, by its contents whatever it is called, and from nothing damaged', async () => {
    rmSync(own, { recursive: true, force: true });
    const line = lines[0] as readonly string[];
    const first = await ask(line);
    const [file = ''] = entries();
    const whole = readFileSync(file);
    const name = path.basename(file);
    const { stamp } = JSON.parse(whole.toString('latin1').split('\n')[0]?.slice(65) as string) as { readonly stamp: string };
    const kept = Sections.open({ room: CacheDir.ofUser('books'), name, stamp, settled: true });
    kept.put('head', { revision: 'from what was kept', edition: 'service' });
    await kept.save();
    const copy = path.join(away, 'another-name.pdf');
    copyFileSync(bookOf(store, 'service'), copy);
    expect(JSON.parse((await shellbook(away, ...line, copy)).answer).revision).toBe('from what was kept');
    for (const bytes of [whole.map((byte, i) => (i === 20 ? byte ^ 1 : byte)), whole.subarray(0, 400), Buffer.alloc(0)]) {
      writeFileSync(file, bytes);
      expect(await ask(line)).toEqual(first);
    }
  });

  it('that has changed since is looked at anew', async () => {
    const changed = readFileSync(bookOf(store, 'service'));
    changed[changed.length - 200] = (changed[changed.length - 200] as number) ^ 1;
    const file = path.join(away, 'changed.pdf');
    writeFileSync(file, changed);
    expect((await shellbook(away, 'where', 'T-1', 'DC-1', '--book', file)).status).not.toBe(0);
    expect((await shellbook(away, 'verify', file, '--quick')).status).not.toBe(0);
  });
});
