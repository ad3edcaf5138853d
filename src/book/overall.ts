import { shellExtent } from '../drawing/index.js';
import { overallSizes } from '../query/shown.js';
import { type Reader, say } from '../words/index.js';
import type { Book } from './book.js';
import { readerFor } from './sentences.js';
import type { Show } from './show.js';

export interface NamedFact {
  readonly name: string;
  readonly value: string;
}

/** Height, length and width over everything on record, each rounded up: what a driver must know, in the reader's words. */
export function travelFacts(
  book: { readonly assessment: Book['assessment']; readonly show: Pick<Show, 'lengthUp'> },
  reader: Reader,
): readonly NamedFact[] {
  const whole = overallSizes(book.assessment.model);
  if (!whole) return [];
  const { lengthUp } = book.show;
  return [
    {
      name: say(reader, 'road.height'),
      value: whole.heightAboveGroundMm === undefined ? say(reader, 'road.height.unknown') : lengthUp(whole.heightAboveGroundMm),
    },
    { name: say(reader, 'road.length'), value: lengthUp(whole.lengthMm) },
    { name: say(reader, 'road.width'), value: lengthUp(whole.widthMm) },
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
    ...travelFacts(book, readerFor(book)).map(({ name, value }, i) => ({ name, value: `${value} (${by[i]})` })),
    {
      name: 'Body with skins and caps, length × width × height',
      value: [0, 1, 2].map((k) => book.show.length((high[k] as number) - (low[k] as number))).join(' × '),
    },
  ];
}
