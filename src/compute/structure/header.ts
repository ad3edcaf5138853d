import type { Model } from '../../model/shell.js';
import type { Opening } from '../../model/structure.js';
import { STANDARD_GRAVITY } from '../../quantity/units.js';
import { densityKgMm3 } from '../takeoff/density.js';
import { shapeProperties } from '../takeoff/sections/index.js';
import { simpleEven } from './beam.js';

/** E of most 6xxx alloys and of 5052, where the library has none: Aluminum Design Manual (10,100 ksi), from memory. */
const ALUMINIUM_MODULUS_PA = 69.637e9;

/**
 * Sag of an opening's header under its own mass, mm, as a beam simply held at the opening's sides (so more than a welded one has).
 * Information beside the measured sag, never a rating. Undefined without a header on record as a member on a line.
 */
export function headerDeflectionMm(opening: Opening, { shell, library }: Model): number | undefined {
  const header = shell.members.find(({ id }) => id === opening.header);
  if (header?.shape.kind !== 'line') return undefined;
  const section = library.sections.get(header.shape.section);
  if (!section) return undefined;
  const { areaMm2, ixMm4, iyMm4, ixyMm4 } = shapeProperties(section.dimensions);
  const roll = (header.shape.rollDeg * Math.PI) / 180;
  const inertiaMm4 = ixMm4 * Math.cos(roll) ** 2 + iyMm4 * Math.sin(roll) ** 2 + ixyMm4 * Math.sin(2 * roll);
  const modulusPa = library.materials.get(header.alloy)?.modulusPa ?? ALUMINIUM_MODULUS_PA;
  const loadNMm = areaMm2 * densityKgMm3(header.alloy, library) * STANDARD_GRAVITY;
  if (inertiaMm4 <= 0) return undefined;
  return simpleEven({ spanMm: opening.widthMm, modulusNMm2: modulusPa / 1e6, inertiaMm4 }, loadNMm);
}
