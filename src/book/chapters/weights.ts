import type { AxleLoad } from '../../compute/weights/types.js';
import { number } from '../../quantity/format.js';
import { spelt } from '../../words/index.js';
import { type Book, type ChapterMaker, stageName } from '../book.js';
import { readerFor } from '../sentences.js';
import { table } from '../table.js';
import { placeColumn } from '../where.js';
import { basisWords, hardest } from './glance.js';

/** Ratings, tickets with their conditions, axle loads by condition, cargo by bay, what makes the uncertainty, the label's figures. */
export const weightsChapter: ChapterMaker = (book) => ({
  key: 'weights',
  title: 'Weights',
  template: 'weights',
  data: weightData(book),
});

function weightData(book: Book) {
  const { weights: figures } = book.assessment.figures;
  const half = { widthMm: book.availableSize('portrait').widthMm, heightMm: 105 };
  const worst = hardest(figures.conditions);
  return {
    basis: basisWords(book),
    label: labelFacts(book),
    three: threeNumbers(book),
    ratings: ratingTable(book),
    chart: figures.conditions.length > 0 ? book.draw.axleChart(book.assessment, { ...half, heightMm: 150 }) : undefined,
    conditions: conditionTable(book),
    tickets: ticketTable(book),
    ticketAxles: ticketAxleTable(book),
    bays: bayTable(book),
    bayPlan: book.assessment.model.shell.bays.length > 0 ? book.draw.bayPlan(book.assessment, half) : undefined,
    growth: figures.growth.length > 0 ? book.draw.growthChart(book.assessment, half) : undefined,
    forecast: forecastText(book),
    budget: budgetTable(book),
    budgetReserve: book.show.percent(figures.reserve, 0),
    influence: figures.influence.length > 0 ? book.draw.influenceChart(book.assessment, { ...half, heightMm: 92 }) : undefined,
    worst: worst?.name,
    contributions: contributionTable(book),
    cgHeight: figures.cgHeight.length > 0 ? cgHeightTable(book) : undefined,
    road: figures.roadLimits.length > 0 ? roadTable(book) : undefined,
    roadCondition: figures.roadLimitsCondition,
    seats: seatTable(book),
    assumptions: figures.assumptions,
    problems: figures.problems,
  };
}

const RULING = { gawr: 'axle rating (GAWR)', tyres: 'tires', wheels: 'wheels', suspension: 'suspension' } as const;

function ratingTable(book: Book) {
  const { axles } = book.assessment.model.shell.chassis;
  const ratings = new Map(book.assessment.figures.weights.ratings.map((one) => [one.axle, one]));
  return table(book.show, {
    rows: axles,
    home: (axle) => axle.id,
    columns: (c) => [
      c.id('Axle', (axle) => axle.id),
      c.station('From datum', (axle) => axle.xMm),
      c.massDown('GAWR', (axle) => axle.gawrKg),
      c.massDown('Tires, all', (axle) => ratings.get(axle.id)?.tyresKg),
      c.massDown('Wheels, all', (axle) => ratings.get(axle.id)?.wheelsKg),
      c.massDown('Suspension', (axle) => axle.suspensionKg),
      c.massDown('Limit', (axle) => ratings.get(axle.id)?.limitKg),
      c.text('Limited by', (axle) => {
        const by = ratings.get(axle.id)?.limitedBy;
        return by && spelt(readerFor(book), RULING[by]);
      }),
      c.pressure('Tire pressure', (axle) => axle.tyres?.inflationPa),
    ],
    empty: 'No axles are recorded.',
  });
}

function conditionTable(book: Book) {
  return table(book.show, {
    look: 'dense tight',
    rows: book.assessment.figures.weights.conditions.flatMap((condition) =>
      condition.axles.map((axle) => ({ ...axle, condition: `${condition.name}: ${book.show.mass(condition.totalKg)} in all` })),
    ),
    group: (row) => row.condition,
    columns: (c) => [
      c.refs(
        'Axle',
        (row) => [row.axle],
        (row) => (row.lifted ? 'lifted' : undefined),
      ),
      c.mass('Load', (row) => row.loadKg),
      c.mass('Left', (row) => row.leftKg),
      c.mass('Right', (row) => row.rightKg),
      c.massDown('Limit', (row) => row.limitKg),
      c.massDown('Margin', (row) => row.marginKg),
      c.mass('Uncertainty', (row) => row.uncertaintyKg),
      c.verdict((row) => row.verdict),
    ],
    empty: 'No loading condition could be computed: not verified.',
  });
}

function ticketTable(book: Book) {
  const { shell } = book.assessment.model;
  const figures = new Map(book.assessment.figures.weights.tickets.map((one) => [one.id, one]));
  const levels = (id: string): string => {
    const condition = shell.tickets.find((one) => one.id === id)?.condition;
    if (!condition) return 'condition not recorded';
    const tanks = Object.entries(condition.levels).map(([tank, level]) => `${tank} ${book.show.percent(level, 0)}`);
    const people = condition.occupants.length > 0 ? [`${condition.occupants.length} aboard`] : ['nobody aboard'];
    const things = condition.aboard.map((one) => `${one.name} ${book.show.mass(one.massKg)}`);
    const missing = condition.missing.length > 0 ? [`not yet fitted: ${condition.missing.join(', ')}`] : [];
    return [...tanks, ...people, ...things, ...missing].join(', ');
  };
  const residual = (id: string): string | undefined => {
    const figure = figures.get(id);
    if (!figure) return undefined;
    const where =
      figure.residualXMm === undefined
        ? ''
        : `, ${spelt(readerFor(book), 'centered')} ${book.show.length(figure.residualXMm)} aft`;
    return `${book.show.mass(figure.residualKg)}${where}`;
  };
  return table(book.show, {
    rows: shell.tickets,
    home: (ticket) => ticket.id,
    columns: (c) => [
      c.id(
        'Ticket',
        (ticket) => ticket.id,
        (ticket) => [ticket.ticket && `no. ${ticket.ticket}`, book.show.date(ticket.date)].filter(Boolean).join(', '),
      ),
      c.text('Stage', (ticket) => stageName(book, ticket.stage)),
      c.text('Scale', (ticket) => ticket.scale),
      c.text(
        'Condition',
        (ticket) => levels(ticket.id),
        (ticket) => ticket.note,
      ),
      c.mass('Total', (ticket) => figures.get(ticket.id)?.totalKg),
      c.text('Unexplained', (ticket) => residual(ticket.id)),
      c.text('Verified', (ticket) =>
        figures.get(ticket.id)?.verified
          ? 'yes'
          : `not verified${figures.get(ticket.id)?.reason ? `: ${figures.get(ticket.id)?.reason}` : ''}`,
      ),
    ],
    empty: 'No scale tickets are recorded: nothing is verified by weighing.',
  });
}

function ticketAxleTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.figures.weights.tickets.flatMap((ticket) =>
      Object.keys(ticket.asWeighed).map((axle) => ({
        ticket: `${ticket.id}, ${book.show.date(ticket.date)}`,
        axle,
        weighed: ticket.asWeighed[axle],
        normal: ticket.normalised[axle],
        predicted: ticket.predicted[axle],
        residual: ticket.residual[axle],
      })),
    ),
    group: (row) => row.ticket,
    columns: (c) => [
      c.refs('Axle', (row) => [row.axle]),
      c.mass('As weighed', (row) => row.weighed),
      c.mass('Brought to unladen', (row) => row.normal),
      c.mass('Predicted', (row) => row.predicted),
      c.mass('Unexplained', (row) => row.residual),
    ],
    empty: 'No axle was weighed.',
  });
}

function bayTable(book: Book) {
  const allowances = new Map(book.assessment.figures.weights.bays.map((one) => [one.id, one]));
  return table(book.show, {
    rows: book.assessment.model.shell.bays,
    home: (bay) => bay.id,
    columns: (c) => [
      c.id(
        'Bay',
        (bay) => bay.id,
        (bay) => bay.name,
      ),
      placeColumn(book, 'Where', (bay) => bay.at),
      c.massDown('Stated limit', (bay) => bay.limitKg),
      c.massDown('Most, others empty', (bay) => allowances.get(bay.id)?.allowanceKg),
      c.massDown('Most, all together', (bay) => allowances.get(bay.id)?.togetherKg),
      c.text('Limited by', (bay) => allowances.get(bay.id)?.limitedBy),
    ],
    empty: 'No bays are recorded.',
  });
}

/** What the next trade may add over each axle. */
function budgetTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.figures.weights.budget,
    columns: (c) => [
      c.refs('Axle', (one) => [one.axle]),
      c.massDown('May be added', (one) => one.leftKg),
      c.massDown('Left end', (one) => one.leftEndKg),
      c.massDown('Right end', (one) => one.rightEndKg),
      c.mass('Reserve', (one) => one.reserveKg),
      c.mass('Uncertainty', (one) => one.uncertaintyKg),
      c.text('Least left with', (one) => one.condition),
    ],
    empty: 'No axle has both a load and a rating: not verified.',
  });
}

function forecastText(book: Book): string | undefined {
  const { forecast } = book.assessment.figures.weights;
  if (!forecast) return undefined;
  const { mass } = book.show;
  const allowed = forecast.allowanceKg > 0 ? `, with ${mass(forecast.allowanceKg)} allowed for what no scale has seen` : '';
  return `Forecast for the finished vehicle, unladen: ${mass(forecast.totalKg)}, between ${mass(forecast.lowKg)} and ${mass(forecast.highKg)} (k = 2)${allowed}.`;
}

function cgHeightTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.figures.weights.cgHeight,
    columns: (c) => [
      c.refs('Raised', (one) => [one.ticket]),
      c.refs('Level', (one) => [one.level]),
      c.length('Over the ground', (one) => one.heightMm),
      c.length('Uncertainty', (one) => one.uncertaintyMm),
      c.text('Not given because', (one) => one.refused),
    ],
    empty: 'Not weighed for.',
  });
}

const ROAD = {
  single: 'single axle',
  tandem: 'two axles together',
  bridge: 'axles by their spread',
  gross: 'whole vehicle',
} as const;

function roadTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.figures.weights.roadLimits,
    columns: (c) => [
      c.text('Limit on', (one) => ROAD[one.kind]),
      c.refs('Axles', (one) => one.axles),
      c.length('Spread', (one) => one.spreadMm),
      c.mass('Load', (one) => one.loadKg),
      c.massDown('Limit', (one) => one.limitKg),
      c.massDown('Margin', (one) => one.marginKg),
    ],
    empty: 'Not computed.',
  });
}

function contributionTable(book: Book) {
  return table(book.show, {
    rows: hardest(book.assessment.figures.weights.conditions)?.contributions ?? [],
    columns: (c) => [
      c.text('What makes it uncertain', (one) => one.name),
      c.mass('Share on the axle with least margin', (one) => one.kg),
    ],
    empty: 'Not computed.',
  });
}

function seatTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.model.shell.seats,
    home: (seat) => seat.id,
    columns: (c) => [
      c.id('Seat', (seat) => seat.id),
      c.text('Belted', (seat) => (seat.belted ? 'yes' : 'no')),
      placeColumn(book, 'Where', (seat) => seat.at),
    ],
    empty: 'No seats are recorded.',
  });
}

/** Figures of the label, from the one place that computes them; the store's own unit first. */
function labelFacts(book: Book) {
  const { label, uvwKg, fullWaterKg, trailerKg } = book.assessment.figures.weights;
  const { show } = book;
  const belted = book.assessment.model.shell.seats.filter((seat) => seat.belted).length;
  const unknown = 'not verified';
  return [
    {
      name: 'Unloaded vehicle weight',
      value: label ? massPair(book, label.uvwKg, label.uvwLb) : uvwKg === undefined ? unknown : show.mass(uvwKg),
    },
    { name: 'Occupants and cargo together, at most', value: label ? massPair(book, label.occcKg, label.occcLb) : unknown },
    {
      name: 'Seats with belts',
      value: label ? `${belted}, together ${massPair(book, label.seatsKg, label.seatsLb)}` : String(belted),
    },
    {
      name: 'Cargo with every belted seat taken and water full',
      value: label ? massPair(book, label.cccKg, label.cccLb) : unknown,
    },
    {
      name: 'Full load of fresh water weighs',
      value: label ? massPair(book, label.waterKg, label.waterLb) : show.mass(fullWaterKg),
    },
    ...(trailerKg === undefined
      ? []
      : [
          {
            name: 'Trailer, by the combined rating (GCWR) alone',
            value: `${show.massDown(Math.max(0, trailerKg))}; hitch, brakes and chassis maker may allow less`,
          },
        ]),
  ];
}

const massPair = (book: Book, kg: number, lb: number): string =>
  book.assessment.model.shop.units === 'metric' ? `${number(kg)} kg (${number(lb)} lb)` : `${number(lb)} lb (${number(kg)} kg)`;

/** How much may I load: three numbers that look alike and are not, each with what sets it. */
function threeNumbers(book: Book) {
  const { label, bays, conditions } = book.assessment.figures.weights;
  const { show } = book;
  if (!label || bays.length === 0) return [];
  const inBaysKg = bays.reduce((sum, bay) => sum + bay.togetherKg, 0);
  const others = [...new Set(bays.map((bay) => bay.limitedBy).filter((by) => by !== OWN_LIMIT))];
  const tightest = conditions
    .filter((one) => one.kind === 'worst')
    .flatMap((one) => one.axles.flatMap((load) => roomOf(load)))
    .reduce<Room | undefined>((least, one) => (least && least.kg <= one.kg ? least : one), undefined);
  return [
    {
      value: massPair(book, label.cccKg, label.cccLb),
      name: 'Cargo capacity of the whole vehicle',
      why: `what the GVWR leaves over the unloaded weight, ${label.seats} people and full fresh water. It says nothing about where.`,
    },
    {
      value: show.massDown(inBaysKg),
      name: 'All bays together',
      why:
        others.length === 0
          ? 'each bay to the limit of its own floor, which comes before any axle. The rest of the capacity has no rated place to go.'
          : `each bay to its figure below, held by ${others.join(', ')}.`,
    },
    ...(tightest
      ? [
          {
            value: show.massDown(Math.max(0, tightest.kg)),
            name: `Left at the ${tightest.end} end of axle ${tightest.axle}`,
            why: 'with the bays full, everyone aboard and the tanks at the levels that load it most. Anything that you add for good (a rack, a bigger battery) comes out of this first: weigh every wheel before and after.',
          },
        ]
      : []),
  ];
}

const OWN_LIMIT = 'its stated limit';

interface Room {
  readonly axle: string;
  readonly end: 'left' | 'right';
  readonly kg: number;
}

const roomOf = ({ axle, limitKg, leftKg, rightKg, lifted }: AxleLoad): readonly Room[] => {
  if (limitKg === undefined || leftKg === undefined || rightKg === undefined || lifted) return [];
  return [
    { axle, end: 'left', kg: limitKg / 2 - leftKg },
    { axle, end: 'right', kg: limitKg / 2 - rightKg },
  ];
};
