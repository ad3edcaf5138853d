import type { Weights } from '../../compute/weights/types.js';
import { type Thought, type WhatIfRow, whatIf } from '../../compute/weights/what-if.js';
import type { Model } from '../../model/shell.js';
import type { LoadingData } from '../pocket-data.js';

/** The vehicle with so much in each bay: the same sums as `weights --with`. */
export function loaded(data: LoadingData, inBays: ReadonlyMap<string, number>): readonly WhatIfRow[] {
  const thoughts = data.bays.flatMap(({ id, at }): readonly Thought[] => {
    const massKg = inBays.get(id) ?? 0;
    return massKg > 0 ? [{ massKg, at, bay: id }] : [];
  });
  const model = { shell: { chassis: { gvwrKg: data.gvwrKg }, bays: data.bays } } as unknown as Model;
  const weights = {
    loadLines: data.lines,
    fullWithoutBaysKg: data.fullWithoutBaysKg,
    conditions: [{ name: 'unladen', kind: 'standard', uncertaintyKg: data.unladenUncertaintyKg }],
  } as unknown as Weights;
  return whatIf(model, weights, thoughts);
}
