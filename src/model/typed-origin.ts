import type { Vec3 } from '../geometry/vector.js';
import { parseQuantity } from '../quantity/parse.js';
import type { Shell } from '../records/index.js';

/** Where the typed origin of a shell lies in the standard datum, mm. */
export function typedOrigin({ typed }: Pick<Shell, 'typed'>): Vec3 {
  const { datum } = typed as { datum?: { origin?: readonly unknown[] } };
  return [0, 1, 2].map((i) => {
    const read = parseQuantity(datum?.origin?.[i], 'length');
    return read.ok ? read.value : 0;
  }) as unknown as Vec3;
}
