import { readFileSync } from 'node:fs';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readAnySheet } from '../../src/entry/any-sheet.js';
import { matchHeads } from '../../src/entry/headers.js';
import { ENTRY_KINDS } from '../../src/entry/homes.js';
import { planImport } from '../../src/entry/plan.js';
import { readKnown } from '../../src/entry/record-index.js';
import { tableOf } from '../../src/entry/table.js';
import { readWorkbook } from '../../src/entry/workbook/read.js';
import { templateSheets } from '../../src/entry/workbook/template.js';
import { unpackWorkbook } from '../../src/entry/workbook/unpack.js';
import { writeWorkbook } from '../../src/entry/workbook/write.js';
import { exampleTexts } from '../../src/store/starter.js';
import { storeText } from '../support/store.js';

/** Written by openpyxl 3.0.9, another library: numbers, dates, truth, a text that looks like a number, a second sheet, a formula, a link. */
const file = (name: string): Uint8Array => readFileSync(new URL(`workbooks/${name}`, import.meta.url));
const CUT = file('cut-list.xlsx');
const NONE = { said: new Map<string, string>(), own: new Map<string, string>() };
const text = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes);

/** The workbook with one of its parts changed. */
function changed(part: string, change: (xml: string) => string): Uint8Array {
  const parts = unzipSync(CUT);
  return zipSync({ ...parts, [part]: new TextEncoder().encode(change(text(parts[part]))) });
}

describe('a workbook that another library wrote', () => {
  it('is read as its cells would stand in CSV', async () => {
    const { table, told } = await readAnySheet('cut.xlsx', CUT, { word: 'member' });
    expect(table.heads.slice(0, 3)).toEqual(['Mark', 'Description', 'Profile']);
    expect(table.rows.map(({ number, cells }) => [number, cells[0], cells[1], ...cells.slice(6)])).toEqual([
      [4, 'FL-3', 'floor stringer', '160', '2026-02-11', '007'],
      [5, 'FL-4', 'Öse "3/4"', '159.5', '2026-02-11T14:30', '4471'],
      [6, 'FL-5', 'yes', '0.3', '', '0.0000001'],
    ]);
    expect(told).toEqual(['sheet `Cut list` was read; for Prices say --sheet', 'the names of the columns were found in row 3']);
  });

  it('is refused where a formula has no result, and asked for another sheet by name', async () => {
    await expect(readAnySheet('f.xlsx', file('formula.xlsx'), { word: 'member' })).rejects.toThrow(
      'formula without its result in cell C2',
    );
    const { table } = await readAnySheet('cut.xlsx', CUT, { word: 'member', sheet: 'prices', headRow: 1 });
    expect(table.heads).toEqual(['nothing of ours']);
    await expect(readAnySheet('cut.xlsx', CUT, { word: 'member', sheet: 'Price' })).rejects.toThrow('expected `Prices`');
  });
});

describe('a hostile workbook', () => {
  const SHEET = 'xl/worksheets/sheet1.xml';

  it.each([
    ['a cell in the last row and column', () => changed(SHEET, (xml) => xml.replace('r="A3"', 'r="XFD1048576"')), 'rows and'],
    ['a million rows', () => changed(SHEET, (xml) => xml.replace('</sheetData>', '<row r="1000000"/></sheetData>')), 'rows and'],
    ['another packed file', () => zipSync({ 'word/document.xml': new Uint8Array(3) }), 'no workbook'],
    ['one that is cut short', () => CUT.subarray(0, CUT.length - 40), 'damaged or cut short'],
    ['broken XML', () => changed(SHEET, () => '<worksheet><sheetData><row><c r="A1"'), ''],
    [
      'an entity that names another',
      () => changed(SHEET, (xml) => xml.replace('<worksheet', '<!DOCTYPE x [<!ENTITY a "b">]><worksheet')),
      '',
    ],
  ])('is bounded and told: %s', async (_what, made, said) => {
    const read = readWorkbook('x.xlsx', made()).then(
      () => '',
      (error: Error) => `${error.name} ${error.message}`,
    );
    const message = await read;
    expect(message).toContain(said);
    expect(message).not.toMatch(/TypeError|RangeError/u);
  });

  it('is unpacked no further than its bounds', async () => {
    const bomb = zipSync({ 'xl/workbook.xml': new Uint8Array(10), [SHEET]: new Uint8Array(2_000_000) });
    expect(bomb.length).toBeLessThan(4000);
    await expect(unpackWorkbook('x.xlsx', bomb, 1_000_000)).rejects.toThrow('unpacks to more than');
    // A part that is larger than it says of itself.
    const lying = new Uint8Array(bomb);
    const view = new DataView(lying.buffer);
    for (let at = 0; at < lying.length - 46; at++) {
      if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === 2_000_000)
        view.setUint32(at + 24, 100, true);
    }
    await expect(unpackWorkbook('x.xlsx', lying, 1_000_000)).rejects.toThrow('damaged');
  });

  it('keeps its macros, links and pictures to itself', async () => {
    const parts = unzipSync(CUT);
    const more = zipSync({
      ...parts,
      'xl/vbaProject.bin': new Uint8Array(9),
      'xl/externalLinks/externalLink1.xml': new Uint8Array(9),
    });
    expect([...(await unpackWorkbook('x.xlsm', more)).keys()].filter((name) => /vba|external/u.test(name))).toEqual([]);
    expect(await readWorkbook('x.xlsm', more)).toHaveLength(2);
  });
});

const examples = readKnown({ root: '', files: await exampleTexts('EXAMPLE'), photos: new Map() }, 'EXAMPLE');
const known = readKnown(
  storeText({
    'shells/T-1/shell.yaml': 'shell: T-1\n',
    'shells/T-1/members.yaml':
      '- {id: A, part: "\'=rail, 3/4\\" left", section: RT, alloy: A1, from: [-1 in, 0, 2 in], to: [3 in, 4 in, -5 in]}\n',
    'library/materials.yaml': '- {id: A1, kind: aluminium, density: 2700 kg/m3}\n',
    'library/sections.yaml': '- {id: RT, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n',
  }),
  'T-1',
);

describe('a table as a workbook', () => {
  it('comes back as it was', async () => {
    const { heads, rows } = tableOf('member', known);
    const bytes = await writeWorkbook([{ name: 'members', heads, rows }]);
    const { table } = await readAnySheet('members.xlsx', bytes, { word: 'member' });
    const matched = matchHeads('member', table.heads, NONE);
    const plan = planImport({ kind: 'member', sheet: table, heads: matched, known, habits: {}, ahead: false });
    expect(plan).toMatchObject({ added: [], changed: [], faults: [], unchanged: ['A'] });
  });
});

describe('a template', () => {
  it.each([...ENTRY_KINDS, 'wire', 'pipe'] as const)(
    'for %ss has heads that import reads, help, and an example row that it leaves out',
    async (word) => {
      const sheets = templateSheets({ word, known, examples, units: 'us' });
      const [first, help] = sheets;
      const heads = matchHeads(word, first?.heads ?? [], NONE);
      expect(heads.filter(({ how, implied }) => how !== 'certain' && !implied).map(({ text: head }) => head)).toEqual([]);
      expect(help?.rows.length).toBeGreaterThan(first?.heads.length ?? 0);
      expect(first?.rows.every(([cell]) => cell?.startsWith('example:'))).toBe(true);
    },
  );

  it('offers what may be picked, and reads back as an empty sheet', async () => {
    const bytes = await writeWorkbook(templateSheets({ word: 'member', known, examples, units: 'metric' }));
    const xml = text(unzipSync(bytes)['xl/worksheets/sheet1.xml']);
    expect(xml).toMatch(
      /<dataValidation type="list" errorStyle="warning"[^>]*sqref="B2:B2000"><formula1>Lists!\$A\$2:\$A\$2<\/formula1>/u,
    );
    const { table, told } = await readAnySheet('member.xlsx', bytes, { word: 'member' });
    expect(table.heads).toContain('cut_length (mm)');
    expect([table.rows, told]).toEqual([[], []]);
  });
});
