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
  const flange = (side: 1 | -1) => rectanglePart(flangeMm, widthMm, (side * (depthMm - flangeMm)) / 2);
  return {
    ...combineParts([flange(1), flange(-1), rectanglePart(2 * inner, webMm), ...fillets]),
    jMm4: iBeamTorsion(depthMm, widthMm, webMm, flangeMm, filletMm),
  };
}

export const I_BEAM: SectionKind<'I-beam'> = {
  properties: iBeam,
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm, webMm, flangeMm: f, filletMm: r }) => {
    const [h, b, w] = [depthMm / 2, widthMm / 2, webMm / 2];
    const half = (side: 1 | -1): readonly (readonly [number, number, number])[] => [
      [-side * b, -side * h, 0],
      [side * b, -side * h, 0],
      [side * b, side * (f - h), 0],
      [side * w, side * (f - h), r],
      [side * w, side * (h - f), r],
      [side * b, side * (h - f), 0],
    ];
    return [filleted([...half(1), ...half(-1)])];
  },
  walls: ({ depthMm, widthMm, webMm, flangeMm }) => [...flangeWalls(depthMm, widthMm, flangeMm), upright(depthMm, 0, webMm)],
  thinnestMm: ({ webMm, flangeMm }) => Math.min(webMm, flangeMm),
  dimensions: flangedDimensions,
  fits: flangedFits,
};
