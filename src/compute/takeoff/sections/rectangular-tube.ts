import { combine, cut, rectangle, roundedRectangle } from './parts.js';
import type { ShapeProperties, SizesOf } from './shape.js';
import { tubeTorsion } from './torsion.js';

/**
 * Outside rectangle less inside rectangle, with outer corners of the radius given and inner ones of that radius less the wall
 * (sharp where the wall is thicker). Source: geometry; EN 10219-2 Annex B has the same sum.
 */
export function rectangularTube({ depthMm, widthMm, wallMm, cornerRadiusMm }: SizesOf<'rectangular tube'>): ShapeProperties {
  return {
    ...combine([
      roundedRectangle(depthMm, widthMm, cornerRadiusMm),
      cut(roundedRectangle(depthMm - 2 * wallMm, widthMm - 2 * wallMm, cornerRadiusMm - wallMm)),
    ]),
    jMm4: tubeTorsion(depthMm, widthMm, wallMm, cornerRadiusMm),
  };
}

/**
 * A rectangular tube with one web across its width at half depth. The web is sharp where it meets the walls. In torsion the two
 * cells are alike, so the shear flow in the web is nil and the constant is that of the tube without it (Bredt).
 */
export function doubleHollow({ webMm, ...tube }: SizesOf<'double hollow'>): ShapeProperties {
  const outer = rectangularTube({ ...tube, shape: 'rectangular tube' });
  const web = rectangle(Math.min(webMm, tube.depthMm - 2 * tube.wallMm), tube.widthMm - 2 * tube.wallMm);
  return { ...combine([outer, web]), jMm4: outer.jMm4 };
}
