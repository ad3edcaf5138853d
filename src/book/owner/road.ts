import { liftingAnswer } from '../answers/loads.js';
import type { Book, ChapterMaker } from '../book.js';
import { travelFacts } from '../overall.js';
import { readerFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';
import { shutOffsOf } from './acts.js';

/** Driving, a breakdown, and what the owner must know. */
export const road: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { shell } = book.assessment.model;
  return {
    key: 'road',
    title: w('road.title'),
    template: 'owner-road',
    data: {
      sizes: travelSizes(book),
      before: beforeDriving(book),
      axles: axleTable(book),
      up: axlesUp(book),
      breakdown: [
        w('road.breakdown.1'),
        w('road.breakdown.2', { chassis: shell.chassis.description ?? w('word.notrecorded') }),
        w('road.breakdown.3'),
      ],
      lifting: liftingAnswer(book),
      know: shell.findings.map((one) => ({ id: one.id, text: one.description, reason: one.reason })),
    },
  };
};

/** What a driver must know, in words of the reader; the figures are those of the cover and of the label for the cab. */
export function travelSizes(book: Book) {
  const w = sentencesFor(book);
  const { gvwrKg, gcwrKg } = book.assessment.model.shell.chassis;
  return [
    ...travelFacts(book, readerFor(book)),
    ...(gvwrKg === undefined ? [] : [{ name: w('road.weight'), value: book.show.mass(gvwrKg) }]),
    ...(gcwrKg === undefined ? [] : [{ name: w('road.combined'), value: book.show.mass(gcwrKg) }]),
  ];
}

/** What to do before driving off, from what the coach has. */
function beforeDriving(book: Book): readonly string[] {
  const w = sentencesFor(book);
  const { shell } = book.assessment.model;
  const ids = (nodes: readonly { readonly id: string }[]): string => nodes.map(({ id }) => id).join(', ');
  const shore = shell.nodes.filter(({ role }) => role === 'shore inlet');
  const gas = shutOffsOf(book, 'gas');
  const waste = shutOffsOf(book, 'drain');
  return [
    ...shell.openings.filter(({ travelMm }) => travelMm !== undefined).map(({ id }) => w('road.slide', { id })),
    ...(shore.length > 0 ? [w('road.shore', { id: ids(shore) })] : []),
    ...(gas.length > 0 ? [w('road.gas', { id: ids(gas) })] : []),
    ...(waste.length > 0 ? [w('road.waste', { id: ids(waste) })] : []),
    ...shell.chassis.axles.filter(({ lift }) => lift).map(({ id }) => w('road.lift', { id })),
    w('road.steps'),
    w('road.inside'),
    w('road.tires'),
    w('road.walk'),
  ];
}

function axleTable(book: Book) {
  const w = sentencesFor(book);
  const ratings = new Map(book.assessment.figures.weights.ratings.map((one) => [one.axle, one]));
  return table(book.show, {
    rows: book.assessment.model.shell.chassis.axles,
    home: (axle) => axle.id,
    columns: (c) => [
      c.id(w('road.axle'), (axle) => axle.id),
      c.text(w('road.tire'), ({ tyres }) => (tyres ? `${tyres.count}${tyres.size ? ` × ${tyres.size}` : ''}` : undefined)),
      c.text(w('road.cold'), ({ tyres }) =>
        tyres?.inflationPa === undefined ? undefined : book.show.pressure(tyres.inflationPa),
      ),
      c.massDown(w('road.limit'), (axle) => ratings.get(axle.id)?.limitKg),
      c.text(w('road.limitedBy'), (axle) => {
        const by = ratings.get(axle.id)?.limitedBy;
        return by && w(`road.by.${by}`);
      }),
    ],
    empty: w('word.none'),
  });
}

/** The worst that lifting an axle does to another. */
function axlesUp(book: Book): readonly string[] {
  const w = sentencesFor(book);
  const worst = new Map<string, { readonly words: string; readonly overKg: number }>();
  for (const condition of book.assessment.figures.weights.conditions.filter(({ kind }) => kind === 'lifted')) {
    const up = condition.axles
      .filter(({ lifted }) => lifted)
      .map(({ axle }) => axle)
      .join(', ');
    for (const { axle, verdict, loadKg, limitKg } of condition.axles) {
      if (verdict !== 'over' || limitKg === undefined) continue;
      const before = worst.get(`${up} ${axle}`);
      if (before && before.overKg >= loadKg - limitKg) continue;
      const load = book.show.mass(loadKg);
      worst.set(`${up} ${axle}`, {
        words: w('road.axleUp.over', { up, axle, load, limit: book.show.massDown(limitKg) }),
        overKg: loadKg - limitKg,
      });
    }
  }
  return [...worst.values()].map(({ words }) => words);
}
