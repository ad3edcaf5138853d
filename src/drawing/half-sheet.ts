import type { Drawing } from './compose.js';
import type { Margins, SheetSize } from './sheet.js';

/** Two drawings one above the other on a turned sheet. */

/** Strips about a view on half a sheet: legend above, little else. */
export const HALF_SHEET_STRIPS: Margins = { sideMm: 8, aboveMm: 7, belowMm: 2, mostMm: 14 };
/** The caption of the upper one, and the space between them, mm. */
const BETWEEN_MM = 8;

export const halfSheet = ({ widthMm, heightMm }: SheetSize): SheetSize => ({
  widthMm,
  heightMm: Math.floor((heightMm - BETWEEN_MM) / 2),
});

/** Not higher than its half, and every label in place. */
export const fitsOn = (half: SheetSize, { heightMm, leftOut = [] }: Drawing): boolean =>
  heightMm <= half.heightMm && leftOut.length === 0;
