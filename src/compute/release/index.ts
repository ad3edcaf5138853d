export { ASSUMED_TOLERANCE_MM, faces, LOOK_MM } from './faces.js';
export { keepClean } from './keep-clean.js';
export { type OpenInZone, openByZone } from './open-items.js';
export { leftOfGvwr, stations } from './stations.js';
export type { Face, FaceRun, KeepClean, Station } from './types.js';
