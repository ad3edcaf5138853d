import type { AxleLoad } from '../../compute/weights/types.js';
import { number } from '../../quantity/format.js';
import type { Book, ChapterMaker } from '../book.js';
import { sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** How much one may load and where, with numbers that go together. */
export const ownerLoading: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { weights } = book.assessment.figures;
  return {
    key: 'loading',
    title: w('load.title'),
    template: 'owner-loading',
    data: {
      sum: reconciled(book),
      end: tightest(book),
      side: book.draw.loadingSide(book.assessment, { widthMm: book.availableSize('portrait').widthMm, heightMm: 118 }),
      bays: bayTable(book),
      basis: weights.basis === 'ticket' ? w('load.axles.basis') : w('load.axles.predicted'),
      axles: axleTable(book),
      blank: Array.from({ length: 3 }, (_, i) => i),
      problems: weights.problems,
    },
  };
};

/** Label figures in the store's own unit, one below the other, so that a reader can add them up. */
function reconciled(book: Book) {
  const w = sentencesFor(book);
  const { label, bays } = book.assessment.figures.weights;
  const { gvwrKg } = book.assessment.model.shell.chassis;
  if (!label || gvwrKg === undefined) return [];
  const inKg = book.assessment.model.shop.units === 'metric';
  const whole = inKg ? Math.floor(gvwrKg + 1e-9) : Math.floor(gvwrKg / KG_PER_LB + 1e-9);
  const [uvw, seats, water, cargo] = inKg
    ? [label.uvwKg, label.seatsKg, label.waterKg, label.cccKg]
    : [label.uvwLb, label.seatsLb, label.waterLb, label.cccLb];
  const labelled = (kg: number, lb: number): string =>
    inKg ? `${number(kg)} kg (${number(lb)} lb)` : `${number(lb)} lb (${number(kg)} kg)`;
  const baysKg = bays.reduce((sum, one) => sum + one.togetherKg, 0);
  const inBays = Math.min(cargo, Math.floor(inKg ? baysKg : baysKg / KG_PER_LB + 1e-9));
  const ownFloors = bays.every(({ limitedBy, togetherKg, allowanceKg }) => limitedBy === OWN_LIMIT && togetherKg >= allowanceKg);
  const rounding = whole - uvw - seats - water - cargo;
  const row = (name: string, value: number, sign = '') => ({ name, value: both(inKg, value, sign) });
  return [
    row(w('load.sum.gvwr'), whole),
    { name: w('load.sum.uvw'), value: `− ${labelled(label.uvwKg, label.uvwLb)}` },
    { name: w('load.sum.occc'), value: `= ${labelled(label.occcKg, label.occcLb)}` },
    { name: w('load.sum.seats', { count: label.seats }), value: `− ${labelled(label.seatsKg, label.seatsLb)}` },
    { name: w('load.sum.water'), value: `− ${labelled(label.waterKg, label.waterLb)}` },
    ...(rounding > 0 ? [row(w('load.sum.rounding'), rounding, '− ')] : []),
    { name: w('load.sum.cargo'), value: `= ${labelled(label.cccKg, label.cccLb)}`, total: true },
    ...(bays.length > 0
      ? [row(w(ownFloors ? 'load.sum.bays.floors' : 'load.sum.bays.axles'), inBays), row(w('load.sum.rest'), cargo - inBays)]
      : []),
  ];
}
const KG_PER_LB = 0.45359237;
const OWN_LIMIT = 'its stated limit';

/** The other unit in brackets, rounded down. */
const both = (inKg: boolean, value: number, sign: string): string =>
  inKg
    ? `${sign}${number(value)} kg (${number(Math.floor(value / KG_PER_LB))} lb)`
    : `${sign}${number(value)} lb (${number(Math.floor(value * KG_PER_LB))} kg)`;

interface Room {
  readonly axle: string;
  readonly end: 'left' | 'right';
  readonly kg: number;
  /** Expanded, k = 2. */
  readonly uncertaintyKg: number;
}

const roomOf = ({ axle, limitKg, leftKg, rightKg, lifted, ...load }: AxleLoad): readonly Room[] =>
  limitKg === undefined || leftKg === undefined || rightKg === undefined || lifted
    ? []
    : [
        { axle, end: 'left', kg: limitKg / 2 - leftKg, uncertaintyKg: load.leftUncertaintyKg ?? load.uncertaintyKg },
        { axle, end: 'right', kg: limitKg / 2 - rightKg, uncertaintyKg: load.rightUncertaintyKg ?? load.uncertaintyKg },
      ];

function tightest(book: Book): string | undefined {
  const w = sentencesFor(book);
  const rooms = book.assessment.figures.weights.conditions
    .filter(({ kind }) => kind === 'worst')
    .flatMap(({ axles }) => axles.flatMap(roomOf));
  const least = rooms.reduce<Room | undefined>((found, one) => (found && found.kg <= one.kg ? found : one), undefined);
  if (!least) return undefined;
  return w('load.end', {
    end: w(`load.${least.end}`),
    axle: least.axle,
    left: book.show.massDown(Math.max(0, least.kg)),
    unsure: book.show.mass(least.uncertaintyKg),
    sure: least.kg > least.uncertaintyKg ? '' : w('load.end.none'),
  });
}

function bayTable(book: Book) {
  const w = sentencesFor(book);
  const allowances = new Map(book.assessment.figures.weights.bays.map((one) => [one.id, one]));
  return table(book.show, {
    look: 'dense tight',
    rows: book.assessment.model.shell.bays,
    home: (bay) => bay.id,
    columns: (c) => [
      c.id(
        w('load.bay'),
        (bay) => bay.id,
        (bay) => bay.name,
      ),
      c.massDown(w('load.floor'), (bay) => bay.limitKg),
      c.massDown(w('load.alone'), (bay) => allowances.get(bay.id)?.allowanceKg),
      c.massDown(w('load.together'), (bay) => allowances.get(bay.id)?.togetherKg),
    ],
    empty: w('word.none'),
  });
}

/** Each axle as it travels empty, full, with full waste tanks, and at its heaviest. */
function axleTable(book: Book) {
  const w = sentencesFor(book);
  const { conditions } = book.assessment.figures.weights;
  const told = (['unladen', 'loaded', 'waste'] as const).flatMap((name) => {
    const found = conditions.find((one) => one.name === name);
    return found ? [{ found, words: w(`load.condition.${name}`), axles: found.axles }] : [];
  });
  const heaviest = book.assessment.model.shell.chassis.axles.flatMap(({ id }) => {
    const loads = conditions
      .filter(({ kind }) => kind === 'worst')
      .flatMap(({ axles }) => axles.filter(({ axle }) => axle === id));
    const most = loads.reduce<AxleLoad | undefined>(
      (found, one) => (found && found.loadKg >= one.loadKg ? found : one),
      undefined,
    );
    return most ? [most] : [];
  });
  const rows = [...told, ...(heaviest.length > 0 ? [{ words: w('load.condition.worst'), axles: heaviest }] : [])];
  return table(book.show, {
    look: 'dense tight',
    rows: rows.flatMap(({ words, axles }) => axles.map((axle) => ({ ...axle, words }))),
    group: (row) => row.words,
    columns: (c) => [
      c.refs(w('road.axle'), (row) => [row.axle]),
      c.mass(w('load.carries'), (row) => row.loadKg),
      c.massDown(w('road.limit'), (row) => row.limitKg),
      c.massDown(w('load.margin'), (row) => row.marginKg),
      c.mass(w('load.unsure'), (row) => row.uncertaintyKg),
      { ...c.verdict((row) => w(`load.verdict.${row.verdict}`)), head: w('load.verdict') },
    ],
    empty: w('load.axles.predicted'),
  });
}
