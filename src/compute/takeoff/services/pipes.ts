import { MM_PER_IN } from '../../../quantity/units.js';
import type { PipeSize } from '../../../records/index.js';
import { type PipeMaterial, pipeMaterialOf } from '../../../records/pipe-material.js';
import { COPPER_L, COPPER_REFRIGERATION, CPVC, EMT, NYLON, PEX, type PipeRow, SCHEDULE_40, SCHEDULE_80 } from './pipe-tables.js';

/** A pipe, hose or duct as built: outside and inside diameter, mm, and mass of the wall, kg/m. */
export interface Pipe {
  readonly outsideMm: number;
  readonly insideMm: number;
  readonly massKgM: number;
}

interface Family {
  readonly densityKgM3: number;
  readonly table?: readonly PipeRow[];
  /** Where no table has it: outside and wall from the nominal size, mm. */
  readonly rule?: (nominalMm: number) => { readonly outsideMm: number; readonly wallMm: number };
}

const byBore = (wallMm: number) => (nominalMm: number) => ({ outsideMm: nominalMm + 2 * wallMm, wallMm });
const byOutside = (wallMm: number) => (nominalMm: number) => ({ outsideMm: nominalMm, wallMm: Math.min(wallMm, nominalMm / 2) });

/**
 * Densities: copper 8940, steel 7850 (EN 1993-1-1), stainless 7900 (EN 10088-1), aluminium 2700, PEX 940, PVC 1400, CPVC 1550, ABS 1050,
 * nylon 1040 kg/m³, all (unverified citation). Walls of hose, duct and thin tube are project defaults: common practice, no source. A
 * hydraulic hose's density counts its wire.
 */
const FAMILIES: Readonly<Record<PipeMaterial, Family>> = {
  'hydraulic hose': { densityKgM3: 2200, rule: byBore(5) },
  hose: { densityKgM3: 1200, rule: byBore(4.3) },
  duct: { densityKgM3: 1350, rule: byBore(1) },
  'aluminium duct': { densityKgM3: 1350, rule: byBore(1) },
  pex: { densityKgM3: 940, table: PEX },
  'refrigeration copper': { densityKgM3: 8940, table: COPPER_REFRIGERATION },
  copper: { densityKgM3: 8940, table: COPPER_L },
  cpvc: { densityKgM3: 1550, table: CPVC },
  'pvc 80': { densityKgM3: 1400, table: SCHEDULE_80 },
  pvc: { densityKgM3: 1400, table: SCHEDULE_40 },
  abs: { densityKgM3: 1050, table: SCHEDULE_40 },
  nylon: { densityKgM3: 1040, table: NYLON, rule: byOutside(1.6) },
  emt: { densityKgM3: 7850, table: EMT },
  polyethylene: { densityKgM3: 940, rule: byOutside(1.6) },
  'stainless tube': { densityKgM3: 7900, rule: byOutside(1.25) },
  'aluminium tube': { densityKgM3: 2700, rule: byOutside(1.25) },
  'steel tube': { densityKgM3: 7850, rule: byOutside(1.25) },
  stainless: { densityKgM3: 7900, table: SCHEDULE_40 },
  aluminium: { densityKgM3: 2700, table: SCHEDULE_40 },
  'steel 80': { densityKgM3: 7850, table: SCHEDULE_80 },
  steel: { densityKgM3: 7850, table: SCHEDULE_40 },
};

/** A size in a table is met within this much: `15 mm` is not `1/2 in`. */
const SAME_SIZE_MM = 0.4;

/** The pipe that a size names, by its material's table; undefined where its material is not in the list, or neither table nor rule has the size. */
export function pipeOf(size: PipeSize): Pipe | undefined {
  const material = pipeMaterialOf(size.material);
  if (!material) return undefined;
  const family: Family = FAMILIES[material];
  const row = family.table?.find(({ nominalIn }) => Math.abs(nominalIn * MM_PER_IN - size.nominalMm) <= SAME_SIZE_MM);
  if (row) return pipe(row.outsideIn * MM_PER_IN, row.wallIn * MM_PER_IN, family.densityKgM3);
  const ruled = family.rule?.(size.nominalMm);
  return ruled && pipe(ruled.outsideMm, ruled.wallMm, family.densityKgM3);
}

/** A plain tube of one material. */
export function pipe(outsideMm: number, wallMm: number, densityKgM3: number): Pipe {
  const insideMm = Math.max(0, outsideMm - 2 * wallMm);
  return { outsideMm, insideMm, massKgM: (Math.PI / 4) * (outsideMm ** 2 - insideMm ** 2) * 1e-6 * densityKgM3 };
}
