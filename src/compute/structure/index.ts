export { weldTotals } from '../welding/totals.js';
export { joints } from './joints.js';
export { openings } from './openings.js';
