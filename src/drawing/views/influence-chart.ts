import type { Assessment } from '../../assess.js';
import { length, mass, number, type UnitSystem } from '../../quantity/format.js';
import { KG_PER_LB, MM_PER_IN } from '../../quantity/units.js';
import { chartUnit, ticks } from '../chart-axis.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import type { LabelWish } from '../labels.js';
import { line, type Mark, type Point, textMark } from '../scene.js';
import type { SheetSize } from '../sheet.js';
import type { PenName } from '../styles.js';

const SERIES: readonly PenName[] = ['series-1', 'series-2', 'series-3', 'series-4'];

/** What a load at each station adds to each axle; above the line it loads the axle, below it lifts it. */
export function influenceChart(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { influence } = a.figures.weights;
  const units = a.model.shop.units;
  const axles = a.model.shell.chassis.axles;
  const heightMm = Math.min(sheet.heightMm, 100);
  const frame = { x0: 16, y0: 8, x1: sheet.widthMm - 8, y1: heightMm - 22 };
  const xs = influence.map(({ xMm }) => xMm);
  const [lowX, highX] = xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : [0, 1];
  const adds = influence.flatMap(({ addsKg }) => Object.values(addsKg));
  const [low, high] = [Math.min(0, ...adds), Math.max(100, ...adds)];
  const x = (mm: number): number => frame.x0 + ((frame.x1 - frame.x0) * (mm - lowX)) / Math.max(1, highX - lowX);
  const y = (kg: number): number => frame.y1 - ((frame.y1 - frame.y0) * (kg - low)) / Math.max(1, high - low);
  const marks: Mark[] = [
    ...shareGrid(low, high, frame.x0, frame.x1, y, chartUnit(units).word),
    ...stations(lowX, highX, x, frame.y1, units),
  ];
  const wishes: LabelWish[] = [];
  axles.forEach((axle, index) => {
    const points = influence.flatMap(({ xMm, addsKg }): readonly Point[] => {
      const kg = addsKg[axle.id];
      return kg === undefined ? [] : [[x(xMm), y(kg)]];
    });
    if (points.length < 2) return;
    marks.push(line('runs', SERIES[index % SERIES.length] as PenName, points));
    marks.push(
      line('ground', 'centre', [
        [x(axle.xMm), frame.y0],
        [x(axle.xMm), frame.y1],
      ]),
    );
    wishes.push({ text: axle.id, anchor: [x(axle.xMm), frame.y0], style: 'note', priority: 40, id: axle.id, clearMm: 0.5 });
    const anchor = points[Math.floor((points.length * (index + 1)) / (axles.length + 1))] as Point;
    wishes.push({ text: `on ${axle.id}`, anchor, style: 'name-strong', priority: 50, id: axle.id, clearMm: 0.8 });
  });
  for (const bay of a.model.shell.bays) {
    const at = x(bay.at[0]);
    marks.push(
      line('outlines', 'axis', [
        [at, frame.y1 - 1.5],
        [at, frame.y1 + 1.5],
      ]),
    );
    wishes.push({ text: bay.id, anchor: [at, frame.y1 - 1.5], style: 'id', priority: 30, id: bay.id, clearMm: 0.5 });
  }
  const per = mass(units === 'metric' ? 100 : 100 * KG_PER_LB, units === 'metric' ? 'metric' : 'us');
  return compose(
    {
      id: 'influence-chart',
      title: `What ${per} at each place adds to each axle`,
      alt: `Line chart of the share of a load that each of ${axles.length} axles takes, against where along the vehicle the load sits.`,
      widthMm: sheet.widthMm,
      heightMm,
      front: 'left',
      units,
      room: { x0: 1, y0: 1, x1: sheet.widthMm - 1, y1: frame.y1 + 2 },
      marks,
      wishes,
      notes: [
        `Read up from the place of the load: of ${per} put there, that much comes on the axle; below the zero line it comes off. Ticks: bays.`,
      ],
    },
    options,
  );
}

/** The figures are kg for 100 kg: the same number for 100 lb. */
function shareGrid(low: number, high: number, x0: number, x1: number, y: (kg: number) => number, unit: string): readonly Mark[] {
  const step = ticks(high - low)[1] ?? high;
  const first = Math.ceil(low / step - 1e-9);
  const count = Math.floor(high / step + 1e-9) - first + 1;
  return Array.from({ length: count }, (_, k) => (first + k) * step).flatMap((value) => [
    line('background', value === 0 ? 'axis' : 'grid', [
      [x0, y(value)],
      [x1, y(value)],
    ]),
    textMark('labels', 'note', [x0 - 1.5, y(value)], `${number(value)} ${unit}`, { anchor: 'end' }),
  ]);
}

const MOST_STATIONS = 50;

function stations(lowX: number, highX: number, x: (mm: number) => number, bottom: number, units: UnitSystem): readonly Mark[] {
  let step = units === 'metric' ? 1000 : 60 * MM_PER_IN;
  // A place typed far too far away must not fill the sheet with stations.
  while ((highX - lowX) / step > MOST_STATIONS) step *= 2;
  const marks: Mark[] = [];
  for (let at = Math.ceil(lowX / step) * step; at <= highX; at += step) {
    marks.push(
      line('background', 'grid', [
        [x(at), bottom],
        [x(at), bottom + 2],
      ]),
    );
    const words = units === 'metric' ? `${number(at / 1000)} m` : at === 0 ? '0' : length(at, 'us');
    marks.push(textMark('labels', 'note', [x(at), bottom + 4], words, { anchor: 'middle' }));
  }
  return marks;
}
