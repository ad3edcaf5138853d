import { planarPolygon } from '../../geometry/polygon.js';
import { dot, lerp, type Vec3 } from '../../geometry/vector.js';
import { type Facing, OUTWARD, type Panel } from '../../model/structure.js';
import type { Extent } from '../extent.js';
import type { Point, ShapeMark } from '../scene.js';
import type { Port } from '../sheet.js';
import type { Layer, PenName } from '../styles.js';

/** A face within 45° of an axis belongs to it. */
const TURNED_AWAY = Math.SQRT1_2 - 1e-6;

const panelMiddle = (panel: Panel): Vec3 => planarPolygon(panel.outline).centroid;

/**
 * The outside face that a panel belongs to: what its record says, else the direction of its plane and the side of the
 * shell's middle that it lies on.
 */
export function faceOf(panel: Panel, shell: Extent): Facing | undefined {
  if (panel.panelKind === 'interior') return undefined;
  if (panel.facing) return panel.facing;
  if (panel.panelKind === 'belly') return 'down';
  if (panel.panelKind === 'roof') return 'up';
  const { normal, centroid } = planarPolygon(panel.outline);
  const steepest = ([0, 1, 2] as const).reduce(
    (best, axis) => (Math.abs(normal[axis]) > Math.abs(normal[best]) ? axis : best),
    0 as 0 | 1 | 2,
  );
  if (Math.abs(normal[steepest]) < TURNED_AWAY) return undefined;
  const beyond = centroid[steepest] > (shell.low[steepest] + shell.high[steepest]) / 2;
  const faces = [
    ['front', 'rear'],
    ['left', 'right'],
    ['down', 'up'],
  ] as const;
  return faces[steepest][beyond ? 1 : 0];
}

/** Farther ones first, so that an access panel set in a skin is painted over it. */
export function panelsOfFace(panels: readonly Panel[], face: Facing, shell: Extent): readonly Panel[] {
  const normal = OUTWARD[face];
  const rank = (panel: Panel): number => (panel.panelKind === 'access' ? 1 : 0);
  return panels
    .filter((panel) => faceOf(panel, shell) === face)
    .map((panel, index) => ({ panel, index, depth: dot(normal, panelMiddle(panel)) }))
    .sort((a, b) => rank(a.panel) - rank(b.panel) || a.depth - b.depth || a.index - b.index)
    .map(({ panel }) => panel);
}

export const panelPen = (panel: Panel): PenName =>
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
  };
}

/** Where else in a panel its id may stand: half way to each corner. */
export const panelPlaces = (panel: Panel, port: Port): readonly Point[] =>
  panel.outline.map((corner) => port.place(lerp(panelMiddle(panel), corner, 0.55)));

export const panelAnchor = (panel: Panel, port: Port): Point => port.place(panelMiddle(panel));
