import { describe, expect, it } from 'vitest';
import { readAnySheet } from '../../src/entry/any-sheet.js';
import { columnsOf } from '../../src/entry/columns.js';
import { habitsOf } from '../../src/entry/habits.js';
import { matchHeads } from '../../src/entry/headers.js';
import { ENTRY_KINDS, type EntryKind } from '../../src/entry/homes.js';
import { withKept } from '../../src/entry/mapping.js';
import { planImport } from '../../src/entry/plan.js';
import { readKnown } from '../../src/entry/record-index.js';
import { readSheet } from '../../src/entry/sheet.js';
import { understood } from '../../src/entry/understood.js';
import { storeText } from '../support/store.js';

const NONE = { said: new Map<string, string>(), own: new Map<string, string>() };
const keysOf = (kind: Parameters<typeof matchHeads>[0], heads: readonly string[]) =>
  matchHeads(kind, heads, NONE).map(({ column, how }) => (how === 'certain' || how === 'close' ? column?.key : undefined));
const bytes = (text: string) => Buffer.from(text, 'utf8');

const SHELL = {
  'shells/T-1/shell.yaml': 'shell: T-1\n',
  'shells/T-1/members.yaml': '- {id: A}\n- {id: B}\n',
  'shells/T-1/openings.yaml': '- {id: OLD, kind: door, wall: rihgt, width: 30 in, height: 70 in}\n',
  'shells/T-1/welds.yaml':
    '- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 3 in, process: GMAW,\n   inspections: [{method: PT, by: J2, date: 2026-02-12, result: accept}]}\n',
  'library/people.yaml': '- {id: J2, name: J, role: inspector}\n- {id: J3, name: K, role: inspector}\n',
};

function planOf(kind: EntryKind, csv: string) {
  const sheet = readSheet('x.csv', bytes(csv));
  const heads = matchHeads(kind, sheet.heads, NONE);
  return planImport({ kind, sheet, heads, known: readKnown(storeText(SHELL), 'T-1'), habits: {}, ahead: false });
}

describe('heads as people write them', () => {
  it.each([
    [
      'weld',
      ['Weld #', 'VT by', 'VT date', 'VT result', 'PT by'],
      ['id', 'inspections.1.by', 'inspections.1.date', 'inspections.1.result', 'inspections.2.by'],
    ],
    [
      'panel',
      ['Panel', 'Corner 1', 'Corner 2', 'Corner 3 X', 'Humidity', 'Opening'],
      ['id', 'outline.1', 'outline.2', 'outline.3.x', 'bond.humidity', 'opening'],
    ],
    ['circuit', ['Circuit', 'Volts', 'Fuse', 'Wire gauge'], ['id', 'voltage', 'protection.rating', 'conductor.awg']],
    ['member', ['Mark #', 'Ft'], ['id', 'cut_length']],
    ['opening', ['Opening', 'Diagonals'], ['id', 'measured.diagonals']],
  ] as const)('of a %s: %j', (kind, heads, keys) => {
    expect(keysOf(kind, heads)).toEqual(keys);
  });

  it('are known for every field of every kind, as its key and in plain words', () => {
    for (const kind of ENTRY_KINDS) {
      for (const { key } of columnsOf(kind)) {
        const words = key.replace(/[._]/gu, ' ').replace(/^./u, (letter) => letter.toUpperCase());
        expect(keysOf(kind, [key, words]).slice(0, 1), kind).toEqual([key]);
        expect(keysOf(kind, [words]), `${kind}: ${words}`).toEqual([key]);
      }
    }
  });

  it('of a wire’s number are no weight', () => {
    expect(matchHeads('wire', ['Wire #', 'Ft'], NONE).map(({ column, unit }) => [column?.key, unit])).toEqual([
      ['mark', undefined],
      ['length', 'ft'],
    ]);
  });

  it('that were said are kept with those that were guessed', () => {
    const heads = matchHeads('member', ['id', 'Shape', 'Cost'], {
      ...NONE,
      said: new Map([
        ['shape', 'section'],
        ['cost', 'skip'],
      ]),
    });
    expect(withKept(null, 'member', heads)).toContain('"Shape": section\n  "Cost": skip');
  });
});

describe('commas', () => {
  const habits = (csv: string) => {
    const sheet = readSheet('x.csv', bytes(csv));
    return habitsOf(sheet, matchHeads('component', sheet.heads, NONE), {});
  };

  it.each([
    ['id;mass (lb)\nA;5,25\nB;1,150\n', ['`5,25` in row 2', '`1150` or `1.150`']],
    ['id;mass (lb)\nA;5,25\nB;0.375\n', ['decimal point']],
    ['id;mass (lb)\nA;5,25\nB;"1,234,567"\n', ['`1,234,567` in row 3']],
    ['id;mass (lb)\nA;1,150\n', ['`1150` or `1.150`', '--decimal-point']],
  ])('that may be read in two ways stop %j', (csv, said) => {
    for (const one of said) expect(() => habits(csv)).toThrow(one);
  });
});

describe('a sheet', () => {
  const wish = { word: 'member' as const };

  it('may have a title above the names of its columns', async () => {
    const csv = 'Cut list for T-1,,\nprinted 2/11/2026,,\n\nMark,Profile,Material\nA,RT,6061\n';
    const { table, told } = await readAnySheet('cut.csv', bytes(csv), wish);
    expect(table.heads).toEqual(['Mark', 'Profile', 'Material']);
    expect(table.rows).toEqual([{ number: 5, cells: ['A', 'RT', '6061'] }]);
    expect(told).toEqual(['the names of the columns were found in row 4']);
  });

  it('may have lines that end in different ways', () => {
    expect(readSheet('x.csv', bytes('id,part\r\nA,x\nB,"y\r\nz"\rC,w\r\n')).rows.map(({ cells }) => cells)).toEqual([
      ['A', 'x'],
      ['B', 'y\r\nz'],
      ['C', 'w'],
    ]);
  });

  it.each([
    ['', 'holds nothing'],
    ['i', 'holds one byte'],
    ['%PDF-1.7\n', 'is a PDF'],
    ['<html><table><tr><td>id</td></tr></table>', 'is a web page'],
    ['\u0000\u0001\u0002\u0003id', 'neither text nor a workbook'],
    ['PK\u0003\u0004 and no more', 'damaged or cut short'],
  ])('%j is told for what it is', async (text, said) => {
    await expect(readAnySheet('cut.csv', Buffer.from(text, 'latin1'), wish)).rejects.toThrow(said);
  });

  it('that is text under the name of a workbook is read, and that is said', async () => {
    const { told } = await readAnySheet('cut.xlsx', bytes('id,part\nA,x\n'), wish);
    expect(told).toEqual(['is text and no workbook: read as CSV']);
  });
});

describe('what a sheet says', () => {
  it('is a fault where a word is outside its closed list, though an old record may keep its own', () => {
    const [fault] = planOf('opening', 'id,kind,wall,width,height\nD-1,door,rihgt,30 in,70 in\n').faults;
    expect(fault?.message).toContain('expected `right`');
    expect(planOf('opening', 'id,wall,width\nOLD,rihgt,31 in\n')).toMatchObject({ faults: [], changed: [{}] });
  });

  it('of a method is of the inspection with that method, wherever it stands', () => {
    const plan = planOf('weld', 'id,VT by,VT date,VT result,PT by\nW-1,J3,2026-02-11,accept,J3\n');
    expect(plan.faults).toEqual([]);
    expect(plan.changed[0]?.data.inspections).toEqual([
      { method: 'PT', by: 'J3', date: '2026-02-12', result: 'accept' },
      { method: 'VT', by: 'J3', date: '2026-02-11', result: 'accept' },
    ]);
  });

  it('is no value where the spreadsheet shows an error', () => {
    expect(planOf('member', 'id,part\nA,#REF!\n').faults[0]?.message).toContain('an error of the spreadsheet');
  });

  it('asks for a unit that the field can have', () => {
    expect(planOf('component', 'id,mass\nC-1,12\n').faults[0]?.message).toContain('as `mass (lb)`');
  });

  it('is shown with what it comes to', () => {
    expect(understood('member', { id: 'A', from: ['1 in', '0', '-2 in'], cut_length: '1.150 in' })).toBe(
      'from: [1 in, 0, -2 in] (x 25.4, y 0, z -50.8 mm), cut_length: 1.150 in (29.2 mm)',
    );
  });
});
