import type { AxleLoad, ConditionFigure, RoadLimit, Weights } from '../../compute/weights/types.js';
import { verdictOf } from '../../compute/weights/uncertainty.js';
import { bar } from './bars.js';
import type { TerminalPaint } from './paint.js';
import type { ShownUnits } from './shown.js';
import { type TextColumn, textTable } from './tables.js';
import { paragraph, widthOf } from './wrap.js';

const right = (head: string): TextColumn => ({ head, align: 'right' });
const BAR = 20;

/** Mass by stage, unladen, as bars with the GVWR marked; beside each what the scale said, and the forecast last. */
export function growthText(
  { growth, forecast }: Weights,
  gvwrKg: number | undefined,
  shown: ShownUnits,
  paint: TerminalPaint,
): string {
  const most = Math.max(0, ...growth.map((one) => Math.max(one.predictedKg, one.measuredKg ?? 0)));
  if (most === 0) return '';
  const names = Math.max(...growth.map(({ stage }) => widthOf(stage)), widthOf('forecast'));
  const limitKg = gvwrKg ?? most;
  const lines = growth.map(({ stage, predictedKg, measuredKg, uncertaintyKg }) => {
    const weighed = measuredKg === undefined ? '' : `  weighed ${shown.mass(measuredKg)} ±${shown.mass(uncertaintyKg)}`;
    return `  ${stage.padEnd(names)} ${bar(predictedKg, limitKg, 0, BAR)}${shown.mass(predictedKg).padStart(8)}${weighed}`;
  });
  if (forecast) {
    const { totalKg, lowKg, highKg } = forecast;
    const drawn = bar(lowKg, limitKg, highKg - lowKg, BAR);
    lines.push(
      `  ${'forecast'.padEnd(names)} ${drawn}${shown.mass(totalKg).padStart(8)}  ${shown.mass(lowKg)} to ${shown.mass(highKg)}`,
    );
  }
  const mark = gvwrKg === undefined ? 'the most' : `the GVWR of ${shown.massDown(gvwrKg)}`;
  const title = `Mass by stage predicted, unladen, ${shown.massUnit} (| ${mark})`;
  return `${paint.strong(paragraph(title))}\n${lines.join('\n')}`;
}

const HEIGHTS = '▁▂▃▄▅▆▇█';
const MOST_COLUMNS = 60;

/** What a mass at each station puts on each axle, as one line of blocks an axle. */
export function influenceText({ influence }: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  const axles = Object.keys(influence[0]?.addsKg ?? {});
  if (axles.length === 0) return '';
  const every = Math.ceil(influence.length / MOST_COLUMNS);
  const columns = influence.filter((_, i) => i % every === 0);
  const names = Math.max(...axles.map(widthOf));
  const cell = (kg: number): string => {
    if (kg < -0.5) return '−';
    return kg < 0.5 ? ' ' : (HEIGHTS[Math.min(7, Math.floor((kg / 100) * 8))] as string);
  };
  const lines = axles.map((axle) => `  ${axle.padEnd(names)} ${columns.map(({ addsKg }) => cell(addsKg[axle] ?? 0)).join('')}`);
  const ends = [columns[0], columns.at(-1)].map((one) => shown.long(one?.xMm));
  const title = `How added weight splits between axles, by station (█ all of it on that axle, ▁ little, − lightens it)`;
  const scale = `  from ${ends[0]} to ${ends[1]} ${shown.longUnit} rearward of the front axle; the figures: shellbook release`;
  return [paint.strong(paragraph(title)), ...lines, scale].join('\n');
}

/** The combinations of tanks, seats and bays found by search to load each axle most. */
export function worstText(conditions: readonly ConditionFigure[], shown: ShownUnits, paint: TerminalPaint): string {
  const lines = conditions.flatMap((one) => {
    const load = one.axles.find(({ axle }) => axle === one.worstFor);
    if (one.kind !== 'worst' || !load) return [];
    const { kg, limitKg, uncertaintyKg, name, verdict } = gauged(one, load);
    const limit = limitKg === undefined ? '' : ` of ${shown.massDown(limitKg)}`;
    const said = `${name} ${shown.mass(kg)}${limit} ±${shown.mass(uncertaintyKg)}, ${verdict}: ${one.holds}`;
    return [paragraph(said, '  - ')];
  });
  if (lines.length === 0) return '';
  const title = `Heaviest possible load on each axle and its heavier end, within stated limits and the GVWR, ${shown.massUnit}`;
  return [paint.strong(paragraph(title)), ...lines].join('\n');
}

/** The axle, or the end of it, that a worst condition was sought for. */
function gauged({ worstEnd }: ConditionFigure, load: AxleLoad) {
  const { axle: name, loadKg: kg, limitKg, uncertaintyKg, verdict } = load;
  if (worstEnd === undefined) return { name, kg, limitKg, uncertaintyKg, verdict };
  const [endKg = 0, endUncertaintyKg = 0] =
    worstEnd === 'left' ? [load.leftKg, load.leftUncertaintyKg] : [load.rightKg, load.rightUncertaintyKg];
  const half = limitKg === undefined ? undefined : limitKg / 2;
  return {
    name: `${name}, ${worstEnd} end,`,
    kg: endKg,
    limitKg: half,
    uncertaintyKg: endUncertaintyKg,
    verdict: verdictOf(load.marginKg === undefined || half === undefined ? undefined : half - endKg, endUncertaintyKg),
  };
}

/** What makes the uncertainty, in the named condition with the least margin on any axle. */
export function contributionsText(conditions: readonly ConditionFigure[], shown: ShownUnits, paint: TerminalPaint): string {
  let tightest: { readonly figure: ConditionFigure; readonly axle: string; readonly marginKg: number } | undefined;
  for (const figure of conditions) {
    if (!figure.certified) continue;
    for (const { axle, marginKg } of figure.axles) {
      if (marginKg !== undefined && marginKg < (tightest?.marginKg ?? Number.POSITIVE_INFINITY))
        tightest = { figure, axle, marginKg };
    }
  }
  if (!tightest || tightest.figure.contributions.length === 0) return '';
  const { figure, axle } = tightest;
  const list = (some: ConditionFigure['contributions']): string =>
    paragraph(`${some.map(({ name, kg }) => `${name} ${shown.mass(kg, 1)}`).join('; ')}.`, '  ');
  const title = (what: string): string =>
    paint.strong(
      paragraph(`What makes the uncertainty of ${what} in ${figure.name} (k = 2, root sum of squares), ${shown.massUnit}`),
    );
  const end = figure.endContributions;
  const ofEnd = end ? [title(`the ${end.end} end of ${end.axle}`), list(end.contributions)] : [];
  return [title(axle), list(figure.contributions), ...ofEnd].join('\n');
}

/** Road limits that the heaviest named condition comes nearest to. */
export function roadText({ roadLimits, roadLimitsCondition }: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  if (roadLimits.length === 0) return '';
  const rows = roadLimits.map((one: RoadLimit) => [
    one.kind,
    one.axles.join(', '),
    shown.mass(one.loadKg),
    shown.massDown(one.limitKg),
    shown.massDown(one.marginKg),
  ]);
  const heads = [{ head: 'limit' }, { head: 'axles', wrap: true }, ...['load', 'limit', 'margin'].map(right)];
  const title = `Road limits in ${roadLimitsCondition}, ${shown.massUnit}: for information, not a rating`;
  return `${paint.strong(paragraph(title))}\n${textTable(heads, rows, '  ')}`;
}

/** Height of the centre of gravity over the ground, where it was weighed for; or why none is given. */
export function cgHeightText({ cgHeight }: Weights, shown: ShownUnits, paint: TerminalPaint): string {
  if (cgHeight.length === 0) return '';
  const lines = cgHeight.map((one) => {
    const said =
      one.heightMm === undefined
        ? `${one.ticket}: not given, ${one.refused ?? 'no reason on record'}`
        : `${one.ticket} with ${one.level}: ${shown.length(one.heightMm)} ±${shown.length(one.uncertaintyMm)} ${shown.lengthUnit}`;
    return paragraph(said, '  - ');
  });
  return [paint.strong('Height of the center of gravity over the ground, by weighing (k = 2)'), ...lines].join('\n');
}
