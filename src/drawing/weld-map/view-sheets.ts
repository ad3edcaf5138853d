import type { Assessment } from '../../assess.js';
import { compose, type DrawingOptions } from '../compose.js';
import { viewBounds } from '../extent.js';
import { clipMarks, isThin } from '../halves.js';
import type { LabelWish } from '../labels.js';
import { project } from '../projection.js';
import { growRect, type Mark, type Rect } from '../scene.js';
import { type Layout, layOut, type Port, type SheetSize } from '../sheet.js';
import { memberCorners } from '../visibility.js';
import { letterFor, type SymbolKinds } from '../weld-symbol/kinds.js';
import { crowds } from './crowds.js';
import { type Detail, detailRing, detailSheets } from './details.js';
import type { MapSheet } from './map-sheet.js';
import { type MapView, membersWithin } from './map-views.js';
import { mapMembers, memberNames, numberWishes, type PlacedPoint, symbolNote, symbolWishes, weldDots } from './marks.js';
import { type WeldPoint, weldsOf } from './points.js';

/** More welds than this are not numbered on one sheet: they would be too small to find. */
const MOST_POINTS = 56;
/** Times the least number of parts: where numbers find no room, or too many go into details, more parts are tried. */
const CUT_AGAIN = [1, 1.4, 2, 3] as const;
/** Share of a view's welds that may go into details. */
const FEW_CROWDED = 0.15;
/** A cut may lie this share of a part's welds away from its even place, to fall into a gap. */
const NEAR_SHARE = 0.12;
/** Parts of a view share this much of it at the cut. */
const SHARED = 0.015;

/** One elevation or plan, in as many sheets as its numbers need to stand apart; a long thin one in two that share a page. */
export function viewSheets(
  a: Assessment,
  map: MapView,
  kinds: SymbolKinds,
  sheet: SheetSize,
  options: DrawingOptions,
): readonly MapSheet[] {
  const corners = [...map.members, ...map.joined].flatMap((member) => memberCorners(member, a.model.library));
  const bounds = viewBounds(map.view, [...corners, ...map.points.map(({ at }) => at)]);
  const least = Math.max(isThin(bounds, map.points.length) ? 2 : 1, Math.ceil(map.points.length / MOST_POINTS));
  let best: Tried | undefined;
  for (const times of CUT_AGAIN) {
    const tried = partSheets(a, map, cutInto(bounds, map, Math.ceil(least * times)), kinds, sheet, options);
    if (!best || worse(best, tried)) best = tried;
    if (best.leftOut === 0 && best.crowded <= FEW_CROWDED * map.points.length) break;
  }
  return best?.sheets ?? [];
}

/** Sheets of a view cut into some number of parts, and what speaks against that number. */
interface Tried {
  readonly sheets: readonly MapSheet[];
  /** Numbers that found no room. */
  readonly leftOut: number;
  /** Welds that went into details. */
  readonly crowded: number;
}

const worse = (one: Tried, other: Tried): boolean =>
  one.leftOut !== other.leftOut ? one.leftOut > other.leftOut : one.crowded > other.crowded;

/** The parts that have welds, then the details of all of them. */
function partSheets(
  a: Assessment,
  map: MapView,
  parts: readonly MapPart[],
  kinds: SymbolKinds,
  sheet: SheetSize,
  options: DrawingOptions,
): Tried {
  const details: Detail[] = [];
  const sheets = parts
    .filter(({ points }) => points.length > 0)
    .map((part) => {
      const size = { widthMm: sheet.widthMm, heightMm: heightFor(part, sheet) };
      const layout = layOut([{ view: map.view, bounds: part.bounds }], size, ROOM);
      const port = layout.ports[0] as Port;
      const placed = part.points.map((point) => ({ point, at: port.place(point.at) }));
      const crowded = crowds(placed).map((crowd) => {
        const detail = { letter: letterFor(details.length), points: crowd.map(({ point }) => point) };
        details.push(detail);
        return { crowd, ...detailRing(crowd, detail.letter) };
      });
      return partSheet(a, map, { part, layout, port, placed, crowded }, kinds, options);
    });
  const all = details.length > 0 ? [...sheets, ...detailSheets(a, map, details, kinds, sheet, options)] : sheets;
  return {
    sheets: all,
    leftOut: all.reduce((sum, one) => sum + (one.leftOut?.length ?? 0), 0),
    crowded: details.reduce((sum, { points }) => sum + points.length, 0),
  };
}

interface MapPart {
  readonly bounds: Rect;
  readonly suffix: string;
  readonly points: readonly WeldPoint[];
}

/** The view cut across into parts with about as many welds each; each weld belongs to one of them. */
function cutInto(bounds: Rect, { view, points }: MapView, count: number): readonly MapPart[] {
  const along = (point: WeldPoint): number => project(view, point.at)[0];
  const sorted = [...points].sort((a, b) => along(a) - along(b));
  const cuts = Array.from({ length: count - 1 }, (_, k) =>
    cutNear(sorted.map(along), ((k + 1) * points.length) / count, points.length / count),
  );
  const edges = [bounds.x0, ...cuts, bounds.x1];
  const shared = SHARED * (bounds.x1 - bounds.x0);
  const parts = edges.slice(1).map((x1, k): MapPart => {
    const x0 = edges[k] as number;
    const place = view.front === 'right' ? count - k : k + 1;
    return {
      bounds: { ...bounds, x0: k === 0 ? x0 : x0 - shared, x1: k === count - 1 ? x1 : x1 + shared },
      suffix: count === 1 ? '' : `, part ${place} of ${count}${view.front === 'none' ? '' : ' from the front'}`,
      points: points.filter((point) => (k === 0 || along(point) >= x0) && (k === count - 1 || along(point) < x1)),
    };
  });
  return view.front === 'right' ? parts.reverse() : parts;
}

/** Middle of the widest gap between neighbours near a place in the row: what stands close together stays on one sheet. */
function cutNear(sorted: readonly number[], wanted: number, perPart: number): number {
  const reach = Math.max(1, Math.round(perPart * NEAR_SHARE));
  const from = Math.max(1, Math.round(wanted) - reach);
  const to = Math.min(sorted.length - 1, Math.round(wanted) + reach);
  let best = from;
  const gap = (k: number): number => (sorted[k] as number) - (sorted[k - 1] as number);
  for (let k = from; k <= to; k++) if (gap(k) > gap(best) + 1e-6) best = k;
  return ((sorted[best] as number) + (sorted[best - 1] as number)) / 2;
}

/** Strips around the view for numbers and symbols, mm. */
const ROOM = { sideMm: 14, aboveMm: 8, belowMm: 8, mostMm: 34 };
/** A few welds do not need the whole sheet: two such views then share one. */
const LEAST_HIGH_MM = 82;
const HIGH_PER_POINT_MM = 3;
/** Of a thin strip: its view, and a row of numbers on each side. */
const STRIP_MM = 70;

function heightFor({ bounds, points }: MapPart, sheet: SheetSize): number {
  // Half of a thin view is not thin by itself.
  if (isThin({ ...bounds, x1: bounds.x1 + (bounds.x1 - bounds.x0) }, 2 * points.length))
    return Math.min(sheet.heightMm, STRIP_MM);
  return Math.min(sheet.heightMm, Math.max(LEAST_HIGH_MM, 62 + HIGH_PER_POINT_MM * points.length));
}

interface OnSheet {
  readonly part: MapPart;
  readonly layout: Layout;
  readonly port: Port;
  readonly placed: readonly PlacedPoint[];
  readonly crowded: readonly { readonly crowd: readonly PlacedPoint[]; readonly mark: Mark; readonly wish: LabelWish }[];
}

function partSheet(
  a: Assessment,
  map: MapView,
  { part, layout, port, placed, crowded }: OnSheet,
  kinds: SymbolKinds,
  options: DrawingOptions,
): MapSheet {
  const { model } = a;
  const apart = new Set(crowded.flatMap(({ crowd }) => crowd));
  const numbered = placed.filter((one) => !apart.has(one));
  const style = { standard: model.shop.weldSymbols, units: model.shop.units };
  const title = `${map.stageName}, ${map.name}${part.suffix}`;
  const near = membersWithin(map, part.bounds, model);
  const members = clipMarks(mapMembers(near.members, near.joined, model, port), growRect(port.frame, 0.5));
  const drawing = compose(
    {
      id: `weld-map-${map.stage}-${map.name}${part.suffix}`.replaceAll(/[ ,]+/gu, '-'),
      title,
      alt: `Weld map of ${title}, ${map.view.name} view: ${placed.length} welded joints, each with the number of its weld, over the members in light line.`,
      ...layout,
      front: map.view.front,
      units: model.shop.units,
      marks: [...members, ...weldDots(placed), ...crowded.map(({ mark }) => mark)],
      wishes: [
        ...symbolWishes(numbered, kinds, style),
        ...numberWishes(numbered),
        ...crowded.map(({ wish }) => wish),
        ...memberNames(placed, [...near.members, ...near.joined], model, port),
      ],
      notes: [symbolNote(style), ...(crowded.length > 0 ? ['Ringed: see the sheet of details.'] : [])],
      rest: 'in the schedule',
    },
    options,
  );
  return { ...drawing, stage: map.stage, welds: weldsOf(numbered.map(({ point }) => point)) };
}
