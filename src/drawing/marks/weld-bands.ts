import type { Assessment } from '../../assess.js';
import type { WeldBands } from '../../compute/welding/weld-bands.js';
import type { Library, Member } from '../../records/index.js';
import { boxesBetween } from '../../sections/solids.js';
import { convexHull } from '../outline.js';
import { project } from '../projection.js';
import { type Mark, rectArea } from '../scene.js';
import type { Port } from '../sheet.js';
import { boxCorners } from '../visibility.js';

/** What the tint means, for the notes of a drawing. */
export const WELD_BAND_NOTE =
  'Tinted: primary members within 25 mm (1 in) of a weld, soft from its heat (a weld is taken as long as the contact). Drill nothing there.';

type Bands = Pick<WeldBands, 'bandsMm'>;

export const bandsByMember = ({ figures }: Pick<Assessment, 'figures'>): ReadonlyMap<string, Bands> =>
  new Map(figures.heatAffectedZones.map((one) => [one.member, one] as const));

/** The weld-affected bands of a member on a line, over its whole section. */
export function weldBandMarks(
  { id, shape }: Member,
  bands: ReadonlyMap<string, Bands>,
  library: Library,
  port: Port,
): readonly Mark[] {
  const section = shape.kind === 'line' ? library.sections.get(shape.section) : undefined;
  if (shape.kind !== 'line' || !section) return [];
  return (bands.get(id)?.bandsMm ?? [])
    .flatMap(([from, to]) => boxesBetween(shape, section.dimensions, from, to))
    .map((part) =>
      rectArea(
        'structure',
        'weld-band',
        convexHull(boxCorners(part).map((corner) => project(port.view, corner))).map(port.placeFlat),
      ),
    );
}
