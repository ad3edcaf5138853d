import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { figuresByContents } from '../../src/cli/kept-by-contents.js';
import { figuresOf } from '../../src/compute/figures-of.js';
import { loadStore } from '../../src/model/load.js';
import type { Model } from '../../src/model/shell.js';
import { CacheDir } from '../../src/store/kept.js';
import { plainOf } from '../../src/store/plain-of.js';
import { readStoreText } from '../../src/store/read.js';
import { Sections } from '../../src/store/sections.js';

const SHELL = 'OV-024';
const GROUPED = ['joints', 'heatAffectedZones', 'openings', 'access', 'solvedPhotos', 'photos'] as const;
const demo = await readStoreText(path.resolve('demo-data'));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'shellbook-contents-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const place = (stamp = 'one') => ({ room: CacheDir.in(folder, 'contents'), name: 'a', stamp, settled: true });
const noPicture = () => undefined;
const modelOf = (files: ReadonlyMap<string, string>): Model => loadStore({ ...demo, files }).shells.get(SHELL)?.model as Model;

const plain = (figures: ReturnType<typeof figuresOf>): unknown =>
  plainOf(Object.fromEntries(GROUPED.map((name) => [name, figures[name]])));
const fresh = (model: Model): unknown => plain(figuresOf(model, noPicture));
/** As a command does it: from what is kept, and keeping the rest. */
async function kept(model: Model): Promise<unknown> {
  const { figures, save } = figuresByContents(model, noPicture, Sections.open(place()));
  const found = plain(figures);
  await save();
  return found;
}
const file = () => path.join(folder, 'shellbook/contents', readdirSync(path.join(folder, 'shellbook/contents'))[0] as string);
const edited = (name: string, edit: (text: string) => string): Map<string, string> => {
  const files = new Map(demo.files);
  const found = [...files.keys()].find((one) => one.startsWith(`shells/${SHELL}/`) && one.includes(name)) as string;
  const text = files.get(found) as string;
  files.set(found, edit(text));
  expect(files.get(found)).not.toBe(text);
  return files;
};

describe('figures kept by what they were computed of', () => {
  it('are computed again for a member that moved, and for nothing that they did not look at', async () => {
    const whole = await kept(modelOf(demo.files));
    const before = readFileSync(file());
    // A test on another day: nothing is computed, so nothing is written.
    expect(await kept(modelOf(edited('tests', (text) => text.replace(/date: (\d{4})-/u, 'date: 2024-'))))).toEqual(whole);
    expect(readFileSync(file())).toEqual(before);
    const moved = modelOf(edited('members', (text) => text.replace(/section: \S+,/u, 'section: RT2x2x1/8,')));
    expect(await kept(moved)).toEqual(fresh(moved));
    expect(readFileSync(file())).not.toEqual(before);
  });

  it('are believed neither damaged nor of another program', async () => {
    const model = modelOf(demo.files);
    const right = await kept(model);
    const bytes = readFileSync(file());
    for (const at of [3, bytes.length >> 1]) {
      const spoilt = Buffer.from(bytes);
      spoilt[at] = (spoilt[at] as number) ^ 1;
      writeFileSync(file(), spoilt);
      expect(await kept(model)).toEqual(right);
    }
    expect(Sections.open(place('another')).has('group frame')).toBe(false);
  });

  it('are those that are computed anew, whatever is edited', async () => {
    const names = [...demo.files.keys()].filter((one) => one.startsWith(`shells/${SHELL}/`) || one.startsWith('library/'));
    const edit = fc.tuple(fc.constantFrom(...names), fc.nat(), fc.constantFrom('number', 'line', 'word', 'again'));
    const runs = Number(process.env.SHELLBOOK_FUZZ ?? 0) > 0 ? 60 : 1;
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 2 }), async (edits) => {
        const files = new Map(demo.files);
        for (const [name, at, kind] of edits) files.set(name, EDITS[kind as keyof typeof EDITS](files.get(name) as string, at));
        const model = modelOf(files);
        expect(await kept(model)).toEqual(fresh(model));
      }),
      { numRuns: runs },
    );
  });
});

const at = (list: readonly RegExpMatchArray[], which: number): RegExpMatchArray | undefined =>
  list[which % Math.max(1, list.length)];
const put = (text: string, match: RegExpMatchArray | undefined, by: string): string =>
  match?.index === undefined ? text : text.slice(0, match.index) + by + text.slice(match.index + match[0].length);

/** What a shop does to a file: another figure, a record gone, another id, a record twice. */
const EDITS = {
  number: (text: string, which: number) => put(text, at([...text.matchAll(/(?<=[ [])\d+/gu)], which), String(which % 97)),
  line: (text: string, which: number) => put(text, at([...text.matchAll(/^- .*(?:\n {2,}.*)*/gmu)], which), ''),
  word: (text: string, which: number) => put(text, at([...text.matchAll(/\b[A-Z]{1,2}-[A-Z0-9-]+/gu)], which), 'X-1'),
  again: (text: string, which: number) => {
    const record = at([...text.matchAll(/^- .*(?:\n {2,}.*)*\n/gmu)], which);
    return record ? put(text, record, record[0] + record[0].replace(/id: ([^,\s]+)/u, 'id: $1x')) : text;
  },
};
