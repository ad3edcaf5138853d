import type { Model } from '../../model/shell.js';
import { dayOf, daysBetween } from '../../quantity/day.js';
import type { TicketFigure } from '../weights/types.js';
import { eventsOf } from './late-entries.js';

/** How often something was made twice, by where and why. */
export interface Rework {
  /** Stage, where the record is of one. */
  readonly stage: string;
  /** The reason that the inspector gave, or what was decided about a finding. */
  readonly cause: string;
  readonly count: number;
}

/** What a shop learns from one shell for the next. */
export interface Trend {
  readonly shell: string;
  /** Rejected inspections of welds and findings decided as rework or repair, most first. */
  readonly reworks: readonly Rework[];
  readonly welds: number;
  readonly rejected: number;
  /** Findings in findings.yaml. */
  readonly findings: number;
  /** The newest verified ticket: what the records do not explain of it, kg and as a share of the whole. */
  readonly residual?: { readonly ticket: string; readonly kg: number; readonly share: number };
  /** Days between what happened and its first commit: the middle one, and the most. Absent without a history. */
  readonly entry?: { readonly median: number; readonly most: number; readonly records: number };
}

/** One shell by its own records. `entered`: id → day of the first commit that has it. */
export function trendOf(
  { shell }: Model,
  tickets: readonly TicketFigure[],
  entered: ReadonlyMap<string, string> | undefined,
): Trend {
  const stageOf = (id: string | undefined): string =>
    (shell.byId.get(id ?? '')?.record as { readonly stage?: string } | undefined)?.stage ?? 'no stage';
  const causes = [
    ...shell.welds.flatMap((weld) =>
      weld.inspections
        .filter(({ result }) => result === 'reject')
        .map(({ reason }) => [weld.stage ?? stageOf(weld.joins.flat()[0]), `weld: ${reason ?? 'no reason recorded'}`] as const),
    ),
    ...shell.findings
      .filter(({ decision }) => decision === 'rework' || decision === 'repair')
      .map((one) => [one.stage ?? stageOf(one.of[0]), `${one.rules?.[0] ?? 'finding'}: ${one.decision}`] as const),
  ];
  const counts = new Map<string, number>();
  for (const [stage, cause] of causes) counts.set(`${stage}\n${cause}`, (counts.get(`${stage}\n${cause}`) ?? 0) + 1);
  const reworks = [...counts]
    .map(([key, count]): Rework => {
      const [stage = '', cause = ''] = key.split('\n');
      return { stage, cause, count };
    })
    .sort((a, b) => b.count - a.count);
  const newest = tickets.filter((one) => one.verified && (one.normalisedKg ?? 0) > 0).at(-1);
  const entry = entered && entryOf(shell, entered);
  return {
    shell: shell.id,
    reworks,
    welds: shell.welds.length,
    rejected: shell.welds.filter((weld) => weld.inspections.some(({ result }) => result === 'reject')).length,
    findings: shell.findings.length,
    ...(newest
      ? { residual: { ticket: newest.id, kg: newest.residualKg, share: newest.residualKg / (newest.normalisedKg as number) } }
      : {}),
    ...(entry ? { entry } : {}),
  };
}

function entryOf(shell: Model['shell'], entered: ReadonlyMap<string, string>): Trend['entry'] {
  const days = eventsOf(shell)
    .flatMap(({ record, event }) => {
      const date = entered.get(record.id);
      return date === undefined ? [] : [Math.max(0, daysBetween(dayOf(event), date))];
    })
    .sort((a, b) => a - b);
  if (days.length === 0) return undefined;
  return { median: days[Math.floor(days.length / 2)] as number, most: days.at(-1) as number, records: days.length };
}
