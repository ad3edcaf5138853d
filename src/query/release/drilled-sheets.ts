import { intoFace, type Surface, surfaces } from '../../compute/access/surfaces.js';
import { type Bounds, boundsOf, grow, overlap } from '../../geometry/box.js';
import { type Facet, facet, height, inFacet, nearestOnFacet } from '../../geometry/facet.js';
import { alongRay } from '../../geometry/ray.js';
import { add, distance, dot, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Panel } from '../../records/index.js';

/** A sheet with the side that one drills from. */
export interface DrilledSheet {
  readonly panel: Panel;
  readonly facet: Facet;
  readonly bounds: Bounds;
  /** What the outline spans in the facet's own directions; the third is zero. */
  readonly span: Bounds;
  /** Into the sheet and what is behind it. */
  readonly into: Vec3;
}

/** The place of the face that one drills from, straight over a place in the sheet's plane. */
export function onFace({ panel, facet: flat, into }: DrilledSheet, at: Vec3): Vec3 {
  const inPlane = subtract(at, scale(flat.normal, height(at, flat)));
  return alongRay(inPlane, into, -(panel.thicknessMm ?? 0) / 2);
}

/** Whether a place is surely farther beside a sheet than so much: a quick look, before the exact one. */
export function isFarBeside({ facet: flat, span }: DrilledSheet, at: Vec3, byMm: number): boolean {
  const [u, v] = inFacet(at, flat);
  const most = byMm + ROUNDING_MM;
  return u < span.min[0] - most || u > span.max[0] + most || v < span.min[1] - most || v > span.max[1] + most;
}

const ROUNDING_MM = 1e-3;

/** How deep under a sheet's face a place lies, and how far beside the sheet, mm. */
export function underFace(sheet: DrilledSheet, at: Vec3): { readonly depthMm: number; readonly besideMm: number } {
  const over = onFace(sheet, at);
  const inPlane = add(over, scale(sheet.into, (sheet.panel.thicknessMm ?? 0) / 2));
  return { depthMm: dot(subtract(at, over), sheet.into), besideMm: distance(inPlane, nearestOnFacet(inPlane, sheet.facet)) };
}

/** Every sheet but access panels, each with the side that one drills from; with `about`, those that come into it. */
export function drilledSheets(model: Model, about?: Bounds): readonly DrilledSheet[] {
  const isFar = ({ outline, thicknessMm = 0 }: Panel): boolean =>
    about !== undefined && !overlap(grow(boundsOf(outline), thicknessMm), about);
  const flat = model.shell.panels.flatMap((panel) => {
    const sheet = panel.panelKind === 'access' || isFar(panel) ? undefined : facet(panel.outline, panel.holes);
    return sheet ? [{ panel, facet: sheet, bounds: boundsOf(panel.outline), span: spanOf(sheet) }] : [];
  });
  if (flat.length === 0) return [];
  const sides = surfaces(model);
  return flat.map((one) => {
    const { normal } = one.facet;
    const into = intoFace(sides.get(one.panel.id) as Surface);
    return { ...one, into: dot(normal, into) >= 0 ? normal : scale(normal, -1) };
  });
}

const spanOf = ({ outline }: Facet): Bounds => boundsOf(outline.map(([u, v]): Vec3 => [u, v, 0]));
