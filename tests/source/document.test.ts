import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readDocument } from '../../src/source/document.js';
import { NodeSource } from '../../src/source/source.js';

const read = (text: string) => readDocument('a.yaml', text);
const sourceOf = (text: string) => {
  const document = read(text);
  return new NodeSource(document, document.root);
};
const at = (text: string, ...path: (string | number)[]) => {
  const { line, column, endColumn } = sourceOf(text).place(...path);
  return [line, column, endColumn];
};

describe('plain data', () => {
  test('nothing typed is lost: numbers only where they print back', () => {
    expect(read('{a: 12, b: 4.5, c: 4.50, d: 0447, e: 1e3, f: 0x10, g: .5, h: -3, i: 1_000, j: +5}').data).toEqual({
      a: 12,
      b: 4.5,
      c: '4.50',
      d: '0447',
      e: '1e3',
      f: '0x10',
      g: '.5',
      h: -3,
      i: '1_000',
      j: '+5',
    });
  });

  test('quoted stays text; blank, null and ~ are nothing; yes stays text', () => {
    expect(read('{a: "12", b: , c: null, d: ~, e: yes, f: true, g: "true"}').data).toEqual({
      a: '12',
      b: null,
      c: null,
      d: null,
      e: 'yes',
      f: true,
      g: 'true',
    });
  });

  test('aliases unfold, merge keys do not', () => {
    expect(read('a: &x [1, 2]\nb: *x').data).toEqual({ a: [1, 2], b: [1, 2] });
    expect(read('a: &x {k: 1}\nb: {<<: *x}').data).toEqual({ a: { k: 1 }, b: { '<<': { k: 1 } } });
  });

  test('a byte order mark and CRLF change nothing', () => {
    expect(read('\uFEFFa: 1\r\nb: 2\r\n').data).toEqual({ a: 1, b: 2 });
    expect(at('\uFEFFa: 1\r\nb: 2\r\n', 'a')).toEqual([1, 4, 5]);
    expect(at('\uFEFFa: 1\r\nb: 2\r\n', 'b')).toEqual([2, 4, 5]);
  });

  test('a second document is told, never dropped', () => {
    const { broken, findings } = read('- {id: A}\n---\n- {id: B}\n');
    expect(broken).toBe(true);
    expect(findings[0]?.message).toContain('Found `---`, expected one document in a file');
    expect(findings[0]?.place.line).toBe(2);
    expect(read('---\n- {id: A}\n').broken).toBe(false);
  });

  test('a cycle of aliases, a key like __proto__ and deep nesting are told', () => {
    expect(read('a: &x [*x]').findings[0]?.rule).toBe('format.yaml');
    expect(read('__proto__: {polluted: 1}').findings[0]?.rule).toBe('format.yaml');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    expect(read('['.repeat(20_000)).broken).toBe(true);
    expect(read(`${'['.repeat(100)}${']'.repeat(100)}`).broken).toBe(true);
  });

  test('never throws, and places lie within the text', () => {
    const signs = fc.constantFrom(
      'a',
      ':',
      ' ',
      '\n',
      '- ',
      '{',
      '}',
      '[',
      ']',
      ',',
      '"',
      "'",
      '&x ',
      '*x',
      '!t ',
      '#',
      '1',
      '|',
      '\t',
      '?',
    );
    fc.assert(
      fc.property(fc.array(signs, { maxLength: 40 }), (parts) => {
        const text = parts.join('');
        const lines = text.split('\n').length;
        for (const { place } of read(text).findings) {
          expect(place.line).toBeGreaterThanOrEqual(1);
          expect(place.line).toBeLessThanOrEqual(lines);
          expect(place.column).toBeGreaterThanOrEqual(1);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('places', () => {
  const text = 'id: W-1\njoins: [A, B]\nbond:\n  air: 22 C\nlist:\n  - {id: one, x: 5}\n  - {id: two, x: 6}\nempty:\n';

  test('of a value, an item, a nested value', () => {
    expect(at(text, 'id')).toEqual([1, 5, 8]);
    expect(at(text, 'joins')).toEqual([2, 8, 14]);
    expect(at(text, 'joins', 1)).toEqual([2, 12, 13]);
    expect(at(text, 'bond', 'air')).toEqual([4, 8, 12]);
    expect(at(text, 'list', 1, 'x')).toEqual([7, 18, 19]);
  });

  test('an item of a list by its id', () => {
    expect(at(text, 'list', 'two', 'x')).toEqual([7, 18, 19]);
  });

  test('a block of several lines is blamed at its key, an empty value too', () => {
    expect(at(text, 'bond')).toEqual([3, 1, 5]);
    expect(at(text, 'empty')).toEqual([8, 1, 6]);
  });

  test('what was not typed is blamed at its nearest parent, a record at its id', () => {
    expect(at(text, 'bond', 'surface')).toEqual([3, 1, 5]);
    expect(at(text, 'nothing')).toEqual([1, 5, 8]);
    expect(at(text)).toEqual([1, 5, 8]);
    expect(at(text, 'list', 0, 'y')).toEqual([6, 5, 20]);
  });

  test('keys have places of their own', () => {
    const { line, column, endColumn } = sourceOf(text).placeOfKey('bond', 'air');
    expect([line, column, endColumn]).toEqual([4, 3, 6]);
  });
});
