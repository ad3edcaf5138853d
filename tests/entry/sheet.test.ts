import { describe, expect, it } from 'vitest';
import { columnName, readSheet } from '../../src/entry/sheet.js';

const sheet = (text: string, headRow?: number) => readSheet('cut.csv', Buffer.from(text, 'utf8'), headRow);

/** RFC 4180, section 2, by its numbers. */
describe('CSV as RFC 4180 has it', () => {
  it('1, 2: lines end with CR LF, the last may or may not', () => {
    expect(sheet('id,part\r\nA,x\r\nB,y\r\n').rows).toEqual(sheet('id,part\r\nA,x\r\nB,y').rows);
  });

  it('4: spaces within a field belong to it, around it they are of no use to a record', () => {
    expect(sheet('id,part\nA, floor rail \n').rows[0]?.cells).toEqual(['A', 'floor rail']);
  });

  it('5, 6: quoted fields may hold the delimiter and line breaks, which are no new row', () => {
    const { rows } = sheet('id,note\r\nA,"one, two\r\nthree"\r\nB,y\r\n');
    expect(rows).toEqual([
      { number: 2, cells: ['A', 'one, two\r\nthree'] },
      { number: 3, cells: ['B', 'y'] },
    ]);
  });

  it('7: a quotation mark is doubled within quotes: inches', () => {
    expect(sheet('id,size\nA,"3/4"""\n').rows[0]?.cells[1]).toBe('3/4"');
  });

  it.each([
    ['a quote that is never closed', 'id,note\nA,"one\nB,y\n', /line \d.*never closed/u],
    ['a quote within a bare field', 'id,size\nA,3/4"\n', /line 2.*double the mark/u],
    ['a quote within a quoted field', 'id,size\nA,"3/4" tube"\n', /line 2.*double it/u],
  ])('tells %s', (_what, text, said) => {
    expect(() => sheet(text)).toThrow(said);
  });
});

describe('what spreadsheets do besides', () => {
  it.each([
    ['semicolons', 'id;part\nA;x, y\n'],
    ['tabs', 'id\tpart\nA\tx, y\n'],
    ['a mark for its delimiter', 'sep=;\nid;part\nA;x, y\n'],
    ['a byte order mark', '\uFEFFid;part\nA;x, y\n'],
  ])('reads %s', (_what, text) => {
    const { heads, rows } = sheet(text);
    expect(heads).toEqual(['id', 'part']);
    expect(rows[0]?.cells).toEqual(['A', 'x, y']);
  });

  it('keeps the spreadsheet’s row numbers over blank rows and its own mark', () => {
    expect(sheet('sep=;\nid;part\n\n;\nA;x\n').rows).toEqual([{ number: 4, cells: ['A', 'x'] }]);
  });

  it('reads UTF-16, in which some programs save', () => {
    const bytes = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from('id\tpart\nA\tÖse\n', 'utf16le')]);
    expect(readSheet('cut.txt', bytes).rows[0]?.cells).toEqual(['A', 'Öse']);
  });

  it('tells text that is no UTF-8', () => {
    expect(() => readSheet('cut.csv', Buffer.from([0x69, 0x64, 0x0a, 0xd6]))).toThrow(/not UTF-8/u);
  });

  it('finds heads below a title, and says so where there are none', () => {
    expect(sheet('Cut list,\nid,part\nA,x\n', 2).heads).toEqual(['id', 'part']);
    expect(() => sheet(',\nid,part\n')).toThrow(/no column heads in row 1.*--header-row/u);
  });

  it('names columns as a spreadsheet does', () => {
    expect([0, 25, 26, 701, 702].map(columnName)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA']);
  });
});
