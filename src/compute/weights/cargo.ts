import { OCCUPANT_KG, OCCUPANT_LB } from '../../model/occupant.js';
import { parseQuantity } from '../../quantity/parse.js';
import { KG_PER_LB, M3_PER_US_GAL } from '../../quantity/units.js';
import type { CargoLabel } from './types.js';

/** Density printed on the label, kg/m³ (1 kg/L, 8.3 lb/gal: 49 CFR 571.120 label figure). */
const LABEL_WATER_KG_M3 = 1000;

/** Less than this is the dust of unit factors, not mass. */
const DUST = 1e-6;

/** Full load of water, kg. */
export const waterKg = (capacitiesM3: readonly number[]): number =>
  capacitiesM3.reduce((sum, each) => sum + each, 0) * LABEL_WATER_KG_M3;

/** Rounded down, so that what is printed never promises more than there is. */
export const roundDown = (value: number): number => Math.floor(value + DUST);
/** Rounded up, for what must be allowed for. */
export const roundUp = (value: number): number => Math.ceil(value - DUST);

export interface Cargo {
  /** Occupant and cargo carrying capacity: GVWR − unloaded vehicle weight. */
  readonly occcKg: number;
  /** What is left of it after an occupant in each belted seat and full fresh water. */
  readonly cccKg: number;
}

/** 49 CFR 571.120 S10. Propane is in the unloaded weight, water is cargo. */
export const cargo = (gvwrKg: number, uvwKg: number, beltedSeats: number, waterFullKg: number): Cargo => ({
  occcKg: gvwrKg - uvwKg,
  cccKg: gvwrKg - uvwKg - beltedSeats * OCCUPANT_KG - waterFullKg,
});

/** Density of the label figure in pounds a US gallon. */
const LABEL_WATER_LB_GAL = 8.3;

/**
 * Every figure of the label, whole kilograms and pounds, by the regulation's own numbers in each unit (68 kg or 150 lb a seat, 1 kg a litre or
 * 8.3 lb a gallon), each rounded to the safe side: what may be loaded down, what is already there up. Nothing where the unladen mass is
 * above the GVWR. Book, label and JSON take their figures from here.
 * Worked: GVWR 26,000 lb, unloaded 21,480 lb: 2050 kg, 4520 lb. 50 gal: 190 kg, 415 lb.
 */
export function cargoLabel(gvwrKg: number, uvwKg: number, beltedSeats: number, waterFullKg: number): CargoLabel | undefined {
  const capacityKg = gvwrKg - uvwKg;
  if (capacityKg < -DUST) return undefined;
  const [occcKg, occcLb] = [roundDown(capacityKg), roundDown(capacityKg / KG_PER_LB)];
  const [seatsKg, seatsLb] = [beltedSeats * OCCUPANT_KG, beltedSeats * OCCUPANT_LB];
  const gallons = waterFullKg / LABEL_WATER_KG_M3 / M3_PER_US_GAL;
  const [waterUpKg, waterUpLb] = [roundUp(waterFullKg), roundUp(gallons * LABEL_WATER_LB_GAL)];
  return {
    uvwKg: roundUp(uvwKg),
    uvwLb: roundUp(uvwKg / KG_PER_LB),
    occcKg,
    occcLb,
    seats: beltedSeats,
    seatsKg,
    seatsLb,
    waterKg: waterUpKg,
    waterLb: waterUpLb,
    // As printed, so that the label adds up.
    cccKg: occcKg - seatsKg - waterUpKg,
    cccLb: occcLb - seatsLb - waterUpLb,
  };
}

const RELABEL_FRACTION = 0.015;
const RELABEL_KG = 100 * KG_PER_LB;

/**
 * Mass that may be added after certification and before first sale without a new label: the lesser of 1.5 % of GVWR and
 * 100 lb (49 CFR 571.120 S10.5; 72 FR 68442). A rule pack may state another, as `1.5 % of GVWR or 100 lb`; one that cannot be
 * read leaves the federal figure.
 */
export function relabelLimitKg(gvwrKg: number, packed?: string): number {
  const match = /^\s*(.+?)\s+of\s+GVWR\s+or\s+(.+?)\s*$/iu.exec(packed ?? '');
  const fraction = match && parseQuantity(match[1], 'fraction');
  const mass = match && parseQuantity(match[2], 'mass');
  if (fraction?.ok && mass?.ok && fraction.value > 0 && mass.value > 0) return Math.min(gvwrKg * fraction.value, mass.value);
  return Math.min(gvwrKg * RELABEL_FRACTION, RELABEL_KG);
}
