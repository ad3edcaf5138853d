import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PDFName } from '@cantoo/pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { nameIn, TaggedFile, textIn } from '../book/tagged-file.js';
import { forge } from '../security/forge.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
/** What `key` said when it made the key. */
let made: Awaited<ReturnType<typeof shellbook>>;
const away = mkdtempSync(path.join(tmpdir(), 'shellbook-signed-'));
const [shop, stranger] = [path.join(away, 'shop'), path.join(away, 'stranger')];

async function shellbook(cwd: string, settings: string, ...args: readonly string[]) {
  const io = literalIo(cwd, { XDG_CONFIG_HOME: settings, HOME: settings, APPDATA: settings });
  const status = await runProgram(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
}
const json = async (cwd: string, settings: string, ...args: readonly string[]) => {
  const { status, answer, messages } = await shellbook(cwd, settings, ...args, '--json', '--quiet');
  return { status, messages, told: answer === '' ? undefined : JSON.parse(answer) };
};

const KEY = path.join(shop, 'shellbook', 'shop-key.pem');
const book = (): string => path.join(store.root, 'books', 'T-1-service.pdf');
const fingerprint = (): string => JSON.parse(made.answer).fingerprint;

beforeAll(async () => {
  for (const folder of [shop, stranger]) mkdirSync(folder);
  store = await laySmallStore({ '.gitignore': 'books/\n' });
  made = await shellbook(away, shop, 'key', '--new', 'Test shop', '--json');
  await shellbook(store.root, shop, 'key', '--add');
  await store.commit('List the key');
  await shellbook(store.root, shop, 'book', 'T-1', '--edition', 'service', '--quiet');
});
afterAll(() => {
  store?.remove();
  rmSync(away, { recursive: true, force: true });
});

describe('a signed book', () => {
  it('keeps to PDF/UA: the field of its signature has a tag, and its page the order of the tags', async () => {
    // ISO 14289-1, 7.18.3 and 7.18.4.
    const file = await TaggedFile.read(readFileSync(book()));
    const fields = file.annotations().filter(({ dict }) => nameIn(dict, 'Subtype') === 'Widget');
    expect(fields.length).toBe(1);
    const form = file.elements.find(({ role }) => role === 'Form');
    expect([form?.annotations, form && textIn(form.dict, 'Alt')]).toEqual([[fields[0]?.number], 'Signature of the shop']);
    expect(nameIn(file.pdf.getPage(0).node, 'Tabs')).toBe('S');
    expect(file.metadata()).toContain('<pdfuaid:part>1<');
  });
});

describe('key', () => {
  it('makes one that nobody else can read, once, and says its fingerprint', async () => {
    expect([made.status, fingerprint()]).toEqual([0, expect.stringMatching(/^[0-9a-f]{64}$/u)]);
    if (process.platform !== 'win32') expect(statSync(KEY).mode & 0o777).toBe(0o600);
    expect(readFileSync(`${KEY}.pub`, 'utf8')).toMatch(/^ssh-rsa AAAA\S+ Test-shop\n$/u);
    const again = await shellbook(away, shop, 'key', '--new', 'Test shop');
    expect([again.status, again.messages]).toEqual([2, expect.stringContaining('There is a key')]);
    expect((await json(away, shop, 'key')).told.fingerprint).toBe(fingerprint());
    expect((await shellbook(away, stranger, 'key')).status).toBe(1);
  });

  it('lists it in the store, where it is no record', async () => {
    expect(readFileSync(path.join(store.root, 'keys.yaml'), 'utf8')).toContain(`fingerprint: ${fingerprint()}`);
    const { told } = await json(store.root, shop, 'check');
    expect(told.findings.filter((one: { file: string }) => one.file === 'keys.yaml')).toEqual([]);
    expect((await shellbook(store.root, shop, 'key', '--add')).messages).toContain('lists it already');
  });

  it('is not used where others could have it', async () => {
    const inside = path.join(store.root, 'books', 'key.pem');
    copyFileSync(KEY, inside);
    chmodSync(inside, 0o600);
    const io = literalIo(store.root, { SHELLBOOK_KEY: inside });
    expect([await runProgram(['book', 'T-1', '--edition', 'owner'], io), io.messages()]).toEqual([
      2,
      expect.stringContaining('lies in the store'),
    ]);
    rmSync(inside);
    if (process.platform === 'win32') return;
    const open = path.join(away, 'open.pem');
    copyFileSync(KEY, open);
    chmodSync(open, 0o644);
    const there = literalIo(store.root, { SHELLBOOK_KEY: open });
    expect([await runProgram(['key'], there), there.messages()]).toEqual([2, expect.stringContaining('chmod 600')]);
    expect(existsSync(path.join(store.root, 'books', 'T-1-owner.pdf'))).toBe(false);
  });
});

describe('verify of a signed book', () => {
  it('says in three lines: unchanged, signed by the shop, the same as the store, pages printed again', async () => {
    const { status, answer } = await shellbook(away, stranger, 'verify', book(), '--store', store.root);
    const said = answer.replace(/\s+/gu, ' ');
    expect(said).toMatch(/Unchanged since it was sealed: 12 record files, \d+ pages\./u);
    expect(said).toMatch(/Signed by Test shop on \d{4}-\d\d-\d\d, with the key [0-9a-f ]+, which is known to the store in/u);
    expect(said).toMatch(
      /Matches the record in the store \S+ at revision [0-9a-f]{10}; (\d+) pages printed again, and the same\./u,
    );
    expect(said).not.toMatch(/genuine|to the byte/u);
    expect(status).toBe(0);
  });

  it('promises its keys', async () => {
    const { status, told } = await json(away, stranger, 'verify', book(), '--store', store.root, '--quick', '--proved');
    expect([status, told]).toEqual([
      0,
      expect.objectContaining({
        sealed: true,
        matches_itself: true,
        matches_store: true,
        matches_revision: true,
        pages_compared: false,
        pages_not_compared_because: 'left out with --quick',
        not_covered: [],
        proved: true,
        differences: [],
        signed_by: expect.objectContaining({ name: 'Test shop', fingerprint: fingerprint(), known: true }),
      }),
    ]);
  });

  it('asks whoever has no store for the key on the shop’s paper', async () => {
    const unknown = await json(away, stranger, 'verify', book());
    expect([unknown.status, unknown.told.proved, unknown.told.signed_by.known]).toEqual([0, false, false]);
    expect((await json(away, stranger, 'verify', book(), '--proved')).status).toBe(1);
    const typed = fingerprint().toUpperCase().match(/.{4}/gu)?.join(' ') ?? '';
    expect(await json(away, stranger, 'verify', book(), '--proved', '--signed-by', typed)).toMatchObject({
      status: 0,
      told: { proved: true },
    });
    expect(await json(away, stranger, 'verify', book(), '--signed-by', 'ab'.repeat(32))).toMatchObject({ status: 1 });
    expect(await json(away, stranger, 'verify', book(), '--signed-by', '12 34')).toMatchObject({ status: 2 });
  });

  it('finds a forged record by the store’s own, whatever the book claims', async () => {
    const forged = path.join(away, 'record.pdf');
    const file = 'shells/T-1/services/dc.yaml';
    writeFileSync(
      forged,
      await forge(readFileSync(book()), ({ files }) =>
        files.set(file, Buffer.from(String(files.get(file)).replace('rating: 10 A', 'rating: 100 A'))),
      ),
    );
    const { status, told } = await json(away, stranger, 'verify', forged, '--store', store.root, '--quick');
    expect([status, told.matches_itself, told.matches_revision]).toEqual([1, true, false]);
    const said = told.differences.map((one: { message: string }) => one.message).join(' ');
    expect(said).toContain('circuit DC-1: protection.rating is `100 A` in the book, `10 A` in the store.');
    expect(said).toContain('Test shop signs its books since');
  });

  it('finds a forged page by printing it again', async () => {
    const forged = path.join(away, 'page.pdf');
    const paint = Buffer.from('q 1 1 1 rg 60 600 300 40 re f Q');
    writeFileSync(
      forged,
      await forge(readFileSync(book()), ({ page, pdf }) => {
        const node = page(3);
        const before = node.get(PDFName.of('Contents'));
        node.set(PDFName.of('Contents'), pdf.context.obj([before as never, pdf.context.register(pdf.context.stream(paint))]));
      }),
    );
    const { status, told } = await json(away, stranger, 'verify', forged, '--store', store.root);
    expect([status, told.matches_itself, told.pages_compared, told.matches_store]).toEqual([1, true, true, false]);
    expect(told.differences).toContainEqual(expect.objectContaining({ with: 'store', part: 'page', name: '3' }));
  });

  it('believes no key that the store says is lost', async () => {
    const clone = path.join(away, 'lost');
    execFileSync('git', ['clone', '--quiet', store.root, clone]);
    const keys = path.join(clone, 'keys.yaml');
    writeFileSync(keys, readFileSync(keys, 'utf8').replace(', from:', ', lost: 2030-01-01, from:'));
    const { status, told } = await json(away, stranger, 'verify', book(), '--store', clone, '--quick', '--proved');
    expect([status, told.proved, told.signed_by.said]).toEqual([1, false, expect.stringContaining('was lost on 2030-01-01')]);
    writeFileSync(keys, '- {fingerprint: 12, name: x}\n');
    const wrong = await json(away, stranger, 'verify', book(), '--store', clone, '--quick');
    expect([wrong.status, wrong.messages]).toEqual([2, expect.stringContaining('keys.yaml has the fingerprint `12`')]);
  });
});

describe('an answer from a book', () => {
  const ask = (settings: string, file: string, ...more: readonly string[]) =>
    shellbook(away, settings, 'where', 'T-1', 'DC-1', '--book', file, ...more);

  it('comes with a warning where nobody known signed it, and with --proved status 1', async () => {
    const told = await ask(stranger, book());
    expect([told.status, told.messages]).toEqual([0, expect.stringContaining('Signed by nobody known')]);
    const proved = await ask(stranger, book(), '--proved');
    expect([proved.status, proved.answer]).toEqual([1, told.answer]);
  });

  it('comes without one where the key is known', async () => {
    const settings = path.join(away, 'knowing');
    const known = await shellbook(away, settings, 'key', '--know', fingerprint(), '--of', 'Test shop');
    expect(known.status).toBe(0);
    const told = await ask(settings, book(), '--proved');
    expect([told.status, told.messages]).toEqual([0, expect.not.stringMatching(/[Ss]igned/u)]);
  });

  it('is none where the seal or the signature is broken', async () => {
    const broken = path.join(away, 'broken.pdf');
    const bytes = readFileSync(book());
    const at = bytes.length - 400;
    bytes[at] = (bytes[at] as number) ^ 1;
    writeFileSync(broken, bytes);
    const left = path.join(away, 'left.pdf');
    writeFileSync(left, await forge(readFileSync(book()), () => {}, 'leave'));
    for (const file of [broken, left]) {
      const told = await ask(stranger, file);
      expect([told.status === 0, told.answer]).toEqual([false, '']);
    }
    expect((await ask(stranger, left)).status).toBe(1);
    const laid = await shellbook(away, stranger, 'recover', left, 'laid');
    expect([laid.status, laid.messages]).toEqual([1, expect.stringContaining('may not be what the shop recorded')]);
  });

  it('is given from a book that was printed before there were signatures', async () => {
    const old = path.join(away, 'old.pdf');
    writeFileSync(
      old,
      await forge(readFileSync(book()), ({ manifest }) => {
        manifest.seal = undefined;
        manifest.document_sha256 = undefined;
        manifest.printed_by = undefined;
      }),
    );
    expect(await json(away, stranger, 'verify', old)).toMatchObject({
      status: 0,
      told: { matches_itself: true, signed_by: null, not_covered: [] },
    });
    const told = await ask(stranger, old);
    expect([told.status, told.messages]).toEqual([0, expect.stringContaining('Not signed: anybody could have made this file')]);
  });
});
