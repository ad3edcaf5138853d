import type { Vec3 } from '../geometry/vector.js';
import type { TapePhrase } from '../records/form/tape.js';
import type { TapeSolid } from './tape-solid.js';

export interface TapeEnd {
  readonly value: number;
  /** Half of what the face taken may differ from the true one, mm. */
  readonly doubtMm: number;
  /** What was taken for want of better. */
  readonly said?: string;
}

/** Of what stands square to the datum, face and box are one. */
const LEAST_SAID_MM = 0.1;
const AXES = ['x', 'y', 'z'] as const;

/** Where a tape ends on one axis, or what is wrong. `xMm`: of an axle. `at`: where the line along the axis runs, once that is known. */
export function tapeEnd(
  { id, lengthMm, sign, centre }: TapePhrase,
  axis: 0 | 1 | 2,
  { solid, xMm }: { readonly solid: TapeSolid | undefined; readonly xMm?: number },
  at: readonly number[] | undefined,
): TapeEnd | string {
  if (solid === undefined) return { value: (xMm as number) + Number(sign) * lengthMm, doubtMm: 0 };
  const { min, max } = solid.bounds;
  const side = Math.sign((min[1] + max[1]) / 2);
  if (typeof sign === 'string' && Math.abs(min[1] + max[1]) < 2)
    return `\`${id}\` is on the center line, which has no inboard side, expected \`left of\` or \`right of\``;
  const way = sign === 'in' ? -side : sign === 'out' ? side : sign;
  if (centre || way === 0) return { value: (min[axis] + max[axis]) / 2 + way * lengthMm, doubtMm: 0 };
  const face = (range: readonly [number, number]): number => (way > 0 ? range[1] : range[0]);
  const box = face([min[axis], max[axis]]);
  const met = at && solid.meets(axis, at as unknown as Vec3);
  if (met || !at) return { value: (met ? face(met) : box) + way * lengthMm, doubtMm: 0 };
  const through = solid.meets(axis, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2]);
  const doubtMm = through ? Math.abs(box - face(through)) / 2 : 0;
  const said = `No line along ${AXES[axis]} meets ${id} there: measured from the face of its box.`;
  return { value: box + way * lengthMm, doubtMm, ...(doubtMm > LEAST_SAID_MM ? { said } : {}) };
}
