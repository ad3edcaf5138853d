import type { Vec3 } from '../../geometry/vector.js';
import type { Component } from '../../records/index.js';
import type { LabelWish } from '../labels.js';
import { convexHull } from '../outline.js';
import { circle, line, type Mark, type Point, rectArea } from '../scene.js';
import type { Port } from '../sheet.js';
import type { Layer } from '../styles.js';

/** A box about its middle, as its outline in the view. */
export function boxRing(at: Vec3, sizeMm: Vec3, port: Port): readonly Point[] {
  const corners: Point[] = [];
  for (const a of [-0.5, 0.5]) {
    for (const b of [-0.5, 0.5]) {
      for (const c of [-0.5, 0.5])
        corners.push(port.place([at[0] + a * sizeMm[0], at[1] + b * sizeMm[1], at[2] + c * sizeMm[2]]));
    }
  }
  return convexHull(corners);
}

/** A component by its outside size, or by a cross at its middle where none was recorded. */
export function componentMarks(component: Component, port: Port, layer: Layer = 'equipment'): readonly Mark[] {
  if (component.sizeMm)
    return [rectArea(layer, 'equipment', boxRing(component.middle ?? component.at, component.sizeMm, port), component.id)];
  return middleMarks(port.place(component.at), component.id, layer);
}

/** The quartered circle by which drawings mark a centre of mass. */
export function middleMarks([x, y]: Point, id: string | undefined, layer: Layer = 'equipment'): readonly Mark[] {
  const r = 0.8;
  return [
    circle(layer, 'mark', [x, y], r, id),
    line(
      layer,
      'mark',
      [
        [x - r, y],
        [x + r, y],
      ],
      id,
    ),
    line(
      layer,
      'mark',
      [
        [x, y - r],
        [x, y + r],
      ],
      id,
    ),
  ];
}

export const wishFor = (words: string, id: string, at: Point, priority: number, clearMm = 1): LabelWish => ({
  text: words,
  anchor: at,
  style: 'name',
  priority,
  id,
  clearMm,
});
