import type { Assessment } from '../../assess.js';
import type { AxleLoad, ConditionFigure } from '../../compute/weights/types.js';
import { mass, number, type UnitSystem } from '../../quantity/format.js';
import { KG_PER_LB } from '../../quantity/units.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { line, type Mark, type Point, rectangle, text } from '../scene.js';
import type { SheetSize } from '../sheet.js';
import { shorten, textWidthMm } from '../text-width.js';

/** Round steps of an axis: 1, 2 or 5 times a power of ten, `most` of them or fewer. */
export function ticks(highest: number, most = 6): readonly number[] {
  if (!(highest > 0)) return [0];
  const raw = highest / most;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((k) => k * power >= raw - 1e-9) ?? 10) * power;
  return Array.from({ length: Math.floor(highest / step + 1e-9) + 1 }, (_, k) => k * step);
}

/** Charts show one unit system: the store's first. */
export const chartUnit = (units: UnitSystem): { readonly perKg: number; readonly word: string } =>
  units === 'metric' ? { perKg: 1, word: 'kg' } : { perKg: 1 / KG_PER_LB, word: 'lb' };

const ROW_MM = 5.2;
/** A row is never lower: its text would touch the next. */
const LEAST_ROW_MM = 2.8;
const HEAD_MM = 6.5;
const AXIS_MM = 8;

/** Load on each axle by condition against its limit, with the expanded uncertainty as a whisker. */
export function axleChart(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const all = a.figures.weights.conditions;
  const units = a.model.shop.units;
  const axles = a.model.shell.chassis.axles.map(({ id }) => id);
  const { perKg, word } = chartUnit(units);
  const roomMm = sheet.heightMm - AXIS_MM - 11 - axles.length * (HEAD_MM + 2);
  const conditions = all.slice(0, Math.max(1, Math.floor(roomMm / LEAST_ROW_MM / Math.max(1, axles.length))));
  const rowMm = Math.min(ROW_MM, Math.max(LEAST_ROW_MM, roomMm / Math.max(1, axles.length * conditions.length)));
  const rows = axles.flatMap((axle) => conditions.flatMap((condition) => loadOf(condition, axle)));
  const highest = Math.max(1, ...rows.map((load) => Math.max(load.loadKg + load.uncertaintyKg, load.limitKg ?? 0))) * perKg;
  const names = Math.min(40, Math.max(20, ...conditions.map(({ name }) => textWidthMm(name, 'name') + 3)));
  const left = names + 1;
  const right = sheet.widthMm - Math.min(52, sheet.widthMm * 0.32);
  const x = (shown: number): number => left + ((right - left) * shown) / highest;
  const marks: Mark[] = [];
  let y = AXIS_MM;
  for (const axle of axles) {
    const limitKg = rows.find((load) => load.axle === axle)?.limitKg;
    const top = y;
    marks.push(text('labels', 'name-strong', [1, y + HEAD_MM / 2], `${axle} axle`, { id: axle }));
    const said = limitKg === undefined ? 'no limit on record' : `limit ${mass(limitKg, units)}`;
    marks.push(text('labels', 'note', [right + 2, y + HEAD_MM / 2], said));
    y += HEAD_MM;
    for (const condition of conditions) {
      for (const load of loadOf(condition, axle))
        marks.push(...loadRow(load, condition.name, y + rowMm / 2, { x, perKg, units, names, right, sheet, rowMm }));
      y += rowMm;
    }
    if (limitKg !== undefined)
      marks.push(
        line('nodes', 'limit', [
          [x(limitKg * perKg), top + HEAD_MM * 0.6],
          [x(limitKg * perKg), y],
        ]),
      );
    y += 2;
  }
  marks.push(...gridAcross(highest, x, AXIS_MM - 1, y, word));
  return compose(
    {
      id: 'axle-chart',
      title: 'Axle loads by condition against limits',
      alt: axleAlt(a),
      widthMm: sheet.widthMm,
      heightMm: Math.max(y + 11, 20),
      units,
      room: { x0: 1, y0: 1, x1: sheet.widthMm - 1, y1: y },
      marks,
      wishes: [],
      notes: [
        'Heavy line: limit of the axle (least of axle, tyres, wheels, suspension). Whisker: expanded uncertainty, k = 2. Dark bar: over the limit.',
        all.length > conditions.length ? `${all.length - conditions.length} more conditions in the table.` : '',
      ].filter(Boolean),
    },
    options,
  );
}

const loadOf = (condition: ConditionFigure, axle: string): readonly AxleLoad[] =>
  condition.axles.filter((load) => load.axle === axle);

function axleAlt(a: Assessment): string {
  const over = a.figures.weights.conditions.flatMap(({ name, axles }) =>
    axles.filter(({ verdict }) => verdict === 'over').map(({ axle }) => `${axle} in ${name}`),
  );
  if (a.figures.weights.conditions.length === 0) return 'No axle loads could be computed.';
  return `Bar chart of the load on each axle by condition. ${over.length > 0 ? `Over the limit: ${over.join(', ')}.` : 'No axle is over its limit.'}`;
}

interface RowScale {
  readonly x: (shown: number) => number;
  readonly perKg: number;
  readonly units: UnitSystem;
  readonly names: number;
  readonly right: number;
  readonly sheet: SheetSize;
  readonly rowMm: number;
}

function loadRow(
  load: AxleLoad,
  name: string,
  y: number,
  { x, perKg, units, names, right, sheet, rowMm }: RowScale,
): readonly Mark[] {
  const end = x(Math.max(0, load.loadKg) * perKg);
  const [low, high] = [
    x(Math.max(0, load.loadKg - load.uncertaintyKg) * perKg),
    x(Math.max(0, load.loadKg + load.uncertaintyKg) * perKg),
  ];
  const words = `${mass(load.loadKg, units)} ${load.verdict === 'within' ? '' : `· ${load.verdict}`}`.trim();
  return [
    text('labels', 'name', [names - 1, y], shorten(name, 'name', names - 3), { anchor: 'end' }),
    rectangle('structure', load.verdict === 'over' ? 'bar-over' : 'bar', {
      x0: x(0),
      y0: y - rowMm * 0.29,
      x1: end,
      y1: y + rowMm * 0.29,
    }),
    line('equipment', 'whisker', [
      [low, y],
      [high, y],
    ]),
    line('equipment', 'whisker', [
      [low, y - 0.9],
      [low, y + 0.9],
    ]),
    line('equipment', 'whisker', [
      [high, y - 0.9],
      [high, y + 0.9],
    ]),
    text(
      'labels',
      load.verdict === 'over' ? 'name-strong' : 'name',
      [right + 2, y],
      shorten(words, load.verdict === 'over' ? 'name-strong' : 'name', sheet.widthMm - right - 3),
    ),
  ];
}

function gridAcross(highest: number, x: (shown: number) => number, top: number, bottom: number, word: string): readonly Mark[] {
  return ticks(highest).flatMap((value, index) => [
    line('background', index === 0 ? 'axis' : 'grid', [
      [x(value), top],
      [x(value), bottom],
    ]),
    text('labels', 'note', [x(value), top - 2.5], index === 0 ? word : number(value), { anchor: 'middle' }),
  ]);
}

interface Frame {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Mass stage by stage: predicted line, weighed marks with their uncertainty. */
export function growthChart(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { growth } = a.figures.weights;
  const units = a.model.shop.units;
  const { perKg, word } = chartUnit(units);
  const heightMm = Math.min(sheet.heightMm, 90);
  const frame: Frame = { x0: 18, y0: 8, x1: sheet.widthMm - 6, y1: heightMm - 26 };
  const highest =
    Math.max(1, ...growth.map((g) => Math.max(g.predictedKg, (g.measuredKg ?? 0) + (g.uncertaintyKg ?? 0)))) * 1.08 * perKg;
  const low = lowestShown(
    Math.min(...growth.map((g) => Math.min(g.predictedKg, g.measuredKg ?? g.predictedKg))) * perKg,
    highest,
  );
  const y = (kg: number): number => frame.y1 - ((frame.y1 - frame.y0) * (kg * perKg - low)) / (highest - low);
  const step = (frame.x1 - frame.x0) / Math.max(1, growth.length);
  const x = (index: number): number => frame.x0 + step * (index + 0.5);
  const marks: Mark[] = [...gridUp(low, highest, frame, word)];
  marks.push(
    line(
      'runs',
      'series-1',
      growth.map((g, index): Point => [x(index), y(g.predictedKg)]),
    ),
  );
  growth.forEach((g, index) => {
    marks.push(...stageName(stageLabel(a, g.stage), x(index), frame.y1 + 3.5, step));
    if (g.measuredKg === undefined) return;
    const [low, high] = [y(g.measuredKg - (g.uncertaintyKg ?? 0)), y(g.measuredKg + (g.uncertaintyKg ?? 0))];
    const at = x(index);
    marks.push(
      line('nodes', 'whisker', [
        [at, low],
        [at, high],
      ]),
      line('nodes', 'whisker', [
        [at - 1.2, low],
        [at + 1.2, low],
      ]),
    );
    marks.push(
      line('nodes', 'whisker', [
        [at - 1.2, high],
        [at + 1.2, high],
      ]),
    );
    marks.push({ kind: 'circle', layer: 'nodes', pen: 'mark-filled', center: [at, y(g.measuredKg)], radiusMm: 0.7 });
  });
  const measured = growth.filter((g) => g.measuredKg !== undefined);
  return compose(
    {
      id: 'growth-chart',
      title: 'Mass by stage, predicted and weighed',
      alt: `Line chart of the predicted mass after each of ${growth.length} stages, with ${measured.length} weighed marks.`,
      widthMm: sheet.widthMm,
      heightMm,
      units,
      room: { x0: frame.x0, y0: 1, x1: sheet.widthMm - 1, y1: frame.y1 },
      marks,
      wishes: growth.flatMap((g, index) => [
        {
          text: mass(g.measuredKg ?? g.predictedKg, units === 'metric' ? 'metric' : 'us'),
          anchor: [x(index), y(g.measuredKg ?? g.predictedKg)] as const,
          style: 'name' as const,
          priority: g.measuredKg === undefined ? 10 : 20,
          clearMm: 1.5,
        },
      ]),
      notes: [
        `Line: predicted from the records. Dots: weighed, with expanded uncertainty (k = 2).${low > 0 ? ' The scale does not start at zero.' : ''}`,
      ],
    },
    options,
  );
}

const stageLabel = (a: Assessment, stage: string): string => a.model.library.stages.find(({ id }) => id === stage)?.name ?? stage;

/** Up to three lines of a stage's name under its place on the axis. */
function stageName(words: string, x: number, y: number, widthMm: number): readonly Mark[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/u)) {
    const last = lines.at(-1);
    if (last !== undefined && textWidthMm(`${last} ${word}`, 'note') <= widthMm - 1) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines
    .slice(0, 3)
    .map((row, index) => text('labels', 'note', [x, y + index * 2.6], shorten(row, 'note', widthMm - 1), { anchor: 'middle' }));
}

/** Where the axis starts: at zero, or at a round figure below where all the marks lie in the upper half. */
function lowestShown(lowest: number, highest: number): number {
  if (!Number.isFinite(lowest) || lowest < highest / 2) return 0;
  const step = ticks(highest - lowest)[1] ?? 1;
  return Math.max(0, Math.floor(lowest / step - 1) * step);
}

function gridUp(low: number, highest: number, frame: Frame, word: string): readonly Mark[] {
  return ticks(highest - low).flatMap((above, index): readonly Mark[] => {
    const value = low + above;
    const y = frame.y1 - ((frame.y1 - frame.y0) * above) / (highest - low);
    return [
      line('background', index === 0 ? 'axis' : 'grid', [
        [frame.x0, y],
        [frame.x1, y],
      ]),
      text(
        'labels',
        'note',
        [frame.x0 - 1.5, y],
        index === 0 && low === 0 ? word : `${number(value)}${index === 0 ? ` ${word}` : ''}`,
        { anchor: 'end' },
      ),
    ];
  });
}
