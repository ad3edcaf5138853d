import type { Computed } from '../../compute/figures.js';
import { facts, type Topic, type TopicRow } from './topic.js';

/** Ratings are a licensed engineer’s to declare: what is not declared is told so, and never inferred. */
function declared({ model: { shell } }: Computed, named: RegExp): readonly TopicRow[] {
  return shell.declared
    .filter((one) => named.test(one.declaredKind))
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

const LIFTING: readonly (readonly [use: string, named: RegExp, otherwise: string])[] = [
  ['lift', /\blift/iu, 'lift nowhere; a licensed engineer declares a point first'],
  ['jack', /\bjack|\bstand/iu, 'jack only at the chassis maker’s places, by its manual'],
  ['tow', /\btow|recover/iu, 'tow only by the chassis maker’s places and manual'],
  ['tie down', /\btie|\blash|\banchor/iu, 'tie down only at the chassis maker’s places, by its manual'],
];

export const lifting: Topic = {
  name: 'lifting',
  question: 'Where may it be lifted, jacked, towed and tied down?',
  words: ['lift', 'lifting', 'jack', 'jacking', 'tow', 'towing', 'tie', 'down', 'lash', 'stands', 'recover'],
  answer(assessment) {
    const rows = LIFTING.flatMap(([use, named, otherwise]) => {
      const found = declared(assessment, named);
      return found.length > 0 ? found : [{ what: `${use}: not declared: ${otherwise}`, facts: [] }];
    });
    return { rows, notes: ['Stands and slings on declared points only, on firm level ground.'] };
  },
};

/** Parts that something may be screwed to, by what the shop calls them. No rating. */
export const BACKING = /backing|blocking|mounting plate|hanger/iu;

export const hanging: Topic = {
  name: 'hanging',
  question: 'What may be hung on walls, roof and floor?',
  words: ['hang', 'hanging', 'hung', 'mount', 'mounting', 'mounted', 'bracket', 'backing', 'wall', 'walls', 'floor'],
  answer(assessment) {
    const { shell } = assessment.model;
    const found = declared(assessment, /\bmount|\bhang|\brack|\bcabinet|\bfloor|\bwall/iu);
    const plates = shell.members
      .filter((member) => BACKING.test(member.part))
      .map((member) => ({ id: member.id, what: member.part, facts: facts(['alloy', member.alloy]) }));
    return {
      rows: [...found, ...plates],
      notes: [
        ...(found.length === 0 ? ['Not declared: hang nothing there until a licensed engineer declares a rating.'] : []),
        'Before any screw: shellbook near, and the no-drill drawings.',
      ],
    };
  },
};

/** What carries the roof, and what stands on it, by their names. */
export const TRUSS = /truss.*(?:top|upper)|roof (?:bow|beam|truss)|rafter/iu;
export const ON_ROOF = /solar|roof unit|air conditioner|vent|hatch/iu;

export const roof: Topic = {
  name: 'roof',
  question: 'May I walk on the roof, or mount something there?',
  words: ['roof', 'walk', 'walking', 'truss', 'trusses'],
  answer(assessment) {
    const { shell } = assessment.model;
    const found = declared(assessment, /\broof|\bwalk/iu);
    const trusses = shell.members.filter((member) => TRUSS.test(member.part));
    const onRoof = [
      ...shell.components.filter((one) => ON_ROOF.test(one.name)).map((one) => ({ id: one.id, what: one.name, facts: [] })),
      ...shell.nodes
        .filter((one) => /\broof\b/iu.test(one.name ?? '') && one.nodeKind === 'source')
        .map((one) => ({
          id: one.id,
          what: one.name ?? '',
          facts: [],
        })),
    ];
    return {
      rows: [
        ...found,
        ...trusses.map(({ id, part, shape }) => ({
          id,
          what: part,
          facts: facts(['station', shape.kind === 'line' ? shape.from[0] : undefined, 'mm']),
        })),
        ...onRoof,
      ],
      notes: [...(found.length === 0 ? ['Not declared: keep off the roof, and mount nothing there.'] : [])],
    };
  },
};
