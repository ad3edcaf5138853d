import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { cleanFiles } from '../../src/book/edition-records.js';
import { drawingsFrom } from '../../src/book/project-drawings.js';
import type { Hidden } from '../../src/book/redact/hidden.js';
import { KeptParts } from '../../src/cli/kept-parts.js';
import { CacheDir } from '../../src/store/kept.js';
import { FINGERPRINT, HISTORY, smallAssessment } from '../book/small-store.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'shellbook-parts-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const open = (stamp = 'one') => KeptParts.at({ room: CacheDir.in(folder, 'contents'), name: 'a', stamp, settled: true });
const file = () => path.join(folder, 'shellbook/contents/a');
/** Whether it had to be made. */
const isMade = (parts: KeptParts, of: string, kind = 'drawing'): boolean => {
  let made = false;
  const make = (): string => {
    made = true;
    return `of ${of}`;
  };
  expect(parts.once(kind, of, make)).toBe(`of ${of}`);
  return made;
};

describe('parts of books that are kept', () => {
  it('are made once of the same text and kind, in one run and in the next', async () => {
    const first = open();
    expect([isMade(first, 'x'), isMade(first, 'x'), isMade(first, 'y'), isMade(first, 'x', 'text')]).toEqual([
      true,
      false,
      true,
      true,
    ]);
    await first.save();
    const second = open();
    expect([isMade(second, 'x'), isMade(second, 'z'), isMade(second, 'x', 'text')]).toEqual([false, true, false]);
    await second.save();
    // What the second run did not ask for is still there.
    const third = open();
    expect([isMade(third, 'y'), isMade(third, 'z')]).toEqual([false, false]);
  });

  it('are believed neither damaged, nor of another program, nor without this user’s mark', async () => {
    const first = open();
    isMade(first, 'x');
    await first.save();
    const right = readFileSync(file());
    for (const at of [3, 70, right.length - 3]) {
      const spoilt = Buffer.from(right);
      spoilt[at] = (spoilt[at] as number) ^ 1;
      writeFileSync(file(), spoilt);
      expect(isMade(open(), 'x')).toBe(true);
    }
    writeFileSync(file(), Buffer.concat([Buffer.from('0'.repeat(64)), right.subarray(64)]));
    expect(isMade(open(), 'x')).toBe(true);
    writeFileSync(file(), right);
    expect(isMade(open('another'), 'x')).toBe(true);
    expect(isMade(open(), 'x')).toBe(false);
  });

  it('are written only where there is something new, and nowhere outside Git', async () => {
    const nowhere = KeptParts.at(undefined);
    expect([isMade(nowhere, 'x'), isMade(nowhere, 'x')]).toEqual([true, false]);
    await nowhere.save();
    await open().save();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('make the same book as what is drawn now', async () => {
    const edition = 'service' as const;
    const assessment = smallAssessment();
    const html = async (parts?: KeptParts): Promise<string> => {
      const drawings = drawingsFrom(parts && ((of, make) => parts.once('drawing', of, make)));
      const input = {
        assessment,
        edition,
        fingerprint: FINGERPRINT,
        history: HISTORY,
        drawings,
        photoFile: async () => undefined,
      };
      return (await bookDocument(input)).html;
    };
    const first = open();
    const drawn = await html();
    expect(await html(first)).toBe(drawn);
    await first.save();
    const second = open();
    expect(await html(second)).toBe(drawn);
    // Every drawing was there: nothing new is written.
    rmSync(file());
    await second.save();
    expect(existsSync(file())).toBe(false);
  });

  it('give record files the words that they have when they are cleaned now, also after a new record', () => {
    const file = 'shells/QF-1/amendments.yaml';
    const other = 'shells/QF-1/tests.yaml';
    const texts = (more = ''): Map<string, string> =>
      new Map([
        [file, `- {id: AM-1, reason: "of Rosa"}\n${more}`],
        [other, '- {id: NC-1, text: "Rosa-7 leaks, Rosa 7 too", note: said by rosa}\n- {id: NC-2, text: "\\x52osa"}\n'],
      ]);
    const parts = open();
    const look = (hidden: Hidden, files = texts()) => {
      const made: string[] = [];
      const kept = (of: string, make: () => string | undefined) =>
        parts.once('cleaned', of, () => {
          made.push(of);
          return make();
        });
      expect(cleanFiles(files, hidden, 'owner', kept)).toEqual(cleanFiles(files, hidden, 'owner'));
      return made.length;
    };
    // The file with a word in disguise is read each time.
    expect([look(hiding('AM-1')), look(hiding('AM-1')), look(hiding('AM-1', 'AM-2'))]).toEqual([1, 0, 0]);
    expect(look(hiding('AM-1', 'AM-2'), texts('- {id: AM-2, reason: "of rosa"}\n'))).toBe(1);
    expect(look(hiding('AM-1', 'Rosa'))).toBe(1);
    expect(look(hiding('AM-1', 'Rosa 7'))).toBe(1);
    expect([...cleanFiles(texts(), hiding('AM-1', 'Rosa-7'), 'owner').files.values()].join('')).toContain(
      'Rosa-7 leaks, the shop 7 too',
    );
  });
});

const hiding = (...ids: readonly string[]): Hidden => ({
  people: new Set(['W1']),
  peopleNames: new Set(['rosa']),
  records: new Set(),
  stamps: new Map([['w1', 'the shop']]),
  names: new Map([['rosa', [{ words: ['rosa'], instead: 'the shop' }]]]),
  ids: new Set(ids),
  spared: new Map(),
  ownKeys: true,
});
