import type { Assessment } from '../../assess.js';
import type { Drawing, DrawingOptions } from '../compose.js';
import { stagesOf } from '../frame-groups.js';
import type { SheetSize } from '../sheet.js';
import { frameSheets } from '../weld-map/frame-sheets.js';
import { mapViews } from '../weld-map/map-views.js';
import { weldPoints } from '../weld-map/points.js';
import { viewSheets } from '../weld-map/view-sheets.js';
import { kindsByWeld } from '../weld-symbol/kinds.js';

/** One sheet of the weld map. */
export interface WeldSheet extends Drawing {
  /** Stage whose frames it shows. */
  readonly stage: string;
  /** Short name, as `W3`. */
  readonly sheet: string;
  /** Welds numbered on it, in the order of the records. */
  readonly welds: readonly string[];
}

/**
 * The weld map: elevations and plans of the frames by stage, then the frames across the vehicle, with every weld's number at
 * each of its joints and each kind of symbol once on every sheet that needs it.
 */
export function weldMap(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): readonly WeldSheet[] {
  const points = weldPoints(a);
  const { views, frames } = mapViews(a.model, points);
  const kinds = kindsByWeld(a.model.shell.welds);
  const stages = stagesOf(a.model).map(({ stage }) => stage);
  const order = (stage: string): number => stages.indexOf(stage);
  const sheets = [...views, ...frames]
    .sort((one, other) => order(one.stage) - order(other.stage))
    .flatMap((one) => ('frames' in one ? frameSheets(a, one, kinds, sheet, options) : viewSheets(a, one, kinds, sheet, options)));
  return sheets.map((one, index) => ({ ...one, sheet: `W${index + 1}`, title: `W${index + 1} · ${one.title}` }));
}
