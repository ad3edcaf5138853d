import type { Assessment } from '../../assess.js';
import { mass, massDown } from '../../quantity/format.js';
import type { Bay } from '../../records/index.js';
import { readerOf } from '../../words/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { chassisSide } from '../marks/chassis.js';
import { shellBox } from '../marks/shell-box.js';
import { VIEWS } from '../projection.js';
import { line, type Mark, type Rect, rectangle, textMark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { wordsFor } from '../wording.js';

/** Of a bay without a size: half of what is drawn for it each way, mm. */
const UNSIZED_MM = 200;
/** Of a gauge: its row, its bar, the words before and behind it, mm. */
const ROW_MM = 10;
const BAR_MM = 5;
const NAME_MM = 24;
const WORDS_MM = 62;

/** For whoever loads it: each bay where it is with what it may take, and a gauge for each axle beneath. */
export function loadingSide(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const { shell, shop } = model;
  const w = wordsFor(model);
  const vehicle = vehicleExtent(model);
  const { axles } = shell.chassis;
  const gaugesMm = axles.length * ROW_MM + 6;
  const layout = layOut(
    [{ view: VIEWS.left, bounds: viewBounds(VIEWS.left, extentCorners(vehicle)) }],
    { ...sheet, heightMm: sheet.heightMm - gaugesMm },
    { sideMm: 6, aboveMm: 16, belowMm: 8, mostMm: 16 },
  );
  const port = layout.ports[0] as Port;
  const marks: Mark[] = [...chassisSide(model, vehicle, port), shellBox(shellExtent(model), port, 'skin-line')];
  const wishes: LabelWish[] = [];
  for (const bay of shell.bays) {
    const rect = bayRect(bay, port);
    const together = a.figures.weights.bays.find(({ id }) => id === bay.id)?.togetherKg;
    marks.push(rectangle('equipment', bay.at[1] > 0 ? 'bay-right' : 'equipment-strong', rect, bay.id));
    wishes.push({
      text: together === undefined ? w('drawn.load.bay', { id: bay.id }) : `${bay.id}: ${massDown(together, shop.units)}`,
      anchor: [(rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2],
      style: 'name-strong',
      priority: 90,
      id: bay.id,
    });
  }
  const top = layout.heightMm - 10 + 3;
  for (const [i, axle] of axles.entries()) marks.push(...gauge(a, axle.id, sheet.widthMm, top + i * ROW_MM));
  return compose(
    {
      id: 'loading-side',
      title: w('drawn.load'),
      alt: w('drawn.load.alt', { shell: shell.id, bays: shell.bays.length, axles: axles.length }),
      ...layout,
      heightMm: layout.heightMm + gaugesMm,
      front: 'left',
      units: shop.units,
      reader: readerOf(shop),
      marks,
      wishes,
      notes: [w('drawn.load.boxes'), w('drawn.load.gauges')],
    },
    options,
  );
}

function bayRect(bay: Bay, port: Port): Rect {
  const [x, y, z] = bay.body?.middle ?? bay.at;
  const [long, , high] = bay.body?.sizeMm ?? [2 * UNSIZED_MM, 0, 2 * UNSIZED_MM];
  const [x0, y1] = port.place([x - long / 2, y, z - high / 2]);
  const [x1, y0] = port.place([x + long / 2, y, z + high / 2]);
  return { x0: Math.min(x0, x1), y0, x1: Math.max(x0, x1), y1 };
}

/** The scale of a gauge, as shares of the axle's limit. */
const SHARES = [0, 0.5, 1] as const;

const tickAt = (x: number, y: number, share: number): readonly Mark[] => [
  line('nodes', 'axis', [
    [x, y],
    [x, y + 1],
  ]),
  textMark('labels', 'note', [x, y + 2.6], share === 0 ? '0' : `${share * 100} %`, { anchor: 'middle' }),
];

function gauge(a: Assessment, axle: string, widthMm: number, y: number): readonly Mark[] {
  const { units } = a.model.shop;
  const w = wordsFor(a.model);
  const down = a.figures.weights.conditions.filter((one) => one.kind !== 'lifted');
  const loads = down.flatMap((one) => one.axles.filter((load) => load.axle === axle && !load.lifted));
  const ready = down.find(({ name }) => name === 'unladen')?.axles.find((load) => load.axle === axle);
  const limitKg = loads.find((load) => load.limitKg !== undefined)?.limitKg;
  const [x0, x1] = [1 + NAME_MM, widthMm - WORDS_MM];
  const name = textMark('labels', 'name-strong', [1, y + BAR_MM / 2], w('drawn.axle', { id: axle }), { id: axle });
  const says = (words: string): Mark => textMark('labels', 'name', [x1 + 3, y + BAR_MM / 2], words);
  if (loads.length === 0 || limitKg === undefined || ready === undefined) return [name, says(w('drawn.load.none'))];
  const heaviestKg = Math.max(...loads.map((load) => load.loadKg));
  const full = Math.max(limitKg, heaviestKg) * 1.05;
  const x = (kg: number): number => x0 + ((x1 - x0) * Math.max(0, kg)) / full;
  return [
    name,
    rectangle('structure', 'gauge-most', { x0, y0: y, x1: x(heaviestKg), y1: y + BAR_MM }),
    rectangle('panels', 'gauge-ready', { x0, y0: y + BAR_MM * 0.2, x1: x(ready.loadKg), y1: y + BAR_MM * 0.8 }),
    line('nodes', 'limit', [
      [x(limitKg), y - 1],
      [x(limitKg), y + BAR_MM + 1],
    ]),
    ...SHARES.flatMap((share) => tickAt(x(limitKg * share), y + BAR_MM, share)),
    says(w('drawn.load.of', { load: mass(heaviestKg, units), limit: massDown(limitKg, units) })),
  ];
}
