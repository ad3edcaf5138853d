import { shellExtent } from '../drawing/index.js';
import { overallSizes } from '../query/shown.js';
import type { Book } from './book.js';
import type { Show } from './show.js';

interface NamedFact {
  readonly name: string;
  readonly value: string;
}

/** Height, length and width over everything on record, each rounded up: what a driver must know. */
export function travelFacts(book: {
  readonly assessment: Book['assessment'];
  readonly show: Pick<Show, 'lengthUp'>;
}): readonly NamedFact[] {
  const whole = overallSizes(book.assessment.model);
  if (!whole) return [];
  const { lengthUp } = book.show;
  return [
    {
      name: 'Height over everything, above the ground',
      value: whole.heightAboveGroundMm === undefined ? 'not known: measure it' : lengthUp(whole.heightAboveGroundMm),
    },
    { name: 'Length over everything recorded', value: lengthUp(whole.lengthMm) },
    { name: 'Width over everything recorded, slide-outs in; mirrors besides', value: lengthUp(whole.widthMm) },
  ];
}

/** The same, what sets each, and the body by itself: the sizes that drawings give. */
export function overallFacts(book: Book): readonly NamedFact[] {
  const whole = overallSizes(book.assessment.model);
  if (!whole) return [];
  const { setBy } = whole;
  const by = [setBy.height, setBy.length.join(' to '), setBy.width.join(' to ')];
  const { low, high } = shellExtent(book.assessment.model);
  return [
    ...travelFacts(book).map(({ name, value }, i) => ({ name, value: `${value} (${by[i]})` })),
    {
      name: 'Body with skins and caps, length × width × height',
      value: [0, 1, 2].map((k) => book.show.length((high[k] as number) - (low[k] as number))).join(' × '),
    },
  ];
}
