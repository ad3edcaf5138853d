import type { Assessment } from '../../assess.js';
import type { AxleLoad, ConditionFigure } from '../../compute/weights/types.js';
import { mass, number, type UnitSystem } from '../../quantity/format.js';
import { readerOf, spelt } from '../../words/index.js';
import { chartUnit, ticks } from '../chart-axis.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { line, type Mark, rectangle, textMark } from '../scene.js';
import type { SheetSize } from '../sheet.js';
import { shorten, textWidthMm } from '../text-width.js';

const ROW_MM = 5.2;
/** A row is never lower: its text would touch the next. */
const LEAST_ROW_MM = 2.9;
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
  const names = Math.min(40, Math.max(20, ...conditions.map(({ name }) => textWidthMm(shortName(name), 'name') + 3)));
  const left = names + 1;
  const right = sheet.widthMm - Math.min(52, sheet.widthMm * 0.32);
  const x = (shown: number): number => left + ((right - left) * shown) / highest;
  const marks: Mark[] = [];
  let y = AXIS_MM;
  for (const axle of axles) {
    const limitKg = rows.find((load) => load.axle === axle)?.limitKg;
    const top = y;
    marks.push(textMark('labels', 'name-strong', [1, y + HEAD_MM / 2], `${axle} axle`, { id: axle }));
    const said = limitKg === undefined ? 'no limit on record' : `limit ${mass(limitKg, units)}`;
    marks.push(textMark('labels', 'name', [right + 2, y + HEAD_MM / 2], said));
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
        spelt(
          readerOf(a.model.shop),
          'Heavy line: limit of the axle (least of axle, tires, wheels, suspension). Whisker: expanded uncertainty, k = 2. Dark bar: over the limit.',
        ),
        all.length > conditions.length ? `${all.length - conditions.length} more conditions in the table.` : '',
      ].filter(Boolean),
    },
    options,
  );
}

/** A condition without what is in it: the table says that in full. */
const shortName = (name: string): string => name.split(':')[0] as string;

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
  const state = load.lifted ? 'lifted' : load.verdict === 'within' ? '' : load.verdict;
  const words = `${mass(load.loadKg, units)}${state === '' ? '' : `, ${state}`}`;
  return [
    textMark('labels', 'name', [names - 1, y], shorten(shortName(name), 'name', names - 3), { anchor: 'end' }),
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
    textMark(
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
    textMark('labels', 'note', [x(value), top - 2.5], index === 0 ? word : number(value), { anchor: 'middle' }),
  ]);
}
