import type { RawObject } from '../../pdf/raw-object.js';

/**
 * What a screen reader needs of the tags beyond what the browser writes (ISO 14289-1, 7.1, 7.3 and 7.6; ISO 32000-1, 14.8.4): each item of a
 * list holds its words in a body, a frame around a drawing and its caption is no figure without words, and every kind of tag is one
 * that the standard knows; and the tree says a next free key that is free (14.7.4.4). `next`: the first free number.
 */
export function tagForReaders(objects: readonly RawObject[], next: number): readonly RawObject[] {
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
          text.replace(ROOT, `${ROOT} ${ROLES}`).replace(NEXT_KEY, `/ParentTreeNextKey ${FREE_KEY}`),
        );
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
  return items.size === 0 ? tagged : [...tagged, ...bodies];
}

const ROOT = '<</Type /StructTreeRoot';
const ELEMENT = '<</Type /StructElem';
/** Kinds of tags that PDF 1.7 does not know, as what they are (ISO 32000-1, 14.8.4.1). */
const ROLES = '/RoleMap <</Strong /Span /Em /Span>>';
const NEXT_KEY = /\/ParentTreeNextKey \d+/u;
/** The browser gives links keys from 100,000 on, one each; no book has so many that they come to this. */
const FREE_KEY = 1e9;
const PARENT = /\/P (\d+) 0 R/u;
const KIND = /^<<\/Type \/(?:StructElem(?: \/Pg \d+ 0 R)?\s\/S \/(\w+)|(StructTreeRoot))\b/u;
const REFERENCE = /(\d+) 0 R/gu;
/** The kind stands within so many bytes of an element's beginning. */
const HEAD_BYTES = 48;

/** Kind of tag of an element, or the root of the tree; undefined for every other object. */
function kindOf({ body, isStream }: RawObject): string | undefined {
  if (isStream || body[0] !== 0x3c || body[9] !== 0x53) return undefined;
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
