import type { P } from '../inches.js';
import { outline } from '../inches.js';
import type { Rec } from '../yaml.js';

/** Corners of a rectangle on one of the datum’s planes. */
export const flatXY = (x0: number, x1: number, y0: number, y1: number, z: number): readonly P[] => [
  [x0, y0, z],
  [x1, y0, z],
  [x1, y1, z],
  [x0, y1, z],
];
export const flatXZ = (x0: number, x1: number, z0: number, z1: number, y: number): readonly P[] => [
  [x0, y, z0],
  [x1, y, z0],
  [x1, y, z1],
  [x0, y, z1],
];
export const flatYZ = (y0: number, y1: number, z0: number, z1: number, x: number): readonly P[] => [
  [x, y0, z0],
  [x, y1, z0],
  [x, y1, z1],
  [x, y0, z1],
];

export interface Access {
  readonly id: string;
  readonly name: string;
  readonly of: string;
  readonly facing: 'up' | 'down' | 'left' | 'right' | 'front' | 'rear';
  /** Middle of the opening. */
  readonly at: P;
  /** Clear opening: along x, then across (y or z), in. */
  readonly clear: readonly [number, number];
  readonly count: number;
  readonly driver: string;
  readonly stage: string;
  readonly date?: string;
  readonly sealant?: string;
}

/** The clear opening, as it is cut in the parent panel. */
export function hole(panel: Access, more = 0): readonly P[] {
  const [x, y, z] = panel.at;
  const [along, across] = [panel.clear[0] / 2 + more, panel.clear[1] / 2 + more];
  if (panel.facing === 'up' || panel.facing === 'down') return flatXY(x - along, x + along, y - across, y + across, z);
  if (panel.facing === 'left' || panel.facing === 'right') return flatXZ(x - along, x + along, z - across, z + across, y);
  return flatYZ(y - along, y + along, z - across, z + across, x);
}

/** An access panel overlaps its opening by an inch all round. */
export const accessRecord = (panel: Access, alloy: string, thickness: string): Rec => ({
  id: panel.id,
  kind: 'access',
  name: panel.name,
  of: panel.of,
  facing: panel.facing,
  opening: `${Math.min(...panel.clear)} in x ${Math.max(...panel.clear)} in`,
  alloy,
  thickness,
  stage: panel.stage,
  ...(panel.date ? { date: panel.date } : {}),
  fixing: {
    method: 'screws',
    count: panel.count,
    driver: panel.driver,
    ...(panel.sealant ? { sealant: panel.sealant } : {}),
    torque: '3 N.m',
    ...(panel.facing === 'down' ? { order: 'one corner last, as a hinge; tighten crosswise' } : {}),
  },
  outline: outline(hole(panel, 1)),
});

export const holesOf = (
  parent: string,
  panels: readonly Access[],
  more: readonly (readonly P[])[] = [],
): { readonly holes?: unknown } => {
  const all = [...panels.filter((one) => one.of === parent).map((one) => hole(one)), ...more];
  return all.length > 0 ? { holes: all.map(outline) } : {};
};
