import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guarded, guardedText, unguarded } from '../../src/entry/guard.js';
import { countOf, ENTRY_KINDS, heldList, homeOf, kindNamed, listsOf } from '../../src/entry/homes.js';
import { DEFAULT_HEADS, nextId, numberHeadOf } from '../../src/entry/numbering.js';
import { inOrder, lentBy, missingFields, optionOf, readFields } from '../../src/entry/options.js';
import { readKnown } from '../../src/entry/record-index.js';
import { sameTyped, sameValue } from '../../src/entry/same.js';
import { roleOf } from '../../src/store/layout.js';

const known = (welds: readonly string[], more: Readonly<Record<string, string>> = {}) =>
  readKnown(
    {
      root: '',
      files: new Map([
        ['shop.yaml', 'shop: {name: S}\n'],
        ['shells/T-1/shell.yaml', 'shell: T-1\nchassis: {axles: [{id: steer, x: 0 in}]}\n'],
        ['shells/T-1/welds.yaml', welds.map((id) => `- {id: ${id}, procedure: P-1, by: A, date: 2026-04-01}\n`).join('')],
        ...Object.entries(more),
      ]),
      photos: new Map(),
    } as never,
    'T-1',
  );

describe('the next number', () => {
  it.each<[readonly string[], string | undefined]>([
    [[], 'W-0001'],
    [['W-0007', 'W-0112'], 'W-0113'],
    [['W-9', 'W-10'], 'W-11'],
    [['W-998', 'W-999'], 'W-1000'],
    // Most are numbered so; the odd ones mean something.
    [['A-01', 'A-02', 'B-9'], 'A-03'],
    [['left', 'right', 'A-1'], undefined],
    // Just half is enough.
    [['left', 'A-1'], 'A-2'],
    [['left', 'right'], undefined],
  ])('after %j is %s', (ids, next) => {
    expect(nextId('weld', known(ids))).toBe(next);
  });

  it('is free: not among those about to be added, nor taken by a record of another kind', () => {
    expect(nextId('weld', known(['W-1']), new Set(['W-2', 'W-3']))).toBe('W-4');
    expect(nextId('weld', known(['W-1'], { 'shells/T-1/findings.yaml': '- {id: W-2, note: x}\n' }))).toBe('W-3');
  });

  it('stands behind the shop’s own head', () => {
    expect(numberHeadOf('weld', known(['SEAM-01', 'SEAM-02']))).toBe('SEAM-');
    expect(numberHeadOf('weld', known(['left', 'right']))).toBeUndefined();
    expect(DEFAULT_HEADS).toMatchObject({ weld: 'W-', finding: 'NC-', component: 'CMP-' });
  });
});

describe('the same', () => {
  it('as measured: within a billionth, whatever the unit was typed as', () => {
    expect(sameValue(133.35, 133.35 * (1 + 5e-10))).toBe(true);
    expect(sameValue(133.35, 133.35 * (1 + 5e-9))).toBe(false);
    expect(sameValue(0, 5e-10)).toBe(true);
    expect(sameValue(0, 5e-9)).toBe(false);
    expect(sameValue([1, [2]], [1, [2]])).toBe(true);
    expect(sameValue([1, 2], [1])).toBe(false);
    expect(sameValue({ a: 1 }, { a: 1, b: undefined })).toBe(true);
    expect(sameValue({ a: 1 }, { a: 1, b: 2 })).toBe(false);
    expect(sameValue(undefined, null)).toBe(true);
    expect(sameValue(null, undefined)).toBe(true);
    expect(sameValue(null, '')).toBe(false);
    const length = (text: string) => ({ dimension: 'length', value: 25.4, text });
    expect(sameValue(length('1 in'), length('25.4 mm'))).toBe(true);
    expect(sameValue({ text: '1 in' }, { text: '25.4 mm' })).toBe(false);
    expect(sameValue(length('1 in'), { text: '25.4 mm', value: 25.4 })).toBe(false);
  });

  it('as typed: a yes, a number and a list of one, and nothing else', () => {
    expect(sameTyped(true, 'yes')).toBe(true);
    expect(sameTyped('no', false)).toBe(true);
    expect(sameTyped(12, '12')).toBe(true);
    expect(sameTyped('', undefined)).toBe(true);
    expect(sameTyped('CMP-04', ['CMP-04'])).toBe(true);
    expect(sameTyped(['CMP-04'], 'CMP-04')).toBe(true);
    expect(sameTyped(['A', 'B'], 'A')).toBe(false);
    expect(sameTyped([undefined], undefined)).toBe(false);
    expect(sameTyped(['A', 'B'], ['A', 'C'])).toBe(false);
    expect(sameTyped(['A'], ['A', 'B'])).toBe(false);
    expect(sameTyped({ a: 'x' }, { a: 'x' })).toBe(true);
    expect(sameTyped({ a: 'x' }, { a: 'y' })).toBe(false);
    expect(sameTyped({ a: 'x' }, 'x')).toBe(false);
    expect(sameTyped(null, undefined)).toBe(true);
  });
});

describe('a cell that a spreadsheet would run', () => {
  it('is text with an apostrophe, and comes back as it was', () => {
    // OWASP, CSV Injection: = + - @, tab, carriage return.
    for (const cell of ['=1+1', '+cmd', '-x', '@SUM(A1)', '\tx', '\r=x', ' =x', '\uff1dx', "'=x"])
      expect([guarded(cell), unguarded(guarded(cell))]).toEqual([`'${cell}`, cell]);
    for (const cell of ['12', '-3.5', '+4', 'a=b', '', "it's", "'quoted'"])
      expect([guarded(cell), unguarded(cell)]).toEqual([cell, cell]);
    expect(guardedText('=1+1')).toBe('=1+1');
    expect(guardedText("'=1")).toBe("''=1");
    fc.assert(fc.property(fc.string(), (cell) => unguarded(guarded(cell)) === cell || cell.startsWith("'")));
    fc.assert(fc.property(fc.string(), (cell) => unguarded(guardedText(cell)) === cell || !cell.startsWith("'")));
  });
});

describe('kinds by a word', () => {
  it('are found by one, many and the file’s name', () => {
    for (const word of ['member', 'members', 'Member']) expect(kindNamed(word), word).toBe('member');
    expect(kindNamed('people')).toBe('person');
    expect(kindNamed('loading-conditions')).toBe('loading condition');
    expect(kindNamed('loading_condition')).toBe('loading condition');
    expect(kindNamed('memberss')).toBeUndefined();
    expect(countOf(1, 'member')).toBe('1 member');
    expect(countOf(0, 'member')).toBe('0 members');
    expect(countOf(2, 'person')).toBe('2 people');
  });

  it('have a home, and each home holds them', () => {
    const of = (file: string) => listsOf(roleOf(file) as Parameters<typeof listsOf>[0]).map(({ kind }) => kind);
    expect(of('shells/T-1/members.yaml')).toEqual(['member']);
    expect(of('library/people.yaml')).toEqual(['person']);
    expect([...of('shells/T-1/services/gas.yaml')].sort()).toEqual(['circuit', 'node', 'run']);
    expect(of('shells/T-1/shell.yaml')).not.toContain('member');
    expect(of('shells/T-1/shell.yaml').length).toBeGreaterThan(0);
    for (const kind of ENTRY_KINDS) {
      const { in: where } = homeOf(kind);
      expect(heldList(kind).bare, kind).toBe(where === 'library' || where === 'shell');
      expect(heldList(kind).path.length, kind).toBeGreaterThan(0);
    }
  });
});

describe('fields on the command line', () => {
  it('are read with strokes or underscores, with a sign between or without, and by their key', () => {
    expect(readFields('node', ['--id', 'N-1', '--kind=splice', '--slot.row=2'])).toMatchObject({
      id: 'N-1',
      kind: 'splice',
      slot: { row: '2' },
    });
    expect(readFields('member', ['--cut-length', '31 ft 10 in'])).toEqual(readFields('member', ['--cut_length=31 ft 10 in']));
    expect(readFields('panel', ['--set', 'fixing.method=screws'])).toEqual({ fixing: { method: 'screws' } });
    expect(readFields('panel', ['--set=note=a=b'])).toEqual({ note: 'a=b' });
    expect(readFields('node', [])).toEqual({});
  });

  it.each<[readonly string[], RegExp]>([
    [['N-1'], /^Found `N-1`, expected a field as --/u],
    [['--id'], /^Missing value after --id$/u],
    [['--set'], /^Found --set, expected a key and a value/u],
    [['--set', '=x'], /^Found --set, expected a key and a value/u],
    [['--set', 'note'], /^Found --set, expected a key and a value/u],
    [['--nmae', 'x'], /^A node has no `nmae`, expected --name/u],
    [['--zzzzzzzzzz', 'x'], /expected one of --id/u],
  ])('%j says what to write', (args, said) => {
    expect(() => readFields('node', args)).toThrow(said);
  });

  it('are put in the order of their kind; what is lacking is named; another record lends what is not its own', () => {
    expect(Object.keys(inOrder('node', { at: 1, zz: 2, kind: 3, id: 4 }))).toEqual(['id', 'kind', 'at', 'zz']);
    expect(missingFields('node', { id: 'N' }).map(({ key }) => key)).toEqual(['kind']);
    expect(missingFields('node', { id: 'N', kind: 'splice' })).toEqual([]);
    const lent = lentBy('weld', 'W-1', known(['W-1']));
    expect(lent).not.toHaveProperty('id');
    expect(lent).toEqual({ procedure: 'P-1' });
    expect(() => lentBy('weld', 'W-9', known(['W-1']))).toThrow('There is no weld W-9 to take fields from');
    expect(optionOf('cut_length_x')).toBe('cut-length-x');
  });
});
