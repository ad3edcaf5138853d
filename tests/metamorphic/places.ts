import { isMap, isScalar, isSeq, type Pair, parseDocument, Scalar, visit, type YAMLSeq } from 'yaml';
import type { Vec3 } from '../../src/geometry/vector.js';
import { parseQuantity } from '../../src/quantity/parse.js';

/** Keys whose three lengths are no place. */
const NO_PLACE: ReadonlySet<string> = new Set(['size']);

/** Every place in a file moved: a list of three lengths is one. Axles have only a station, under `x`. */
export function movePlaces(text: string, move: (place: Vec3) => Vec3): string {
  const document = parseDocument(text, { schema: 'failsafe', logLevel: 'silent' });
  const head = document.toJS()?.units;
  const lengthMm = (one: unknown): number | undefined => {
    const bare = typeof one === 'string' && /^-?[\d.]+$/u.test(one) ? Number(one) : one;
    const read = parseQuantity(bare, 'length', head ?? {});
    return read.ok ? read.value : undefined;
  };
  const typed = (mm: number): Scalar => new Scalar(`${mm} mm`);
  const moved = (list: YAMLSeq): boolean => {
    const values = list.items.map((one) => (isScalar(one) ? lengthMm(one.value) : undefined));
    if (values.length !== 3 || values.includes(undefined)) return false;
    list.items = move(values as unknown as Vec3).map(typed);
    return true;
  };
  const walk = (node: unknown, key: string): void => {
    if (isSeq(node)) {
      if (!NO_PLACE.has(key) && moved(node)) return;
      for (const item of node.items) walk(item, key);
    } else if (isMap(node)) {
      for (const pair of node.items as Pair[]) {
        const name = isScalar(pair.key) ? String(pair.key.value) : '';
        if (name === 'x' && isScalar(pair.value)) {
          const x = lengthMm(pair.value.value);
          if (x !== undefined) pair.value = typed(move([x, 0, 0])[0]);
        } else walk(pair.value, name);
      }
    }
  };
  walk(document.contents, '');
  return document.toString({ lineWidth: 0 });
}

/** The far corner of a mirrored box has the lower y: the corners swap it, so that what was typed low first is so again. */
function lowFirst(box: unknown): void {
  const [a, b] = isSeq(box) ? box.items : [];
  if (isSeq(a) && isSeq(b)) [a.items[1], b.items[1]] = [b.items[1], a.items[1]];
}

const OTHER_HAND: Readonly<Record<string, string>> = { left: 'right', right: 'left' };

/**
 * A file of the coach's mirror image, left for right: places, what faces left or right, and readings by side. A member on a line is
 * run the other way round, so that its section, which its roll turns right-handed about the line, is mirrored with it.
 */
export function mirrorPlaces(text: string): string {
  const document = parseDocument(
    movePlaces(text, ([x, y, z]) => [x, -y, z]),
    { schema: 'failsafe' },
  );
  const word = (node: unknown): string => (isScalar(node) ? String(node.value) : '');
  visit(document, {
    Map: (_, map) => {
      const pairs = map.items as Pair[];
      const [from, to] = ['from', 'to'].map((key) => pairs.find((pair) => word(pair.key) === key && isSeq(pair.value)));
      if (from && to) [from.value, to.value] = [to.value, from.value];
      for (const pair of pairs) {
        if (word(pair.key) === 'box') lowFirst(pair.value);
        if (word(pair.key) === 'bends' && isSeq(pair.value)) pair.value.items.reverse();
        const sided = ['facing', 'wall'].includes(word(pair.key)) && OTHER_HAND[word(pair.value)];
        if (sided) pair.value = new Scalar(sided);
        const side = OTHER_HAND[word(pair.key)];
        if (side) pair.key = new Scalar(side);
      }
    },
  });
  return document.toString({ lineWidth: 0 });
}
