/** One place where an answer stands. */
interface Place {
  /** Words of the link; absent for the first place, which is named by the question. */
  readonly name?: string;
  /** Anchors; the first that the edition has is used. */
  readonly to: readonly string[];
}

interface Question {
  readonly ask: string;
  readonly first: Place;
  readonly besides?: readonly Place[];
}

const at = (...to: readonly string[]): Place => ({ to });
const named = (name: string, ...to: readonly string[]): Place => ({ name, to });

/** What readers ask, by the words that they use, what may hurt somebody first. Each answer is at most three steps from here. */
export const QUESTIONS: readonly Question[] = [
  { ask: 'In an emergency: gas, battery, mains, where not to cut?', first: at('c-emergency') },
  {
    ask: 'Which panel do I open for a splice, valve or fuse?',
    first: at('h-by-id', 'c-index'),
    besides: [named('by name', 'h-by-name'), named('panel cards', 'c-panels')],
  },
  { ask: 'What is behind this panel?', first: at('h-cards', 'c-panels') },
  {
    ask: 'Where does this wire or pipe go?',
    first: at('h-by-id', 'c-index'),
    besides: [named('wires', 'c-service-dc', 'c-service-ac'), named('pipes', 'c-service-water', 'c-service-gas')],
  },
  { ask: 'What fuse or breaker feeds it?', first: at('h-by-id', 'h-fuses'), besides: [named('by name', 'h-by-name')] },
  { ask: 'Where are all fuses, in-line ones included?', first: at('h-fuses') },
  { ask: 'What is still live when I open the main?', first: at('h-live', 'c-emergency') },
  {
    ask: 'Where is the shut-off, valve or drain?',
    first: at('h-valves', 'c-service-water', 'c-emergency'),
    besides: [named('in a hurry', 'c-emergency'), named('drains', 'h-drain', 'h-frost'), named('gas', 'c-service-gas')],
  },
  { ask: 'How do I winterize it?', first: at('h-drain', 'h-frost') },
  { ask: 'The slide-out sticks: how is it moved by hand?', first: at('h-slide') },
  { ask: 'What is this wire without a tag?', first: at('h-colours') },
  { ask: 'A stain or a leak: where does it come from?', first: at('h-leaks') },
  { ask: 'How is a cracked skin replaced?', first: at('h-skin-repair') },
  { ask: 'May I plug this in here?', first: at('h-power') },
  { ask: 'How high, long and wide is it?', first: at('h-size') },
  { ask: 'Where may I drill, and how deep?', first: at('c-nodrill'), besides: [named('how deep', 'h-screws')] },
  {
    ask: 'Where may I jack, lift, tie down or tow?',
    first: at('h-lift', 'h-declared'),
    besides: [named('points', 'h-declared')],
  },
  { ask: 'What may I hang on a wall, roof or floor?', first: at('h-hang') },
  { ask: 'May I walk on the roof?', first: at('h-roof') },
  {
    ask: 'What alloy and filler is this, and may I weld here?',
    first: at('h-weld-here', 'h-materials'),
    besides: [named('parts', 'h-members')],
  },
  { ask: 'What is the torque?', first: at('h-torques', 'h-torque') },
  { ask: 'What pressure or voltage was it tested to?', first: at('c-tests') },
  {
    ask: 'What does each axle carry, and what may it?',
    first: at('h-axles'),
    besides: [named('tyre pressure', 'h-ratings'), named('tickets', 'h-tickets')],
  },
  { ask: 'How much may I put in a bay?', first: at('h-bays') },
  { ask: 'Was this repaired before?', first: at('h-repairs', 'h-told'), besides: [named('findings', 'h-records')] },
  { ask: 'Is there a spare conduit, a pull cord or a spare breaker space?', first: at('h-spare-ways') },
  { ask: 'Where are the earths and bonding studs?', first: at('h-earths') },
  { ask: 'Which wires are spare or abandoned?', first: at('h-unused') },
  { ask: 'What was changed after delivery?', first: at('h-amendments'), besides: [named('revisions', 'h-revisions')] },
  { ask: 'Whom do I call, and what warranty is there?', first: at('h-who'), besides: [named('warranty', 'h-warranty')] },
  { ask: 'Is this the right book, complete and genuine?', first: at('h-genuine') },
];

export interface Answered {
  readonly ask: string;
  readonly to: string;
  readonly besides: readonly { readonly name: string; readonly to: string }[];
}

/** The questions that an edition answers, each with the anchors that it has. */
export function answered(known: ReadonlySet<string>): readonly Answered[] {
  const find = (place: Place): string | undefined => place.to.find((one) => known.has(one));
  return QUESTIONS.flatMap(({ ask, first, besides = [] }) => {
    const to = find(first);
    if (to === undefined) return [];
    const more = besides.flatMap((place) => {
      const found = find(place);
      return found === undefined || found === to ? [] : [{ name: place.name ?? '', to: found }];
    });
    return [{ ask, to, besides: more }];
  });
}
