import { surfaces } from '../../compute/access/surfaces.js';
import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Model } from '../../model/shell.js';

/** The newest rain test that names one of the records, and what its values say. */
export function lastRainTest(
  model: Model,
  ids: readonly string[],
): { readonly id: string; readonly date?: string; readonly verdict: 'passed' | 'failed' | 'not verified' } | undefined {
  const [newest] = model.shell.tests
    .filter((one) => one.testKind === 'rain' && ids.some((id) => one.of.includes(id)))
    .sort((a, b) => (b.date ?? '').localeCompare(a.date ?? ''));
  if (!newest) return undefined;
  return { id: newest.id, ...(newest.date ? { date: newest.date } : {}), verdict: judgeTest(newest, model).verdict };
}

const WET = ['water', 'drain', 'hydraulic', 'refrigerant'];

/** Wet runs that lie above a ceiling panel: a stain below them may be theirs. `ceiling`: false where no ceiling panel is recorded. */
export function wetAboveCeiling(model: Model): { readonly ceiling: boolean; readonly runs: readonly string[] } {
  const sides = surfaces(model);
  const ceilings = model.shell.panels.filter(({ id }) => sides.get(id)?.side === 'ceiling');
  const low = Math.min(...ceilings.flatMap(({ outline }) => outline.map(([, , z]) => z)));
  const runs = model.shell.runs.filter(({ medium, path }) => WET.includes(medium) && path.some(([, , z]) => z >= low));
  return { ceiling: ceilings.length > 0, runs: runs.map(({ id }) => id) };
}
