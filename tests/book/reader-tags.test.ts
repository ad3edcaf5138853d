import { describe, expect, it } from 'vitest';
import { describeLinks } from '../../src/book/print/link-words.js';
import { tagForReaders } from '../../src/book/print/reader-tags.js';
import type { RawObject } from '../../src/pdf/raw-object.js';

const object = (number: number, text: string): RawObject => ({ number, body: Buffer.from(text), isStream: false });
const textsOf = (objects: readonly RawObject[]): Record<number, string> =>
  Object.fromEntries(objects.map(({ number, body }) => [number, Buffer.from(body).toString('latin1').replace(/\s+/gu, ' ')]));

const TREE = [
  object(1, '<</Type /StructTreeRoot\n/K 2 0 R\n/ParentTreeNextKey 4\n/ParentTree 9 0 R>>'),
  object(2, '<</Type /StructElem\n/S /Document\n/P 1 0 R\n/K 3 0 R>>'),
  object(3, '<</Type /StructElem\n/S /L\n/P 2 0 R\n/K [4 0 R]>>'),
  object(4, '<</Type /StructElem\n/S /LI\n/P 3 0 R\n/Pg 7 0 R\n/K [0 1]>>'),
  object(5, '<</Type /StructElem\n/S /Figure\n/P 2 0 R\n/K [6 0 R]>>'),
  object(6, '<</Type /StructElem\n/S /Figure\n/Alt (A plan)\n/P 5 0 R\n/K [2]>>'),
  object(9, '<</Type /ParentTree\n/Nums [0 8 0 R]>>'),
];

describe('tags for a reader', () => {
  it('give an item of a list a body that keeps its number', () => {
    const texts = textsOf(tagForReaders(TREE, 20));
    expect(texts[3]).toContain('/K [20 0 R]');
    expect(texts[20]).toBe('<</Type /StructElem /S /LI /P 3 0 R /K 4 0 R>>');
    expect(texts[4]).toBe('<</Type /StructElem /S /LBody /P 20 0 R /Pg 7 0 R /K [0 1]>>');
  });

  it('take a frame without a description for no figure, and map what PDF 1.7 does not know', () => {
    const texts = textsOf(tagForReaders(TREE, 20));
    expect([texts[5], texts[6]]).toEqual([expect.stringContaining('/S /Div'), expect.stringContaining('/S /Figure')]);
    expect(texts[1]).toContain('/RoleMap <</Strong /Span /Em /Span>>');
  });

  it('give the field of a signature a tag that leads to it and back', () => {
    const texts = textsOf(tagForReaders(TREE, 32, { field: 30, element: 31, page: 7 }));
    expect(texts[2]).toContain('/K [3 0 R 31 0 R]');
    expect(texts[31]).toContain('/S /Form /Alt (Signature of the shop) /P 2 0 R /K <</Type /OBJR /Obj 30 0 R /Pg 7 0 R>>');
    expect(texts[9]).toBe('<</Type /ParentTree /Nums [0 8 0 R 1000000000 31 0 R]>>');
    expect(texts[1]).toContain('/ParentTreeNextKey 1000000001');
  });
});

describe('the words of a link', () => {
  const link = (number: number, to: string): RawObject =>
    object(number, `<</Type /Annot\n/Subtype /Link\n/F 4\n/Dest /${to}\n/StructParent 100000>>`);
  const places = {
    homes: new Map([
      ['r-AP-01', 34],
      ['c-index', 5],
    ]),
    names: new Map([
      ['r-AP-01', 'AP-01'],
      ['c-index', 'Índice'],
    ]),
    pageWord: 'page',
  };

  it('say what is there and on which page, in any letters', () => {
    const texts = textsOf(describeLinks([link(1, 'r-AP-01'), link(2, 'c-index'), object(3, '<</Type /Page>>')], places));
    expect(texts[1]).toContain('/Contents (AP-01, page 34)');
    // ISO 32000-1, 7.9.2.2: UTF-16 with its mark; 00CD is Í.
    expect(texts[2]).toContain('/Contents <FEFF00CD006E0064');
    expect(Object.keys(texts)).toEqual(['1', '2']);
  });
});
