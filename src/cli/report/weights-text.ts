import type { Assessment } from '../../assess.js';
import type { AxleLoad, ConditionFigure, TicketFigure, Verdict, Weights } from '../../compute/weights/types.js';
import { length, number } from '../../quantity/format.js';
import { bar } from './bars.js';
import type { TerminalPaint } from './paint.js';
import { type ShownUnits, shownIn } from './shown.js';
import { type TextColumn, textTable } from './tables.js';
import { cgHeightText, contributionsText, growthText, influenceText, roadText, worstText } from './weights-charts.js';
import { leastIn, ticketWords } from './weights-words.js';
import { bullets, paragraph, widthOf } from './wrap.js';

const CAUTION = 'Planning figures. Weigh the finished vehicle. The chassis maker’s labels and manuals come before this page.';

export function weightsText({ model, figures }: Assessment, paint: TerminalPaint, all: boolean): string {
  const { weights } = figures;
  const { units } = model.shop;
  const shownConditions = weights.conditions.filter((one) => all || one.certified || one.kind === 'weighed' || isOver(one));
  const left = weights.conditions.length - shownConditions.length;
  const parts = [paint.strong(`${model.shell.id}  ${model.shell.title}: weights`), paragraph(basisText(weights))];
  const shown = shownIn(units);
  parts.push(
    ratings(weights, shown, paint),
    conditions(shownConditions, left, shown, paint),
    tickets(weights.tickets, shown, paint),
    cargo(weights, shown, paint),
    bays(weights, shown, paint),
    budget(weights, shown, paint),
    worstText(weights.conditions, shown, paint),
    contributionsText(weights.conditions, shown, paint),
    growthText(weights, model.shell.chassis.gvwrKg, shown, paint),
    influenceText(weights, shown, paint),
    cgHeightText(weights, shown, paint),
    roadText(weights, shown, paint),
  );
  const unexplained = weights.tickets.map((one) => residualText(one, units)).filter((text) => text !== '');
  if (unexplained.length > 0) parts.push(bullets(unexplained));
  if (weights.problems.length > 0) parts.push(`${paint.warning('Could not be computed')}\n${bullets(weights.problems)}`);
  if (weights.assumptions.length > 0) parts.push(`${paint.strong('Assumed')}\n${bullets(weights.assumptions)}`);
  parts.push(paragraph(CAUTION));
  return parts.filter((part) => part !== '').join('\n\n');
}

function basisText(weights: Weights): string {
  if (weights.basis === 'ticket') return `The conditions are based on ${ticketWords(weights)}.`;
  if (weights.basis === 'prediction') return 'Nothing verified has been weighed: the conditions are based on the takeoff alone.';
  return 'Nothing weighed and no bare chassis on record: axle loads are not verified.';
}

const right = (head: string): TextColumn => ({ head, align: 'right' });

const LIMITED_BY = { gawr: 'axle rating', tyres: 'tires', wheels: 'wheels', suspension: 'suspension' } as const;

function ratings(weights: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  if (weights.ratings.length === 0) return '';
  const rows = weights.ratings.map((one) => [
    one.axle,
    ...[one.gawrKg, one.tyresKg, one.wheelsKg, one.suspensionKg, one.limitKg].map((kg) => shown.massDown(kg)),
    one.limitedBy === undefined ? 'no rating' : LIMITED_BY[one.limitedBy],
  ]);
  const heads = [
    { head: 'axle' },
    ...['GAWR', 'tyres', 'wheels', 'suspension', 'limit'].map(right),
    { head: 'limited by', wrap: true },
  ];
  return `${paint.strong(`Ratings, ${shown.massUnit}`)}\n${textTable(heads, rows, '  ')}`;
}

const isOver = (one: ConditionFigure): boolean => one.axles.some((axle) => axle.verdict === 'over');

function conditions(list: readonly ConditionFigure[], left: number, shown: ShownUnits, paint: TerminalPaint): string {
  if (list.length === 0) return '';
  const title = paint.strong(`Axle loads by loading condition, ${shown.massUnit} (± at k = 2, | the limit)`);
  const more = left > 0 ? [paint.faint(`  and ${left} more, with an axle lifted or as the worst below (--all shows them)`)] : [];
  return [title, ...list.map((one) => condition(one, shown, paint)), ...more].join('\n\n');
}

function condition(figure: ConditionFigure, shown: ShownUnits, paint: TerminalPaint): string {
  const margin = figure.gvwrMarginKg === undefined ? 'no GVWR' : `GVWR margin ${shown.massDown(figure.gvwrMarginKg)}`;
  const total = `total ${shown.mass(figure.totalKg)}, ${margin}, ${verdictText(figure.verdict, paint)}`;
  const names = Math.max(...figure.axles.map((axle) => widthOf(axle.axle)), 0);
  const at = figure.axles.length > 0 ? `, centered ${centre(figure, shown)}` : '';
  return [
    paragraph(`${paint.strong(`${figure.name}:`)} ${total}${at}`, '  '),
    ...figure.axles.map((axle) => axleLine(axle, names, shown, paint)),
  ].join('\n');
}

/** `159 in ± 1 in aft of the front axle`. */
function centre({ centroid: [xMm], centroidUncertaintyMm }: ConditionFigure, shown: ShownUnits): string {
  const doubt = centroidUncertaintyMm === undefined ? '' : ` ± ${shown.length(centroidUncertaintyMm)}`;
  return `${shown.length(Math.abs(xMm))}${doubt} ${shown.lengthUnit} ${xMm < 0 ? 'ahead' : 'aft'} of the front axle`;
}

function axleLine(axle: AxleLoad, names: number, shown: ShownUnits, paint: TerminalPaint): string {
  const { loadKg, limitKg, uncertaintyKg } = axle;
  const drawn = limitKg === undefined ? ' '.repeat(BAR + 1) : bar(loadKg, limitKg, uncertaintyKg, BAR);
  const load = shown.mass(loadKg).padStart(7);
  const limit = (limitKg === undefined ? '' : `of ${shown.massDown(limitKg)}`).padEnd(10);
  const spread = `±${shown.mass(uncertaintyKg)}`.padEnd(6);
  return `  ${axle.axle.padEnd(names)} ${drawn}${load} ${limit} ${spread} ${axle.lifted ? 'lifted, ' : ''}${verdictText(axle.verdict, paint)}`;
}

const BAR = 20;

const verdictText = (verdict: Verdict, paint: TerminalPaint): string =>
  verdict === 'over' ? paint.error(verdict) : verdict === 'within' ? paint.good(verdict) : paint.warning(verdict);

function tickets(list: readonly TicketFigure[], shown: ShownUnits, paint: TerminalPaint): string {
  if (list.length === 0) return '';
  const rows = list.flatMap((ticket) =>
    Object.keys(ticket.asWeighed).map((axle, i) => [
      i === 0 ? ticket.id : '',
      i === 0 ? ticket.date : '',
      axle,
      shown.mass(ticket.asWeighed[axle]),
      shown.mass(ticket.normalised[axle]),
      shown.mass(ticket.predicted[axle]),
      shown.mass(ticket.residual[axle]),
    ]),
  );
  const heads = [
    { head: 'ticket' },
    { head: 'date' },
    { head: 'axle', wrap: true },
    ...['weighed', 'unladen', 'predicted', 'difference'].map(right),
  ];
  const refused = list
    .filter((one) => !one.verified)
    .map((one) => `${one.id} is not verified: ${one.reason ?? 'no reason on record'}`);
  const text = `${paint.strong(`Scale tickets, ${shown.massUnit}`)}\n${textTable(heads, rows, '  ')}`;
  return refused.length > 0 ? `${text}\n${bullets(refused)}` : text;
}

function residualText(ticket: TicketFigure, units: 'us' | 'metric' | 'both'): string {
  if (ticket.residualXMm === undefined || Math.abs(ticket.residualKg) <= (ticket.residualUncertaintyKg ?? ticket.uncertaintyKg))
    return '';
  const shown = shownIn(units);
  const where = `${length(Math.abs(ticket.residualXMm), units)} ${ticket.residualXMm < 0 ? 'ahead' : 'aft'} of the front axle`;
  return `${ticket.id}: ${shown.mass(ticket.residualKg)} ${shown.massUnit} unexplained, centered ${where}.`;
}

/** The figures of the label: the same here, in the book and on the label itself. */
function cargo(weights: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  const { label } = weights;
  if (weights.uvwKg === undefined) return '';
  const pounds = shown.massUnit === 'lb';
  const of = (kg: number | undefined, lb: number | undefined): string => number((pounds ? lb : kg) ?? 0);
  const rows = label
    ? [
        ['unloaded vehicle weight', of(label.uvwKg, label.uvwLb)],
        ['occupant and cargo carrying capacity', of(label.occcKg, label.occcLb)],
        [`${label.seats} belted seats`, of(label.seatsKg, label.seatsLb)],
        ['fresh water, full', of(label.waterKg, label.waterLb)],
        ['cargo carrying capacity', of(label.cccKg, label.cccLb)],
      ]
    : [
        ['unloaded vehicle weight', shown.mass(weights.uvwKg)],
        ['fresh water, full', shown.mass(weights.fullWaterKg)],
      ];
  const trailer =
    weights.trailerKg === undefined ? [] : [['left of the GCWR for a trailer, loaded', shown.massDown(weights.trailerKg)]];
  const whose =
    'Figures for the weight label, each rounded to the safe side; water is 1 kg a litre or 8.3 lb a gallon. The licensed final-stage maker words the label and answers for it.';
  const text = `${paint.strong('Capacity')}\n${textTable([{ head: '' }, right(shown.massUnit)], [...rows, ...trailer], '  ')}`;
  return label ? `${text}\n${paragraph(whose, '  ')}` : text;
}

function bays(weights: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  if (weights.bays.length === 0) return '';
  const rows = weights.bays.map((one) => [
    one.id,
    shown.massDown(one.statedKg),
    shown.massDown(one.allowanceKg),
    shown.massDown(one.togetherKg),
    one.limitedBy,
  ]);
  const heads = [{ head: 'bay' }, ...['stated', 'alone', 'all together'].map(right), { head: 'limited by', wrap: true }];
  return `${paint.strong(`What each bay may take, ${shown.massUnit}`)}\n${textTable(heads, rows, '  ')}`;
}

function budget(weights: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  if (weights.budget.length === 0) return '';
  const rows = weights.budget.map((one) => [
    one.axle,
    shown.massDown(one.leftKg),
    shown.massDown(one.leftEndKg),
    shown.massDown(one.rightEndKg),
    shown.mass(one.reserveKg),
    shown.mass(one.uncertaintyKg),
  ]);
  const heads = [{ head: 'axle' }, ...['may be added', 'left end', 'right end', 'reserve', 'uncertainty'].map(right)];
  const title = paint.strong(`Left for the next trade, ${shown.massUnit}`);
  return `${title}\n${textTable(heads, rows, '  ')}\n${bullets(leastIn(weights))}`;
}
