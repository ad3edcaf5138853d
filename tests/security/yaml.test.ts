/**
 * A file that is small to send and large to read is told, or read, in seconds; words that mean something to JavaScript are words. Alias
 * bombs, tags, merge keys, nesting and files of 300 MB: tests/source/document.test.ts, tests/schema/samples, tests/cli/hostile.test.ts.
 */
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { smallStore } from '../book/small-store.js';
import { loadOne } from '../support/store.js';

const COMPONENTS = 'shells/T-1/components.yaml';
const many = (count: number, one: (i: number) => string, between = ''): string =>
  Array.from({ length: count }, (_, i) => one(i)).join(between);

const BOMBS: readonly (readonly [string, string, RegExp])[] = [
  ['one word of fifteen million signs', `- {id: A, name: "${'x'.repeat(15e6)}", mass: 1 lb}\n`, /Missing key `at`/u],
  ['a text of half a million lines', `- id: A\n  name: |\n${'    words\n'.repeat(5e5)}`, /Missing key `mass`/u],
  [
    'a record of a hundred thousand keys',
    `- id: A\n${many(1e5, (i) => `  k${i}: 1\n`)}`,
    /has 100001 keys, expected 300 at most/u,
  ],
  ['the same on one line', `- {id: A, ${many(1e5, (i) => `k${i}: 1`, ', ')}}\n`, /has 100001 keys, expected 300 at most/u],
  ['one key a hundred thousand times', `- id: A\n${'  name: x\n'.repeat(1e5)}`, /has 100001 keys/u],
  ['fifty thousand items that are no records', '- a\n'.repeat(5e4), /Found `a` in the list/u],
  ['twenty thousand records of one id', '- {id: A, name: x, mass: 1 lb, at: [0 in, 0 in, 0 in]}\n'.repeat(2e4), /`A`/u],
  ['fifty thousand aliases of one record', `- &a {id: A, name: x}\n${'- *a\n'.repeat(5e4)}`, /unfold without end/u],
  ['aliases of aliases', many(3e4, (i) => `- &a${i} {id: A${i}}\n- *a${i}\n`), /unfold without end/u],
  ['an alias of itself', '- &a {id: A, name: *a}\n', /nested too deeply/u],
  ['two hundred thousand brackets', '{'.repeat(2e5), /not YAML/u],
  ['keys within keys on one line', '? '.repeat(2e4), /not YAML/u],
  ['lists within lists on one line', '- '.repeat(2e4), /not YAML|too deeply/u],
  [
    'a number of half a million figures',
    `- {id: A, name: x, mass: ${'1'.repeat(5e5)} lb, at: [0 in, 0 in, 0 in]}\n`,
    /Found `1111/u,
  ],
  [
    'a number that nearly ends, again and again',
    `- {id: A, name: x, mass: "${'1-'.repeat(2e5)}", at: [0 in, 0 in, 0 in]}\n`,
    /Found/u,
  ],
  [
    'a unit behind three hundred thousand blanks',
    `- {id: A, name: x, mass: "1${' '.repeat(3e5)}lb x", at: [0 in, 0 in, 0 in]}\n`,
    /Found/u,
  ],
  ['an id of a million signs', `- {id: ${'a'.repeat(1e6)}, name: x}\n`, /expected an id/u],
];

describe('a bomb of YAML', () => {
  it.each(BOMBS)('of %s is told in seconds', (_what, text, message) => {
    const from = process.cpuUsage();
    const { findings } = loadOne({ [COMPONENTS]: text });
    const { user } = process.cpuUsage(from);
    expect(findings.some((finding) => message.test(finding.message))).toBe(true);
    for (const finding of findings.slice(0, 100)) expect(finding.message.length).toBeLessThan(420);
    expect(user / 1e6).toBeLessThan(10);
  });
});

/** Names that every object of JavaScript has. */
const NAMES = ['__proto__', 'constructor', 'prototype', 'toString', 'valueOf', 'hasOwnProperty'];

describe('a name of JavaScript', () => {
  it.each(NAMES)('is no key of a record, and changes no other: %s', (name) => {
    const { findings } = loadOne({
      [COMPONENTS]: `- {id: A, name: x, mass: 1 lb, at: [0 in, 0 in, 0 in], ${name}: {polluted: yes}}\n`,
    });
    expect(findings.map(({ message }) => message).join()).toContain(name);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    expect(Object.prototype.toString.call(null)).toBe('[object Null]');
  });

  it.each(NAMES)('is an id and a name as any other: %s', (name) => {
    const shell = 'shells/T-1/';
    const { model, findings } = loadOne(
      smallStore({
        [COMPONENTS]: `- {id: ${name}, name: ${name}, mass: 70 lb, at: [300 in, 0 in, -4 in], stage: ${name}, part: ${name}, photos: [${name}]}\n`,
        [`${shell}weights.yaml`]: `- {id: TK-5, date: 2026-06-30, stage: walls, scale: SC-1, condition: {fuel: 1, ${name}: 1/2, occupants: [${name}], missing: [${name}], bays: {${name}: 3 lb}}, readings: {steer: 9000 lb, drive: 11000 lb, ${name}: 3 lb}}\n`,
        [`${shell}services/odd.yaml`]: `service: ${name}\nmedium: dc\ncircuits:\n  - {id: ${name}, name: x, protection: {kind: fuse, rating: 5 A, at: ${name}}}\nnodes:\n  - {id: ${name}/1, kind: load, at: [100 in, 0 in, 0 in], circuit: ${name}}\nruns:\n  - {id: ${name}/2, circuit: ${name}, from: ${name}/1, to: ${name}, zones: [${name}], conductor: {type: ${name}}}\n`,
      }),
    );
    const { figures, findings: judged } = assess(model, findings);
    expect(Number.isFinite(figures.materials.primaryKg)).toBe(true);
    expect(model.shell.components.map(({ id }) => id)).toEqual([name]);
    for (const { message } of judged) expect(message).not.toMatch(/function|native code|\[object|undefined|NaN/u);
  });
});
