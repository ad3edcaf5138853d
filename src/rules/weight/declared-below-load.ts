import type { PointLoad } from '../../compute/weights/types.js';
import type { Model } from '../../model/shell.js';
import type { Declared } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';
import { kg } from './text.js';

export const declaredBelowLoad: Rule = {
  name: 'weight.declared-below-load',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A lifting, jacking or towing point whose declared rating is less than its share of the heaviest unladen mass, or a mounting, floor or roof rated for less than what is recorded on it. A note where the record does not say what hangs on a lifting point, or what comes off first.',
  why: 'Somebody will hang the coach on this point, or stand under it, because the book gives a number.',
  source:
    'statics from the center of gravity; even shares of equal springs; no factor for a jerk or a slanting sling: common practice, no source',
  examples: {
    given: `
# components.yaml
- {id: CMP-1, name: press, mass: 500 kg, at: [2 m, 0 m, 0.5 m], basis: weighed}
# declared.yaml
`,
    fails: `
- {id: MOUNT-1, kind: mounting, of: [CMP-1], rating: 4 kN, by: "L. Example, PE", date: 2026-05-01}
`,
    passes: `
- {id: MOUNT-1, kind: mounting, of: [CMP-1], rating: 12 kN, by: "L. Example, PE", date: 2026-05-01}
`,
  },
  check({ figures, model }) {
    const records = new Map(model.shell.declared.map((one) => [one.id, one]));
    const loads = figures.weights.pointLoads;
    const over = loads.flatMap((one) => below(one, records.get(one.id), model));
    const unsaid = model.shell.declared.filter(
      (one) => one.declaredKind === 'lift' && (!one.lifts || (one.unboltFirst ?? []).length === 0),
    );
    return [...over, ...(unsaid.length > 0 ? [silent(unsaid)] : [])];
  },
};

function below(one: PointLoad, record: Declared | undefined, model: Model): readonly RuleFinding[] {
  if (!record || one.ratingKg === undefined || one.loadKg <= one.ratingKg * (1 + 1e-9)) return [];
  const what = ['lift', 'jack', 'stand', 'tow'].includes(one.kind)
    ? `its share of ${kg(model, one.ofKg)} (${one.lifts === 'shell' ? 'the shell' : one.lifts === 'whole vehicle' ? 'the whole vehicle, unladen' : 'the whole vehicle, unladen: the record does not say that only the shell is lifted'})`
    : `what is recorded on it (${record.of.join(', ')})`;
  return [
    {
      message: `${one.id} is declared for ${kg(model, one.ratingKg)}, expected at least ${kg(model, one.loadKg)}, ${what}: do not use it; ask who declared it, or record what is lifted with \`lifts: shell\` and \`unbolt_first\``,
      ids: [one.id],
      place: record.source.place('rating'),
    },
  ];
}

const silent = (unsaid: readonly Declared[]): RuleFinding => ({
  severity: 'note',
  message: `${unsaid.map(({ id }) => id).join(', ')}: the record does not say what hangs on it or what to unbolt first, so a safe lift is not proved: add \`lifts: shell\` or \`lifts: whole vehicle\`, and \`unbolt_first: [U-bolts to the chassis, …]\``,
  ids: unsaid.map(({ id }) => id),
  place: (unsaid[0] as Declared).source.place('kind'),
});
