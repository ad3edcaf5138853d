import { isPlaced } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import type { Isolation, IsolationAction, IsolationStep } from '../../query/lookup/types.js';
import { nameOf } from './name-of.js';
import type { TerminalPaint } from './paint.js';
import { bullets, paragraph } from './wrap.js';

const STEPS: Readonly<Record<IsolationStep, string>> = {
  load: 'Switch the loads off',
  source: 'Switch off and shut the sources',
  stored: 'Let out stored pressure and charge',
  proof: 'Prove it',
};

export function isolateText(model: Model, isolation: Isolation, paint: TerminalPaint): string {
  const { id, actions, sources, notes } = isolation;
  const parts = [paint.strong(`Before work on ${id}${nameOf(id, model) ? ` (${nameOf(id, model)})` : ''}`)];
  for (const step of ['load', 'source', 'stored', 'proof'] as const) {
    const lines = actions.flatMap((one, i) => (one.step === step ? [line(one, i + 1, model)] : []));
    if (lines.length > 0) parts.push([`${STEPS[step]}:`, ...lines].join('\n'));
  }
  parts.push(paragraph(sources.length > 0 ? `Sources that feed it: ${sources.join(', ')}.` : 'No source on record feeds it.'));
  parts.push(...outcome(isolation, paint));
  if (notes.length > 0) parts.push(bullets(notes));
  return parts.join('\n\n');
}

function line({ id, say, lines = [], place, panels }: IsolationAction, number: number, model: Model): string {
  const name = nameOf(id, model);
  const more = [
    name,
    lines.length > 0 ? `takes off ${lines.join(', ')}` : '',
    place ?? (isLost(id, model) ? 'place not recorded' : ''),
    panels.length > 0 ? `through ${panels.join(' or ')}` : '',
  ].filter((one) => one !== '');
  return paragraph(`${say}${more.length > 0 ? ` (${more.join('; ')})` : ''}`, `${String(number).padStart(3)}  `);
}

const isLost = (id: string, { shell }: Model): boolean => shell.nodes.some((node) => node.id === id && !isPlaced(node));

function outcome({ sourcesLeft, verified, unknown }: Isolation, paint: TerminalPaint): readonly string[] {
  const left = sourcesLeft.length > 0 ? [paint.error(`NOT ISOLATED: ${sourcesLeft.join(', ')} would still feed it.`)] : [];
  if (unknown.length > 0)
    return [
      ...left,
      `${paint.warning('NOT PROVED: treat it as live and under pressure. Record or measure:')}\n${bullets(unknown.map(({ id, what }) => `${id}: ${what}`))}`,
    ];
  if (left.length > 0) return left;
  if (!verified) return [paint.warning('NOT PROVED: treat it as live and under pressure.')];
  return [paint.good('With these done, no recorded source reaches it. Prove it dead or empty at the place of work.')];
}
