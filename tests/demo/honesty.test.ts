import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { assess } from '../../src/assess.js';
import { layDemoHistory } from '../../src/cli/demo/history.js';
import type { Finding } from '../../src/finding.js';
import { loadStore } from '../../src/model/load.js';
import { enteredOn } from '../../src/store/entered.js';
import { photoFacts } from '../../src/store/photo-facts.js';
import { readStoreText } from '../../src/store/read.js';
import { DEMO } from './store.js';

interface Plant {
  readonly rule: string;
  readonly ids: readonly string[];
  readonly what: string;
  readonly needs?: 'history' | 'photos';
}
const PLANTED = parse(readFileSync(new URL('planted.yaml', import.meta.url), 'utf8')) as readonly Plant[];
const planted = PLANTED.filter(({ rule, needs }) => needs !== undefined || rule === 'record.repeats');

describe('the honesty of the demo shells, with their history and pictures', () => {
  const dir = mkdtempSync(path.join(tmpdir(), 'shellbook-honest-'));
  const found = new Map<string, readonly Finding[]>();
  beforeAll(async () => {
    await layDemoHistory(DEMO, dir, async () => {});
    const text = await readStoreText(dir);
    const loaded = loadStore(text);
    for (const [id, shell] of loaded.shells) {
      const [entered, photos] = await Promise.all([enteredOn(dir, id), photoFacts(text, id, undefined)]);
      found.set(id, assess(shell.model, [], { entered, photos }, ['record']).findings);
    }
  });
  afterAll(() => rmSync(dir, { recursive: true, force: true }));

  it('has one of each kind planted', () => {
    expect(new Set(planted.map(({ rule }) => rule))).toEqual(
      new Set(['record.late-entry', 'record.repeats', 'record.photo-point-off', 'record.photo-twice']),
    );
  });

  it('finds what was planted in the second shell and nothing else, in notes but for a point that is off', () => {
    const notes = found.get('OV-024') ?? [];
    for (const { rule, ids, what } of planted) {
      expect(
        notes.some((note) => note.rule === rule && ids.every((id) => note.ids.includes(id))),
        what,
      ).toBe(true);
    }
    // The pasted test is late as well, and before the first weld: its date is that of the other shell.
    expect(notes.map(({ rule, ids }) => `${rule} ${ids[0]}`).sort()).toEqual([
      'record.before-build TS-208',
      'record.late-entry TS-208',
      'record.late-entry W-0030',
      'record.photo-point-off PH-004',
      'record.photo-points-unusable PH-002',
      'record.photo-twice PH-009',
      'record.repeats TS-208',
    ]);
    expect(new Set(notes.filter(({ rule }) => rule !== 'record.photo-point-off').map(({ severity }) => severity))).toEqual(
      new Set(['note']),
    );
  });

  it('finds nothing in the first shell', () => expect(found.get('OV-021')).toEqual([]));
});
