import type { Rework, Trend } from '../../compute/record/trends.js';
import { number } from '../../quantity/format.js';
import type { Json } from './json.js';
import type { TerminalPaint } from './paint.js';
import { type TextColumn, textTable } from './tables.js';

const right = (head: string): TextColumn => ({ head, align: 'right' });
const BAR = 16;

/** One row a shell, what was made twice, and three small charts: rejects, scale residuals, days from work to record. */
export function trendsText(trends: readonly Trend[], paint: TerminalPaint): string {
  if (trends.length === 0) return 'No shells in this store yet. Start one: shellbook new-shell ID';
  const rows = trends.map((one) => [
    one.shell,
    number(one.welds),
    number(one.rejected),
    number(one.findings),
    one.residual ? `${(100 * one.residual.share).toFixed(2)} %` : 'not weighed',
    one.entry ? number(one.entry.median) : 'no history',
    one.entry ? number(one.entry.most) : '',
  ]);
  const heads = [
    { head: 'shell' },
    ...['welds', 'rejected', 'findings', 'scale residual', 'days to record, median', 'most'].map(right),
  ];
  const causes = trends.flatMap((one) => causeRows(one));
  const causeHeads = [{ head: 'shell' }, { head: 'stage' }, { head: 'rule or cause', wrap: true }, right('times')];
  const charts = [
    chart(
      'Welds rejected, share of all',
      trends.map((one) => [one.shell, one.welds > 0 ? one.rejected / one.welds : undefined]),
      percent,
    ),
    chart(
      'Scale residual, share of the whole',
      trends.map((one) => [one.shell, one.residual && Math.abs(one.residual.share)]),
      percent,
    ),
    chart(
      'Days from work to record, median',
      trends.map((one) => [one.shell, one.entry?.median]),
      (value) => number(value),
    ),
  ].filter((text) => text !== '');
  return [
    `${paint.strong('Over the shells')}\n${textTable(heads, rows, '  ')}`,
    ...(causes.length > 0 ? [`${paint.strong('Rework, by stage and cause')}\n${textTable(causeHeads, causes, '  ')}`] : []),
    ...charts.map((text) => text.replace(/^.*/u, (title) => paint.strong(title))),
  ].join('\n\n');
}

/** So many causes of a shell are listed; JSON has all. */
const CAUSES = 8;

function causeRows({ shell, reworks }: Trend): readonly (readonly string[])[] {
  const rows = reworks.slice(0, CAUSES).map(({ stage, cause, count }: Rework) => [shell, stage, cause, number(count)]);
  const rest = reworks.slice(CAUSES).reduce((sum, { count }) => sum + count, 0);
  return rest === 0 ? rows : [...rows, [shell, 'others', '--json has them all', number(rest)]];
}

const percent = (value: number): string => `${(100 * value).toFixed(2)} %`;

/** A bar a shell, the longest full. Nothing where nothing is known, or all is zero. */
function chart(
  title: string,
  values: readonly (readonly [string, number | undefined])[],
  write: (value: number) => string,
): string {
  const most = Math.max(0, ...values.map(([, value]) => value ?? 0));
  if (most === 0) return '';
  const wide = Math.max(...values.map(([shell]) => shell.length));
  const lines = values.map(([shell, value]) => {
    const filled = value === undefined ? 0 : Math.round((BAR * value) / most);
    return `  ${shell.padEnd(wide)} ${'█'.repeat(filled).padEnd(BAR)} ${value === undefined ? 'not known' : write(value)}`;
  });
  return [title, ...lines].join('\n');
}

export const trendsJson = (trends: readonly Trend[]): Json =>
  trends.map((one) => ({
    shell: one.shell,
    welds: one.welds,
    rejected: one.rejected,
    findings: one.findings,
    reworks: one.reworks.map(({ stage, cause, count }) => ({ stage, cause, count })),
    residual: one.residual && { ticket: one.residual.ticket, residual_kg: one.residual.kg, share: one.residual.share },
    entry: one.entry && { median_days: one.entry.median, most_days: one.entry.most, records: one.entry.records },
  }));
