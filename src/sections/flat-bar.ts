import { rectanglePart } from './parts.js';
import { rounded } from './ring.js';
import { across, type SectionKind } from './shape.js';
import { barTorsion } from './torsion.js';

/** Source: geometry. */
export const FLAT_BAR: SectionKind<'flat bar'> = {
  properties: ({ depthMm, widthMm }) => ({ ...rectanglePart(depthMm, widthMm), jMm4: barTorsion(depthMm, widthMm) }),
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm }) => [rounded(-widthMm / 2, -depthMm / 2, widthMm / 2, depthMm / 2, 0)],
  walls: ({ depthMm, widthMm }) => [across(widthMm, 0, depthMm)],
  thinnestMm: ({ depthMm, widthMm }) => Math.min(depthMm, widthMm),
  dimensions: () => [],
  fits: () => [],
};
