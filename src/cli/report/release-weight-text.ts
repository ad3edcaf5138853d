import type { Weights } from '../../compute/weights/types.js';
import { percent } from '../../quantity/format.js';
import type { Paint } from './paint.js';
import type { HandOver } from './release.js';
import { type Shown, shownIn } from './shown.js';
import { type Column, table } from './tables.js';
import { bullets, paragraph } from './wrap.js';

const right = (head: string): Column => ({ head, align: 'right' });

/** What the next trade may add: by axle and end, and by station. Tables in each system of the shop's. */
export function releaseWeightText(sheet: HandOver, paint: Paint): readonly string[] {
  const { weights, model } = sheet;
  const problems = weights.problems.length > 0 ? [`${paint.warning('Could not be computed')}\n${bullets(weights.problems)}`] : [];
  if (weights.budget.length === 0) {
    return [
      `${paint.strong('What may be added')}\n${paragraph('Not verified: no axle has both a load and a rating.', '  ')}`,
      ...problems,
    ];
  }
  const shown = shownIn(model.shop.units);
  return [
    paragraph(basisText(weights)),
    ...shown.map((one) => leftText(sheet, one, paint)),
    ...shown.map((one) => stationText(sheet, one, paint)),
    ...problems,
  ];
}

const FROM: Readonly<Record<Weights['basis'], string>> = {
  ticket: 'scale ticket',
  prediction: 'prediction alone, nothing verified was weighed',
  none: 'nothing that can be judged',
};

function basisText({ basis, basisTicket, reserve }: Weights): string {
  const from = basis === 'ticket' ? `${FROM.ticket} ${basisTicket}` : FROM[basis];
  return `Figures stand on ${from}. ${percent(reserve, 0)} of each axle’s rating is kept back, and what is not known of its load (k = 2).`;
}

function leftText({ weights, leftOfGvwrKg }: HandOver, shown: Shown, paint: Paint): string {
  const rows = weights.budget.map((one) => [
    one.axle,
    one.leftKg < 0 ? paint.error(shown.massDown(one.leftKg)) : shown.massDown(one.leftKg),
    shown.massDown(one.leftEndKg),
    shown.massDown(one.rightEndKg),
    shown.mass(one.reserveKg),
    shown.mass(one.uncertaintyKg),
    one.condition,
  ]);
  const heads = [
    { head: 'axle', wrap: true },
    ...['axle', 'left end', 'right end', 'kept back', 'unsure'].map(right),
    { head: 'least in' },
  ];
  const used = weights.budget.filter((one) => one.leftKg < 0).map((one) => one.axle);
  const notes = [
    ...(leftOfGvwrKg === undefined
      ? []
      : [`Whole vehicle: ${shown.massDown(leftOfGvwrKg)} ${shown.massUnit} to its GVWR, loaded, nothing kept back.`]),
    ...(used.length > 0
      ? [`Nothing may be added over ${used.join(', ')}: the reserve is in use. Take off, or ask the shop.`]
      : []),
  ];
  const text = `${paint.strong(`May be added, ${shown.massUnit}`)}\n${table(heads, rows, '  ')}`;
  return notes.length > 0 ? `${text}\n${bullets(notes)}` : text;
}

function stationText({ stations }: HandOver, shown: Shown, paint: Paint): string {
  const axles = Object.keys(stations[0]?.addsKg ?? {});
  if (axles.length === 0) return paragraph('The axle layout is not determined: no influence lines.');
  const rows = stations.map(({ xMm, addsKg, mostKg, limitedBy }) => [
    shown.length(xMm),
    ...axles.map((axle) => shown.mass(addsKg[axle])),
    shown.massDown(mostKg),
    limitedBy ?? '',
  ]);
  const heads = [right(`x, ${shown.lengthUnit}`), ...axles.map(right), right('most'), { head: 'held by', wrap: true }];
  const title = `100 kg (220 lb) at a station adds to each axle, ${shown.massUnit}; most that it may take alone`;
  const note =
    'x is rearward of the front axle, on the centre line: to a side, the end on that side counts. A minus lightens that axle; the steered axles keep 20 % of the whole. Stations share what is left: they do not add.';
  return `${paint.strong(paragraph(title))}\n${table(heads, rows, '  ')}\n${paragraph(note, '  ')}`;
}
