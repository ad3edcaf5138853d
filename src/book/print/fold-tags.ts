import type { RawObject } from '../../pdf/raw-object.js';

/**
 * Folds the tags that stand for nothing into those that they stand in. The browser wraps every stretch of text in an element of its own
 * without meaning (`NonStruct`), nearly half of all objects of a book; by ISO 32000-2, 14.8.4.4 its content counts as its parent's. It
 * also says of every cell that it spans one row and one column, as a cell does that says nothing (14.8.5.7). Only what is written
 * exactly as the browser writes it is touched.
 */
export function foldTags(objects: readonly RawObject[]): readonly RawObject[] {
  const textOf = textsIn(objects);
  const leaves = new Map<number, Leaf>();
  const elements = new Map<number, string>();
  for (const { number, body, isStream } of objects) {
    if (isStream || !isElement(body)) continue;
    const text = textOf(body);
    const leaf = text.length > LONGEST_LEAF ? undefined : leafOf(text);
    if (leaf) leaves.set(number, leaf);
    else elements.set(number, text);
  }
  const folded = claimed(elements, leaves);
  return objects.flatMap((object) =>
    folded.has(object.number) ? [] : [withFolded(object, elements.get(object.number), folded, textOf)],
  );
}

/** Those that the element which they name as theirs names among its kids. */
function claimed(elements: ReadonlyMap<number, string>, leaves: ReadonlyMap<number, Leaf>): ReadonlyMap<number, Leaf> {
  const found = new Map<number, Leaf>();
  for (const [number, text] of elements) {
    for (const [, kid] of (KIDS.exec(text)?.[0] ?? '').matchAll(REFERENCE)) {
      const leaf = leaves.get(Number(kid));
      if (leaf?.parent === number) found.set(Number(kid), leaf);
    }
  }
  return found;
}

/** A stretch of a page's text: where it belongs, on which page it is, and its number there. */
interface Leaf {
  readonly parent: number;
  readonly page: number;
  readonly mark: number;
}

const LONGEST_LEAF = 120;
const LEAF = /^<<\/Type \/StructElem\s\/S \/NonStruct\s\/P (\d+) 0 R\s\/Pg (\d+) 0 R\s\/K (\d+)>>\s*$/u;
const ELEMENT = '<</Type /StructElem';
/** Elements and marks by number, and the places that one can press. */
const KIDS = /\/K (?:\[((?:[\d R]|<<\/Type \/OBJR\s\/Obj \d+ 0 R\s\/Pg \d+ 0 R>>)+)\]|(\d+ 0 R))/u;
const REFERENCE = /(\d+) 0 R/gu;
const ONE_CELL = / ?<<\/O \/Table\s\/(?:Row|Col)Span 1>>/gu;

type TextOf = (bytes: Uint8Array) => string;

/** Bytes as text. Objects of one file lie in one buffer: it becomes text once, and a hundred thousand objects are parts of that. */
function textsIn(objects: readonly RawObject[]): TextOf {
  const buffer = objects[0]?.body.buffer;
  const whole = buffer && Buffer.from(buffer).toString('latin1');
  return (bytes) =>
    whole !== undefined && bytes.buffer === buffer
      ? whole.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength)
      : Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
}

function isElement(body: Uint8Array): boolean {
  for (let i = 0; i < ELEMENT.length; i++) if (body[i] !== ELEMENT.charCodeAt(i)) return false;
  return true;
}

function leafOf(text: string): Leaf | undefined {
  const found = LEAF.exec(text);
  return found ? { parent: Number(found[1]), page: Number(found[2]), mark: Number(found[3]) } : undefined;
}

/** `element` is the object's text where it is one; else it may be a list of the tree that leads back to them from a page's marks. */
function withFolded(
  object: RawObject,
  element: string | undefined,
  folded: ReadonlyMap<number, Leaf>,
  textOf: TextOf,
): RawObject {
  const isList = !object.isStream && object.body[0] === 0x5b;
  if (!isList && element === undefined) return object;
  const text = element ?? textOf(object.body);
  const changed = element === undefined ? listWithout(text, folded) : plainCell(elementWithout(text, folded));
  return changed === text ? object : { ...object, body: Buffer.from(changed, 'latin1') };
}

/** Headers and the like stay. */
const plainCell = (text: string): string =>
  TABLE_CELL.test(text) ? text.replace(ONE_CELL, '').replace(/\s\/A \[\]/u, '') : text;
const TABLE_CELL = /^[^(]*\/S \/T[DH]\s[\s\S]*\/A \[/u;

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
  const own = /\/Pg (\d+) 0 R/u.exec(text.replace(kids[0], ''))?.[1];
  const page = own === undefined ? first.page : Number(own);
  const inside = (kids[1] ?? kids[2] ?? '').replace(REFERENCE, (whole, kid: string) => {
    const leaf = folded.get(Number(kid));
    if (!leaf) return whole;
    return leaf.page === page ? `${leaf.mark}` : `<</Type /MCR /Pg ${leaf.page} 0 R /MCID ${leaf.mark}>>`;
  });
  // What names no page is on its element's.
  const plain = text.replace(kids[0], `/K [${inside.replaceAll(`\n/Pg ${page} 0 R>>`, '>>')}]`);
  return own === undefined ? plain.replace(ELEMENT, `${ELEMENT} /Pg ${page} 0 R`) : plain;
}
