import { combineParts, fillet, rectanglePart } from './parts.js';
import { filleted } from './ring.js';
import {
  across,
  filletFit,
  fitWithin,
  flangedDimensions,
  type SectionKind,
  type ShapeProperties,
  type SizesOf,
  upright,
} from './shape.js';
import { teeTorsion } from './torsion.js';

/** A flange on the +depth side, a stem below it, two exact fillets. Source: geometry. */
export function tee({ depthMm, widthMm, webMm, flangeMm, filletMm }: SizesOf<'tee'>): ShapeProperties {
  const under = depthMm / 2 - flangeMm;
  return {
    ...combineParts([
      rectanglePart(flangeMm, widthMm, (depthMm - flangeMm) / 2),
      rectanglePart(depthMm - flangeMm, webMm, -flangeMm / 2),
      fillet(filletMm, under, webMm / 2, -1, 1),
      fillet(filletMm, under, -webMm / 2, -1, -1),
    ]),
    jMm4: teeTorsion(depthMm, widthMm, webMm, flangeMm, filletMm),
  };
}

export const TEE: SectionKind<'tee'> = {
  properties: tee,
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm, webMm, flangeMm: f, filletMm: r }) => {
    const [h, b, w] = [depthMm / 2, widthMm / 2, webMm / 2];
    return [
      filleted([
        [-w, -h, 0],
        [w, -h, 0],
        [w, h - f, r],
        [b, h - f, 0],
        [b, h, 0],
        [-b, h, 0],
        [-b, h - f, 0],
        [-w, h - f, r],
      ]),
    ];
  },
  walls: ({ depthMm, widthMm, webMm, flangeMm }) => [
    across(widthMm, (depthMm - flangeMm) / 2, flangeMm),
    upright(depthMm, 0, webMm),
  ],
  thinnestMm: ({ webMm, flangeMm }) => Math.min(webMm, flangeMm),
  dimensions: flangedDimensions,
  fits: ({ depthMm, widthMm, webMm, flangeMm, filletMm }) => [
    fitWithin('flange', flangeMm, depthMm, 'its depth'),
    fitWithin('web', webMm, widthMm, 'its width'),
    filletFit(filletMm, depthMm - flangeMm),
  ],
};
