import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { bar } from '../../src/cli/report/bars.js';
import { findingsText } from '../../src/cli/report/findings.js';
import { envelope } from '../../src/cli/report/json.js';
import { paint } from '../../src/cli/report/paint.js';
import { printable } from '../../src/cli/report/printable.js';
import { shownIn } from '../../src/cli/report/shown.js';
import { textTable } from '../../src/cli/report/tables.js';
import { PLAIN_COLUMNS, paragraph, widthOf } from '../../src/cli/report/wrap.js';
import type { Finding } from '../../src/finding.js';

const finding = (line: number, given: Partial<Finding> = {}): Finding => ({
  rule: 'weld.joint-unrecorded',
  severity: 'warning',
  message: `Joint ${line} has no weld.`,
  ids: [`M-${line}`],
  place: { file: 'members.yaml', line, column: 3, endLine: line, endColumn: 6 },
  ...given,
});

describe('findings on a terminal', () => {
  const forty = Array.from({ length: 40 }, (_, i) => finding(i + 1));

  it('become one heading, three examples and a count where they are alike', () => {
    const text = findingsText(forty, () => '', paint(false), false);
    expect(text.split('\n')[0]).toBe('warning weld.joint-unrecorded, 40 findings');
    expect(text.match(/members\.yaml:/gu)).toHaveLength(3);
    expect(text).toContain('and 37 more');
  });

  it('are all there when asked for', () => {
    expect(findingsText(forty, () => '', paint(false), true).match(/members\.yaml:/gu)).toHaveLength(40);
  });

  it('come errors first, decided ones last', () => {
    const text = findingsText(
      [
        { ...finding(1), decidedBy: 'NC-1' },
        finding(2, { rule: 'a.note', severity: 'note' }),
        finding(3, { rule: 'a.error', severity: 'error' }),
      ],
      () => '',
      paint(false),
      false,
    );
    const order = ['a.error', 'a.note', 'NC-1.'].map((part) => text.indexOf(part));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order).not.toContain(-1);
  });

  it('keep to 80 columns', () => {
    const long = finding(1, { message: 'word '.repeat(60) });
    const lines = findingsText([long], () => '', paint(false), false).split('\n');
    expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(80);
  });
});

describe('a table', () => {
  it('lines numbers up on the right and lets one column give way', () => {
    const text = textTable(
      [{ head: 'id' }, { head: 'what', wrap: true }, { head: 'kg', align: 'right' }],
      [
        ['A', 'long '.repeat(30), '9'],
        ['BB', 'short', '1,200'],
      ],
    );
    const lines = text.split('\n');
    expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(80);
    expect(lines.filter((line) => line.endsWith('    9'))).toHaveLength(1);
    expect(lines.at(-1)).toMatch(/^BB {2}short {2,}1,200$/u);
  });
});

describe('the columns that a text takes', () => {
  // Unicode Standard Annex 11: East Asian Wide takes two; a combining mark (general category Mn) takes none.
  it.each([
    ['DC-30/S1', 8],
    ['\u4e2d\u6587', 4],
    ['\ud55c\uae00', 4],
    ['e\u0301t\u00e9', 3],
    ['\u0645\u0631\u062d\u0628\u0627', 5],
    ['left \u4e2d', 7],
  ])('%s: %i', (text, columns) => {
    expect(widthOf(text)).toBe(columns);
    expect(widthOf(paint(true).error(text))).toBe(columns);
  });

  it('are what the tables of Unicode say, also where they were not looked at', () => {
    const signs = Array.from({ length: 0x2600 }, (_, code) => String.fromCharCode(code)).filter((sign) => !/\s/u.test(sign));
    expect(signs.filter((sign) => widthOf(sign) !== stringWidth(sign))).toEqual([]);
    const plain = signs.filter((sign) => PLAIN_COLUMNS.test(sign));
    expect(plain.length).toBeGreaterThan(250);
    for (let step = 1; step < 5; step++) {
      const text = plain.map((_, i) => plain[(i * step) % plain.length]).join('');
      expect(stringWidth(text)).toBe(text.length);
    }
  });

  it('keep a table in line whatever the script', () => {
    const rows = [
      ['\u4e2d\u6587', 'x'],
      ['abcd', 'x'],
    ];
    const lines = textTable([{ head: 'name' }, { head: 'what' }], rows, '')
      .split('\n')
      .slice(1);
    expect(new Set(lines.map((line) => widthOf(line.slice(0, line.indexOf('x'))))).size).toBe(1);
  });
});

describe('a bar', () => {
  it('marks the limit at three quarters, and shows what the load may be as well', () => {
    expect(bar(50, 100, 0, 8)).toBe('███   |  ');
    expect(bar(50, 100, 17, 8)).toBe('███▒  |  ');
    expect(bar(133, 100, 0, 8)).toBe('██████|██');
    expect(bar(99.9, 100, 0, 8)).toBe('█████ |  ');
    expect(bar(99.9, 100, 1, 8)).toBe('█████▒|▒ ');
    expect(bar(100.1, 100, 0, 8)).toBe('██████|█ ');
  });
});

describe('figures', () => {
  it('round down where more would promise too much', () => {
    const us = shownIn('us');
    // FLU-01: 1 lb = 0.45359237 kg exactly
    expect(us.massDown(0.45359237 * 99.9)).toBe('99');
    expect(us.massDown(0.45359237 * 100)).toBe('100');
    expect(us.massDown(-0.45359237 * 0.5)).toBe('−1');
    expect(us.mass(0.45359237 * 99.9)).toBe('100');
  });

  it('come once, in the first of the store where it shows both systems', () => {
    expect(['us', 'metric', 'both'].map((units) => shownIn(units as 'us').massUnit)).toEqual(['lb', 'kg', 'lb']);
  });
});

describe('the JSON envelope', () => {
  it('has its four keys first, nulls for what is missing, and no noise of arithmetic', () => {
    const text = envelope('weights', 'QF-007', null, { a_kg: 0.1 + 0.2, b_kg: undefined, c_kg: -1e-12, d_kg: Number.NaN });
    expect(JSON.parse(text)).toEqual({
      shellbook: 1,
      command: 'weights',
      shell: 'QF-007',
      revision: null,
      a_kg: 0.3,
      b_kg: null,
      c_kg: 0,
      d_kg: null,
    });
    expect(Object.keys(JSON.parse(text)).slice(0, 4)).toEqual(['shellbook', 'command', 'shell', 'revision']);
  });
});

describe('text of a record', () => {
  it('cannot move the cursor, set colours of its own or turn the writing round', () => {
    expect(printable('a\u001b[2Jb\u001b]0;title\u0007c\u202ed\u009be\u061c')).toBe(
      'a\\u{1b}[2Jb\\u{1b}]0;title\\u{7}c\\u{202e}d\\u{9b}e\\u{61c}',
    );
    expect(printable('tab\tand\nline')).toBe('tab\tand\nline');
  });

  it('wraps under its bullet', () => {
    expect(paragraph('one two', '- ')).toBe('- one two');
    expect(paragraph('word '.repeat(30).trim(), '- ').split('\n')[1]).toMatch(/^ {2}word/u);
  });
});
