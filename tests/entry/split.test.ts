import { describe, expect, it } from 'vitest';
import { matchHeads } from '../../src/entry/headers.js';
import { planImport } from '../../src/entry/plan.js';
import { readKnown } from '../../src/entry/record-index.js';
import { readSheet } from '../../src/entry/sheet.js';
import { textsOf } from '../../src/entry/texts.js';
import { storeText } from '../support/store.js';

const BYTES = 2000;
const SHEET = `id,kind,at\n${Array.from({ length: 100 }, (_, i) => `UB-${i},U-bolt,"${i} in, 0 in, 0 in"`).join('\n')}\n`;

const planned = (files: Readonly<Record<string, string>>) => {
  const known = readKnown(
    storeText({ 'shop.yaml': 'shop: {name: Q}\n', 'shells/T-1/shell.yaml': 'shell: T-1\n', ...files }),
    'T-1',
  );
  const sheet = readSheet('clamps.csv', Buffer.from(SHEET));
  const heads = matchHeads('clamp', sheet.heads, { said: new Map(), own: new Map() });
  const plan = planImport({ kind: 'clamp', sheet, heads, known, habits: {}, ahead: false });
  expect(plan.faults).toEqual([]);
  return textsOf('clamp', plan, known, undefined, BYTES);
};
const ids = (text: string): readonly string[] => [...text.matchAll(/\bid: (UB-\d+)\b/gu)].map((one) => one[1] as string);
const ALL = Array.from({ length: 100 }, (_, i) => `UB-${i}`);

describe('a sheet that makes a file too large to be read again', () => {
  it('goes on in further files of its kind, each small enough, and loses no row', () => {
    const texts = planned({});
    expect([...texts.keys()].slice(0, 3)).toEqual([
      'shells/T-1/clamps.yaml',
      'shells/T-1/clamps-2.yaml',
      'shells/T-1/clamps-3.yaml',
    ]);
    for (const text of texts.values()) expect(Buffer.byteLength(text)).toBeLessThanOrEqual(BYTES);
    expect([...texts.values()].flatMap(ids)).toEqual(ALL);
  });

  it('leaves a full file as it is, and takes no name that is taken', () => {
    const full = `- {id: UB-X, kind: U-bolt, at: [0 in, 0 in, 0 in], note: "${'n'.repeat(BYTES)}"}\n`;
    const texts = planned({ 'shells/T-1/clamps.yaml': full });
    expect(texts.has('shells/T-1/clamps.yaml')).toBe(false);
    expect(texts.has('shells/T-1/clamps-2.yaml')).toBe(true);
    expect([...texts.values()].flatMap(ids)).toEqual(ALL);
  });
});
