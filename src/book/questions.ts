import type { PlainKey } from '../words/index.js';

/** One place where an answer stands. */
interface Place {
  /** Words of the link; absent for the first place, which is named by the question. */
  readonly name?: PlainKey;
  /** Anchors; the first that the edition has is used. */
  readonly to: readonly string[];
}

interface Question {
  readonly ask: PlainKey;
  readonly first: Place;
  readonly besides?: readonly Place[];
}

const at = (...to: readonly string[]): Place => ({ to });
const named = (name: PlainKey, ...to: readonly string[]): Place => ({ name, to });

/** What readers ask, by the key of their words, what may hurt somebody first. Each answer is at most three steps from here. */
export const QUESTIONS: readonly Question[] = [
  { ask: 'find.emergency', first: at('c-emergency') },
  {
    ask: 'find.panel',
    first: at('h-by-id', 'c-index'),
    besides: [named('find.in.name', 'h-by-name'), named('find.in.cards', 'c-panels')],
  },
  { ask: 'find.behind', first: at('h-cards', 'c-panels') },
  {
    ask: 'find.run',
    first: at('h-by-id', 'c-index'),
    besides: [named('find.in.wires', 'c-service-dc', 'c-service-ac'), named('find.in.pipes', 'c-service-water', 'c-service-gas')],
  },
  { ask: 'find.feeds', first: at('h-by-id', 'h-fuses'), besides: [named('find.in.name', 'h-by-name')] },
  { ask: 'find.fuses', first: at('h-fuses') },
  { ask: 'find.live', first: at('h-live', 'c-emergency') },
  {
    ask: 'find.shutoff',
    first: at('h-valves', 'c-service-water', 'c-emergency'),
    besides: [
      named('find.in.hurry', 'c-emergency'),
      named('find.in.drains', 'h-drain', 'h-frost'),
      named('find.in.gas', 'c-service-gas'),
    ],
  },
  { ask: 'find.winter', first: at('h-drain', 'h-frost') },
  { ask: 'find.slide', first: at('h-slide') },
  { ask: 'find.colour', first: at('h-colours') },
  { ask: 'find.leak', first: at('h-leaks') },
  { ask: 'find.skin', first: at('h-skin-repair') },
  { ask: 'find.plug', first: at('h-power') },
  { ask: 'find.size', first: at('h-size') },
  { ask: 'find.drill', first: at('c-nodrill'), besides: [named('find.in.deep', 'h-screws')] },
  {
    ask: 'find.lift',
    first: at('h-lift', 'h-declared'),
    besides: [named('find.in.points', 'h-declared')],
  },
  { ask: 'find.hang', first: at('h-hang') },
  { ask: 'find.roof', first: at('h-roof') },
  {
    ask: 'find.weld',
    first: at('h-weld-here', 'h-materials'),
    besides: [named('find.in.parts', 'h-members')],
  },
  { ask: 'find.torque', first: at('h-torques', 'h-torque') },
  { ask: 'find.tested', first: at('c-tests') },
  {
    ask: 'find.axles',
    first: at('h-axles'),
    besides: [named('find.in.tires', 'h-ratings'), named('find.in.tickets', 'h-tickets')],
  },
  { ask: 'find.bay', first: at('h-bays') },
  { ask: 'find.repaired', first: at('h-repairs', 'h-told'), besides: [named('find.in.findings', 'h-records')] },
  { ask: 'find.spare', first: at('h-spare-ways') },
  { ask: 'find.earths', first: at('h-earths') },
  { ask: 'find.unused', first: at('h-unused') },
  { ask: 'find.changed', first: at('h-amendments'), besides: [named('find.in.revisions', 'h-revisions')] },
  { ask: 'find.call', first: at('h-who'), besides: [named('find.in.warranty', 'h-warranty')] },
  { ask: 'find.genuine', first: at('h-genuine') },
];

export interface Answered {
  readonly ask: PlainKey;
  readonly to: string;
  readonly besides: readonly { readonly name: PlainKey; readonly to: string }[];
}

/** The questions that an edition answers, each with the anchors that it has. */
export function answered(known: ReadonlySet<string>): readonly Answered[] {
  const find = (place: Place): string | undefined => place.to.find((one) => known.has(one));
  return QUESTIONS.flatMap(({ ask, first, besides = [] }) => {
    const to = find(first);
    if (to === undefined) return [];
    const more = besides.flatMap((place) => {
      const found = find(place);
      return found === undefined || found === to || place.name === undefined ? [] : [{ name: place.name, to: found }];
    });
    return [{ ask, to, besides: more }];
  });
}
