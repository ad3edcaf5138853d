/** What a forger would do to a book. Each changes something that a reader would believe. Clauses: ISO 32000-2. */
import { PDFArray, PDFDict, PDFHexString, PDFName, PDFNumber, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import { key, type Taken } from './forge.js';

export interface Forgery {
  readonly name: string;
  readonly act: (taken: Taken) => void;
}

const stream = ({ pdf }: Taken, content: string, dict: Record<string, unknown> = {}): PDFRef =>
  pdf.context.register(pdf.context.stream(content, dict as Record<string, string>));

/** Instructions that paint over a page, after what it has. */
function paint(taken: Taken, page: number, instructions: string): void {
  const node = taken.page(page);
  const before = node.get(key('Contents')) as PDFRef;
  node.set(key('Contents'), taken.pdf.context.obj([before, stream(taken, instructions)]));
}

function note(taken: Taken, page: number, entries: Record<string, unknown>): void {
  const { context } = taken.pdf;
  const one = context.register(context.obj({ Type: 'Annot', F: 4, Rect: [50, 700, 300, 780], ...entries } as never));
  const node = taken.page(page);
  const notes = node.lookup(key('Annots'));
  node.set(key('Annots'), context.obj([...(notes instanceof PDFArray ? notes.asArray() : []), one]));
}

/** A form of its own with a rating on it, as an annotation shows it. */
const look = (taken: Taken): Record<string, unknown> => ({
  AP: {
    N: stream(taken, '1 1 1 rg 0 0 250 80 re f 0 g 0 0 200 40 re f', { Type: 'XObject', Subtype: 'Form', BBox: [0, 0, 250, 80] }),
  },
});

const links = (taken: Taken, page: number): readonly PDFDict[] => {
  const notes = taken.page(page).lookup(key('Annots'));
  return notes instanceof PDFArray ? notes.asArray().map((one) => taken.pdf.context.lookup(one, PDFDict)) : [];
};

function record(taken: Taken, path: string, from: string | RegExp, to: string): void {
  const before = (taken.files.get(path) as Buffer).toString('utf8');
  const after = before.replace(from, to);
  if (after === before) throw new Error(`nothing to change in ${path}`);
  taken.files.set(path, Buffer.from(after));
}

const firstBookmark = (taken: Taken): PDFDict => taken.catalog.lookup(key('Outlines'), PDFDict).lookup(key('First'), PDFDict);
const kids = (taken: Taken): PDFArray => taken.catalog.lookup(key('Pages'), PDFDict).lookup(key('Kids'), PDFArray);
const above = (taken: Taken): PDFDict => taken.page(1).lookup(key('Parent'), PDFDict);

const resources = (taken: Taken, page: number): PDFDict => taken.page(page).lookup(key('Resources'), PDFDict);

export const FORGERIES: readonly Forgery[] = [
  { name: 'a false rating painted over a page (7.8.2)', act: (t) => paint(t, 1, 'q 1 1 1 rg 60 600 300 40 re f Q BT ET') },
  { name: 'a page painted white', act: (t) => paint(t, 2, '1 1 1 rg 0 0 700 900 re f') },
  { name: 'a page’s words replaced', act: (t) => t.page(3).set(key('Contents'), stream(t, 'BT ET 0 0 10 10 re f')) },
  { name: 'a page emptied', act: (t) => t.page(3).delete(key('Contents')) },
  { name: 'a page turned (7.7.3.3)', act: (t) => t.page(2).set(key('Rotate'), PDFNumber.of(180)) },
  { name: 'all pages turned from above (7.7.3.4)', act: (t) => above(t).set(key('Rotate'), PDFNumber.of(90)) },
  { name: 'a page cut to a part of it', act: (t) => t.page(1).set(key('CropBox'), t.pdf.context.obj([0, 0, 300, 300])) },
  { name: 'all pages cut from above', act: (t) => above(t).set(key('CropBox'), t.pdf.context.obj([0, 0, 300, 300])) },
  { name: 'a page on other paper', act: (t) => t.page(1).set(key('MediaBox'), t.pdf.context.obj([0, 400, 595, 842])) },
  { name: 'a page scaled by a unit of its own', act: (t) => t.page(1).set(key('UserUnit'), PDFNumber.of(10)) },
  { name: 'a page taken out', act: (t) => t.pdf.removePage(2) },
  {
    name: 'two pages exchanged',
    act: (t) => {
      const turned = kids(t).asArray().reverse();
      for (const [i, kid] of turned.entries()) kids(t).set(i, kid);
    },
  },
  { name: 'a page twice', act: (t) => kids(t).push(t.pdf.context.register(t.page(1).clone())) },
  { name: 'an empty page put in', act: (t) => void t.pdf.insertPage(1) },
  {
    name: 'other letters for a typeface (9.10.3)',
    act: (t) => {
      const fonts = resources(t, 1).lookup(key('Font'), PDFDict);
      for (const [, font] of fonts.entries()) {
        const dict = t.pdf.context.lookup(font, PDFDict);
        dict.set(key('ToUnicode'), stream(t, 'endcmap'));
      }
    },
  },
  {
    name: 'typefaces exchanged',
    act: (t) => resources(t, 2).set(key('Font'), t.pdf.context.obj({})),
  },
  {
    name: 'a picture replaced',
    act: (t) => {
      const pictures = resources(t, 1).lookup(key('XObject'), PDFDict);
      for (const [name] of pictures.entries())
        pictures.set(
          name,
          stream(t, '\0\0\0', {
            Type: 'XObject',
            Subtype: 'Image',
            Width: 1,
            Height: 1,
            ColorSpace: 'DeviceRGB',
            BitsPerComponent: 8,
          }),
        );
    },
  },
  {
    name: 'a note with a false rating (12.5.6.6)',
    act: (t) => note(t, 1, { Subtype: 'FreeText', Contents: PDFString.of('19,000 lb'), ...look(t) }),
  },
  { name: 'a stamp over a figure (12.5.6.12)', act: (t) => note(t, 1, { Subtype: 'Stamp', ...look(t) }) },
  { name: 'a white square over a warning (12.5.6.8)', act: (t) => note(t, 3, { Subtype: 'Square', IC: [1, 1, 1], ...look(t) }) },
  {
    name: 'a form’s field with a figure in it (12.7.5.3)',
    act: (t) => note(t, 1, { Subtype: 'Widget', FT: 'Tx', V: PDFString.of('100 A'), ...look(t) }),
  },
  { name: 'a sheet pinned to a page (12.5.6.15)', act: (t) => note(t, 1, { Subtype: 'FileAttachment', ...look(t) }) },
  {
    name: 'a link that leads to a web page (12.6.4.8)',
    act: (t) => note(t, 1, { Subtype: 'Link', A: { S: 'URI', URI: PDFString.of('https://example.test') } }),
  },
  {
    name: 'a link that starts a program (12.6.4.6)',
    act: (t) => note(t, 1, { Subtype: 'Link', A: { S: 'Launch', F: PDFString.of('x.exe') } }),
  },
  {
    name: 'a link that leads to another page than it says',
    act: (t) => void links(t, 1)[0]?.set(key('Dest'), t.pdf.context.obj([t.pdf.getPage(2).ref, PDFName.of('Fit')])),
  },
  { name: 'links taken away', act: (t) => t.page(2).delete(key('Annots')) },
  {
    name: 'a script at opening (12.6.4.17)',
    act: (t) => t.catalog.set(key('OpenAction'), t.pdf.context.obj({ S: 'JavaScript', JS: PDFString.of('app.alert(1)') })),
  },
  {
    name: 'a script among the names (7.7.4)',
    act: (t) =>
      t.catalog
        .lookup(key('Names'), PDFDict)
        .set(key('JavaScript'), t.pdf.context.obj({ Names: [PDFString.of('x'), { S: 'JavaScript', JS: PDFString.of('1') }] })),
  },
  {
    name: 'something done when a page is shown (12.6.3)',
    act: (t) => t.page(1).set(key('AA'), t.pdf.context.obj({ O: { S: 'JavaScript', JS: PDFString.of('1') } })),
  },
  {
    name: 'something done before printing',
    act: (t) => t.catalog.set(key('AA'), t.pdf.context.obj({ WP: { S: 'JavaScript', JS: PDFString.of('1') } })),
  },
  {
    name: 'a layer that hides a page (8.11)',
    act: (t) => t.catalog.set(key('OCProperties'), t.pdf.context.obj({ OCGs: [], D: {} })),
  },
  {
    name: 'a cover page for the attachments (12.3.5)',
    act: (t) => t.catalog.set(key('Collection'), t.pdf.context.obj({ View: 'D' })),
  },
  { name: 'a bookmark with another title', act: (t) => firstBookmark(t).set(key('Title'), PDFHexString.fromText('Fuse 100 A')) },
  {
    name: 'a bookmark that leads elsewhere',
    act: (t) => firstBookmark(t).set(key('Dest'), t.pdf.context.obj([t.pdf.getPage(2).ref, PDFName.of('Fit')])),
  },
  {
    name: 'other page labels (12.4.2)',
    act: (t) => t.catalog.set(key('PageLabels'), t.pdf.context.obj({ Nums: [0, { S: 'r' }] })),
  },
  {
    name: 'a named place moved (12.3.2.4)',
    act: (t) => {
      const places = t.catalog.lookup(key('Dests'), PDFDict);
      const [first] = places.keys();
      places.set(first as PDFName, t.pdf.context.obj([t.pdf.getPage(2).ref, PDFName.of('Fit')]));
    },
  },
  { name: 'another title: the shop’s edition', act: (t) => t.pdf.setTitle('Shell T-1: as-built book, Shop edition') },
  { name: 'opened as if on its last page only', act: (t) => t.catalog.set(key('PageLayout'), PDFName.of('TwoPageRight')) },
  {
    name: 'a fuse of 100 A in the records',
    act: (t) => record(t, 'shells/T-1/services/dc.yaml', 'rating: 10 A', 'rating: 100 A'),
  },
  {
    name: 'an axle of 19,000 lb in the records',
    act: (t) => record(t, 'shells/T-1/shell.yaml', 'gawr: 9000 lb', 'gawr: 19000 lb'),
  },
  { name: 'a test that was passed', act: (t) => record(t, 'shells/T-1/tests.yaml', 'measured: 0.2 ohm', 'measured: 0.02 ohm') },
  { name: 'a record file taken out', act: (t) => void t.files.delete('shells/T-1/weights.yaml') },
  {
    name: 'the service’s book as the shop’s',
    act: (t) => {
      t.manifest.edition = 'shop';
      t.manifest.withheld = [];
    },
  },
  {
    name: 'another revision',
    act: (t) => {
      t.manifest.revision = 'ab'.repeat(20);
    },
  },
  {
    name: 'another shop',
    act: (t) => {
      t.manifest.shop = 'Quillfeather Fabrication';
    },
  },
  {
    name: 'closed, by its own account',
    act: (t) => {
      t.manifest.tag = 'T-1-closed';
    },
  },
  {
    name: 'an old kind of seal, and a note that it does not count',
    act: (t) => {
      t.manifest.seal = undefined;
      t.manifest.document_sha256 = undefined;
      note(t, 1, { Subtype: 'Link', Contents: PDFString.of('x') });
    },
  },
  {
    name: 'a file attached that is no part of it',
    act: (t) => {
      void t.pdf.attach(Buffer.from('x'), 'shells/T-1/extra.yaml');
    },
  },
  { name: 'nothing at all, but saved again', act: () => {} },
  {
    name: 'other metadata (14.3)',
    act: (t) => t.catalog.set(key('Metadata'), stream(t, '<x/>', { Type: 'Metadata', Subtype: 'XML' })),
  },
];
