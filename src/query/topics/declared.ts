import type { Computed } from '../../compute/figures.js';
import { onRoof, roofLinesOf } from './on-roof.js';
import { facts, type Topic, type TopicRow } from './topic.js';

/** Ratings are a licensed engineer’s to declare: what is not declared is told so, and never inferred. */
function declared({ model: { shell } }: Computed, kinds: readonly string[]): readonly TopicRow[] {
  return shell.declared
    .filter((one) => kinds.includes(one.declaredKind))
    .map((one) => ({
      id: one.id,
      what: [one.declaredKind, one.note].filter(Boolean).join(', '),
      facts: facts(
        ['rating', one.rating?.text ?? 'none declared'],
        ['declared by', one.by ?? 'nobody named'],
        ['document', one.document],
      ),
    }));
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
    return { rows, notes: ['Use stands and slings at declared points only, on firm level ground.'] };
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
