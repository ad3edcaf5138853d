import type { Computed } from '../../compute/figures.js';
import { throughFacet } from '../../geometry/facet.js';
import { alongRay } from '../../geometry/ray.js';
import { add, dot, scale, type Vec3 } from '../../geometry/vector.js';
import { near } from '../../query/lookup/near.js';
import { type FindScrew, type ScrewAt, screwFinder } from '../../query/lookup/screw.js';
import type { NearHit } from '../../query/lookup/types.js';
import { drilledSheets, onFace } from '../../query/release/drilled-sheets.js';
import type { NearData, TapView } from '../pocket-data.js';

/** What is asked of a place, by the same code that answers at the prompt. */
export interface NearHere {
  near(at: Vec3, withinMm: number): readonly NearHit[];
  screw(at: Vec3): ScrewAt | undefined;
  /** The place of the first sheet under a tap; of the view's own plane where no sheet is there. */
  under(view: TapView, flat: readonly [number, number]): { readonly at: Vec3; readonly onSheet: boolean };
}

export function nearHere(data: NearData): NearHere {
  const computed = computedOf(data);
  const sheets = drilledSheets(computed.model);
  let find: FindScrew | undefined;
  return {
    near: (at, withinMm) => near(computed, at, withinMm),
    screw: (at) => {
      find ??= screwFinder(computed);
      return find(at);
    },
    under(view, [x, y]) {
      const flat = add(scale(view.right, view.left + x), scale(view.up, view.top - y));
      const from = add(flat, scale(view.toViewer, view.standsAt));
      const to = alongRay(from, view.toViewer, -LOOK_MM);
      let best: { readonly share: number; readonly at: Vec3 } | undefined;
      for (const sheet of sheets) {
        // Only a face that looks at the viewer is seen.
        if (dot(sheet.into, view.toViewer) > -0.5) continue;
        const share = throughFacet(from, to, sheet.facet);
        if (share !== undefined && (!best || share < best.share))
          best = { share, at: onFace(sheet, alongRay(from, view.toViewer, -LOOK_MM * share)) };
      }
      return best ? { at: best.at, onSheet: true } : { at: add(flat, scale(view.toViewer, view.planeAt)), onSheet: false };
    },
  };
}

/** Beyond every coach, mm. */
const LOOK_MM = 40_000;

/** The records and figures as the queries take them. */
export function computedOf({ shell, sections, runs, joints }: NearData): Computed {
  const model = { shell, library: { sections: new Map(sections) }, shop: {} };
  return { model, figures: { takeOff: { runs }, joints: { joints } } } as unknown as Computed;
}
