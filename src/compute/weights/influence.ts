import type { Axle } from '../../records/index.js';
import { type AxleModel, influenceAt } from './axle-reactions.js';
import type { Weights } from './types.js';

const STEP_MM = 500;
/** A station typed in the wrong unit may lie kilometres away: the step then grows, not the table. */
const MOST_STATIONS = 200;
const TRIAL_KG = 100;

/** Influence lines: what 100 kg at each station adds to each axle, over the length given. */
export function influence(axleModel: AxleModel, axles: readonly Axle[], fromMm: number, toMm: number): Weights['influence'] {
  const stepMm = STEP_MM * Math.max(1, Math.ceil((toMm - fromMm) / (STEP_MM * MOST_STATIONS)));
  const [first, last] = [Math.floor(fromMm / stepMm), Math.ceil(toMm / stepMm)];
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const xMm = (first + i) * stepMm;
    const adds = influenceAt(axleModel, xMm).map((each) => each * TRIAL_KG);
    return { xMm, addsKg: Object.fromEntries(axles.map((axle, a) => [axle.id, adds[a] as number])) };
  });
}
