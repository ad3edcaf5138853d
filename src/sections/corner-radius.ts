import { arc } from './ring.js';
import { arcWalls, fitWithin, type SectionKind, type ShapeProperties, type SizesOf } from './shape.js';

/**
 * Part of a ring: the corner of a coach between wall and roof. The ring's centre lies at (−depth, −width) of its box of one
 * outer radius each way; the part is symmetrical about the box's diagonal, so a sweep of 90° fills the box.
 *
 * With half sweep α in radians: area α(R² − r²), centroid 2 sin α (R³ − r³) / (3α (R² − r²)) from the centre.
 * Source: geometry (ring sector). Torsion: thin open strip, length × wall³/3.
 */
function cornerRadius({ outerRadiusMm, wallMm, sweepDeg }: SizesOf<'corner radius'>): ShapeProperties {
  const outer = outerRadiusMm;
  const inner = Math.max(0, outer - wallMm);
  const alpha = (sweepDeg * Math.PI) / 360;
  const area = alpha * (outer ** 2 - inner ** 2);
  if (area <= 0) return { areaMm2: 0, depthMm: 0, widthMm: 0, ixMm4: 0, iyMm4: 0, ixyMm4: 0, jMm4: 0 };
  const out = (2 * Math.sin(alpha) * (outer ** 3 - inner ** 3)) / (3 * area);
  const fourth = (outer ** 4 - inner ** 4) / 4;
  const along = fourth * (alpha + Math.sin(2 * alpha) / 2) - area * out ** 2;
  const across = fourth * (alpha - Math.sin(2 * alpha) / 2);
  const centroid = out * Math.SQRT1_2 - outer / 2;
  return {
    areaMm2: area,
    depthMm: centroid,
    widthMm: centroid,
    ixMm4: (along + across) / 2,
    iyMm4: (along + across) / 2,
    ixyMm4: (along - across) / 2,
    jMm4: ((outer + inner) * alpha * wallMm ** 3) / 3,
  };
}

export const CORNER_RADIUS: SectionKind<'corner radius'> = {
  properties: cornerRadius,
  // A quarter (or other sweep) of a tube: its chord box. The corner's centre is the box's inner corner.
  envelope: ({ outerRadiusMm }) => [outerRadiusMm, outerRadiusMm],
  rings: ({ outerRadiusMm, wallMm, sweepDeg }) => [
    [...arc([0, 0], outerRadiusMm, 0, sweepDeg, 24), ...arc([0, 0], outerRadiusMm - wallMm, sweepDeg, 0, 24)],
  ],
  walls: ({ outerRadiusMm, wallMm, sweepDeg }) => {
    const sweep = (sweepDeg * Math.PI) / 180;
    return arcWalls(outerRadiusMm, wallMm, [-outerRadiusMm / 2, -outerRadiusMm / 2], Math.PI / 4 - sweep / 2, sweep);
  },
  thinnestMm: ({ wallMm }) => wallMm,
  dimensions: ({ outerRadiusMm, wallMm }) => [
    ['outer radius', outerRadiusMm],
    ['wall', wallMm],
  ],
  fits: ({ outerRadiusMm, wallMm }) => [fitWithin('wall', wallMm, outerRadiusMm, 'its outer radius')],
};
