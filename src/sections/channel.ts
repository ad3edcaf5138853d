import { combineParts, fillet, rectanglePart } from './parts.js';
import { filleted } from './ring.js';
import {
  flangedDimensions,
  flangedFits,
  flangeWalls,
  type SectionKind,
  type ShapeProperties,
  type SizesOf,
  upright,
} from './shape.js';
import { channelTorsion } from './torsion.js';

/**
 * Two parallel flanges on a web, two exact fillets; the back of the web lies on the −width side, the toes on the +width side.
 * Source: geometry; gives the Aluminum Association's printed properties. Tapered flanges are taken at their mean thickness.
 */
export function channel({ depthMm, widthMm, webMm, flangeMm, filletMm }: SizesOf<'channel'>): ShapeProperties {
  const inner = depthMm / 2 - flangeMm;
  const webFace = webMm - widthMm / 2;
  const flange = (side: 1 | -1) => rectanglePart(flangeMm, widthMm, (side * (depthMm - flangeMm)) / 2);
  return {
    ...combineParts([
      flange(1),
      flange(-1),
      rectanglePart(2 * inner, webMm, 0, (webMm - widthMm) / 2),
      fillet(filletMm, inner, webFace, -1, 1),
      fillet(filletMm, -inner, webFace, 1, 1),
    ]),
    jMm4: channelTorsion(depthMm, widthMm, webMm, flangeMm, filletMm),
  };
}

export const CHANNEL: SectionKind<'channel'> = {
  properties: channel,
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm, webMm, flangeMm: f, filletMm: r }) => {
    const [h, b] = [depthMm / 2, widthMm / 2];
    const back = -b + webMm;
    return [
      filleted([
        [-b, -h, 0],
        [b, -h, 0],
        [b, -h + f, 0],
        [back, -h + f, r],
        [back, h - f, r],
        [b, h - f, 0],
        [b, h, 0],
        [-b, h, 0],
      ]),
    ];
  },
  walls: ({ depthMm, widthMm, webMm, flangeMm }) => [
    ...flangeWalls(depthMm, widthMm, flangeMm),
    upright(depthMm, (webMm - widthMm) / 2, webMm),
  ],
  thinnestMm: ({ webMm, flangeMm }) => Math.min(webMm, flangeMm),
  dimensions: flangedDimensions,
  fits: flangedFits,
};
