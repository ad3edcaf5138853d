/** Vector drawings from the records: an assessment and the room on the page in, SVG in millimetres out. */

export type { Drawing, DrawingOptions } from './compose.js';
export { shellExtent } from './extent.js';
export { mediumSwatch } from './legend.js';
export { MEDIUM_STYLES, type MediumStyle } from './media.js';
export { protectionPlaces } from './protection-places.js';
export { RESCUE_GROUPS, rescueItems } from './rescue.js';
export type { SheetSize } from './sheet.js';
export { axleChart } from './views/axle-chart.js';
export { bayPlan } from './views/bay-plan.js';
export { coverDrawing } from './views/cover.js';
export { emergencyPlan, rescueBadge } from './views/emergency.js';
export { type FrameDrawing, frameDrawings } from './views/frames.js';
export { generalArrangement } from './views/general.js';
export { growthChart } from './views/growth-chart.js';
export { influenceChart } from './views/influence-chart.js';
export { noDrillFace } from './views/no-drill.js';
export { openingDrawing } from './views/opening.js';
export { panelFace } from './views/panel-face.js';
export { faceWords, panelKeyPlan, panelsDrawings } from './views/panels.js';
export { protectionPlan } from './views/protection-plan.js';
export { sectionDrawing } from './views/section.js';
export { serviceDetails } from './views/service-details.js';
export { mediaUsed, serviceDrawings } from './views/services.js';
export { type WeldSheet, weldMap } from './views/weld-map.js';
export { type SymbolEntry, weldSymbols } from './views/weld-symbols.js';
export { kindsByWeld } from './weld-symbol/kinds.js';
export { shortInWords } from './weld-symbol/words.js';
