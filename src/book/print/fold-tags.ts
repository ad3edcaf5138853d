import type { RawObject } from '../../archive/pdf/write.js';

/**
 * Folds the tags that stand for nothing into those that they stand in. The browser wraps every stretch of text in an element of its own
 * without meaning (`NonStruct`), nearly half of all objects of a book; by ISO 32000-2, 14.8.4.4 its content counts as its parent's. Only
 * what is written exactly as the browser writes it is touched.
 */
export function foldTags(objects: readonly RawObject[]): readonly RawObject[] {
  const leaves = new Map<number, Leaf>();
  for (const { number, body, isStream } of objects) {
    const leaf = isStream || body.length > LONGEST_LEAF ? undefined : leafOf(body);
    if (leaf) leaves.set(number, leaf);
  }
  const folded = claimed(objects, leaves);
  return objects.flatMap((object) => (folded.has(object.number) ? [] : [withFolded(object, folded)]));
}

/** Those that the element which they name as theirs names among its kids. */
function claimed(objects: readonly RawObject[], leaves: ReadonlyMap<number, Leaf>): ReadonlyMap<number, Leaf> {
  const found = new Map<number, Leaf>();
  for (const object of objects) {
    if (!isElement(object) || leaves.has(object.number)) continue;
    for (const [, kid] of (KIDS.exec(textOf(object.body))?.[0] ?? '').matchAll(REFERENCE)) {
      const leaf = leaves.get(Number(kid));
      if (leaf?.parent === object.number) found.set(Number(kid), leaf);
    }
  }
  return found;
}

const isElement = ({ body, isStream }: RawObject): boolean => !isStream && textOf(body.subarray(0, ELEMENT.length)) === ELEMENT;

/** A stretch of a page's text: where it belongs, on which page it is, and its number there. */
interface Leaf {
  readonly parent: number;
  readonly page: number;
  readonly mark: number;
}

const LONGEST_LEAF = 120;
const LEAF = /^<<\/Type \/StructElem\s\/S \/NonStruct\s\/P (\d+) 0 R\s\/Pg (\d+) 0 R\s\/K (\d+)>>\s*$/u;
const ELEMENT = '<</Type /StructElem';
const KIDS = /\/K (?:\[([\d R]+)\]|(\d+ 0 R))/u;
const REFERENCE = /(\d+) 0 R/gu;

const textOf = (bytes: Uint8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');

function leafOf(body: Uint8Array): Leaf | undefined {
  const found = LEAF.exec(textOf(body));
  return found ? { parent: Number(found[1]), page: Number(found[2]), mark: Number(found[3]) } : undefined;
}

function withFolded(object: RawObject, folded: ReadonlyMap<number, Leaf>): RawObject {
  // Elements, and the lists of the tree that leads back to them from a page's marks.
  const isList = !object.isStream && object.body[0] === 0x5b;
  if (!isList && !isElement(object)) return object;
  const text = textOf(object.body);
  const changed = isList ? listWithout(text, folded) : elementWithout(text, folded);
  return changed === text ? object : { ...object, body: Buffer.from(changed, 'latin1') };
}

const listWithout = (text: string, folded: ReadonlyMap<number, Leaf>): string =>
  text.replace(REFERENCE, (whole, number: string) => {
    const leaf = folded.get(Number(number));
    return leaf ? `${leaf.parent} 0 R` : whole;
  });

/** Marks of the element's own page stand as numbers, those of another as references of their own. */
function elementWithout(text: string, folded: ReadonlyMap<number, Leaf>): string {
  const kids = KIDS.exec(text);
  if (!kids) return text;
  const leaves = [...kids[0].matchAll(REFERENCE)].flatMap(([, kid]) => folded.get(Number(kid)) ?? []);
  const [first] = leaves;
  if (!first) return text;
  const own = /\/Pg (\d+) 0 R/u.exec(text)?.[1];
  const page = own === undefined ? first.page : Number(own);
  const inside = (kids[1] ?? kids[2] ?? '').replace(REFERENCE, (whole, kid: string) => {
    const leaf = folded.get(Number(kid));
    if (!leaf) return whole;
    return leaf.page === page ? `${leaf.mark}` : `<</Type /MCR /Pg ${leaf.page} 0 R /MCID ${leaf.mark}>>`;
  });
  const plain = text.replace(kids[0], `/K [${inside}]`);
  return own === undefined ? plain.replace(ELEMENT, `${ELEMENT} /Pg ${page} 0 R`) : plain;
}
