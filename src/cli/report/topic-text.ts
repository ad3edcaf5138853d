import { isClear } from '../../compute/access/sight.js';
import type { UnitSystem } from '../../quantity/format.js';
import { factHead } from '../../query/lookup/fact-head.js';
import type { Match, TopicAnswer, TopicRow } from '../../query/lookup/types.js';
import { factText } from './facts.js';
import type { TerminalPaint } from './paint.js';
import { textTable } from './tables.js';
import { bullets } from './wrap.js';

/** The answer to a question about the whole shell: what, what is known of it, how to get at it. */
export function topicText(
  answer: TopicAnswer,
  matches: ReadonlyMap<string, Match>,
  pagesOf: (id: string) => readonly number[],
  units: UnitSystem,
  paint: TerminalPaint,
): string {
  const parts = [paint.strong(answer.question)];
  if (answer.rows.length > 0) {
    const rows = answer.rows.map((row) => [
      row.id ?? '',
      whatOf(row, units),
      reachOf(row.id === undefined ? undefined : matches.get(row.id)),
      row.id === undefined ? '' : pagesOf(row.id).join(', '),
    ]);
    const hasPages = rows.some((row) => row[3] !== '');
    const heads = [{ head: 'id' }, { head: 'what', wrap: true }, { head: 'open' }, ...(hasPages ? [{ head: 'page' }] : [])];
    parts.push(textTable(heads, rows));
  }
  if (answer.notes.length > 0) parts.push(bullets(answer.notes));
  return parts.join('\n\n');
}

const whatOf = ({ what, facts }: TopicRow, units: UnitSystem): string =>
  [what, ...facts.map((fact) => `${factHead(fact)} ${factText(fact, units)}`)].join('; ');

function reachOf(match: Match | undefined): string {
  if (!match) return '';
  if (match.open) return 'exposed';
  const best = match.panels.find(isClear);
  if (best) return `${best.panel} ${best.reach}`;
  return match.kind === 'node' ? 'no panel' : '';
}
