import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Node, parseDocument } from 'yaml';
import type { Place } from '../../src/finding.js';
import { OPTIONS, quickList } from '../../src/source/parse.js';
import { Plain } from '../../src/source/plain.js';
import { mayBePlain, NOT_PLAIN, quickDocument } from '../../src/source/quick.js';

const noPlace = (): Place => ({ file: '', line: 1, column: 1, endLine: 1, endColumn: 1 });

/** The second opinion: the yaml package over the whole text. Undefined where it finds a fault. */
function whole(text: string): unknown {
  const parsed = parseDocument(text, OPTIONS);
  if (parsed.errors.length > 0) return undefined;
  const plain = new Plain(text, noPlace);
  const data = plain.read(parsed.contents as Node | null);
  const { findings, faults, hasBlanks, broken } = plain;
  return { data, findings, faults, hasBlanks, broken };
}

/** The quick way; undefined where it leaves the text to the whole. */
function quick(text: string): unknown {
  if (!mayBePlain(text)) return undefined;
  const plain = new Plain(text, noPlace);
  const items: unknown[] = [];
  const list = quickList(text, (item) => void ('plain' in item ? items.push(item.plain) : items.push(...plain.items(item.node))));
  const data = list ? items : quickDocument(text);
  const { findings, faults, hasBlanks, broken } = plain;
  return data === NOT_PLAIN ? undefined : { data, findings, faults, hasBlanks, broken };
}

/** Read quickly or not at all, never another way. */
function holds(text: string): boolean {
  const found = quick(text);
  if (found !== undefined) expect(found, text).toEqual(whole(text));
  return found !== undefined;
}

const files = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((one) => {
    const name = path.join(folder, one.name);
    return one.isDirectory() ? files(name) : name.endsWith('.yaml') ? [name] : [];
  });
const DEMO = files(path.resolve('demo-data')).map((name) => readFileSync(name, 'utf8'));

describe('what is written plainly', () => {
  it('reads as the yaml package reads it, in every file of the demo, most of which are plain', () => {
    const plain = DEMO.filter(holds);
    expect(plain.length).toBeGreaterThan(DEMO.length * 0.8);
  });

  it.each([
    [
      'a block with blocks',
      'a: 1\nb:\n  c: x y # note\n\n  # note\n  d:\n  - 1\n  - e: [1 in, {f: "g: h"}]\n    i: j\nk: 5\'-6"\n',
    ],
    ['records in brackets over several lines', '# head\n- {id: A, at: [1 in,\n   2 in], note: "a, b"}\n\n- {id: B, ok: true}\n'],
    ['no line end', '- id: A'],
    ['times, parts of an inch, figures', '- {at: 10:15, on: 1-1/2 in, no: 0447, x: -5, y: 4.50, z: -0, e: 1e3}\n'],
  ])('reads %s', (_, text) => {
    expect(holds(text)).toBe(true);
  });

  it.each([
    ['a key twice', 'a: 1\na: 2\n'],
    ['a key without a value', 'a: 1\nb:\n'],
    ['a key of the shop’s own', 'a: 1\nx-b: 2\n'],
    ['a value that goes on in the next line', 'a: one\n  two\n'],
    ['a comma within a number', 'a: {gawr: 14,600 lb}\n'],
    ['an alias', 'a: &b 1\nc: *b\n'],
    ['a tag', 'a: !!int 1\n'],
    ['a tab', 'a:\tb\n'],
    ['an escape', 'a: "\\x41"\n'],
    ['two colons', 'a: b: c\n'],
    ['a bracket left open', 'a: [1, 2\nb: 3\n'],
    ['a bracket that goes on at the margin', 'a: [1,\n2]\n'],
    ['nothing', 'a: null\n'],
    ['the prototype', '__proto__: 1\n'],
    ['a second document', 'a: 1\n---\nb: 2\n'],
  ])('leaves %s to the reader of all YAML', (_, text) => {
    expect(quick(text)).toBeUndefined();
  });

  const PIECES = [
    ...[
      '- ',
      '  ',
      '    ',
      '\n',
      '\n  ',
      '\n- ',
      '\n    - ',
      '\n   ',
      ' ',
      ': ',
      ':',
      ':\n',
      ', ',
      ',',
      ',\n   ',
      '{',
      '}',
      '[',
      ']',
      '# ',
      ' # x',
      '#',
    ],
    ...[
      '"',
      "'",
      '"a, b"',
      "'c: d'",
      '|',
      '>',
      '-',
      '--- ',
      '?',
      '? ',
      '!',
      '%',
      '@',
      'id',
      'id: ',
      'b: ',
      'x-c: ',
      '1',
      '600 lb',
      '5\'-6"',
      'null',
      '~',
      'true',
      '...',
      'ü',
      '\u00a0',
      '1/2',
    ],
  ];
  const mutated = fc
    .tuple(
      fc.constantFrom(
        ...DEMO.map((text) => text.slice(0, text.lastIndexOf('\n- ', 1200) + 1)),
        'a: 1\nb:\n  - c: {d: e, f: [1, 2]}\n    g: h\n',
        '- {a: b,\n   c: d}\n- e: f\n',
      ),
      fc.array(fc.tuple(fc.nat(), fc.nat(4), fc.constantFrom(...PIECES)), { minLength: 1, maxLength: 3 }),
    )
    .map(([text, edits]) =>
      edits.reduce((now, [where, gone, put]) => {
        const at = where % (now.length + 1);
        return now.slice(0, at) + put + now.slice(at + gone);
      }, text),
    );
  const runs = Number(process.env.SHELLBOOK_FUZZ ?? 0) || 400;

  it('reads as the yaml package does whatever is put in or cut out, or leaves it alone', () => {
    let read = 0;
    fc.assert(
      fc.property(mutated, (text) => {
        if (holds(text)) read += 1;
      }),
      { numRuns: runs },
    );
    expect(read).toBeGreaterThan(runs / 10);
  });

  it('reads as the yaml package does whatever is put together from signs of YAML, or leaves it alone', () => {
    const made = fc.array(fc.constantFrom(...PIECES), { minLength: 1, maxLength: 14 }).map((some) => some.join(''));
    fc.assert(
      fc.property(made, (text) => void holds(text)),
      { numRuns: runs * 2 },
    );
  });
});
