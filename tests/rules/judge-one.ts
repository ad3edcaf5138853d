import type { Figures } from '../../src/assess.js';
import type { Finding } from '../../src/finding.js';
import type { Model } from '../../src/model/shell.js';
import { type Outside, type Rule, runRule } from '../../src/rules/rule.js';

/** Runs one rule that reads records only. Every finding must carry the rule's own name. */
export function judgeOne(rule: Rule, model: Model, outside: Outside = {}): readonly Finding[] {
  const findings = runRule(rule, { model, figures: {} as Figures, outside });
  for (const finding of findings) if (finding.rule !== rule.name) throw new Error(`${finding.rule} told by ${rule.name}`);
  return findings;
}
