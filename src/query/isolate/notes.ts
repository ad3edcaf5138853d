import type { NodeRole } from '../../records/index.js';
import type { Solution } from './graph/solve.js';
import type { Surroundings } from './surroundings.js';
import type { Targets } from './targets.js';

/** Nothing on record switches a battery or the light off. */
const ALWAYS_LIVE: readonly NodeRole[] = ['battery', 'solar panel'];

export function notesOf(
  targets: Targets,
  found: { readonly solution: Solution; readonly sourcesLeft: readonly string[]; readonly around: Surroundings },
): readonly string[] {
  const { solution, sourcesLeft, around } = found;
  const said: string[] = targets.note ? [targets.note] : [];
  if (solution.sources.length === 0) said.push('No source is recorded on its lines: treat it as live and under pressure.');
  const own = sourcesLeft.filter((id) => targets.nodes.includes(id));
  if (own.length > 0)
    said.push(
      `${own.join(', ')} ${own.length > 1 ? 'are sources themselves and cannot be cut off from themselves' : 'is a source itself and cannot be cut off from itself'}.`,
    );
  const left = sourcesLeft.filter((id) => !own.includes(id));
  if (left.length > 0) said.push(`Nothing on record can be switched off or shut between it and ${left.join(', ')}.`);
  const live = solution.sources.filter((id) => {
    const role = around.nodes.get(id)?.role;
    return role !== undefined && ALWAYS_LIVE.includes(role);
  });
  if (live.length > 0)
    said.push(
      `${live.join(', ')}: never dead. The terminals, and what lies between them and the first place switched off, stay live; light keeps solar panels live.`,
    );
  if (solution.links.length > 0)
    said.push(
      'The fewest actions that cut off every source; if several are as few, those without a panel to take off. What else goes dead does not count: one main may replace several fuses.',
    );
  said.push(
    'From the records only: lock off, then measure at the place of work before touching it. Order of steps: 29 CFR 1910.147(d).',
  );
  return said;
}
