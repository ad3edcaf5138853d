import type { Drawings } from './drawings.js';

/** The drawings of src/drawing, under the names that chapters use. */
export const projectDrawings: Drawings = {} as Drawings;
