import type { Axle } from '../../model/shell.js';
import { type Carriage, influenceAt } from './axle-reactions.js';
import type { Weights } from './types.js';

const STEP_MM = 500;
const TRIAL_KG = 100;

/** Influence lines: what 100 kg at each station adds to each axle, over the length given. */
export function influence(carriage: Carriage, axles: readonly Axle[], fromMm: number, toMm: number): Weights['influence'] {
  const [first, last] = [Math.floor(fromMm / STEP_MM), Math.ceil(toMm / STEP_MM)];
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const xMm = (first + i) * STEP_MM;
    const adds = influenceAt(carriage, xMm).map((each) => each * TRIAL_KG);
    return { xMm, addsKg: Object.fromEntries(axles.map((axle, a) => [axle.id, adds[a] as number])) };
  });
}
