/** A printed file as its tags have it, read with pdf-lib: elements with their kids, annotations, fonts and pages. For tests. */
import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';

/** One element of the structure tree (ISO 32000-1, 14.7.2). */
export interface Element {
  /** Its type, and what the role map makes of it. */
  readonly type: string;
  readonly role: string;
  readonly dict: PDFDict;
  readonly parent?: Element;
  readonly kids: readonly Element[];
  /** Stretches of pages' text that it holds itself. */
  readonly marks: number;
  /** Annotations that it holds itself, by object number. */
  readonly annotations: readonly number[];
}

export class TaggedFile {
  private constructor(
    readonly bytes: Uint8Array,
    readonly pdf: PDFDocument,
    /** In reading order. */
    readonly elements: readonly Element[],
    readonly dicts: readonly PDFDict[],
    readonly streams: readonly PDFRawStream[],
  ) {}

  static async read(bytes: Uint8Array): Promise<TaggedFile> {
    const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
    const objects = pdf.context.enumerateIndirectObjects().map(([, object]) => object);
    const streams = objects.filter((one): one is PDFRawStream => one instanceof PDFRawStream);
    const dicts = [...objects.filter((one): one is PDFDict => one instanceof PDFDict), ...streams.map(({ dict }) => dict)];
    return new TaggedFile(bytes, pdf, elementsOf(pdf), dicts, streams);
  }

  get catalog(): PDFDict {
    return this.pdf.catalog;
  }

  ofType(type: string): readonly PDFDict[] {
    return this.dicts.filter((one) => nameIn(one, 'Type') === type);
  }

  /** Of all pages, with their number from 1 and the object's own number. */
  annotations(): readonly { readonly page: number; readonly number: number; readonly dict: PDFDict }[] {
    return this.pdf.getPages().flatMap(({ node }, at) =>
      listIn(node, 'Annots').map((one) => ({
        page: at + 1,
        number: one instanceof PDFRef ? one.objectNumber : 0,
        dict: this.pdf.context.lookup(one, PDFDict),
      })),
    );
  }

  /** Instructions of a page, from 1. */
  contents(page: number): string {
    const found = this.pdf.getPages()[page - 1]?.node.lookup(PDFName.of('Contents'));
    if (!(found instanceof PDFRawStream)) throw new Error(`page ${page} has no instructions of one stream`);
    return Buffer.from(decodePDFRawStream(found).decode()).toString('latin1');
  }

  metadata(): string {
    const found = this.catalog.lookup(PDFName.of('Metadata'));
    return found instanceof PDFRawStream ? Buffer.from(found.contents).toString('utf8') : '';
  }
}

const key = (text: string): PDFName => PDFName.of(text);

export function nameIn(dict: PDFDict, of: string): string {
  const value = dict.lookup(key(of));
  return value instanceof PDFName ? value.decodeText() : '';
}

export function textIn(dict: PDFDict, of: string): string {
  const value = dict.lookup(key(of));
  return value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : '';
}

export function numberIn(dict: PDFDict, of: string): number | undefined {
  const value = dict.lookup(key(of));
  return value instanceof PDFNumber ? value.asNumber() : undefined;
}

export function listIn(dict: PDFDict, of: string): readonly PDFObject[] {
  const value = dict.lookup(key(of));
  return value instanceof PDFArray ? value.asArray() : [];
}

export function dictIn(dict: PDFDict, of: string): PDFDict | undefined {
  const value = dict.lookup(key(of));
  return value instanceof PDFDict ? value : undefined;
}

/** The attribute of a structure element, in whichever of its attribute objects it stands (ISO 32000-1, 14.7.5). */
export function attribute(element: Element, name: string): PDFObject | undefined {
  const given = element.dict.lookup(key('A'));
  const all = given instanceof PDFArray ? given.asArray().map((one) => element.dict.context.lookup(one)) : [given];
  for (const one of all) {
    const found = one instanceof PDFDict ? one.lookup(key(name)) : undefined;
    if (found) return found;
  }
  return undefined;
}

function elementsOf(pdf: PDFDocument): readonly Element[] {
  const root = dictIn(pdf.catalog, 'StructTreeRoot');
  if (!root) return [];
  const roles = dictIn(root, 'RoleMap');
  const all: Element[] = [];
  const read = (dict: PDFDict, parent: Element | undefined): Element => {
    const type = nameIn(dict, 'S');
    const kids: Element[] = [];
    const annotations: number[] = [];
    let marks = 0;
    const element = {
      type,
      role: (roles && nameIn(roles, type)) || type,
      dict,
      kids,
      annotations,
      ...(parent ? { parent } : {}),
      get marks() {
        return marks;
      },
    };
    all.push(element);
    for (const given of kidsOf(dict)) {
      const kid = pdf.context.lookup(given);
      if (kid instanceof PDFNumber) marks++;
      if (!(kid instanceof PDFDict)) continue;
      const kind = nameIn(kid, 'Type');
      const object = kid.get(key('Obj'));
      if (kind === 'MCR') marks++;
      else if (kind === 'OBJR') {
        if (object instanceof PDFRef) annotations.push(object.objectNumber);
      } else kids.push(read(kid, element));
    }
    return element;
  };
  for (const given of kidsOf(root)) read(pdf.context.lookup(given, PDFDict), undefined);
  return all;
}

function kidsOf(dict: PDFDict): readonly PDFObject[] {
  const kids = dict.lookup(key('K'));
  if (kids instanceof PDFArray) return kids.asArray();
  const given = dict.get(key('K'));
  return given === undefined ? [] : [given];
}
