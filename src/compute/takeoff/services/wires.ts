import { MM_PER_IN } from '../../../quantity/units.js';
import type { Conductor, ConductorType } from '../../../records/index.js';
import { awgAreaMm2, CONDUCTOR_DENSITY_KG_M3 } from '../../conductors.js';

/** The wires of one run together: outside diameter of the bundle, mm (undefined where not known), and mass, kg/m. */
export interface Wires {
  readonly outsideMm?: number;
  readonly massKgM: number;
}

/** Insulation is taken as PVC, kg/m³: common practice, no source. */
const INSULATION_KG_M3 = 1400;

/**
 * Area of metal (mm²) → area over the insulation (mm²): THHN/THWN, NEC Chapter 9 Table 5; 18 and 16 AWG (TFFN) (unverified citation).
 */
const INSULATED: readonly (readonly [number, number])[] = (
  [
    ['18', 0.0055],
    ['16', 0.0072],
    ['14', 0.0097],
    ['12', 0.0133],
    ['10', 0.0211],
    ['8', 0.0366],
    ['6', 0.0507],
    ['4', 0.0824],
    ['2', 0.1158],
    ['1/0', 0.1855],
    ['4/0', 0.3237],
  ] as const
).map(([awg, squareInches]) => [awgAreaMm2(awg) as number, squareInches * MM_PER_IN ** 2] as const);

/** Area over the insulation of one wire, mm², between (and beyond) the rows on logarithmic scales. */
export function insulatedAreaMm2(metalMm2: number): number {
  const upper = INSULATED.findIndex(([metal]) => metal >= metalMm2);
  const at = upper < 0 ? INSULATED.length - 1 : Math.max(1, upper);
  const [metal0, over0] = INSULATED[at - 1] as readonly [number, number];
  const [metal1, over1] = INSULATED[at] as readonly [number, number];
  const t = Math.log(metalMm2 / metal0) / Math.log(metal1 / metal0);
  return over0 * (over1 / over0) ** t;
}

/**
 * Diameter of the smallest circle around equal circles of diameter 1, for 1 to 19 (packing of equal circles in a circle,
 * R. L. Graham and others; unverified citation); above that, a fill of 80 %.
 */
const AROUND = [
  1, 2, 2.1547, 2.4142, 2.7013, 3, 3, 3.3048, 3.6131, 3.813, 3.9238, 4.0296, 4.2361, 4.3284, 4.5214, 4.6154, 4.792, 4.8637,
  4.8637,
];
export const bundleDiameter = (count: number, each: number): number => each * (AROUND[count - 1] ?? Math.sqrt(count / 0.8));

/** Wires by gauge, area or library type. Undefined where the conductor says none of them. */
export function wiresOf(conductor: Conductor, types: ReadonlyMap<string, ConductorType>): Wires | undefined {
  const type = conductor.type === undefined ? undefined : types.get(conductor.type);
  const count = Math.max(1, conductor.conductors);
  const metal = conductor.areaMm2 ?? (conductor.awg === undefined ? undefined : awgAreaMm2(conductor.awg)) ?? type?.areaMm2;
  if (metal === undefined && !type) return undefined;
  const over = metal === undefined || metal <= 0 ? undefined : insulatedAreaMm2(metal);
  const each = type?.outsideDiameterMm ?? (over === undefined ? undefined : Math.sqrt((4 * over) / Math.PI));
  const massEach =
    type?.massKgM ?? (metal === undefined || over === undefined ? 0 : wireMassKgM(metal, over, conductor.material));
  return { outsideMm: each === undefined ? undefined : bundleDiameter(count, each), massKgM: massEach * count };
}

/** Metal plus insulation; the voids of a strand count as insulation, so the sum is a little high. */
const wireMassKgM = (metalMm2: number, overMm2: number, material: Conductor['material']): number =>
  (metalMm2 * CONDUCTOR_DENSITY_KG_M3[material] + Math.max(0, overMm2 - metalMm2) * INSULATION_KG_M3) * 1e-6;
