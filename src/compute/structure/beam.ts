/**
 * Deflection of a straight prismatic beam, mm. Loads in N and N/mm, lengths in mm, E in N/mm², I in mm⁴.
 * Source: AISC Manual Table 3-23 (formula an unverified citation; small deflections, shear left out).
 */
export interface Beam {
  readonly spanMm: number;
  readonly modulusNMm2: number;
  readonly inertiaMm4: number;
}

/** Case 1: simply held, even load w: 5 w L⁴ / 384 E I at mid-span. */
export const simpleEven = ({ spanMm, modulusNMm2, inertiaMm4 }: Beam, loadNMm: number): number =>
  (5 * loadNMm * spanMm ** 4) / (384 * modulusNMm2 * inertiaMm4);

/** Case 15: both ends built in, even load w: w L⁴ / 384 E I at mid-span. */
export const fixedEven = (beam: Beam, loadNMm: number): number => simpleEven(beam, loadNMm) / 5;
