import { combine, fillet, rectangle } from './parts.js';
import type { ShapeProperties, SizesOf } from './shape.js';
import { teeTorsion } from './torsion.js';

/** A flange on the +depth side, a stem below it, two exact fillets. Source: geometry. */
export function tee({ depthMm, widthMm, webMm, flangeMm, filletMm }: SizesOf<'tee'>): ShapeProperties {
  const under = depthMm / 2 - flangeMm;
  return {
    ...combine([
      rectangle(flangeMm, widthMm, (depthMm - flangeMm) / 2),
      rectangle(depthMm - flangeMm, webMm, -flangeMm / 2),
      fillet(filletMm, under, webMm / 2, -1, 1),
      fillet(filletMm, under, -webMm / 2, -1, -1),
    ]),
    jMm4: teeTorsion(depthMm, widthMm, webMm, flangeMm, filletMm),
  };
}
