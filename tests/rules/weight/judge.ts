/** Runs one weight rule over the figures of a model from literals. */
import type { Figures } from '../../../src/assess.js';
import type { MassItem } from '../../../src/compute/takeoff/types.js';
import { weights } from '../../../src/compute/weights/index.js';
import type { Finding } from '../../../src/finding.js';
import type { Model } from '../../../src/model/shell.js';
import { type Rule, runRule } from '../../../src/rules/rule.js';
import { takeOffOf } from '../../compute/weights/support.js';

export function judge(rule: Rule, model: Model, items: readonly MassItem[] = []): readonly Finding[] {
  const takeOff = takeOffOf(items);
  const findings = runRule(rule, { model, figures: { takeOff, weights: weights(model, takeOff) } as Figures });
  for (const finding of findings) {
    if (finding.rule !== rule.name) throw new Error(`${finding.rule} told by ${rule.name}`);
    if (/\n|NaN|undefined/u.test(finding.message)) throw new Error(`Message does not read: ${finding.message}`);
  }
  return findings;
}

/** What it says, as one line each: severity, first id, message. */
export const said = (rule: Rule, model: Model, items: readonly MassItem[] = []): readonly string[] =>
  judge(rule, model, items).map((one) => `${one.severity} ${one.ids[0]}: ${one.message}`);
