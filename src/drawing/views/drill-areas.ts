import type { Assessment } from '../../assess.js';
import { type Surface, surfaceKey, surfaceWords } from '../../compute/access/surfaces.js';
import type { UnitSystem } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';
import { type ScrewArea, type Screws, screwAreas } from '../../query/release/index.js';
import { readerOf } from '../../words/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { openingMarks } from '../marks/openings.js';
import { panelMiddle, surfaceOf } from '../marks/panels.js';
import { nearness, viewOfSurface } from '../projection.js';
import { RUNNING_MM, runningAcross, runningUp } from '../running-dimensions.js';
import { type Mark, overlaps, type Point, type Rect, rectAbout, rectangle, textMark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import type { PenName, TextStyleName } from '../styles.js';
import { capitalsMm, textWidthMm } from '../text-width.js';
import { phraseFor, wordsFor } from '../wording.js';
import { openingsOf, surfaceId, surfaceNote } from './panels.js';

/** Lengths of screws that one buys, and what is printed for each; the longest that is safe all over an area is printed. */
const US_SCREWS = [
  [0.5, '½'],
  [0.75, '¾'],
  [1, '1'],
  [1.5, '1½'],
  [2, '2'],
  [3, '3'],
] as const;
const METRIC_SCREWS = [12, 16, 20, 25, 30, 40, 50, 75] as const;
const screwsIn = (units: UnitSystem): readonly { readonly mm: number; readonly words: string }[] =>
  units === 'metric'
    ? METRIC_SCREWS.map((mm) => ({ mm, words: String(mm) }))
    : US_SCREWS.map(([inches, words]) => ({ mm: inches * MM_PER_IN, words }));

/** What the figures along the edges count from. */
const DRILL_EDGES = {
  us: { front: 'drawn.drill.edges.us', left: 'drawn.drill.edges.left.us' },
  metric: { front: 'drawn.drill.edges.metric', left: 'drawn.drill.edges.left.metric' },
} as const;

/**
 * A face as it is drilled, divided into areas of six inches, each with the longest screw that meets nothing recorded in it; every edge
 * that can be seen has its distance from the end of the face.
 */
export function drillAreas(
  a: Assessment,
  map: Screws,
  surface: Surface,
  sheet: SheetSize,
  options: DrawingOptions = {},
): Drawing | undefined {
  const { model } = a;
  const { units } = model.shop;
  const view = viewOfSurface(surface);
  // The farthest first: what lies nearer is painted over it.
  const sheets = map.sheets
    .filter(({ panel }) => surfaceKey(surfaceOf(panel, model)) === surfaceKey(surface))
    .sort((p, q) => nearness(view, panelMiddle(p.panel)) - nearness(view, panelMiddle(q.panel)));
  if (sheets.length === 0) return undefined;
  const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(shellExtent(model))) }], sheet, {
    sideMm: RUNNING_MM,
    aboveMm: 5,
    belowMm: RUNNING_MM,
    mostMm: 6,
  });
  const port = layout.ports[0] as Port;
  const lengths = screwsIn(units);
  const longestIn = ({ depthMm }: ScrewArea): number => lengths.findLastIndex(({ mm }) => mm <= depthMm);
  const wall = openingsOf(surface);
  const openings = wall ? openingMarks(model, wall, port).marks : [];
  const holes = openings.flatMap((mark) => (mark.kind === 'shape' ? (rectAbout(mark.rings.flat()) ?? []) : []));
  const marks: Mark[] = [...openings];
  const wishes: LabelWish[] = [];
  const outlines = sheets.map(({ panel }) => rectAbout(panel.outline.map(port.place)) as Rect);
  sheets.forEach((one, at) => {
    const outline = outlines[at] as Rect;
    const before = [...holes, ...outlines.slice(at + 1)];
    for (const { rect, level } of merged(screwAreas(map, one), longestIn, port))
      marks.push(...areaMarks(rect, before, lengths, level));
    marks.push(rectangle('panels', 'skin-line', outline, one.panel.id));
    wishes.push(sheetWish(one.panel.id, outline));
  });
  const edges = [...outlines, ...holes];
  const frame = edges.reduce(union);
  const w = wordsFor(model);
  const where = phraseFor(model)(surfaceWords(surface));
  const metric = units === 'metric';
  const { reduction } = layout;
  return compose(
    {
      id: `drill-${surfaceId(surface)}`,
      title: w('drawn.drill', { where }),
      alt: w(metric ? 'drawn.drill.alt.metric' : 'drawn.drill.alt.us', { where }),
      ...layout,
      front: view.front,
      units,
      reader: readerOf(model.shop),
      marks: [
        ...marks,
        ...runningAcross(frame, { edges: acrossFrom(view.front, frame, edges), reduction, units }),
        ...runningUp(frame, { edges: [frame.y1, ...edges.flatMap(({ y0, y1 }) => [y0, y1])], reduction, units }),
      ],
      wishes,
      notes: [
        surfaceNote(surface, model),
        w(metric ? 'drawn.drill.metric' : 'drawn.drill.us'),
        w(DRILL_EDGES[metric ? 'metric' : 'us'][view.front === 'none' ? 'left' : 'front']),
      ],
    },
    options,
  );
}

/** From the end that lies to the front, else from the left. */
function acrossFrom(front: 'left' | 'right' | 'none', { x0, x1 }: Rect, edges: readonly Rect[]): readonly number[] {
  return [front === 'right' ? x1 : x0, ...edges.flatMap((one) => [one.x0, one.x1])];
}

/** A sheet's id points at the middle of its edge from outside, where there is room. */
const sheetWish = (id: string, { x0, x1, y0, y1 }: Rect): LabelWish => ({
  text: id,
  anchor: [(x0 + x1) / 2, y0],
  also: [0.5, 0.25, 0.75, 0.1, 0.9].flatMap((share): readonly Point[] => [
    [x0 + (x1 - x0) * share, y0],
    [x0 + (x1 - x0) * share, y1],
  ]),
  style: 'id-large',
  priority: 50,
  id,
  clearMm: 0.6,
});

interface Tile {
  readonly rect: Rect;
  readonly level: number;
}

/** Neighbours with the same answer become one rectangle: along a row first, then rows that begin and end alike. */
function merged(areas: readonly ScrewArea[], levelOf: (area: ScrewArea) => number, port: Port): readonly Tile[] {
  const byRow = new Map<number, ScrewArea[]>();
  for (const one of areas) byRow.set(one.row, [...(byRow.get(one.row) ?? []), one]);
  const done: Strip[] = [];
  let open: Strip[] = [];
  for (const [row, inRow] of [...byRow].sort(([x], [y]) => x - y)) {
    const strips = stripsOf(inRow, levelOf, port);
    for (const strip of strips) {
      const above = open.find((one) => one.lastRow === row - 1 && isAlike(one, strip));
      if (above) {
        strip.rect = union(above.rect, strip.rect);
        open = open.filter((one) => one !== above);
      }
      strip.lastRow = row;
    }
    done.push(...open);
    open = strips;
  }
  return [...done, ...open];
}

interface Strip {
  rect: Rect;
  readonly level: number;
  readonly first: number;
  last: number;
  lastRow: number;
}

const isAlike = (x: Strip, y: Strip): boolean => x.level === y.level && x.first === y.first && x.last === y.last;
const union = (x: Rect, y: Rect): Rect => ({
  x0: Math.min(x.x0, y.x0),
  y0: Math.min(x.y0, y.y0),
  x1: Math.max(x.x1, y.x1),
  y1: Math.max(x.y1, y.y1),
});

function stripsOf(inRow: readonly ScrewArea[], levelOf: (area: ScrewArea) => number, port: Port): Strip[] {
  const strips: Strip[] = [];
  for (const one of [...inRow].sort((x, y) => x.column - y.column)) {
    const level = levelOf(one);
    const rect = rectAbout(one.corners.map(port.place)) as Rect;
    const before = strips.at(-1);
    if (before && before.level === level && before.last === one.column - 1) {
      before.rect = union(before.rect, rect);
      before.last = one.column;
    } else strips.push({ rect, level, first: one.column, last: one.column, lastRow: one.row });
  }
  return strips;
}

/** Clear space about a figure in its area, mm. */
const CLEAR_MM = 0.2;
/** Figures are as high as the ids where the area has room for it. */
const FIGURE_STYLES = ['id-large', 'name'] as const;
const CROSS_STYLES = ['id-strong', 'name-strong'] as const;

/**
 * An area with its figure. Where its own figure finds no room the next shorter screw whose figure does is printed, and where none does
 * the area is dark: never a longer one.
 */
function areaMarks(
  rect: Rect,
  holes: readonly Rect[],
  lengths: readonly { readonly words: string }[],
  level: number,
): readonly Mark[] {
  const seen = besideHoles(rect, holes);
  const middle: Point = [(seen.x0 + seen.x1) / 2, (seen.y0 + seen.y1) / 2];
  for (let shown = level; shown >= -1; shown--) {
    const words = shown < 0 ? 'X' : (lengths[shown]?.words ?? '');
    const fitting = (shown < 0 ? CROSS_STYLES : FIGURE_STYLES).flatMap((style) => fits(words, style, seen) ?? [])[0];
    if (!fitting && shown >= 0) continue;
    const pen: PenName = shown < 0 ? 'area-none' : shown < 2 ? 'area-short' : 'area-free';
    const area = rectangle('panels', pen, rect);
    return fitting
      ? [area, textMark('labels', fitting.style, middle, words, { anchor: 'middle', upright: fitting.upright })]
      : [area];
  }
  return [rectangle('panels', 'area-none', rect)];
}

/** The largest part of an area beside the openings that are cut into it. */
function besideHoles(rect: Rect, holes: readonly Rect[]): Rect {
  let left = rect;
  for (const hole of holes) {
    if (!overlaps(left, hole)) continue;
    const { x0, x1, y0, y1 } = left;
    const parts: readonly Rect[] = [
      { x0, y0, y1, x1: hole.x0 },
      { x0: hole.x1, y0, y1, x1 },
      { x0, y0, y1: hole.y0, x1 },
      { x0, y0: hole.y1, y1, x1 },
    ];
    left = parts.reduce((best, part) => (areaOf(part) > areaOf(best) ? part : best));
  }
  return left;
}

const areaOf = ({ x0, x1, y0, y1 }: Rect): number => Math.max(0, x1 - x0) * Math.max(0, y1 - y0);

/** How a figure lies within its area, across or upright. */
function fits(
  words: string,
  style: TextStyleName,
  rect: Rect,
): { readonly style: TextStyleName; readonly upright: boolean } | undefined {
  const [wide, high] = [rect.x1 - rect.x0 - 2 * CLEAR_MM, rect.y1 - rect.y0 - 2 * CLEAR_MM];
  const [long, tall] = [textWidthMm(words, style), capitalsMm(style)];
  if (long <= wide && tall <= high) return { style, upright: false };
  return long <= high && tall <= wide ? { style, upright: true } : undefined;
}
