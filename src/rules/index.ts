import type { Figures } from '../compute/figures.js';
import type { Finding } from '../finding.js';
import { getOwn } from '../get-own.js';
import { isPlanned } from '../model/planned.js';
import type { Model } from '../model/shell.js';
import { accessRules } from './access/index.js';
import { findingRules } from './finding/index.js';
import { memberRules } from './member/index.js';
import { openingRules } from './opening/index.js';
import { orderRules } from './order/index.js';
import { panelRules } from './panel/index.js';
import { READING } from './reading.js';
import { recordRules } from './record/index.js';
import { type Outside, type Rule, type RuleArea, runRule } from './rule.js';
import { serviceRules } from './service/index.js';
import { shellRules } from './shell/index.js';
import { signoffRules } from './signoff/index.js';
import { testRules } from './test/index.js';
import { weightRules } from './weight/index.js';
import { weldRules } from './weld/index.js';

/** Every rule, in the order in which findings are printed. */
export const RULES: readonly Rule[] = [
  ...shellRules,
  ...weightRules,
  ...memberRules,
  ...panelRules,
  ...weldRules,
  ...openingRules,
  ...serviceRules,
  ...accessRules,
  ...orderRules,
  ...testRules,
  ...findingRules,
  ...signoffRules,
  ...recordRules,
];

const BY_NAME: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.name, rule]));

/** The rule of that name; undefined for what reading finds (`format.…`). */
const ruleNamed = (name: string): Rule | undefined => BY_NAME.get(name);

/** What a finding asks for, and of whom, by the name that it carries. */
export function answerable(name: string): Pick<Rule, 'asks' | 'duty'> {
  const read = getOwn(READING, name);
  return read ? { asks: read.asks, duty: 'administrator' } : (ruleNamed(name) ?? { asks: 'defect', duty: 'trade' });
}

/** What the rules find; with `areas`, only those whose name begins with one of them. */
export function judge(model: Model, figures: Figures, outside: Outside = {}, areas?: readonly RuleArea[]): readonly Finding[] {
  const asked = areas ? RULES.filter(({ name }) => areas.some((area) => name.startsWith(`${area}.`))) : RULES;
  return asked.flatMap((rule) => runRule(rule, { model, figures, outside }).flatMap((found) => asPlanned(rule, found, model)));
}

/** What is only planned has no evidence, no welder and no lot yet, and none is asked of it; a hole that is not drilled yet is only pointed out. */
function asPlanned({ asks, name }: Rule, finding: Finding, { shell }: Model): readonly Finding[] {
  const records = finding.ids.filter((id) => shell.byId.has(id));
  if (records.length === 0 || !records.every((id) => isPlanned(shell, id))) return [finding];
  if (asks === 'missing' || OF_DONE.has(name)) return [];
  return TO_DECIDE.has(name) ? [{ ...finding, severity: 'note' }] : [finding];
}

/** Rules that judge how a thing was made. */
const OF_DONE: ReadonlySet<string> = new Set(['weld.welder-unqualified', 'weld.continuity-lapsed']);

/** Rules whose finding the shop decides when the thing is there. */
const TO_DECIDE: ReadonlySet<string> = new Set(['weld.drilled-near']);
