import type { Computed } from '../../compute/figures.js';
import type { Vec3 } from '../../geometry/vector.js';
import { near } from '../../query/lookup/near.js';
import { type FindScrew, type ScrewAt, screwFinder } from '../../query/lookup/screw.js';
import type { NearHit } from '../../query/lookup/types.js';
import { drilledSheets } from '../../query/release/drilled-sheets.js';
import type { NearData, TapView } from '../pocket-data.js';
import { type UnderTap, underTap } from '../under-tap.js';

/** What is asked of a place, by the same code that answers at the prompt. */
export interface NearHere {
  near(at: Vec3, withinMm: number): readonly NearHit[];
  screw(at: Vec3): ScrewAt | undefined;
  /** The place of the first sheet under a tap; of the view's own plane where no sheet is there. */
  under(view: TapView, flat: readonly [number, number]): UnderTap;
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
    under: (view, flat) => underTap(sheets, view, flat),
  };
}

/** The records and figures as the queries take them. */
function computedOf({ shell, sections, runs, joints }: NearData): Computed {
  const model = { shell, library: { sections: new Map(sections) }, shop: {} };
  return { model, figures: { takeOff: { runs }, joints: { joints } } } as unknown as Computed;
}
