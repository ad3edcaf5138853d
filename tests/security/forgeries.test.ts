/**
 * Forged books: none passes where the shop's key is known, whoever counted its digests anew; where no key is known, the answer says that
 * nothing proves who made it. The forger is `forge.ts`: a general PDF library and this program's own source.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { checkSeal } from '../../src/archive/check-seal.js';
import { openBook } from '../../src/archive/open-book.js';
import { type BookDifference, verifyItself } from '../../src/archive/verify.js';
import { signedBy, unsignedDespite } from '../../src/cli/book-seal.js';
import type { KnownKey } from '../../src/signing/known-keys.js';
import { type Afterwards, forge } from './forge.js';
import { FORGERIES } from './forgeries.js';
import { printSigned, signerFor } from './signed-book.js';

const SHOP = signerFor('Test shop');
const KEYS: readonly KnownKey[] = [
  { fingerprint: SHOP.certificate.fingerprint, name: 'Test shop', from: '2026-01-05', knownTo: 'the store' },
];
/** Calls itself by the shop's name, as anybody can. */
const THIEF = signerFor('Test shop');

let book: Uint8Array;
beforeAll(async () => {
  book = await printSigned(SHOP);
});

function look(bytes: Uint8Array, keys: readonly KnownKey[]) {
  const opened = openBook(bytes);
  const seal = checkSeal(opened);
  const own = verifyItself(opened, seal).differences;
  const signed = signedBy(seal, keys);
  return { own, signed, seal, all: [...own, ...unsignedDespite(signed, keys, '2026-06-30')] };
}
const words = (differences: readonly BookDifference[]): string => differences.map(({ message }) => message).join(' ');

describe('the book itself', () => {
  it('is unchanged, and signed by the shop for whoever knows the key', () => {
    const { own, signed, seal } = look(book, KEYS);
    expect([words(own), signed.proved, seal.sealed, seal.notCovered]).toEqual(['', true, true, []]);
    expect(signed.words).toMatch(/^Signed by Test shop on 2026-06-30, with the key /u);
  });

  it('is signed by nobody known for everybody else, with the key to compare', () => {
    const { own, signed } = look(book, []);
    expect([own, signed.proved]).toEqual([[], false]);
    expect(signed.words).toMatch(/^Signed by nobody known: .*“Test shop”, and anybody can\. Compare the key/u);
  });

  it('has the same bytes when the same key signs it again', async () => {
    expect(Buffer.from(await printSigned(SHOP)).equals(Buffer.from(book))).toBe(true);
  });
});

describe('a forged book, its digests counted anew', () => {
  // The signature is taken out, left as it was, or the forger's own is put in: by turns, or each in turn with SHELLBOOK_FUZZ.
  const AFTERWARDS: readonly (readonly [string, Afterwards])[] = [
    ['unsigned', 'strip'],
    ['with the shop’s signature left in', 'leave'],
    ['signed by the forger in the shop’s name', THIEF],
  ];
  const ways = (i: number) => (process.env.SHELLBOOK_FUZZ === undefined ? [AFTERWARDS[i % AFTERWARDS.length]] : AFTERWARDS);
  const cases = FORGERIES.flatMap(({ name, act }, i) =>
    (ways(i) as typeof AFTERWARDS).map(([way, afterwards]) => [name, way, act, afterwards] as const),
  );
  it.each(cases)('%s, %s', async (_name, _way, act, afterwards) => {
    const forged = await forge(book, act, afterwards);
    // With the key: never without a word, and never "signed by the shop".
    const known = look(forged, KEYS);
    expect(known.all.length).toBeGreaterThan(0);
    expect(known.signed.proved).toBe(false);
    // Without: it may be whole by its own account, and then the answer says that nobody known signed it.
    const unknown = look(forged, []);
    expect(unknown.signed.proved).toBe(false);
    expect(
      unknown.own.length > 0 || /^(?:Not signed: anybody|Signed by nobody known: .*anybody can)/u.test(unknown.signed.words),
    ).toBe(true);
  });

  it('counts to forty and more', () => {
    expect(FORGERIES.length).toBeGreaterThanOrEqual(40);
    expect(new Set(FORGERIES.map(({ name }) => name)).size).toBe(FORGERIES.length);
  });
});

describe('the signature itself', () => {
  it('is not good for another book', async () => {
    const other = Buffer.from(
      await printSigned(
        SHOP,
        '<!doctype html><html lang="en"><head><title>x</title></head><body><section class="chapter" data-chapter="a"><h1 id="c-a">Other</h1></section></body></html>',
      ),
    );
    const digits = (bytes: Buffer): { from: number; to: number } => {
      const from = bytes.indexOf('/Contents <', 0, 'latin1') + '/Contents <'.length;
      return { from, to: bytes.indexOf('>', from, 'latin1') };
    };
    const forged = Buffer.from(book);
    const [here, there] = [digits(forged), digits(other)];
    other.copy(forged, here.from, there.from, there.to);
    expect(words(look(forged, KEYS).own)).toMatch(/The signature proves nothing: the file has changed since it was signed/u);
  });

  it('does not hold for what is added after it, nor for a part of the file (12.8.1)', () => {
    const added = Buffer.concat([book, Buffer.from('\n1 0 obj\n<</Type /Catalog>>\nendobj\n')]);
    expect(() => look(added, KEYS)).toThrow();
    const end = Buffer.from(book).lastIndexOf('startxref', undefined, 'latin1');
    const again = Buffer.concat([book, Buffer.from(book.subarray(end))]);
    expect(look(again, KEYS).all.length).toBeGreaterThan(0);
    const short = Buffer.from(book);
    const range = short.indexOf('/ByteRange [0 ', 0, 'latin1') + '/ByteRange [0 '.length;
    short.write('0000000100', range, 'latin1');
    expect(words(look(short, KEYS).own)).toMatch(/The signature does not cover the whole file/u);
  });

  it('proves nothing with a lost key, and only what came before with a replaced one', () => {
    const [key] = KEYS as [KnownKey];
    const lost = look(book, [{ ...key, lost: '2026-09-01' }]);
    expect([lost.signed.proved, lost.signed.words]).toEqual([false, expect.stringMatching(/was lost on 2026-09-01/u)]);
    expect(look(book, [{ ...key, until: '2026-09-01' }]).signed.proved).toBe(true);
    expect(look(book, [{ ...key, until: '2026-03-01' }]).signed.proved).toBe(false);
    expect(look(book, [{ ...key, from: '2026-09-01' }]).signed.proved).toBe(false);
  });
});
