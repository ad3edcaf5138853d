import type { MassBasis } from '../../records/index.js';

/**
 * Standard uncertainties by basis: how far a mass (as a fraction of it) and each coordinate (mm) may be off, one sigma.
 * Project defaults: common practice, no source.
 */
export const UNCERTAINTY: Readonly<Record<MassBasis, { readonly mass: number; readonly positionMm: number }>> = {
  weighed: { mass: 0.005, positionMm: 25 },
  catalogue: { mass: 0.03, positionMm: 50 },
  calculated: { mass: 0.02, positionMm: 10 },
  estimated: { mass: 0.1, positionMm: 100 },
};
