import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { foldTags } from '../../src/book/print/fold-tags.js';
import type { RawObject } from '../../src/pdf/raw-object.js';
import { PdfFile } from '../../src/pdf/read.js';
import { packing, rawObjects, writePdf } from '../../src/pdf/write.js';

const HTML = `<!doctype html><html lang="en"><title>x</title><body><h1>One <b>two</b> three</h1><p id="a">Before <a href="#b">a link</a> after</p>
<table><thead><tr><th>Head</th><th>Other</th></tr></thead><tbody>${'<tr><td>cell<br>and <i>more</i></td><td>5</td></tr>'.repeat(80)}<tr><td colspan="2">wide</td></tr></tbody></table>
<figure><svg role="img" aria-label="A drawing" width="60" height="20"><text x="2" y="14">mark</text></svg><figcaption>Words</figcaption></figure>
<p id="b">${'A long paragraph that runs over its page. '.repeat(400)}</p></body></html>`;

let browser: OpenBrowser;
let objects: readonly RawObject[];
let identity: { root: number; info: number; id: string };
beforeAll(async () => {
  browser = await openChromium();
  const page = await browser.browser.newPage();
  await page.setContent(HTML);
  const file = PdfFile.open(await page.pdf({ tagged: true, outline: true }));
  objects = rawObjects(file);
  const trailer = file.xref.trailer.toString();
  const number = (key: string) => Number(new RegExp(`/${key} (\\d+) 0 R`, 'u').exec(trailer)?.[1]);
  identity = { root: number('Root'), info: number('Info'), id: 'ab'.repeat(32) };
});
afterAll(() => browser?.close());

interface Node {
  readonly role?: string;
  readonly id?: string;
  readonly alt?: string;
  readonly children?: readonly Node[];
}

const written = (list: readonly RawObject[]): Promise<Buffer> => writePdf([packing(list)], identity);

/** The marks of each page in reading order, each below the roles that mean something. */
async function reading(bytes: Uint8Array): Promise<readonly string[]> {
  const task = getDocument({ data: Uint8Array.from(bytes), isEvalSupported: false, verbosity: 0 });
  const document = await task.promise;
  const read: string[] = [];
  const walk = (node: Node, above: string): void => {
    const role =
      node.role && !/NonStruct|Root/u.test(node.role) ? `${above}/${node.role}${node.alt ? `(${node.alt})` : ''}` : above;
    if (node.id) read.push(`${above} ${node.id.replace(/^p\d+R_/u, '')}`);
    for (const child of node.children ?? []) walk(child, role);
  };
  for (let number = 1; number <= document.numPages; number++) {
    read.push(`page ${number}`);
    walk((await (await document.getPage(number)).getStructTree()) as unknown as Node, '');
  }
  await task.destroy();
  return read;
}

describe('folding tags without meaning', () => {
  it('leaves the reading order, the roles and the words of every drawing as they were', async () => {
    const folded = foldTags(objects);
    expect(folded.length).toBeLessThan(objects.length - 200);
    const [before, after] = [await reading(await written(objects)), await reading(await written(folded))];
    expect(before.length).toBeGreaterThan(300);
    expect(before.join()).toContain('Figure(A drawing)');
    expect(after).toEqual(before);
  });

  it('leads back from each mark of a page to a tag that is there', () => {
    const folded = foldTags(objects);
    const there = new Set(folded.map(({ number }) => number));
    const texts = folded.filter(({ isStream }) => !isStream).map(({ body }) => Buffer.from(body).toString('latin1'));
    const named = texts.flatMap((text) =>
      [...text.replace(/\([^)]*\)/gu, '').matchAll(/(\d+) 0 R/gu)].map((one) => Number(one[1])),
    );
    expect(named.filter((number) => !there.has(number))).toEqual([]);
  });

  it('touches nothing that is written otherwise', () => {
    const raw = (number: number, body: string): RawObject => ({ number, body: Buffer.from(body), isStream: false });
    const other = [
      raw(1, '<</Type /StructElem\n/S /P\n/P 9 0 R\n/K [2 0 R 3 0 R]>>'),
      raw(2, '<</Type /StructElem\n/S /NonStruct\n/P 8 0 R\n/Pg 7 0 R\n/K 0>>'),
      raw(3, '<</Type /StructElem\n/S /NonStruct\n/P 1 0 R\n/Alt (x)\n/Pg 7 0 R\n/K 1>>'),
    ];
    expect(foldTags(other)).toEqual(other);
  });

  it('refers to the marks of another page by that page', () => {
    const raw = (number: number, body: string): RawObject => ({ number, body: Buffer.from(body), isStream: false });
    const leaf = (number: number, page: number, mark: number) =>
      raw(number, `<</Type /StructElem\n/S /NonStruct\n/P 1 0 R\n/Pg ${page} 0 R\n/K ${mark}>>`);
    const [element, list] = foldTags([
      raw(1, '<</Type /StructElem\n/S /P\n/P 9 0 R\n/K [2 0 R 3 0 R]>>'),
      leaf(2, 7, 4),
      leaf(3, 8, 0),
      raw(5, '[2 0 R 9 0 R 3 0 R]'),
    ]).map(({ body }) => Buffer.from(body).toString());
    expect(element).toBe('<</Type /StructElem /Pg 7 0 R\n/S /P\n/P 9 0 R\n/K [4 <</Type /MCR /Pg 8 0 R /MCID 0>>]>>');
    expect(list).toBe('[1 0 R 9 0 R 1 0 R]');
  });

  it('says of a cell what it spans only where that is more than one, as ISO 32000-2, 14.8.5.7 takes one for granted', () => {
    const spans = (list: readonly RawObject[]): readonly string[] =>
      list.flatMap(({ body, isStream }) =>
        isStream
          ? []
          : (Buffer.from(body)
              .toString('latin1')
              .match(/(?:Row|Col)Span \d+/gu) ?? []),
      );
    expect(spans(objects)).toContain('RowSpan 1');
    expect(spans(foldTags(objects))).toEqual(['ColSpan 2']);
  });
});
