import type { Library } from '../../records/index.js';

/** Any wrought aluminium in design to Eurocode 9: EN 1999-1-1 3.2.5, unverified citation. */
const ALUMINIUM_KG_M3 = 2700;
const KG_MM3_PER_KG_M3 = 1e-9;

/** Density of an alloy, kg/mm³. One that the library lacks is taken as aluminium; `unknownAlloys` says so. */
export function densityKgMm3(alloy: string, library: Library): number {
  return (library.materials.get(alloy)?.densityKgM3 ?? ALUMINIUM_KG_M3) * KG_MM3_PER_KG_M3;
}

/** A sentence for the alloys that the library lacks, or nothing. */
export function unknownAlloys(alloys: readonly string[], library: Library): readonly string[] {
  const unknown = [...new Set(alloys)].filter((alloy) => !library.materials.has(alloy)).sort();
  if (unknown.length === 0) return [];
  return [`Not in the library's materials, so taken at ${ALUMINIUM_KG_M3} kg/m³: ${unknown.join(', ')}.`];
}
