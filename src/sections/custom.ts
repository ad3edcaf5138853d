import { rounded } from './ring.js';
import { across, type SectionKind } from './shape.js';

/** A die of the shop's own: its figures are typed, and its form is not known. It counts as the box that it fills. */
export const CUSTOM: SectionKind<'custom'> = {
  properties: ({ areaMm2, ixMm4, iyMm4, jMm4 }) => ({
    areaMm2,
    depthMm: 0,
    widthMm: 0,
    ixMm4,
    iyMm4,
    ixyMm4: 0,
    jMm4: jMm4 ?? 0,
  }),
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm }) => [rounded(-widthMm / 2, -depthMm / 2, widthMm / 2, depthMm / 2, 0)],
  walls: ({ depthMm, widthMm }) => [across(widthMm, 0, depthMm)],
  thinnestMm: () => undefined,
  dimensions: () => [],
  fits: () => [],
};
