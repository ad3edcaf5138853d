import { PDFArray, type PDFDict, PDFHexString, PDFRef, PDFString } from '@cantoo/pdf-lib';
import type { Carry } from '../../archive/carry.js';
import { sha256 } from '../../archive/fingerprint.js';
import { MANIFEST, type Manifest } from '../../archive/manifest.js';
import { getOwn } from '../../get-own.js';
import { documentDigest } from '../../pdf/document-digest.js';
import { type PageDigest, type PageObject, pageDigests, pageObjects } from '../../pdf/pages.js';
import { name } from '../../pdf/parse.js';
import { PdfFile } from '../../pdf/read.js';
import type { FileSigner } from '../../pdf/signature.js';
import { packing, rawObjects, type ToSign, writePdf } from '../../pdf/write.js';
import { UserError } from '../../user-error.js';
import type { BookSigner } from '../input.js';
import { type Attachment, embed, NewObjects, rawObject } from './attach.js';
import { COLOUR_SPACE, colourProfile } from './colour.js';
import type { BookDocument } from './document.js';
import { foldTags } from './fold-tags.js';
import { describeLinks } from './link-words.js';
import { type FileWords, pdfDate, utcSeconds, xmp } from './metadata.js';
import { markPages } from './ornament.js';
import { SIGNED_KEY, type SignedPlace, tagForReaders } from './reader-tags.js';

const YAML = 'application/yaml';
const CREATOR = 'shellbook';

/** The file that goes out, and what is to be said of it. */
export interface FinishedPdf {
  readonly pdf: Uint8Array;
  readonly warnings: readonly string[];
}

/** What the file says beside what is printed. */
export interface Finishing {
  /** Anchor → page, from 1. */
  readonly homes: ReadonlyMap<string, number>;
  /** Anchor → words of the heading, or id of the record, that stands there. */
  readonly names: ReadonlyMap<string, string>;
  /** Name and version of the browser that printed. */
  readonly browser: string;
  readonly carry?: Carry;
}

/**
 * Makes the browser's print the file that goes out: dates, metadata, colours and page labels; the records and the manifest inside it;
 * packed, sealed, and signed where the shop has a key. The same print of the same record gives the same bytes.
 * @throws UserError where it has not the pages that were `planned`
 */
export async function finishPdf(
  print: Uint8Array,
  planned: number,
  document: BookDocument,
  { homes, names, browser, carry }: Finishing,
): Promise<FinishedPdf> {
  const bare = PdfFile.open(print);
  const barePages = pageObjects(bare);
  const pageCount = barePages.length;
  if (pageCount !== planned) {
    throw new UserError(
      `The book came out with ${pageCount} pages where ${planned} were planned, so its page numbers would be wrong; it was ` +
        'not written. Print with the packaged browser (unset PUPPETEER_EXECUTABLE_PATH), and report this if it stays.',
    );
  }
  const { root, info } = numbersOf(bare);
  const given = rawObjects(bare);
  const marked = await markPages(bare, barePages, document.sheets);
  const links = describeLinks(given, { homes, names, pageWord: document.pageWord ?? 'page' });
  const file = bare.replacing([...marked.contents, ...links]);
  const objects = pageObjects(file);
  const signer = document.signer?.sign ? fileSigner(document.signer, document.date) : undefined;
  const anew = new Set([root, info, ...(signer ? [objects[0]?.number] : [])]);
  // Packed by other threads while this one looks at the pages.
  const told = new Map([...marked.contents, ...links].map((one) => [one.number, one]));
  const free = given.reduce((most, { number }) => Math.max(most, number), 0) + 1;
  const place = signer && signedPlace(objects[0] as PageObject, free);
  const tagged = tagForReaders(foldTags(given), place ? place.element + 1 : free, place).map(
    (one) => told.get(one.number) ?? one,
  );
  const printed = packing(tagged.filter(({ number }) => !anew.has(number)));
  const added = new NewObjects(tagged.reduce((most, { number }) => Math.max(most, number), free + 1) + 1);
  const pages = digestsOf(file);
  const lacking = pages.flatMap(({ lacksGlyph }, i) => (lacksGlyph ? [i + 1] : []));
  const words = sentencesFor(file, document, { archival: lacking.length === 0, accessible: marked.whole }, carry);
  const { catalog } = file;
  catalog.set(name('Metadata'), await added.stream({ Type: 'Metadata', Subtype: 'XML' }, Buffer.from(xmp(words)), true));
  catalog.set(name('OutputIntents'), added.context.obj([await outputIntent(added)]));
  catalog.set(name('PageLabels'), added.dict({ Nums: pageLabels(document) }));
  const facts = information(added, words);
  const whole = documentDigest(file, objects, { catalog, info: facts, added: added.objects });
  const manifest = carry && manifestOf({ pages, document: whole, browser, homes }, document, carry);
  if (carry && manifest) await attach(added, catalog, await attachments(carry, manifest), pdfDate(words.date));
  const signed = signer && place && signatureIn(added, catalog, objects[0] as PageObject, signer, place);
  const heads = [rawObject(root, catalog), rawObject(info, facts), ...(signed ? [signed.page] : [])];
  const parts = [printed, packing([...heads, ...added.all])];
  const pdf = await writePdf(parts, { root, info, id: sha256(manifest ?? xmp(words)) }, signed?.toSign);
  return { pdf, warnings: lacking.map((page) => `Page ${page} has a sign that no typeface here has: it shows as an empty box.`) };
}

const fileSigner = ({ name: who, date, sign }: BookSigner, printed: string): FileSigner => ({
  name: who,
  date: pdfDate(utcSeconds(date ?? printed)),
  sign: sign as FileSigner['sign'],
});

/** Printed with the page, and locked (ISO 32000-2, 12.5.3); it has no size, so that nothing of it shows. */
const FIELD_FLAGS = 4 + 128;
/** There are signatures, and the file may only be added to, not written anew (12.7.3). */
const SIGNATURE_FLAGS = 3;

/** Numbers for the field and its tag, from the first free one; the first page is walked in the order of the tags, as it must be then. */
function signedPlace({ page, number }: PageObject, free: number): SignedPlace {
  if (number === undefined) throw new Error('The browser wrote its first page within another object');
  page.set(name('Tabs'), name('S'));
  return { field: free, element: free + 1, page: number };
}

/** The field of a signature on the first page, and the page with it. */
function signatureIn(
  added: NewObjects,
  catalog: PDFDict,
  { page }: PageObject,
  signer: FileSigner,
  { field: fieldNumber, page: number }: SignedPlace,
) {
  const toSign: ToSign = { number: added.number(), signer };
  const value = PDFRef.of(toSign.number);
  const field = added.add(
    added.dict({
      Type: 'Annot',
      Subtype: 'Widget',
      FT: 'Sig',
      T: PDFString.of('Signature of the shop'),
      F: FIELD_FLAGS,
      Rect: [0, 0, 0, 0],
      P: PDFRef.of(number),
      V: value,
      StructParent: SIGNED_KEY,
    }),
    fieldNumber,
  );
  const notes = page.lookup(name('Annots'));
  page.set(name('Annots'), added.context.obj([...(notes instanceof PDFArray ? notes.asArray() : []), field]));
  catalog.set(name('AcroForm'), added.dict({ Fields: [field], SigFlags: SIGNATURE_FLAGS }));
  catalog.set(name('Perms'), added.dict({ DocMDP: value }));
  return { toSign, page: rawObject(number, page) };
}

function digestsOf(file: PdfFile): readonly PageDigest[] {
  return pageDigests(file).map((digest, i) => {
    if (!digest) throw new Error(`The browser wrote page ${i + 1} in a way that is not read here`);
    return digest;
  });
}

function numbersOf({ xref: { trailer } }: PdfFile): { readonly root: number; readonly info: number } {
  const [root, info] = [trailer.get(name('Root')), trailer.get(name('Info'))];
  if (!(root instanceof PDFRef && info instanceof PDFRef)) throw new Error('The browser wrote a file without catalogue or title');
  return { root: root.objectNumber, info: info.objectNumber };
}

function sentencesFor(
  file: PdfFile,
  document: BookDocument,
  { archival, accessible }: { readonly archival: boolean; readonly accessible: boolean },
  carry: Carry | undefined,
): FileWords {
  const info = file.dict(file.xref.trailer, 'Info', 'its title');
  return {
    title: file.text(info, 'Title') ?? '',
    ...(carry ? { author: carry.head.shop } : {}),
    language: file.text(file.catalog, 'Lang') ?? 'en',
    creator: CREATOR,
    producer: file.text(info, 'Producer') ?? CREATOR,
    date: utcSeconds(document.date),
    archival,
    accessible: archival && accessible,
  };
}

function information(added: NewObjects, { title, author, creator, producer, date }: FileWords): PDFDict {
  return added.dict({
    Title: PDFHexString.fromText(title),
    ...(author === undefined ? {} : { Author: PDFHexString.fromText(author) }),
    Creator: PDFString.of(creator),
    Producer: PDFString.of(producer),
    CreationDate: PDFString.of(pdfDate(date)),
    ModDate: PDFString.of(pdfDate(date)),
  });
}

async function outputIntent(added: NewObjects): Promise<PDFDict> {
  return added.dict({
    Type: 'OutputIntent',
    S: 'GTS_PDFA1',
    OutputConditionIdentifier: PDFString.of(COLOUR_SPACE),
    Info: PDFString.of(COLOUR_SPACE),
    DestOutputProfile: await added.stream({ N: 3 }, await colourProfile()),
  });
}

/** The numbers printed at the foot of the pages; a cover has none. */
function pageLabels(document: BookDocument): readonly unknown[] {
  const numbered = (from: number) => [from - 1, { S: 'D', St: from }];
  return document.chapters[0]?.bare ? [0, { P: PDFString.of(COVER) }, ...numbered(2)] : numbered(1);
}

const COVER = 'Cover';
const labelOf = (document: BookDocument, page: number): string =>
  page === 1 && document.chapters[0]?.bare ? COVER : String(page);

/** What was printed, by its digests, and by what. */
interface Printed {
  readonly pages: readonly PageDigest[];
  readonly document: string;
  readonly browser: string;
  readonly homes: ReadonlyMap<string, number>;
}

/** The manifest as JSON text. */
function manifestOf(printed: Printed, document: BookDocument, { head: { program, ...head } }: Carry): string {
  const pages = printed.pages.map(({ whole, text, pictures }, i) => ({
    label: labelOf(document, i + 1),
    sha256: whole,
    text_sha256: text,
    pictures: [...pictures],
  }));
  const pictures = [...document.pictures.values()].flatMap(({ bytes, photo }) =>
    photo ? [[sha256(bytes), photo] as const] : [],
  );
  const manifest: Manifest = {
    shellbook: 1,
    kind: 'as-built book',
    seal: 2,
    ...head,
    printed_by: { ...program, browser: printed.browser },
    document_sha256: printed.document,
    pages,
    pictures: Object.fromEntries(pictures),
    homes: Object.fromEntries(printed.homes),
  };
  return `${JSON.stringify(manifest, null, 1)}\n`;
}

async function attachments({ head, records, photo }: Carry, manifest: string): Promise<readonly Attachment[]> {
  const about = `of shell ${head.shell}`;
  const files: Attachment[] = [
    {
      path: MANIFEST,
      bytes: Buffer.from(manifest),
      mediaType: 'application/json',
      description: `What this book stands on and carries: record ${about}, revision, fingerprint, digests`,
      relationship: 'Data',
    },
  ];
  for (const [path, bytes] of records) {
    files.push({ path, bytes, mediaType: YAML, description: `Record file ${about}`, relationship: 'Source' });
  }
  for (const { path, id, carried } of head.photos) {
    if (!carried) continue;
    const description = `Photo ${id ?? path} ${about}`;
    files.push({
      path,
      bytes: await photo(path),
      mediaType: mediaTypeOf(path),
      description,
      relationship: 'Source',
      packed: true,
    });
  }
  return files;
}

const MEDIA: Readonly<Record<string, string>> = { jpg: 'image/jpeg', jpeg: 'image/jpeg', png: 'image/png', webp: 'image/webp' };
const mediaTypeOf = (path: string): string =>
  getOwn(MEDIA, path.split('.').at(-1)?.toLowerCase() ?? '') ?? 'application/octet-stream';

async function attach(added: NewObjects, catalog: PDFDict, files: readonly Attachment[], date: string): Promise<void> {
  const embedded = await embed(added, files, date);
  catalog.set(name('AF'), added.context.obj(embedded.map(({ file }) => file)));
  const names = embedded.flatMap(({ name: one, file }) => [one, file]);
  catalog.set(name('Names'), added.dict({ EmbeddedFiles: { Names: names } }));
}
