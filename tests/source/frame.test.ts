import { describe, expect, test } from 'vitest';
import { frame } from '../../src/source/frame.js';

const place = (line: number, column: number, endColumn: number, endLine = line) => ({
  file: 'a.yaml',
  line,
  column,
  endLine,
  endColumn,
});

describe('frame', () => {
  test('two lines before, the line, a caret under the words', () => {
    const text = '- id: S-1\n  shape: angle\n  depth: 5.25\n  width: 2 in\n';
    expect(frame(text, place(3, 10, 14))).toBe('1 | - id: S-1\n2 |   shape: angle\n3 |   depth: 5.25\n  |          ^^^^');
  });

  test('the first line has none before it; line numbers stand right', () => {
    expect(frame('a: b\n', place(1, 4, 5))).toBe('1 | a: b\n  |    ^');
    const ten = Array.from({ length: 12 }, (_, i) => `k${i}: v`).join('\n');
    expect(frame(ten, place(10, 1, 3))).toBe(' 8 | k7: v\n 9 | k8: v\n10 | k9: v\n   | ^^');
  });

  test('long lines are cut around the words, and the caret stays under them', () => {
    const text = `${'a'.repeat(300)}WRONG${'b'.repeat(300)}`;
    const [line = '', under = ''] = frame(text, place(1, 301, 306), 80).split('\n');
    expect(line.length).toBeLessThanOrEqual(80);
    expect(line.slice(under.indexOf('^'), under.lastIndexOf('^') + 1)).toBe('WRONG');
    expect(line).toMatch(/^1 \| ….*…$/u);
  });

  test('tabs stay tabs, so that the caret keeps its column', () => {
    expect(frame('\tkey: x', place(1, 7, 8))).toBe('1 | \tkey: x\n  | \t     ^');
  });

  test('control signs are not passed on; a place over several lines ends with its first', () => {
    expect(frame('a: \u001b[31mred', place(1, 4, 12))).not.toContain('\u001b');
    expect(frame('{a: b,\nc: d}', place(1, 1, 5, 2))).toBe('1 | {a: b,\n  | ^^^^^^');
  });

  test('nothing where the text has no such line', () => {
    expect(frame('a: b', place(7, 1, 2))).toBe('');
  });
});
