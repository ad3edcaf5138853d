import { outOf, type Surface, surfaceKey } from '../../compute/access/surfaces.js';
import { planarPolygon } from '../../geometry/polygon.js';
import { dot, lerp, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { panelSurfaces } from '../../query/shown.js';
import type { Facing, Panel } from '../../records/index.js';
import type { Point, ShapeMark } from '../scene.js';
import type { Port } from '../sheet.js';
import type { Layer, PenName } from '../styles.js';

export const panelMiddle = (panel: Panel): Vec3 => planarPolygon(panel.outline).centroid;

export const surfaceOf = (panel: Panel, model: Model): Surface => panelSurfaces(model).get(panel.id) as Surface;

/** Panels of one surface, farther ones first, so that an access panel set in a skin is painted over it. */
export function panelsOfSurface(model: Model, surface: Surface): readonly Panel[] {
  const key = surfaceKey(surface);
  const normal = outOf(surface);
  const rank = (panel: Panel): number => (panel.panelKind === 'access' ? 1 : 0);
  return model.shell.panels
    .filter((panel) => surfaceKey(surfaceOf(panel, model)) === key)
    .map((panel, index) => ({ panel, index, depth: dot(normal, panelMiddle(panel)) }))
    .sort((a, b) => rank(a.panel) - rank(b.panel) || a.depth - b.depth || a.index - b.index)
    .map(({ panel }) => panel);
}

/** An outside face of the vehicle as a surface. */
export const outsideOf = (faces: Facing): Surface => ({ side: SIDE_OF[faces], seenFrom: 'outside', faces });
const SIDE_OF = { up: 'roof', down: 'underside', left: 'left', right: 'right', front: 'front', rear: 'rear' } as const;

const panelPen = (panel: Panel): PenName =>
  panel.panelKind === 'access' ? 'access' : panel.panelKind === 'interior' ? 'interior' : 'skin';

/** A panel with its cut-outs. */
export function panelMark(panel: Panel, port: Port, pen: PenName = panelPen(panel), subject = true, layer?: Layer): ShapeMark {
  const ring = (corners: readonly Vec3[]): readonly Point[] => corners.map(port.place);
  return {
    kind: 'shape',
    layer: layer ?? (panel.panelKind === 'access' ? 'outlines' : 'panels'),
    pen,
    rings: [ring(panel.outline), ...panel.holes.map(ring)],
    closed: true,
    ...(subject ? { id: panel.id } : {}),
    ...(panel.planned ? { planned: true } : {}),
  };
}

/** Where else in a panel its id may stand: half way to each corner. */
export const panelPlaces = (panel: Panel, port: Port): readonly Point[] =>
  panel.outline.map((corner) => port.place(lerp(panelMiddle(panel), corner, 0.55)));

export const panelAnchor = (panel: Panel, port: Port): Point => port.place(panelMiddle(panel));
