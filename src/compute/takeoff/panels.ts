import { planarPolygon } from '../../geometry/polygon.js';
import { add, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Panel } from '../../records/index.js';
import { cutOuts } from './cut-outs.js';
import { densityKgMm3 } from './density.js';
import type { PanelFigure } from './types.js';

/** Net area, mass and centroid of each panel: outline less holes, access openings and wall openings. A typed mass wins. */
export function panelFigures(model: Model): readonly PanelFigure[] {
  return model.shell.panels.map((panel) => {
    const outline = planarPolygon(panel.outline);
    const off = cutOuts(panel, model);
    const removed = off.reduce((sum, cut) => sum + cut.areaMm2, 0);
    const areaMm2 = Math.max(0, outline.area - removed);
    return {
      id: panel.id,
      areaMm2,
      massKg: panel.massKg ?? massOf(panel, areaMm2, model),
      centroid: areaMm2 > 0 ? netCentroid(outline.area, outline.centroid, off, areaMm2) : outline.centroid,
      outOfPlaneMm: outline.outOfPlane,
      alloy: panel.alloy,
      stage: panel.stage,
    };
  });
}

function massOf(panel: Panel, areaMm2: number, { library }: Model): number {
  if (panel.alloy === undefined || panel.thicknessMm === undefined) return 0;
  return areaMm2 * panel.thicknessMm * densityKgMm3(panel.alloy, library);
}

function netCentroid(
  area: number,
  centroid: Vec3,
  off: readonly { readonly areaMm2: number; readonly centroid: Vec3 }[],
  net: number,
): Vec3 {
  let moment = scale(centroid, area);
  for (const cut of off) moment = add(moment, scale(cut.centroid, -cut.areaMm2));
  return scale(moment, 1 / net);
}

/** A panel with neither a typed mass nor both alloy and thickness has none that can be counted. */
export const withoutMass = (panel: Panel): boolean =>
  panel.massKg === undefined && (panel.alloy === undefined || panel.thicknessMm === undefined);
