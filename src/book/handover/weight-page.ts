import { leftOfGvwr, type Station, stations } from '../../query/release/index.js';
import type { Book, Chapter } from '../book.js';
import { table } from '../table.js';

/** The weight that is left, by axle end and by place. */
export function weightPage(book: Book): Chapter {
  const { model, figures } = book.assessment;
  const { weights } = figures;
  const whole = leftOfGvwr(weights);
  return {
    key: 'handover-weight',
    title: 'Weight that is left',
    template: 'handover-weight',
    data: {
      whole: whole === undefined ? 'not verified' : book.show.massDown(Math.max(0, whole)),
      over: whole !== undefined && whole < 0,
      used: usedUp(book).join(', '),
      reserve: book.show.percent(weights.reserve, 0),
      budget: table(book.show, {
        rows: weights.budget,
        columns: (c) => [
          c.text('Axle', (one) => one.axle),
          c.massDown('May be added', (one) => one.leftKg),
          c.massDown('at its left end', (one) => one.leftEndKg),
          c.massDown('at its right end', (one) => one.rightEndKg),
          c.mass('Kept in reserve', (one) => one.reserveKg),
          c.mass('Uncertainty, taken off', (one) => one.uncertaintyKg),
        ],
        empty: 'No axle has both a load and a rating: not verified.',
      }),
      chart:
        weights.influence.length > 0
          ? book.draw.influenceChart(book.assessment, { widthMm: book.availableSize('portrait').widthMm, heightMm: 58 })
          : undefined,
      places: table(book.show, {
        look: 'dense',
        rows: thinned(stations(weights, model.shell.chassis.axles)),
        columns: (c) => [
          c.text('Place, aft of the front axle', ({ xMm }) => placeOf(book, xMm)),
          c.massDown('One thing there, at most', ({ mostKg }) => mostKg),
          c.text('Limited by', ({ limitedBy }) => limitedBy),
        ],
        empty: 'Not computed: no axle has both a load and a rating.',
      }),
    },
  };
}

/** Axles and ends that have nothing left. */
const usedUp = (book: Book): readonly string[] =>
  book.assessment.figures.weights.budget.flatMap(({ axle, leftKg, leftEndKg = 0, rightEndKg = 0 }) => {
    if (leftKg < 0) return [`axle ${axle}`];
    return [...(leftEndKg < 0 ? [`the left end of ${axle}`] : []), ...(rightEndKg < 0 ? [`the right end of ${axle}`] : [])];
  });

const placeOf = (book: Book, xMm: number): string => (xMm < 0 ? `${book.show.length(-xMm)} ahead of it` : book.show.length(xMm));

/** About so many rows are read; the chart shows what lies between. */
const ROWS = 9;

function thinned(all: readonly Station[]): readonly Station[] {
  const step = Math.max(1, Math.ceil(all.length / ROWS));
  return all.filter((_, i) => i % step === 0 || i === all.length - 1);
}
