import type { Model } from '../../model/shell.js';
import type { Isolation, IsolationAction } from '../../query/lookup/types.js';
import { nameOf } from './name-of.js';
import type { Paint } from './paint.js';
import { table } from './tables.js';
import { bullets, paragraph } from './wrap.js';

export function isolateText(model: Model, isolation: Isolation, paint: Paint): string {
  const { id, actions, sources, notes } = isolation;
  const parts = [paint.strong(`Before work on ${id}${nameOf(id, model) ? ` (${nameOf(id, model)})` : ''}`)];
  if (actions.length > 0) {
    const rows = actions.map((one, i) => [
      String(i + 1),
      one.action,
      one.id,
      one.kind,
      one.circuit ?? nameOf(one.id, model),
      one.panels.length > 0 ? `through ${one.panels.join(' or ')}` : '',
    ]);
    parts.push(
      table(
        [{ head: '' }, { head: 'do' }, { head: 'id' }, { head: 'kind' }, { head: 'of' }, { head: 'reach', wrap: true }],
        rows,
        '  ',
      ),
    );
    const how = actions.flatMap((one) => (one.how === undefined ? [] : [`${one.id}: ${one.how}${linesOf(one)}.`]));
    if (how.length > 0) parts.push(bullets(how));
  }
  parts.push(paragraph(sources.length > 0 ? `Sources that feed it: ${sources.join(', ')}.` : 'No source on record feeds it.'));
  parts.push(paragraph(outcome(isolation, paint)));
  if (notes.length > 0) parts.push(bullets(notes));
  return parts.join('\n\n');
}

const linesOf = ({ lines = [] }: IsolationAction): string => (lines.length > 0 ? ` (${lines.join(', ')})` : '');

function outcome({ sources, sourcesLeft, verified }: Isolation, paint: Paint): string {
  if (sourcesLeft.length > 0) return paint.error(`NOT ISOLATED: ${sourcesLeft.join(', ')} would still feed it.`);
  if (!verified || sources.length === 0) return paint.warning('NOT VERIFIED: treat it as live and under pressure.');
  return paint.good('With these done, no recorded source is left. Prove it dead or empty at the place of work.');
}
