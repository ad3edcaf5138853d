import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { readKnown } from '../../src/entry/record-index.js';
import { templateTexts } from '../../src/entry/template.js';
import { readStoreText } from '../../src/store/read.js';
import { DEMO } from '../demo/store.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore();
});
afterAll(() => store.remove());

const textOf = (file: string): string => readFileSync(path.join(store.root, 'shells/T-2', file), 'utf8');

describe('new-shell --from', () => {
  it('takes the structure and nothing that is of the other coach alone', async () => {
    const io = literalIo(store.root);
    expect(await runProgram(['new-shell', 'T-2', '--from', 'T-1'], io)).toBe(0);
    expect(io.messages().match(/^ {2}\d\. /gmu)).toHaveLength(3);
    expect(textOf('shell.yaml')).toContain('- {id: rear, x: 160 in, track: 66 in, dual: yes}');
    expect(textOf('shell.yaml')).not.toMatch(/1M8GDM|gvwr: \d|gawr: \d|bare:/u);
    expect(textOf('members.yaml')).toContain('{id: FL-2, part: floor rail right, stage: floor, section: RT2x2x1/8');
    expect(textOf('members.yaml')).not.toContain('cut_length');
    expect(textOf('services/dc.yaml')).toMatch(/^service: House 12 V\nmedium: dc\ncircuits:$/mu);
    // Tickets and tests start anew, with the examples that teach the format.
    expect(textOf('weights.yaml')).toMatch(/^#/u);
    expect(textOf('tests.yaml')).not.toMatch(/^- /mu);
    const check = literalIo(store.root);
    await runProgram(['check', 'T-2', '--json'], check);
    expect(JSON.parse(check.answer()).counts.error).toBe(0);
  });

  it('says so where there is no such shell, and leaves nothing behind', async () => {
    const io = literalIo(store.root);
    expect(await runProgram(['new-shell', 'T-3', '--from', 'T-9'], io)).toBe(2);
    expect(io.messages()).toContain('No shell T-9');
    expect(await runProgram(['check', 'T-3'], literalIo(store.root))).toBe(2);
  });

  it('lets no date, heat, lot, welder or serial number of a finished shell through', async () => {
    const known = readKnown(await readStoreText(DEMO, 'OV-021'), 'OV-021');
    const text = [...templateTexts(known, 'OV-030').values()].join('');
    const typed = (key: string): readonly string[] => [
      ...new Set(
        known.records
          .filter(({ file }) => file.startsWith('shells/'))
          .flatMap(({ data }) => (data[key] === undefined ? [] : String(data[key]))),
      ),
    ];
    for (const key of ['heat', 'serial', 'welder', 'date']) {
      const leaked = typed(key).filter((value) => new RegExp(`${key}: "?${value}`, 'u').test(text));
      expect(leaked, key).toEqual([]);
    }
    expect(text).not.toMatch(/\b20\d\d-\d\d-\d\d|inspections|photos:|\blot:|expires|vin:|customer/u);
    expect(text.match(/^\s*- \{id: W-/gmu)).toHaveLength(known.ofKind('weld').length);
  });
});
