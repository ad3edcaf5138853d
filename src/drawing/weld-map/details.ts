import type { Assessment } from '../../assess.js';
import { compose, type DrawingOptions } from '../compose.js';
import { clipMarks } from '../halves.js';
import type { LabelWish } from '../labels.js';
import { project, type View } from '../projection.js';
import { circle, growRect, type Mark, type Point, type Rect, rectAbout, rectangle, textMark } from '../scene.js';
import { FURNITURE_MM, fittingScale, type Port, type SheetSize } from '../sheet.js';
import type { SymbolKinds } from '../weld-symbol/kinds.js';
import { pointDistance } from './crowds.js';
import type { MapSheet } from './map-sheet.js';
import { type MapView, membersWithin } from './map-views.js';
import { mapMembers, memberNames, numberWishes, type PlacedPoint, symbolNote, symbolWishes, weldDots } from './marks.js';
import { type WeldPoint, weldsOf } from './points.js';

/** Welds that stand too close together for their numbers, drawn again at a larger scale. */
export interface Detail {
  readonly letter: string;
  readonly points: readonly WeldPoint[];
}

/** A ring about a crowded place in the main view, with the letter of its detail. */
export function detailRing(crowd: readonly PlacedPoint[], letter: string): { readonly mark: Mark; readonly wish: LabelWish } {
  const box = rectAbout(crowd.map(({ at }) => at)) as Rect;
  const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const radius = Math.max(...crowd.map(({ at }) => pointDistance(at, middle))) + 1.6;
  return {
    mark: circle('labels', 'weld-ring', middle, radius),
    wish: { text: `detail ${letter}`, anchor: middle, style: 'name-strong', priority: 70, clearMm: radius },
  };
}

const MOST_COLUMNS = 3;
const MOST_ROWS = 2;
/** Height of a row that is alone on its sheet, mm. */
const ONE_ROW_MM = 105;
/** Room around a detail for its numbers, mm. */
const CELL_SIDE_MM = 14;
const CELL_STRIP_MM = 9;
/** What is drawn around the welds of a detail, mm of the vehicle. */
const AROUND_MM = 60;

/** The details of one view, all at one scale. */
export function detailSheets(
  a: Assessment,
  map: MapView,
  details: readonly Detail[],
  kinds: SymbolKinds,
  sheet: SheetSize,
  options: DrawingOptions,
): readonly MapSheet[] {
  const perSheet = MOST_COLUMNS * MOST_ROWS;
  const count = Math.ceil(details.length / perSheet);
  return Array.from({ length: count }, (_, k) => {
    const part = count > 1 ? `, sheet ${k + 1} of ${count}` : '';
    return detailSheet(a, map, details.slice(k * perSheet, (k + 1) * perSheet), part, kinds, sheet, options);
  });
}

function detailSheet(
  a: Assessment,
  map: MapView,
  details: readonly Detail[],
  part: string,
  kinds: SymbolKinds,
  sheet: SheetSize,
  options: DrawingOptions,
): MapSheet {
  const { model } = a;
  const style = { standard: model.shop.weldSymbols, units: model.shop.units };
  const { ports, bounds, reduction, heightMm } = cells(map.view, details, sheet);
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  details.forEach((detail, index) => {
    const port = ports[index] as Port;
    const near = membersWithin(map, bounds[index] as Rect, model);
    const placed = detail.points.map((point) => ({ point, at: port.place(point.at) }));
    marks.push(
      ...clipMarks(mapMembers(near.members, near.joined, model, port), port.frame),
      rectangle('furniture', 'weld-frame', port.frame),
      textMark('labels', 'name-strong', [port.frame.x0, port.frame.y0 - CELL_STRIP_MM + 2], `Detail ${detail.letter}`),
      ...weldDots(placed),
    );
    wishes.push(...numberWishes(placed), ...memberNames(placed, [...near.members, ...near.joined], model, port));
  });
  const placed = details.flatMap((detail, index) =>
    detail.points.map((point) => ({ point, at: (ports[index] as Port).place(point.at) })),
  );
  const title = `${map.stageName}, ${map.name}, details${part}`;
  const drawing = compose(
    {
      id: `weld-map-${map.stage}-${map.name}-details${part}`.replaceAll(/[ ,]+/gu, '-'),
      title,
      alt: `Weld map of ${title}: ${details.length} crowded places at a larger scale, each with the numbers of its welds.`,
      widthMm: sheet.widthMm,
      heightMm,
      reduction,
      room: { x0: 1, y0: 1, x1: sheet.widthMm - 1, y1: heightMm - FURNITURE_MM },
      front: map.view.front,
      units: model.shop.units,
      marks,
      wishes: [...symbolWishes(placed, kinds, style), ...wishes],
      notes: [symbolNote(style)],
      rest: 'in the schedule',
    },
    options,
  );
  return { ...drawing, stage: map.stage, welds: weldsOf(placed.map(({ point }) => point)) };
}

interface Cells {
  readonly ports: readonly Port[];
  /** What each shows of the view's plane, mm of the vehicle. */
  readonly bounds: readonly Rect[];
  readonly reduction: number;
  readonly heightMm: number;
}

/** Details side by side in rows, at the largest scale at which the widest of them fits its cell. */
function cells(view: View, details: readonly Detail[], sheet: SheetSize): Cells {
  const bounds = details.map(({ points }) => growRect(rectAbout(points.map(({ at }) => project(view, at))) as Rect, AROUND_MM));
  const columns = Math.min(MOST_COLUMNS, details.length);
  const rows = Math.ceil(details.length / MOST_COLUMNS);
  const cellWidth = (sheet.widthMm - 2) / columns;
  const highMm = sheet.heightMm - FURNITURE_MM - 2;
  const cellHeight = rows === 1 ? Math.min(ONE_ROW_MM, highMm) : highMm / rows;
  const reduction = fittingScale(
    Math.max(...bounds.map((rect) => rect.x1 - rect.x0)),
    Math.max(...bounds.map((rect) => rect.y1 - rect.y0)),
    cellWidth - 2 * CELL_SIDE_MM,
    cellHeight - 2 * CELL_STRIP_MM,
  );
  const ports = bounds.map((rect, index): Port => {
    const [width, height] = [(rect.x1 - rect.x0) / reduction, (rect.y1 - rect.y0) / reduction];
    const x0 = 1 + (index % columns) * cellWidth + (cellWidth - width) / 2;
    const y0 = 1 + Math.floor(index / columns) * cellHeight + CELL_STRIP_MM;
    const placeFlat = ([x, up]: Point): Point => [x0 + (x - rect.x0) / reduction, y0 + (rect.y1 - up) / reduction];
    return { view, frame: { x0, y0, x1: x0 + width, y1: y0 + height }, placeFlat, place: (at) => placeFlat(project(view, at)) };
  });
  return { ports, bounds, reduction, heightMm: Math.ceil(rows * cellHeight + FURNITURE_MM + 2) };
}
