import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Habits, readCell, writeCell } from '../../src/entry/cells.js';
import { columnFor, columnsOf, type EntryColumn } from '../../src/entry/columns.js';
import { guarded, unguarded } from '../../src/entry/guard.js';
import { ENTRY_KINDS, type EntryKind } from '../../src/entry/homes.js';

const column = (kind: EntryKind, key: string): EntryColumn => columnFor(kind, key) as EntryColumn;
const read = (kind: EntryKind, key: string, text: string, habits?: Habits) => {
  const cell = readCell(text, column(kind, key), habits);
  return cell.ok ? cell.value : cell;
};

describe('columns of a kind', () => {
  it.each(ENTRY_KINDS)('of a %s each lead to the field that they name', (kind) => {
    for (const { key, path } of columnsOf(kind)) expect(columnFor(kind, key)?.path, key).toEqual(path);
  });

  it('open into what only the records know', () => {
    expect(column('ticket', 'readings.steer.left')).toMatchObject({
      path: ['readings', 'steer', 'left'],
      form: { dimension: 'mass' },
    });
    expect(column('weld', 'inspections.2.by').path).toEqual(['inspections', 1, 'by']);
    expect(column('member', 'from.y').path).toEqual(['from', 1]);
    expect(columnFor('member', 'colour')).toBeUndefined();
    expect(columnFor('member', 'part.colour')).toBeUndefined();
  });

  it('say which fields a record must have', () => {
    const needed = columnsOf('node')
      .filter(({ required }) => required)
      .map(({ key }) => key);
    expect(needed).toEqual(['id', 'kind']);
    expect(columnsOf('panel').find(({ key }) => key === 'fixing.method')?.required).toBe(false);
  });
});

describe('a cell', () => {
  it('says the outcome of an inspection as inspectors write it, and nothing else by such a word', () => {
    const result = 'inspections.1.result';
    for (const text of ['accept', 'Accepted', 'PASS', 'passed', 'ok']) expect(read('weld', result, text), text).toBe('accept');
    for (const text of ['reject', 'Rejected', 'Fail', 'failed']) expect(read('weld', result, text), text).toBe('reject');
    expect(read('weld', result, 'see note')).toBe('see note');
    expect(read('finding', 'decision', 'fail')).toBe('fail');
    expect(read('weld', 'type', 'pass')).toBe('pass');
  });

  it.each([
    ['member', 'from', '[-10 in, 0, 3 in]', ['-10 in', '0', '3 in']],
    ['member', 'from', '-10 in; 0; 3 in', ['-10 in', '0', '3 in']],
    [
      'member',
      'plate.outline',
      '0,0,1; 2,0,1; 2,2,1',
      [
        ['0', '0', '1'],
        ['2', '0', '1'],
        ['2', '2', '1'],
      ],
    ],
    ['weld', 'joins', 'SF-L + CB-04', ['SF-L', 'CB-04']],
    ['weld', 'joins', 'SF-L, CB-04', ['SF-L', 'CB-04']],
    [
      'weld',
      'joins',
      'SF-L + CB-04; SF-R + CB-04',
      [
        ['SF-L', 'CB-04'],
        ['SF-R', 'CB-04'],
      ],
    ],
    ['run', 'zones', 'TC RL', ['TC', 'RL']],
    ['zone', 'carries', 'dc; data', ['dc', 'data']],
    ['weld', 'type', 'Fillet', 'fillet'],
    [
      'weld',
      'inspections',
      '[{method: VT, by: J2, date: 2026-02-11, result: accept}]',
      [{ method: 'VT', by: 'J2', date: '2026-02-11', result: 'accept' }],
    ],
  ] as const)('of a %s’s %s reads %j', (kind, key, text, value) => {
    expect(read(kind, key, text)).toEqual(value);
  });

  it('of words is text, whatever stands in it', () => {
    expect(read('member', 'note', '[see sheet 3]')).toBe('[see sheet 3]');
    expect(read('ticket', 'readings.steer', '{left: 1 lb, right: 2 lb}')).toEqual({ left: '1 lb', right: '2 lb' });
  });

  it('takes its unit from the head of the column, where it has none of its own', () => {
    expect(read('member', 'cut_length', '5-1/4', { unit: 'in' })).toBe('5-1/4 in');
    expect(read('member', 'cut_length', '133 mm', { unit: 'in' })).toBe('133 mm');
    expect(read('member', 'from', '-10, 0, 3', { unit: 'in' })).toEqual(['-10 in', '0 in', '3 in']);
    expect(read('member', 'part', '12', { unit: 'in' })).toBe('12');
  });

  it('reads decimal commas where the sheet has them', () => {
    const habits = { decimalComma: true, unit: 'mm' };
    expect(read('member', 'cut_length', '5,25', habits)).toBe('5.25 mm');
    expect(read('member', 'cut_length', '1.905,5 mm', habits)).toBe('1905.5 mm');
    expect(read('member', 'from', '-10,5; 0; 3', habits)).toEqual(['-10.5 mm', '0 mm', '3 mm']);
    expect(read('member', 'part', 'rail, left', habits)).toBe('rail, left');
  });

  it('reads days as the sheet writes them', () => {
    expect(read('member', 'date', '2/11/2026', { dates: 'm/d/y' })).toBe('2026-02-11');
    expect(read('member', 'date', '2/11/2026', { dates: 'd/m/y' })).toBe('2026-11-02');
    expect(read('member', 'date', '11.2.2026')).toBe('2026-02-11');
    expect(read('photo', 'taken', '2026-02-11 14:30')).toBe('2026-02-11T14:30');
    expect(read('member', 'date', '2/11/2026')).toBe('2/11/2026');
  });

  it('tells a list that is not closed', () => {
    expect(read('weld', 'joins', '[SF-L, CB-04')).toMatchObject({ ok: false, message: expect.stringContaining(']') });
  });

  it('is written with the unit of its file', () => {
    expect(writeCell([371.5, -47, '4 ft'], column('member', 'from'), { length: 'in' })).toBe('[371.5 in, -47 in, 4 ft]');
    expect(writeCell(['SF-L', 'CB-04'], column('weld', 'joins'))).toBe('SF-L + CB-04');
    expect(
      writeCell(
        [
          ['SF-L', 'CB-04'],
          ['SF-R', 'CB-04'],
        ],
        column('weld', 'joins'),
      ),
    ).toBe('[[SF-L, CB-04], [SF-R, CB-04]]');
  });
});

/** OWASP, CSV Injection: cells that begin with one of these are run as formulas. */
describe('the guard against formulas', () => {
  it.each(['=1+1', '+SUM(A1)', '-10 in', '@cmd', '\tx', "'=1"])('stands before %j', (cell) => {
    expect(guarded(cell)).toBe(`'${cell}`);
  });

  it.each(['-10', '+3.5', '10 in', "'tis", ''])('leaves %j as it is', (cell) => {
    expect(guarded(cell)).toBe(cell);
  });

  it('is taken away again by reading, whatever the cell', () => {
    const signs = fc.string({ unit: fc.constantFrom("'", '=', '+', '-', '@', '\t', 'a', '1', ' ') });
    fc.assert(fc.property(signs, (cell) => unguarded(guarded(cell)) === cell));
    const runs = (cell: string): boolean => /^[=+\-@\t\r]/u.test(cell) && !/^[+-]?\d+(\.\d+)?$/u.test(cell);
    fc.assert(fc.property(signs, (cell) => !runs(guarded(cell))));
  });
});
