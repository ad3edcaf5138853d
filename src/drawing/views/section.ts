import { thickness, type UnitSystem } from '../../quantity/format.js';
import type { Section, SectionShape } from '../../records/index.js';
import { sectionRings, wallsOf } from '../../sections/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { acrossDimension, uprightDimension } from '../dimensions.js';
import { VIEWS } from '../projection.js';
import { type Mark, type Rect, rectAbout } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';

/** A cross-section to scale, depth upright, with its outside dimensions and its walls in words. */
export function sectionDrawing(section: Section, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const units = options.units ?? 'both';
  const rings = sectionRings(section.dimensions);
  const bounds = rectAbout(rings.flat()) ?? { x0: 0, y0: 0, x1: 1, y1: 1 };
  const layout = layOut([{ view: VIEWS.left, bounds }], sheet, { sideMm: 10, aboveMm: 3, belowMm: 10, mostMm: 12 });
  const port = layout.ports[0] as Port;
  const custom = section.dimensions.shape === 'custom';
  const outline: Mark = {
    kind: 'shape',
    layer: 'structure',
    pen: custom ? 'nominal' : 'member-cut',
    rings: rings.map((ring) => ring.map(port.placeFlat)),
    closed: true,
    id: section.id,
  };
  const words = wallsOf(section.dimensions).map(([name, mm]) => `${name} ${thickness(mm, units)}`);
  return compose(
    {
      id: `section-${section.id}`,
      title: `Section ${section.id}`,
      alt: `Cross-section of ${section.id}, ${section.dimensions.shape}${words.length > 0 ? `: ${words.join(', ')}` : ''}.`,
      ...layout,
      front: 'none',
      units,
      marks: [outline, ...outside(section.dimensions, bounds, port, units)],
      wishes: [],
      notes: custom ? ['Outside size only: the shape is the shop’s own.'] : [`${words.join(', ')}.`],
    },
    options,
  );
}

function outside(shape: SectionShape, bounds: Rect, port: Port, units: UnitSystem): readonly Mark[] {
  const { x0, y0, x1, y1 } = port.frame;
  const single: UnitSystem = units === 'both' ? 'us' : units;
  const round = shape.shape === 'round bar' || shape.shape === 'round tube';
  const across = `${round ? 'Ø ' : ''}${thickness(bounds.x1 - bounds.x0, single)}`;
  const marks = [...acrossDimension(x0, x1, y1 + 5, y1, across)];
  return round ? marks : [...marks, ...uprightDimension(y0, y1, x0 - 5, x0, thickness(bounds.y1 - bounds.y0, single))];
}
