import * as drawing from '../drawing/index.js';
import type { Medium } from '../records/index.js';
import type { Drawings } from './drawings.js';

/** The drawings of src/drawing, under the names that chapters use. */
export const projectDrawings: Drawings = {
  generalArrangement: (a, room) => drawing.generalArrangement(a, room),
  cover: (a, room) => drawing.coverDrawing(a, room),
  frames: (a, room) => drawing.frameDrawings(a, room),
  weldMap: (a, room) => drawing.weldMap(a, room),
  weldSymbols: (a) => drawing.weldSymbols(a),
  services: (a, medium, room) => [...drawing.serviceDrawings(a, medium, room), ...drawing.serviceDetails(a, medium, room)],
  photoOverlay: (a, photo, widthMm) => drawing.photoOverlayDrawing(a, photo, widthMm),
  panelKeyPlan: (a, id, room) => drawing.panelKeyPlan(a, id, room),
  panelFace: (a, id, room) => drawing.panelFace(a, id, room),
  panels: (a, room) => drawing.panelsDrawings(a, room),
  opening: (a, id, room) => drawing.openingDrawing(a, id, room),
  section: (section, room, units) => drawing.sectionDrawing(section, room, { units }),
  axleChart: (a, room) => drawing.axleChart(a, room),
  growthChart: (a, room) => drawing.growthChart(a, room),
  influenceChart: (a, room) => drawing.influenceChart(a, room),
  bayPlan: (a, room) => drawing.bayPlan(a, room),
  protectionPlan: (a, room) => drawing.protectionPlan(a, room),
  emergencyPlan: (a, room) => drawing.emergencyPlan(a, room),
  noDrillFace: (a, surface, room) => drawing.noDrillFace(a, surface, room),
  swatch: (medium: Medium) => drawing.mediumSwatch(medium),
  mediumName: (medium) => drawing.MEDIUM_STYLES[medium].name,
  mediumLetter: (medium) => drawing.MEDIUM_STYLES[medium].letter,
};
