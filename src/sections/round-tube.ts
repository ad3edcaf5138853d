import { full } from './ring.js';
import { arcWalls, fitWithin, type SectionKind, type ShapeProperties, type SizesOf } from './shape.js';

/** A circle less a circle. The torsion constant is the polar moment. Source: geometry. */
export function roundTube({ diameterMm, wallMm }: SizesOf<'round tube'>): ShapeProperties {
  const inside = Math.max(0, diameterMm - 2 * wallMm);
  const second = (Math.PI / 64) * (diameterMm ** 4 - inside ** 4);
  return {
    areaMm2: (Math.PI / 4) * (diameterMm ** 2 - inside ** 2),
    depthMm: 0,
    widthMm: 0,
    ixMm4: second,
    iyMm4: second,
    ixyMm4: 0,
    jMm4: 2 * second,
  };
}

export const ROUND_TUBE: SectionKind<'round tube'> = {
  properties: roundTube,
  envelope: ({ diameterMm }) => [diameterMm, diameterMm],
  rings: ({ diameterMm, wallMm }) => [full(diameterMm / 2), full(diameterMm / 2 - wallMm)],
  walls: ({ diameterMm, wallMm }) => arcWalls(diameterMm / 2, wallMm, [0, 0], 0, 2 * Math.PI),
  thinnestMm: ({ wallMm }) => wallMm,
  dimensions: ({ wallMm }) => [['wall', wallMm]],
  fits: ({ diameterMm, wallMm }) => [fitWithin('wall', wallMm, diameterMm / 2, 'half its diameter')],
};
