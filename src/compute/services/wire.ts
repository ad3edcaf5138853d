import type { Conductor, Library, Medium } from '../../records/index.js';
import { awgAreaMm2, awgNumber, RESISTIVITY_OHM_MM2_M, TEMPERATURE_COEFFICIENT } from '../conductors.js';

/** One conductor of a run. */
export interface Wire {
  readonly areaMm2: number;
  readonly material: Conductor['material'];
  readonly ratingC?: number;
  /** Conductors that carry current: a third is the protective earth. */
  readonly carrying: number;
  /** As a person says it: `14 AWG`, `6 mm²`. */
  readonly text: string;
  /** Rated by its maker, in the library, A. */
  readonly ratedA?: number;
}

/** Undefined where neither gauge, area nor a known type says how much metal there is. */
export function wireOf(conductor: Conductor | undefined, library: Library): Wire | undefined {
  if (!conductor) return undefined;
  const { awg, material, ratingC } = conductor;
  const type = conductor.type === undefined ? undefined : library.conductors.get(conductor.type);
  const gauge = awg === undefined || awgNumber(awg) === undefined ? undefined : awg;
  const areaMm2 = conductor.areaMm2 ?? (gauge === undefined ? type?.areaMm2 : awgAreaMm2(gauge));
  if (areaMm2 === undefined || areaMm2 <= 0) return undefined;
  const text = conductor.areaMm2 === undefined && gauge !== undefined ? `${gauge} AWG` : `${Number(areaMm2.toFixed(2))} mm²`;
  return {
    areaMm2,
    material,
    ratingC,
    carrying: Math.min(2, Math.max(1, conductor.conductors)),
    text,
    ratedA: type?.ampacityA,
  };
}

/** Loaded wiring is warm, °C: 50 for DC (project default), 75 for AC (NEC Chapter 9 Table 8). */
export const conductorC = (medium: Medium): number => (medium === 'ac' ? 75 : 50);

/** Resistance of one conductor, ohm: ρ₂₀ (1 + α (t − 20)) × length ÷ area; IEC 60287-1-1 Table 1. Length in mm, area in mm². */
export function resistanceOhm({ areaMm2, material }: Pick<Wire, 'areaMm2' | 'material'>, lengthMm: number, atC: number): number {
  const warm = 1 + TEMPERATURE_COEFFICIENT[material] * (atC - 20);
  return (RESISTIVITY_OHM_MM2_M[material] * warm * (lengthMm / 1000)) / areaMm2;
}
