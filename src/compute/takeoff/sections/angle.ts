import { combine, cut, fillet, rectangle } from './parts.js';
import type { ShapeProperties, SizesOf } from './shape.js';
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
    ...combine([
      rectangle(depthMm, wallMm, 0, heelWidth + wallMm / 2),
      rectangle(wallMm, widthMm - wallMm, heelDepth + wallMm / 2, wallMm / 2),
      fillet(filletMm, heelDepth + wallMm, heelWidth + wallMm, 1, 1),
      cut(fillet(toe, depthMm / 2, heelWidth + wallMm, -1, -1)),
      cut(fillet(toe, heelDepth + wallMm, widthMm / 2, -1, -1)),
    ]),
    jMm4: angleTorsion(depthMm, widthMm, wallMm, filletMm),
  };
}
