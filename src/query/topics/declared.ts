import type { Computed } from '../../compute/figures.js';
import { mass } from '../../quantity/format.js';
import { onRoof, roofLinesOf } from './on-roof.js';
import { facts, type Topic, type TopicRow } from './topic.js';

/** Ratings are a licensed engineer’s to declare: what is not declared is told so, and never inferred. */
function declared({ model: { shell, shop }, figures }: Computed, kinds: readonly string[]): readonly TopicRow[] {
  const asked = new Map(figures.weights.pointLoads.map((one) => [one.id, one] as const));
  const carried = (id: string): string => {
    const load = asked.get(id);
    return load === undefined ? 'not recorded' : mass(load.loadKg, shop.units);
  };
  return shell.declared
    .filter((one) => kinds.includes(one.declaredKind))
    .map((one) => ({
      id: one.id,
      what: [one.declaredKind, one.note].filter(Boolean).join(', '),
      facts: facts(
        ['rating', one.rating?.text ?? 'none declared'],
        ['asked to carry', carried(one.id)],
        ['unbolt first', one.declaredKind === 'lift' ? firstOff(one.unboltFirst) : undefined],
        ['declared by', one.by ?? 'nobody named'],
        ['document', one.document],
      ),
    }));
}

/** What is cut loose before a lift; without a record of it a safe lift is not proved. */
const firstOff = (steps: readonly string[] | undefined): string | readonly string[] =>
  steps && steps.length > 0 ? steps : 'not proved: what to unbolt first is not recorded';

/** Ratings of forces together, beside the whole mass that is lifted. */
function together({ model: { shell, shop }, figures }: Computed): readonly string[] {
  const lifts = shell.declared.filter(({ declaredKind }) => declaredKind === 'lift');
  const ratings = lifts.flatMap(({ rating }) => (rating?.dimension === 'force' ? [rating.value] : []));
  const load = figures.weights.pointLoads.find(({ id }) => lifts.some((one) => one.id === id));
  if (ratings.length < 2 || ratings.length < lifts.length || !load) return [];
  const sum = Math.floor(ratings.reduce((all, one) => all + one, 0) / 100 + 1e-9) / 10;
  return [
    `Lift: ${lifts.length} points together are declared for ${sum} kN and lift ${mass(load.ofKg, shop.units)}, ${load.lifts === 'not recorded' ? 'of what is not recorded' : `the ${load.lifts}`}. No point alone carries that.`,
  ];
}

const LIFTING: readonly (readonly [use: string, kinds: readonly string[], otherwise: string])[] = [
  ['lift', ['lift'], 'lift nowhere; a licensed engineer declares a point first'],
  ['jack', ['jack', 'stand'], 'jack only at the chassis maker’s places, by its manual'],
  ['tow', ['tow'], 'tow only by the chassis maker’s places and manual'],
  ['tie down', ['tie down'], 'tie down only at the chassis maker’s places, by its manual'],
];

export const lifting: Topic = {
  name: 'lifting',
  ask: 'find.lift',
  words: ['lift', 'lifting', 'jack', 'jacking', 'tow', 'towing', 'tie', 'down', 'lash', 'stands', 'recover'],
  answer(assessment) {
    const rows = LIFTING.flatMap(([use, kinds, otherwise]) => {
      const found = declared(assessment, kinds);
      return found.length > 0 ? found : [{ what: `${use}: not declared: ${otherwise}`, facts: [] }];
    });
    return { rows, notes: [...together(assessment), 'Use stands and slings at declared points only, on firm level ground.'] };
  },
};

export const hanging: Topic = {
  name: 'hanging',
  ask: 'find.hang',
  words: ['hang', 'hanging', 'hung', 'mount', 'mounting', 'mounted', 'bracket', 'backing', 'wall', 'walls', 'floor'],
  answer(assessment) {
    const found = declared(assessment, ['mounting', 'wall load', 'floor load']);
    return {
      rows: found,
      notes: [
        ...(found.length === 0 ? ['Not declared: hang nothing there until a licensed engineer declares a rating.'] : []),
        'Before you drive a screw: shellbook near, and the no-drill drawings.',
      ],
    };
  },
};

export const roof: Topic = {
  name: 'roof',
  ask: 'find.roof',
  words: ['roof', 'walk', 'walking', 'truss', 'trusses'],
  answer(assessment) {
    const { shell } = assessment.model;
    const found = declared(assessment, ['roof load']);
    const trusses = roofLinesOf(shell);
    const standing = onRoof(shell).map((one) => ({ id: one.id, what: one.name, facts: [] }));
    return {
      rows: [
        ...found,
        ...trusses.map(({ id, part, shape }) => ({
          id,
          what: part,
          facts: facts(['station', shape.kind === 'line' ? shape.from[0] : undefined, 'mm']),
        })),
        ...standing,
      ],
      notes: [...(found.length === 0 ? ['Not declared: keep off the roof, and mount nothing there.'] : [])],
    };
  },
};
