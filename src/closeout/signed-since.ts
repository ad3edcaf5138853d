import type { Changes } from '../model/changes.js';
import type { Model } from '../model/shell.js';
import { dayOf } from '../quantity/day.js';
import { coverageOf } from './coverage.js';
import { signedStages } from './signed.js';

/**
 * Changes less those that a sign-off contradicts: one that still holds was given for the record as it stands now, so what came into the history
 * after its day was a mend of the entry (or was taken back). A sign-off given later than the change says nothing of when the thing was moved.
 */
export function withoutSigned(model: Model, changes: Changes): Changes {
  const left = new Map(changes);
  for (const { signoff, standing } of signedStages(model)) {
    const day = dayOf(signoff.date);
    if (standing !== 'holds' || ![...left.values()].some((one) => dayOf(one.day) > day)) continue;
    for (const name of coverageOf(model, signoff.stage, day).keys()) {
      const id = name.slice(name.lastIndexOf(' ') + 1);
      if ((dayOf(left.get(id)?.day) ?? '') > day) left.delete(id);
    }
  }
  return left;
}
