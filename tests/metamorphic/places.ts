import { isMap, isScalar, isSeq, type Pair, parseDocument, Scalar, type YAMLSeq } from 'yaml';
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
