import { combineParts, cut, roundedRectangle } from './parts.js';
import { rounded } from './ring.js';
import {
  across,
  fitWithin,
  radiusOf,
  type SectionKind,
  type SectionWall,
  type ShapeProperties,
  type SizeFit,
  type SizesOf,
  upright,
} from './shape.js';
import { tubeTorsion } from './torsion.js';

/**
 * Outside rectangle less inside rectangle, with outer corners of the radius given and inner ones of that radius less the wall
 * (sharp where the wall is thicker). Source: geometry; EN 10219-2 Annex B has the same sum.
 */
export function rectangularTube({ depthMm, widthMm, wallMm, cornerRadiusMm }: SizesOf<'rectangular tube'>): ShapeProperties {
  return {
    ...combineParts([
      roundedRectangle(depthMm, widthMm, cornerRadiusMm),
      cut(roundedRectangle(depthMm - 2 * wallMm, widthMm - 2 * wallMm, cornerRadiusMm - wallMm)),
    ]),
    jMm4: tubeTorsion(depthMm, widthMm, wallMm, cornerRadiusMm),
  };
}

type Tube = Omit<SizesOf<'rectangular tube'>, 'shape'>;

/** Four walls about one hollow. */
export const tubeWalls = ({ depthMm, widthMm, wallMm }: Tube): readonly SectionWall[] => [
  across(widthMm, (depthMm - wallMm) / 2, wallMm),
  across(widthMm, (wallMm - depthMm) / 2, wallMm),
  upright(depthMm, (widthMm - wallMm) / 2, wallMm),
  upright(depthMm, (wallMm - widthMm) / 2, wallMm),
];

/** What must fit into a tube: wall and corner radius into half of its lesser side. */
export function tubeFits(
  { depthMm, widthMm, wallMm, cornerRadiusMm }: Tube,
  between: readonly SizeFit[] = [],
): readonly SizeFit[] {
  const half = Math.min(depthMm, widthMm) / 2;
  const of = depthMm < widthMm ? 'half its depth' : 'half its width';
  return [fitWithin('wall', wallMm, half, of), ...between, fitWithin('corner_radius', cornerRadiusMm, half, of)];
}

export const RECTANGULAR_TUBE: SectionKind<'rectangular tube'> = {
  properties: rectangularTube,
  envelope: ({ depthMm, widthMm }) => [depthMm, widthMm],
  rings: ({ depthMm, widthMm, wallMm: t, cornerRadiusMm }) => {
    const [h, b] = [depthMm / 2, widthMm / 2];
    return [rounded(-b, -h, b, h, cornerRadiusMm), rounded(-b + t, -h + t, b - t, h - t, Math.max(0, cornerRadiusMm - t))];
  },
  walls: tubeWalls,
  thinnestMm: ({ wallMm }) => wallMm,
  dimensions: ({ wallMm, cornerRadiusMm }) => [['wall', wallMm], ...radiusOf('corner radius', cornerRadiusMm)],
  fits: (sizes) => tubeFits(sizes),
};
