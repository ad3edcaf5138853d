import type { Weights } from '../../compute/weights/types.js';
import { percent } from '../../quantity/format.js';
import type { TerminalPaint } from './paint.js';
import type { HandOver } from './release.js';
import { type ShownUnits, shownIn } from './shown.js';
import { type TextColumn, textTable } from './tables.js';
import { leastIn, ticketWords } from './weights-words.js';
import { bullets, paragraph } from './wrap.js';

const right = (head: string): TextColumn => ({ head, align: 'right' });

/** What the next trade may add: by axle and end, and by station. One table each. */
export function releaseWeightText(sheet: HandOver, paint: TerminalPaint): readonly string[] {
  const { weights, model } = sheet;
  const problems = weights.problems.length > 0 ? [`${paint.warning('Could not be computed')}\n${bullets(weights.problems)}`] : [];
  if (weights.budget.length === 0) {
    return [
      `${paint.strong('What may be added')}\n${paragraph('Not verified: no axle has both a load and a rating.', '  ')}`,
      ...problems,
    ];
  }
  const shown = shownIn(model.shop.units);
  return [paragraph(basisText(weights)), leftText(sheet, shown, paint), stationText(sheet, shown, paint), ...problems];
}

const FROM: Readonly<Record<Exclude<Weights['basis'], 'ticket'>, string>> = {
  prediction: 'prediction only; nothing verified was weighed',
  none: 'nothing that can be judged',
};

function basisText(weights: Weights): string {
  const { basis, reserve } = weights;
  const from = basis === 'ticket' ? ticketWords(weights) : FROM[basis];
  return `Figures are based on ${from}. ${percent(reserve, 0)} of each axle’s rating is held in reserve, half of it at each end, and the uncertainty of the load (k = 2) is taken off.`;
}

function leftText({ weights, leftOfGvwrKg }: HandOver, shown: ShownUnits, paint: TerminalPaint): string {
  const rows = weights.budget.map((one) => [
    one.axle,
    one.leftKg < 0 ? paint.error(shown.massDown(one.leftKg)) : shown.massDown(one.leftKg),
    ...[one.leftEndKg, one.rightEndKg].map((kg) => ((kg ?? 0) < 0 ? paint.error(shown.massDown(kg)) : shown.massDown(kg))),
    shown.mass(one.reserveKg),
    shown.mass(one.uncertaintyKg),
  ]);
  const heads = [{ head: 'axle', wrap: true }, ...['axle', 'left end', 'right end', 'reserve', 'uncertainty'].map(right)];
  const used = weights.budget.flatMap((one) => [
    ...(one.leftKg < 0 ? [one.axle] : []),
    ...((one.leftEndKg ?? 0) < 0 ? [`the left end of ${one.axle}`] : []),
    ...((one.rightEndKg ?? 0) < 0 ? [`the right end of ${one.axle}`] : []),
  ]);
  const notes = [
    ...(leftOfGvwrKg === undefined
      ? []
      : [`Whole vehicle: ${shown.massDown(leftOfGvwrKg)} ${shown.massUnit} to its GVWR with everything full, no reserve.`]),
    ...leastIn(weights),
    ...(used.length > 0
      ? [`Add nothing over ${used.join(', ')}: the reserve is already used. Take weight off there, or ask the shop.`]
      : []),
  ];
  const text = `${paint.strong(`May be added, ${shown.massUnit}`)}\n${textTable(heads, rows, '  ')}`;
  return notes.length > 0 ? `${text}\n${bullets(notes)}` : text;
}

function stationText({ stations }: HandOver, shown: ShownUnits, paint: TerminalPaint): string {
  const axles = Object.keys(stations[0]?.addsKg ?? {});
  if (axles.length === 0) return paragraph('The axle layout is not determined: no influence lines.');
  const rows = stations.map(({ xMm, addsKg, mostKg, limitedBy }) => [
    shown.length(xMm),
    ...axles.map((axle) => shown.mass(addsKg[axle])),
    shown.massDown(mostKg),
    limitedBy ?? '',
  ]);
  const heads = [right(`x, ${shown.lengthUnit}`), ...axles.map(right), right('most'), { head: 'limited by', wrap: true }];
  const title = `100 kg (220 lb) at a station adds to each axle, ${shown.massUnit}; most that it may take alone`;
  const note =
    'x is rearward of the front axle, on the center line: to a side, the end on that side counts. A minus lightens that axle; the steered axles keep 20 % of the whole. Stations share what is left: they do not add.';
  return `${paint.strong(paragraph(title))}\n${textTable(heads, rows, '  ')}\n${paragraph(note, '  ')}`;
}
