import { length } from '../../quantity/format.js';
import type { PrintedFile } from '../print-books.js';
import type { CheckedShell } from './checked.js';
import { countsText } from './findings.js';
import { paragraph } from './wrap.js';

/** What the demo found in one shell, in a few lines. The later shell has mistakes planted in it for `check` to find. */
export function demoSummary({ shell, assessment, findings, counts }: CheckedShell, first: boolean): string {
  const { figures, model } = assessment;
  const { coverage } = figures.access;
  const open = findings.filter((one) => one.severity !== 'note' && one.decidedBy === undefined);
  const lines = [paragraph(`${shell} ${model.shell.title}: ${countsText(counts)}`, '   - ')];
  if (first) {
    const reach = `${coverage.nodesInReach} of ${coverage.nodes} service nodes in reach, ${length(coverage.runLengthInReachMm, model.shop.units)} of run`;
    lines.push(paragraph(`${reach}; ${figures.joints.recorded} of ${figures.joints.found} joints recorded`, '     '));
  } else if (open.length > 0) {
    const rules = [...new Set(open.map((one) => one.rule))];
    const areas = [...new Set(rules.map((rule) => rule.split('.')[0] as string))];
    const listed = areas.map((area) => `${area} ${rules.filter((rule) => rule.startsWith(`${area}.`)).length}`);
    lines.push(paragraph(`${rules.length} kinds of planted mistake found, as they should be: ${listed.join(', ')}`, '     '));
  }
  return lines.join('\n');
}

export interface DemoEnd {
  /** How the program is typed. */
  readonly program: string;
  readonly dir: string;
  readonly shell: string;
  readonly other: string;
  /** Something to look for in the first shell. */
  readonly sought: string;
  readonly books: readonly PrintedFile[];
}

export function demoEnd({ program, dir, shell, other, sought, books }: DemoEnd): string {
  return [
    `The store:  ${dir}`,
    ...books.map((one) => `A book:     ${one.file}  (${one.pageCount} pages)`),
    '',
    'Try next:',
    `  ${program} weights ${shell} --store ${dir}`,
    `  ${program} check ${other} --store ${dir}`,
    `  ${program} where ${shell} ${sought} --store ${dir}`,
  ].join('\n');
}
