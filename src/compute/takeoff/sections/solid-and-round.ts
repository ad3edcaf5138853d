import { rectangle } from './parts.js';
import type { ShapeProperties, SizesOf } from './shape.js';
import { bar } from './torsion.js';

/** Source: geometry. */
export function flatBar({ depthMm, widthMm }: SizesOf<'flat bar'>): ShapeProperties {
  return { ...rectangle(depthMm, widthMm), jMm4: bar(depthMm, widthMm) };
}

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

export function roundBar({ diameterMm }: SizesOf<'round bar'>): ShapeProperties {
  return roundTube({ shape: 'round tube', diameterMm, wallMm: diameterMm / 2 });
}
