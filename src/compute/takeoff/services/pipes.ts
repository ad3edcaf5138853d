import { MM_PER_IN } from '../../../quantity/units.js';
import type { PipeSize } from '../../../records/index.js';
import { COPPER_L, COPPER_REFRIGERATION, CPVC, EMT, NYLON, PEX, type PipeRow, SCHEDULE_40, SCHEDULE_80 } from './pipe-tables.js';

/** A pipe, hose or duct as built: outside and inside diameter, mm, and mass of the wall, kg/m. */
export interface Pipe {
  readonly outsideMm: number;
  readonly insideMm: number;
  readonly massKgM: number;
}

interface Family {
  /** Words of the size's material that name it. */
  readonly named: RegExp;
  readonly densityKgM3: number;
  readonly table?: readonly PipeRow[];
  /** Where no table has it: outside and wall from the nominal size, mm. */
  readonly rule?: (nominalMm: number) => { readonly outsideMm: number; readonly wallMm: number };
}

const byBore = (wallMm: number) => (nominalMm: number) => ({ outsideMm: nominalMm + 2 * wallMm, wallMm });
const byOutside = (wallMm: number) => (nominalMm: number) => ({ outsideMm: nominalMm, wallMm: Math.min(wallMm, nominalMm / 2) });

/**
 * First that fits wins. Densities: copper 8940, steel 7850 (EN 1993-1-1), stainless 7900 (EN 10088-1), aluminium 2700, PEX 940,
 * PVC 1400, CPVC 1550, ABS 1050, nylon 1040 kg/m³, all (unverified citation). Walls of hose, duct and thin tube are project defaults:
 * common practice, no source. A hydraulic hose's density counts its wire.
 */
const FAMILIES: readonly Family[] = [
  { named: /hydraulic.*hose|hose.*hydraulic|100R/iu, densityKgM3: 2200, rule: byBore(5) },
  { named: /hose/iu, densityKgM3: 1200, rule: byBore(4.3) },
  { named: /duct/iu, densityKgM3: 1350, rule: byBore(1) },
  { named: /pex/iu, densityKgM3: 940, table: PEX },
  {
    named: /(acr|refrigeration|b280|outside|\bOD\b).*copper|copper.*(acr|refrigeration|b280|outside|\bOD\b)/iu,
    densityKgM3: 8940,
    table: COPPER_REFRIGERATION,
  },
  { named: /copper/iu, densityKgM3: 8940, table: COPPER_L },
  { named: /cpvc/iu, densityKgM3: 1550, table: CPVC },
  { named: /pvc.*80|80.*pvc/iu, densityKgM3: 1400, table: SCHEDULE_80 },
  { named: /pvc/iu, densityKgM3: 1400, table: SCHEDULE_40 },
  { named: /abs/iu, densityKgM3: 1050, table: SCHEDULE_40 },
  { named: /nylon|air brake|j844/iu, densityKgM3: 1040, table: NYLON, rule: byOutside(1.6) },
  { named: /emt|metallic tubing/iu, densityKgM3: 7850, table: EMT },
  { named: /polyethylene|\bPE\b|\bHDPE\b|\bLLDPE\b/iu, densityKgM3: 940, rule: byOutside(1.6) },
  { named: /stainless.*tub|tub.*stainless/iu, densityKgM3: 7900, rule: byOutside(1.25) },
  { named: /alumini?um.*tub|tub.*alumini?um/iu, densityKgM3: 2700, rule: byOutside(1.25) },
  { named: /steel.*tub|tub.*steel/iu, densityKgM3: 7850, rule: byOutside(1.25) },
  { named: /stainless/iu, densityKgM3: 7900, table: SCHEDULE_40 },
  { named: /alumini?um/iu, densityKgM3: 2700, table: SCHEDULE_40 },
  { named: /steel.*80|80.*steel|iron.*80/iu, densityKgM3: 7850, table: SCHEDULE_80 },
  { named: /steel|iron|pipe/iu, densityKgM3: 7850, table: SCHEDULE_40 },
];

/** A size in a table is met within this much: `15 mm` is not `1/2 in`. */
const SAME_SIZE_MM = 0.4;

/** The pipe that a size names, by its material's table; undefined where neither table nor rule has it. */
export function pipeOf(size: PipeSize): Pipe | undefined {
  const family = FAMILIES.find(({ named }) => named.test(size.material));
  if (!family) return undefined;
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
