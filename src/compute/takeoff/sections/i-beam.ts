import { combine, fillet, rectangle } from './parts.js';
import type { ShapeProperties, SizesOf } from './shape.js';
import { iBeamTorsion } from './torsion.js';

/**
 * Two flanges, a web and four exact fillets; the flange tips are square.
 * Source: geometry; gives the Aluminum Association's and EN 10365's printed properties.
 */
export function iBeam({ depthMm, widthMm, webMm, flangeMm, filletMm }: SizesOf<'I-beam'>): ShapeProperties {
  const inner = depthMm / 2 - flangeMm;
  const fillets = ([1, -1] as const).flatMap((d) =>
    ([1, -1] as const).map((w) => fillet(filletMm, d * inner, (w * webMm) / 2, -d as 1 | -1, w)),
  );
  const flange = (side: 1 | -1) => rectangle(flangeMm, widthMm, (side * (depthMm - flangeMm)) / 2);
  return {
    ...combine([flange(1), flange(-1), rectangle(2 * inner, webMm), ...fillets]),
    jMm4: iBeamTorsion(depthMm, widthMm, webMm, flangeMm, filletMm),
  };
}
