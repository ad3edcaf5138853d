import type { SectionShape } from '../../../model/library.js';
import type { Part } from './parts.js';

/** Area, centroid and second moments of a whole section, and its torsion constant. */
export interface ShapeProperties extends Part {
  readonly jMm4: number;
}

export type SizesOf<Name extends SectionShape['shape']> = Extract<SectionShape, { readonly shape: Name }>;
