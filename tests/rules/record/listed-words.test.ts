import { expect, it } from 'vitest';
import type { Model } from '../../../src/model/shell.js';
import { wordNotListed } from '../../../src/rules/record/word-not-listed.js';
import { buildModel } from '../../support/build.js';
import { node, run } from '../../support/services.js';
import { loadOne } from '../../support/store.js';
import { weld } from '../../support/structure.js';
import { judgeOne } from '../judge-one.js';

// The program's own lists: common practice, no source. Letters of the methods: ISO 9712, from memory.

const proposed = (model: Model) => judgeOne(wordNotListed, model).map(({ ids, proposes }) => [ids[0], proposes?.[0]?.value]);

it('asks what a pipe is of, and keeps the size that stands before it', () => {
  const [a, b] = [node('A', [0, 0, 0]), node('B', [1000, 0, 0])];
  const of = (id: string, material: string) =>
    run(id, a, b, [], { size: { text: `1/2 in ${material}`, nominalMm: 12.7, material } });
  const runs = [of('R-1', 'pex'), of('R-2', 'blue PEX line'), of('R-3', 'xyzzy-91'), of('R-4', 'Copper Tube')];
  expect(proposed(buildModel({ nodes: [a, b], runs }))).toEqual([
    ['R-2', '1/2 in PEX'],
    ['R-3', undefined],
  ]);
});

it('takes `visual` and `vt` for VT, and no other word', () => {
  const look = (method: string) => ({ method, by: 'J2', date: '2026-03-03', result: 'accept' as const });
  const welds = [weld('W-1', [['A', 'B']], { inspections: [look('vt'), look('Visual'), look('by eye')] })];
  const findings = judgeOne(wordNotListed, buildModel({ welds }));
  expect(findings.map(({ message }) => message)).toEqual([expect.stringContaining('W-1 has the inspections 2 method `BY EYE`')]);
  expect(findings[0]).not.toHaveProperty('proposes');
});

it('takes the heaviest contents where the word is not listed, and says so', () => {
  const head = (more: string) =>
    `shell: T-1\ntitle: Test shell\ntanks:\n  - {id: RAIN, capacity: 100 L, at: [0 m, 0 m, 0 m], ${more}}\n`;
  const tankOf = (more: string) => loadOne({ 'shells/T-1/shell.yaml': head(more) });
  const loaded = tankOf('contents: rain water in bags');
  expect(loaded.model.shell.tanks[0]).toMatchObject({ densityKgM3: 1090, isDensityTaken: true });
  expect(loaded.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(tankOf('contents: rain water in bags, density: 1000 kg/m3').model.shell.tanks[0]).not.toHaveProperty('isDensityTaken');
  expect(tankOf('contents: mercury').findings.map(({ rule }) => rule)).toContain('format.missing-key');
});
