import { combineParts, cut, fillet, rectanglePart } from './parts.js';
import { filleted } from './ring.js';
import {
  across,
  filletFit,
  fitWithin,
  radiusOf,
  type SectionKind,
  type ShapeProperties,
  type SizesOf,
  upright,
} from './shape.js';
import { angleTorsion } from './torsion.js';

/**
 * Two legs of one thickness: the heel lies at (−depth, −width), one leg along the depth, one along the width. An exact fillet in
 * the root, an exact round at the inside of each toe. Source: geometry; gives the Aluminum Association's printed properties.
 */
export function angle({ depthMm, widthMm, wallMm, filletMm, toeRadiusMm }: SizesOf<'angle'>): ShapeProperties {
  const heelDepth = -depthMm / 2;
  const heelWidth = -widthMm / 2;
  const toe = Math.min(toeRadiusMm, wallMm);
  return {
    ...combineParts([
      rectanglePart(depthMm, wallMm, 0, heelWidth + wallMm / 2),
      rectanglePart(wallMm, widthMm - wallMm, heelDepth + wallMm / 2, wallMm / 2),
      fillet(filletMm, heelDepth + wallMm, heelWidth + wallMm, 1, 1),
      cut(fillet(toe, depthMm / 2, heelWidth + wallMm, -1, -1)),
      cut(fillet(toe, heelDepth + wallMm, widthMm / 2, -1, -1)),
    ]),
    jMm4: angleTorsion(depthMm, widthMm, wallMm, filletMm),
  };
}

export const ANGLE: SectionKind<'angle'> = {
  properties: angle,
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm, wallMm: t, filletMm, toeRadiusMm: toe }) => {
    const [h, b] = [depthMm / 2, widthMm / 2];
    return [
      filleted([
        [-b, -h, 0],
        [b, -h, 0],
        [b, -h + t, toe],
        [-b + t, -h + t, filletMm],
        [-b + t, h, toe],
        [-b, h, 0],
      ]),
    ];
  },
  walls: ({ depthMm, widthMm, wallMm }) => [
    across(widthMm, (wallMm - depthMm) / 2, wallMm),
    upright(depthMm, (wallMm - widthMm) / 2, wallMm),
  ],
  thinnestMm: ({ wallMm }) => wallMm,
  dimensions: ({ wallMm, filletMm, toeRadiusMm }) => [
    ['wall', wallMm],
    ...radiusOf('fillet', filletMm),
    ...radiusOf('toe radius', toeRadiusMm),
  ],
  fits: ({ depthMm, widthMm, wallMm, filletMm, toeRadiusMm }) => {
    const leg = Math.min(depthMm, widthMm);
    return [
      fitWithin('wall', wallMm, leg, 'its shorter leg'),
      filletFit(filletMm, leg - wallMm),
      fitWithin('toe_radius', toeRadiusMm, wallMm, 'its wall'),
    ];
  },
};
