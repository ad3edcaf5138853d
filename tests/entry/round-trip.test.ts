import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { Habits } from '../../src/entry/cells.js';
import { matchHeads } from '../../src/entry/headers.js';
import { ENTRY_KINDS, type EntryKind, homeOf } from '../../src/entry/homes.js';
import { planImport } from '../../src/entry/plan.js';
import { type RecordIndex, readKnown } from '../../src/entry/record-index.js';
import { sameTyped } from '../../src/entry/same.js';
import { readSheet } from '../../src/entry/sheet.js';
import type { SheetPlan } from '../../src/entry/sheet-changes.js';
import { csvOf, tableOf } from '../../src/entry/table.js';
import { textsOf } from '../../src/entry/texts.js';
import { readStoreText } from '../../src/store/read.js';
import { DEMO } from '../demo/store.js';
import { storeText } from '../support/store.js';

const finished = readKnown(await readStoreText(DEMO, 'OV-021'), 'OV-021');
const begun = readKnown(await readStoreText(DEMO, 'OV-024'), 'OV-024');
const kindsIn = (known: RecordIndex) => ENTRY_KINDS.filter((kind) => known.ofKind(kind).length > 0);

function planOf(kind: EntryKind, csv: string, known: RecordIndex, habits: Habits = {}, ahead = false): SheetPlan {
  const sheet = readSheet(`${kind}.csv`, Buffer.from(csv));
  const heads = matchHeads(kind, sheet.heads, { said: new Map(), own: new Map() });
  expect(heads.filter(({ how }) => how !== 'certain')).toEqual([]);
  return planImport({ kind, sheet, heads, known, habits, ahead });
}

const exported = (kind: EntryKind, known: RecordIndex): string => {
  const { heads, rows } = tableOf(kind, known);
  return csvOf(heads, rows);
};

describe('a shell of the demo', () => {
  it.each(kindsIn(finished))('gives its %ss as a table, and taking it in changes nothing', (kind) => {
    const plan = planOf(kind, exported(kind, finished), finished);
    expect(plan).toMatchObject({ added: [], changed: [], faults: [] });
    expect(plan.unchanged).toHaveLength(finished.ofKind(kind).length);
  });

  it('is there again when its tables are taken in by an empty shell', () => {
    const files = new Map(
      [...begun.files].filter(([file]) => file.startsWith('library/')).map(([file, { text }]) => [file, text]),
    );
    files.set('shells/OV-024/shell.yaml', 'shell: OV-024\n');
    for (const { file } of begun.ofKind('node')) files.set(file, 'service: some\nmedium: dc\n');
    const now = (): RecordIndex => readKnown({ root: '', files, photos: new Map() }, 'OV-024');
    const own = kindsIn(begun).filter((kind) => homeOf(kind).in !== 'library');
    for (const kind of own) {
      const { heads, rows } = tableOf(kind, begun);
      const records = begun.ofKind(kind);
      const known = now();
      for (const file of new Set(records.map((record) => record.file))) {
        const sheet = readSheet(
          `${kind}.csv`,
          Buffer.from(
            csvOf(
              heads,
              rows.filter((_row, i) => records[i]?.file === file),
            ),
          ),
        );
        const matched = matchHeads(kind, sheet.heads, { said: new Map(), own: new Map() });
        const plan = planImport({ kind, sheet, heads: matched, known, habits: {}, into: file, ahead: true });
        expect(plan.faults, kind).toEqual([]);
        for (const [path, text] of textsOf(kind, plan, known)) files.set(path, text);
      }
    }
    const again = now();
    // Where a file had units for its bare numbers, the table has them at each number.
    const compared = begun.records.filter(
      ({ kind, file }) => own.includes(kind) && Object.keys(begun.unitsOf(file)).length === 0,
    );
    expect(compared.length).toBeGreaterThan(400);
    const lost = compared.filter(({ kind, id, data }) => !sameTyped(again.find(kind, id as string)?.data, data));
    expect(lost.map(({ id }) => id)).toEqual([]);
  });

  it('writes its tables as another reader of CSV reads them', () => {
    const { heads, rows } = tableOf('weld', finished);
    const read = parse(csvOf(heads, rows), { columns: true }) as readonly Record<string, string>[];
    expect(rows.length).toBeGreaterThan(600);
    expect(read).toHaveLength(rows.length);
    expect(read[0]).toMatchObject({ id: 'W-0013', joins: 'SF-L + KG-02L', 'inspections.1.result': 'accept' });
  });
});

describe('a sheet that says otherwise than the record', () => {
  const FILES = {
    'library/materials.yaml': '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3}\n',
    'library/sections.yaml': '- {id: RT, shape: flat bar, depth: 2 in, width: 1 in}\n',
    'library/stages.yaml': '- {id: floor, name: Floor}\n',
    'shells/T-1/shell.yaml': 'shell: T-1\n',
    'shells/T-1/members.yaml': `units: {length: in}
members:
  # the long one
  - {id: A, part: rail, section: RT, alloy: 6061-T6, from: [0, 0, 0], to: [100, 0, 0], cut_length: 99-1/2} # as cut
  - {id: B, part: rail, section: RT, alloy: 6061-T6, from: [0, 9, 0], to: [100, 9, 0]}
`,
  };
  const known = () => readKnown(storeText(FILES), 'T-1');
  const run = (csv: string, habits?: Habits) => {
    const now = known();
    const plan = planOf('member', csv, now, habits);
    return { plan, text: plan.faults.length > 0 ? '' : (textsOf('member', plan, now).get('shells/T-1/members.yaml') ?? '') };
  };
  const HEAD = 'id,part,Cut length (mm),heat\n';

  it('changes that value alone, and keeps the comments', () => {
    const { plan, text } = run(`${HEAD}A,rail,2527.3,H-1\nB,rail,,\n`);
    // 99-1/2 in is 2527.3 mm exactly: NIST SP 811, 1 in = 25.4 mm.
    expect(plan.changed.map(({ changes }) => changes.map(({ path }) => path))).toEqual([[['heat']]]);
    expect(plan.unchanged).toEqual(['B']);
    expect(text).toBe(FILES['shells/T-1/members.yaml'].replace('99-1/2}', '99-1/2, heat: H-1}'));
  });

  it('is taken in once: the second time it says nothing new', () => {
    const csv = `${HEAD}A,rail,2000,H-1\n`;
    const { text } = run(csv);
    const again = readKnown(storeText({ ...FILES, 'shells/T-1/members.yaml': text }), 'T-1');
    expect(planOf('member', csv, again)).toMatchObject({ added: [], changed: [], unchanged: ['A'] });
  });

  it.each([
    [
      'a number without unit',
      'id,cut_length\nA,99.5\n',
      { row: 2, column: 1, message: expect.stringContaining('or the unit at the head of the column') },
    ],
    ['a wrong unit', 'id,cut_length\nA,99.5 lb\n', { row: 2, column: 1, message: expect.stringContaining('mass `99.5 lb`') }],
    [
      'an unknown section',
      'id,section,alloy,from,to\nC,RX,6061-T6,"0 in,0,0","9 in,0,0"\n',
      { row: 2, column: 1, message: expect.stringContaining('nowhere in the records') },
    ],
    [
      'a missing alloy',
      'id,section,from,to\nC,RT,"0 in,0,0","9 in,0,0"\n',
      { row: 2, message: expect.stringContaining('Missing key `alloy`') },
    ],
    [
      'half a tube',
      'id,section,alloy,from\nC,RT,6061-T6,"0 in,0,0"\n',
      { row: 2, message: expect.stringContaining('Missing key `to`') },
    ],
    ['one id twice', 'id,part\nA,x\nA,y\n', { row: 3, message: expect.stringContaining('row 2 too') }],
    ['the id of another kind', 'id,part\nT-1,x\n', { row: 2, column: 0, message: expect.stringContaining('id of a shell') }],
    ['no id', 'id,part\n,x\n', { row: 2, message: expect.stringContaining('no id') }],
  ] as const)('tells %s at its row and column', (_what, csv, fault) => {
    const { plan } = run(csv);
    expect(plan.faults[0]).toMatchObject(fault);
  });

  it('knows the records of the sheet itself when one names another', () => {
    const welds = 'id,joins,type,size,length,process\nW-1,A + C,fillet,1/4 in,2 in,GMAW\n';
    expect(planOf('weld', welds, known()).faults[0]?.message).toContain('`C`');
    const ahead = planOf('weld', welds, known(), {}, true);
    expect(ahead.faults).toEqual([]);
    expect(ahead.ahead[0]).toMatchObject({ row: 2, message: expect.stringContaining('`C`') });
  });
});
