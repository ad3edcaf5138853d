import type { Figures } from '../compute/figures.js';
import type { Finding } from '../finding.js';
import { getOwn } from '../get-own.js';
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
export const ruleNamed = (name: string): Rule | undefined => BY_NAME.get(name);

/** What a finding asks for, and of whom, by the name that it carries. */
export function answerable(name: string): Pick<Rule, 'asks' | 'duty'> {
  const read = getOwn(READING, name);
  return read ? { asks: read.asks, duty: 'administrator' } : (ruleNamed(name) ?? { asks: 'defect', duty: 'trade' });
}

/** What the rules find; with `areas`, only those whose name begins with one of them. */
export function judge(model: Model, figures: Figures, outside: Outside = {}, areas?: readonly RuleArea[]): readonly Finding[] {
  const asked = areas ? RULES.filter(({ name }) => areas.some((area) => name.startsWith(`${area}.`))) : RULES;
  return asked.flatMap((rule) => runRule(rule, { model, figures, outside }).filter((found) => !isOfPlanned(rule, found, model)));
}

/** What is only planned has no evidence, no welder and no lot yet, and none is asked of it. */
function isOfPlanned({ asks, name }: Rule, { ids }: Finding, { shell }: Model): boolean {
  const records = ids.filter((id) => shell.byId.has(id));
  return (asks === 'missing' || OF_DONE.has(name)) && records.length > 0 && records.every((id) => isPlanned(id, shell));
}

/** Rules that judge how a thing was made. */
const OF_DONE: ReadonlySet<string> = new Set(['weld.welder-unqualified', 'weld.continuity-lapsed']);

/** A circuit is planned while all its runs are. */
function isPlanned(id: string, shell: Model['shell']): boolean {
  const entry = shell.byId.get(id);
  if ((entry?.record as { readonly planned?: boolean } | undefined)?.planned === true) return true;
  const runs = entry?.kind === 'circuit' ? shell.runs.filter((run) => run.circuit === id) : [];
  return runs.length > 0 && runs.every((run) => run.planned === true);
}
