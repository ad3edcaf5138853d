import type { RawObject } from '../../pdf/raw-object.js';

/**
 * What a screen reader needs of the tags beyond what the browser writes (ISO 14289-1, 7.1, 7.3 and 7.6; ISO 32000-1, 14.8.4): each item of a
 * list holds its words in a body, a frame around a drawing and its caption is no figure without words, and every kind of tag is one
 * that the standard knows; and the tree says a next free key that is free (14.7.4.4). `next`: the first free number;
 * `signed`: the field of a signature, which has a tag too (7.18.4).
 */
export function tagForReaders(objects: readonly RawObject[], next: number, signed?: SignedPlace): readonly RawObject[] {
  const items = new Map<number, number>();
  let free = next;
  const kinds = objects.map((object) => kindOf(object));
  const lists = new Set(objects.flatMap(({ number }, i) => (kinds[i] === 'L' ? [number] : [])));
  objects.forEach((object, i) => {
    if (kinds[i] === 'LI' && lists.has(Number(PARENT.exec(textOf(object))?.[1]))) items.set(object.number, free++);
  });
  const bodies: RawObject[] = [];
  const tagged = objects.map((object, i): RawObject => {
    switch (kinds[i]) {
      case 'StructTreeRoot':
        return rewritten(object, (text) =>
          text.replace(ROOT, `${ROOT} ${ROLES}`).replace(NEXT_KEY, `/ParentTreeNextKey ${SIGNED_KEY + 1}`),
        );
      case 'ParentTree':
        // Keys stand in rising order, and none is above this one.
        return signed
          ? rewritten(object, (text) => text.replace(/\]\s*>>\s*$/u, ` ${SIGNED_KEY} ${signed.element} 0 R]>>`))
          : object;
      case 'Document':
        if (!signed) return object;
        bodies.push({ ...object, number: signed.element, body: bytes(formOf(signed, object.number)) });
        return rewritten(object, (text) => withKid(text, signed.element));
      case 'Figure':
        return rewritten(object, (text) => (text.includes('/Alt ') ? text : text.replace('/S /Figure', '/S /Div')));
      case 'L':
        return rewritten(object, (text) => withItems(text, items));
      case 'LI': {
        // The item keeps its number as the body, which what it holds and the pages lead to; the new object is the item.
        const item = items.get(object.number);
        if (item === undefined) return object;
        const text = textOf(object);
        bodies.push({
          ...object,
          number: item,
          body: bytes(`${ELEMENT}\n/S /LI\n/P ${PARENT.exec(text)?.[1]} 0 R\n/K ${object.number} 0 R>>`),
        });
        return { ...object, body: bytes(text.replace('/S /LI', '/S /LBody').replace(PARENT, `/P ${item} 0 R`)) };
      }
      default:
        return object;
    }
  });
  return bodies.length === 0 ? tagged : [...tagged, ...bodies];
}

const formOf = ({ field, page }: SignedPlace, parent: number): string =>
  `${ELEMENT}\n/S /Form\n/Alt (Signature of the shop)\n/P ${parent} 0 R\n/K <</Type /OBJR\n/Obj ${field} 0 R\n/Pg ${page} 0 R>>>>`;

/** One kid more, behind the others. */
const withKid = (text: string, kid: number): string =>
  text.replace(/\/K (?:\[([^\]]*)\]|(\d+ 0 R))/u, (_, many?: string, one?: string) => `/K [${many ?? one} ${kid} 0 R]`);

const ROOT = '<</Type /StructTreeRoot';
const ELEMENT = '<</Type /StructElem';
/** Kinds of tags that PDF 1.7 does not know, as what they are (ISO 32000-1, 14.8.4.1). */
const ROLES = '/RoleMap <</Strong /Span /Em /Span>>';
const NEXT_KEY = /\/ParentTreeNextKey \d+/u;
/** Key of a signature's field. The browser gives links keys from 100,000 on, one each; no book has so many that they come to this. */
export const SIGNED_KEY = 1e9;

/** Numbers of a signature's field, of the tag that it gets, and of the page that it is on. */
export interface SignedPlace {
  readonly field: number;
  readonly element: number;
  readonly page: number;
}
const PARENT = /\/P (\d+) 0 R/u;
const KIND = /^<<\/Type \/(?:StructElem(?: \/Pg \d+ 0 R)?\s\/S \/(\w+)|(StructTreeRoot|ParentTree))\b/u;
const REFERENCE = /(\d+) 0 R/gu;
/** `S` of a structure's element or root, `P` of the tree that leads back. */
const [S, P] = [0x53, 0x50];
/** The kind stands within so many bytes of an element's beginning. */
const HEAD_BYTES = 48;

/** Kind of tag of an element, or the root of the tree; undefined for every other object. */
function kindOf({ body, isStream }: RawObject): string | undefined {
  if (isStream || body[0] !== 0x3c || (body[9] !== S && body[9] !== P)) return undefined;
  const found = KIND.exec(Buffer.from(body.subarray(0, HEAD_BYTES)).toString('latin1'));
  return found?.[1] ?? found?.[2];
}

/** The kids of a list, its items by their new numbers. */
const withItems = (text: string, items: ReadonlyMap<number, number>): string =>
  text.replace(/\/K (?:\[[^\]]*\]|\d+ 0 R)/u, (kids) =>
    kids.replace(REFERENCE, (whole, number: string) => {
      const item = items.get(Number(number));
      return item === undefined ? whole : `${item} 0 R`;
    }),
  );

const textOf = ({ body }: RawObject): string => Buffer.from(body).toString('latin1');
const bytes = (text: string): Buffer => Buffer.from(text, 'latin1');
const rewritten = (object: RawObject, by: (text: string) => string): RawObject => {
  const before = textOf(object);
  const after = by(before);
  return after === before ? object : { ...object, body: bytes(after) };
};
