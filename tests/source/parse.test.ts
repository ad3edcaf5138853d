import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMap, isNode, isPair, isScalar, isSeq, type Node, parseDocument, type YAMLError } from 'yaml';
import { OPTIONS, parseInPieces } from '../../src/source/parse.js';

/** Every scalar with its text and place, and every collection with where it starts, in order. */
function shape(node: unknown): unknown {
  if (isPair(node)) return [shape(node.key), shape(node.value)];
  if (isMap(node)) return ['map', node.range?.[0], node.items.map(shape)];
  if (isSeq(node)) return ['seq', node.range?.[0], node.items.map(shape)];
  if (isScalar(node)) return [node.value, node.range, node.type];
  return isNode(node) ? node.constructor.name : node;
}
/** As a document is read: in pieces, else as a whole. */
const parseYaml = (text: string): { readonly contents: Node | null; readonly errors: readonly YAMLError[] } => {
  const contents = parseInPieces(text, () => {});
  return contents ? { contents, errors: [] } : parseDocument(text, OPTIONS);
};
const whole = (text: string): Node | null =>
  parseDocument(text, { schema: 'failsafe', uniqueKeys: false, prettyErrors: false }).contents;

const DEMO = path.resolve('demo-data/shells/OV-021');
const files = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((one) => {
    const name = path.join(folder, one.name);
    return one.isDirectory() ? files(name) : name.endsWith('.yaml') ? [name] : [];
  });

describe('a long list, parsed in pieces', () => {
  it('has every record at the same place as the whole parsed at once, for each file of the demo', () => {
    const long = files(DEMO).filter((name) => readFileSync(name, 'utf8').length > 33_000);
    expect(long.length).toBeGreaterThan(1);
    for (const name of long) {
      const text = readFileSync(name, 'utf8');
      expect(shape(parseYaml(text).contents)).toEqual(shape(whole(text)));
      const windows = text.replaceAll('\n', '\r\n');
      expect(shape(parseYaml(windows).contents)).toEqual(shape(whole(windows)));
    }
  });

  const filler = (count: number): string =>
    Array.from(
      { length: count },
      (_, i) => `- {id: M-${i}, at: [${i} in, 0 in, 1-1/2 in], note: "so it goes, on and on"}\n`,
    ).join('');
  const line = fc.constantFrom(
    '- {id: A, note: plain}\n',
    '- id: B\n  at: [1 in,\n       2 in, 3 in]\n',
    '- id: C\n  note: |\n    - no item\n\n    # no comment\n',
    '- id: D\n  note: "one\n    - two"\n',
    '# - {id: not there}\n',
    '- \n',
    '- - nested\n  - twice\n',
    '\n\n',
    '- {id: E, note: "a [ and a { and a #"}\n',
    '- id: F\n  note: >-\n    folded\n    lines\n',
  );
  it('reads whatever lies at a seam as the whole would', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(line, fc.integer({ min: 0, max: 220 })), { minLength: 4, maxLength: 8 }), (parts) => {
        const text = filler(300) + parts.map(([odd, count]) => odd + filler(count)).join('') + filler(300);
        expect(shape(parseYaml(text).contents)).toEqual(shape(whole(text)));
      }),
      { numRuns: 10 },
    );
  });

  it.each([
    ['a bracket left open', '- {id: A, at: [1 in, 2 in\n'],
    ['a quote left open', '- id: A\n  note: "never closed\n'],
    ['a tab', '-\tid: A\n\tnote: x\n'],
    ['a second document', '---\n- id: A\n'],
    ['a key in the list', 'id: A\n'],
  ])('tells %s just as the whole does', (_, odd) => {
    const text = filler(400) + odd + filler(400);
    const errors = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, prettyErrors: false }).errors;
    expect(parseYaml(text).errors.map((one) => [one.code, one.pos])).toEqual(errors.map((one) => [one.code, one.pos]));
    expect(errors.length).toBeGreaterThan(0);
  });

  it('keeps no node of a piece, and parses an item again where it is asked for', () => {
    const text = filler(900);
    const pieces: number[] = [];
    const list = parseInPieces(text, ({ items }) => pieces.push(items.length));
    expect(pieces.length).toBeGreaterThan(2);
    expect([pieces.reduce((a, b) => a + b, 0), list?.items.length, list?.items.at(-1) !== undefined]).toEqual([900, 900, true]);
    expect(list?.items[411]).toBe(list?.items[411]);
    expect([list?.items[900], list?.items.slice(-2).map(shape)]).toEqual([
      undefined,
      (whole(text) as unknown as { items: unknown[] }).items.slice(-2).map(shape),
    ]);
    // What is parsed again is parsed alone: the rest of the text is not looked at.
    expect(Object.keys(list?.items ?? {})).toEqual(['411', '898', '899']);
  });

  it('leaves anchors to the whole', () => {
    const text = `- &one {id: A}\n${filler(800)}- *one\n`;
    expect(shape(parseYaml(text).contents)).toEqual(shape(whole(text)));
  });
});
