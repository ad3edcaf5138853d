import { facet, nearestOnFacet } from '../../geometry/facet.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Member, Opening } from '../../records/index.js';
import { isSlideOut } from '../../records/opening.js';
import { openingCorners } from '../solids.js';
import { headerFigure } from './header.js';
import { rackingDeg } from './racking.js';
import type { OpeningFigure } from './types.js';

/** A gusset plate within this of an opening's corner is that corner's. Project default. */
export const GUSSET_REACH_MM = 150;

/** How square each opening was measured, how far its header sags, and which gussets stand at its corners. */
export function openings(model: Model): readonly OpeningFigure[] {
  return model.shell.openings.map((opening) => {
    const { measured } = opening;
    const diagonals = measured?.diagonalsMm;
    const sags = measured?.headerSag.map(({ dropMm }) => dropMm) ?? [];
    const corners = cornersOf(opening);
    const gussets = gussetPlates(opening, model);
    const at = (corner: Vec3): readonly Member[] => gussets.filter((plate) => reaches(plate, corner));
    const bare = corners.filter(({ place }) => at(place).length === 0).map(({ name }) => name);
    return {
      id: opening.id,
      rackingDeg: rackingDeg(opening),
      diagonalDifferenceMm: diagonals && Math.abs(diagonals[0] - diagonals[1]),
      sagMm: sags.length > 0 ? Math.max(...sags) : undefined,
      gussets: [...new Set(corners.flatMap(({ place }) => at(place)).map(({ id }) => id))],
      // A slide-out loads its opening's corners each time it moves: each is expected to have a gusset.
      cornersWithoutGusset: isSlideOut(opening) ? bare : [],
      ...headerSags(opening, model),
    };
  });
}

function headerSags(opening: Opening, model: Model): Partial<OpeningFigure> {
  const header = headerFigure(opening, model);
  if (!header) return {};
  return {
    headerDeflectionMm: header.ownMm,
    headerPanelKg: header.panelKg,
    headerWithPanelMm: header.withPanelMm,
    headerBuiltInMm: header.builtInMm,
  };
}

/** Each corner by its name: lower or upper; front or rear (left or right in a cross wall). */
function cornersOf(opening: Opening): readonly { readonly name: string; readonly place: Vec3 }[] {
  const corners = openingCorners(opening);
  if (!corners) return [];
  const [first, second] = corners;
  const lengthwise = Math.abs(first[0] - second[0]) >= Math.abs(first[1] - second[1]);
  const ends = lengthwise ? (['front', 'rear'] as const) : (['left', 'right'] as const);
  const axis = lengthwise ? 0 : 1;
  const side = (corner: Vec3): string => (corner[axis] <= Math.min(first[axis], second[axis]) + 1e-6 ? ends[0] : ends[1]);
  return corners.map((place, i) => ({ name: `${i < 2 ? 'lower' : 'upper'} ${side(place)}`, place }));
}

/** Plates that the opening names, and every plate of role gusset. */
function gussetPlates(opening: Opening, { shell }: Model): readonly Member[] {
  const named = new Set(opening.gussets);
  return shell.members.filter(({ id, role, shape }) => shape.kind === 'plate' && (named.has(id) || role === 'gusset'));
}

function reaches({ shape }: Member, corner: Vec3): boolean {
  const plate = shape.kind === 'plate' ? facet(shape.outline) : undefined;
  return plate !== undefined && distance(nearestOnFacet(corner, plate), corner) <= GUSSET_REACH_MM;
}
