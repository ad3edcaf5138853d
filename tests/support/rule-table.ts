import { RULES } from '../../src/rules/index.js';

const cell = (text: string): string => text.replace(/\|/gu, '\\|').replace(/\s+/gu, ' ').trim();

/** The rule reference of the README, made from the rules themselves. */
export function ruleTable(): string {
  const rows = RULES.map((rule) => `| \`${rule.name}\` | ${rule.severity} | ${cell(rule.finds)} | ${cell(rule.source)} |`);
  return ['| rule | severity | finds | source |', '| --- | --- | --- | --- |', ...rows].join('\n');
}
