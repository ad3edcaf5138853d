import { type Bounds, boundsOf, grow } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Shell } from '../../records/index.js';
import { linePath } from '../solids.js';

/** Nothing of a coach is further than this outside its frame and skins, mm. House rule. */
const BEYOND_MM = 1000;

/** Where places of a coach may lie: about its members and panels; without any, what the envelope allows about the datum. mm */
export function placesAllowed(shell: Pick<Shell, 'members' | 'panels' | 'envelope'>): Bounds | undefined {
  const corners = [
    ...shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? linePath(shape) : shape.outline)),
    ...shell.panels.flatMap((panel) => panel.outline),
  ];
  if (corners.length > 0) return grow(boundsOf(corners), BEYOND_MM);
  if (!shell.envelope) return undefined;
  const { lengthMm, widthMm, heightMm } = shell.envelope;
  const about: readonly Vec3[] = [
    [-lengthMm, -widthMm / 2, -heightMm / 2],
    [lengthMm, widthMm / 2, heightMm],
  ];
  return grow(boundsOf(about), BEYOND_MM);
}

/** How a place is most often mistyped. */
export type PlaceSlip = 'feet' | 'inches' | 'sign';

const SLIPS: readonly (readonly [slip: PlaceSlip, mend: (value: number) => number])[] = [
  ['feet', (value) => value / 12],
  ['inches', (value) => value / 25.4],
  ['sign', (value) => -value],
];

/** The slip that brings every coordinate that lies outside back in; undefined where none does. */
export function probableSlip(at: Vec3, bounds: Bounds): PlaceSlip | undefined {
  return SLIPS.find(([, mend]) => {
    const mended = at.map((value, k) => (isBeyond(value, k, bounds) ? mend(value) : value)) as unknown as Vec3;
    return !isOutside(mended, bounds);
  })?.[0];
}

const isBeyond = (value: number, k: number, { min, max }: Bounds): boolean =>
  value < (min[k] as number) || value > (max[k] as number);

export const isOutside = (at: Vec3, bounds: Bounds): boolean => at.some((value, k) => isBeyond(value, k, bounds));
