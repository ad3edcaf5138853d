export { type DrilledSheet, drilledSheets, isFarBeside, underFace } from './drilled-sheets.js';
export { ASSUMED_TOLERANCE_MM, faces, LOOK_MM } from './faces.js';
export { keepClean } from './keep-clean.js';
export { type OpenInZone, openByZone } from './open-items.js';
export { SCREW_LOOK_MM, type ScrewHit } from './screw-obstacles.js';
export { type ScrewDepth, type Screws, screws } from './screws.js';
export { type PanelScrews, screwsByPanel } from './screws-by-panel.js';
export { leftOfGvwr, stations } from './stations.js';
export type { Face, FaceRun, KeepClean, Station } from './types.js';
