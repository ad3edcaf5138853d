import { throughFacet } from '../geometry/facet.js';
import { alongRay } from '../geometry/ray.js';
import { add, dot, scale, type Vec3 } from '../geometry/vector.js';
import { type DrilledSheet, onFace } from '../query/release/drilled-sheets.js';
import type { TapView } from './pocket-data.js';

/** What a tap on a drawing meets. */
export interface UnderTap {
  /** On the first sheet; in the view's own plane where no sheet is there. */
  readonly at: Vec3;
  readonly onSheet: boolean;
  readonly sheet?: DrilledSheet;
}

/** Beyond every coach, mm. */
const LOOK_MM = 40_000;

/** `x`, `y`: mm of the coach from the upper left corner of the view's drawing. */
export function underTap(sheets: readonly DrilledSheet[], view: TapView, [x, y]: readonly [number, number]): UnderTap {
  const flat = add(scale(view.right, view.left + x), scale(view.up, view.top - y));
  const from = add(flat, scale(view.toViewer, view.standsAt));
  const to = alongRay(from, view.toViewer, -LOOK_MM);
  let best: { readonly share: number; readonly at: Vec3; readonly sheet: DrilledSheet } | undefined;
  for (const sheet of sheets) {
    // Only a face that looks at the viewer is seen.
    if (dot(sheet.into, view.toViewer) > -0.5) continue;
    const share = throughFacet(from, to, sheet.facet);
    if (share !== undefined && (!best || share < best.share))
      best = { share, at: onFace(sheet, alongRay(from, view.toViewer, -LOOK_MM * share)), sheet };
  }
  return best
    ? { at: best.at, onSheet: true, sheet: best.sheet }
    : { at: add(flat, scale(view.toViewer, view.planeAt)), onSheet: false };
}
