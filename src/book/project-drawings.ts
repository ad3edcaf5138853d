import type { Assessment } from '../assess.js';
import type { KeptDrawings } from '../drawing/index.js';
import * as drawing from '../drawing/index.js';
import { isPlanned } from '../model/planned.js';
import type { Medium } from '../records/index.js';
import type { Drawings } from './drawings.js';

/** The drawings of src/drawing, under the names that chapters use; from `kept` those that are there. */
export function drawingsFrom(kept?: KeptDrawings): Drawings {
  // What is planned is drawn so.
  const of = ({ model }: Assessment) => ({ planned: (id: string) => isPlanned(model.shell, id), ...(kept ? { kept } : {}) });
  return {
    generalArrangement: (a, room) => drawing.generalArrangement(a, room, of(a)),
    cover: (a, room) => drawing.coverDrawing(a, room, of(a)),
    frames: (a, room) => drawing.frameDrawings(a, room, of(a)),
    weldMap: (a, room) => drawing.weldMap(a, room, of(a)),
    weldSymbols: (a) => drawing.weldSymbols(a),
    services: (a, medium, room) => [
      ...drawing.serviceDrawings(a, medium, room, of(a)),
      ...drawing.serviceDetails(a, medium, room, of(a)),
    ],
    lineDiagrams: (a, medium, room) => drawing.lineDiagrams(a, medium, room, of(a)),
    photoOverlay: (a, photo, widthMm) => drawing.photoOverlayDrawing(a, photo, widthMm),
    panelKeyPlan: (a, id, room) => drawing.panelKeyPlan(a, id, room, of(a)),
    panelFace: (a, id, room) => drawing.panelFace(a, id, room, of(a)),
    panels: (a, room) => drawing.panelsDrawings(a, room, of(a)),
    opening: (a, id, room) => drawing.openingDrawing(a, id, room, of(a)),
    section: (section, room, units) => drawing.sectionDrawing(section, room, { units }),
    axleChart: (a, room) => drawing.axleChart(a, room, of(a)),
    growthChart: (a, room) => drawing.growthChart(a, room, of(a)),
    influenceChart: (a, room) => drawing.influenceChart(a, room, of(a)),
    bayPlan: (a, room) => drawing.bayPlan(a, room, of(a)),
    loadingSide: (a, room) => drawing.loadingSide(a, room, of(a)),
    drillAreas: (a, map, surface, room) => drawing.drillAreas(a, map, surface, room, of(a)),
    distributionFaces: (a, room) => drawing.distributionPanels(a).map((panel) => drawing.distributionFace(a, panel, room, of(a))),
    protectionPlan: (a, room) => drawing.protectionPlan(a, room, of(a)),
    emergencyPlan: (a, room) => drawing.emergencyPlan(a, room, of(a)),
    noDrillFace: (a, surface, room) => drawing.noDrillFace(a, surface, room, of(a)),
    swatch: (medium: Medium) => drawing.mediumSwatch(medium),
    mediumName: (medium) => drawing.MEDIUM_STYLES[medium].name,
    mediumLetter: (medium) => drawing.MEDIUM_STYLES[medium].letter,
  };
}

export const projectDrawings: Drawings = drawingsFrom();
