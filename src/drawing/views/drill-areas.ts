import type { Assessment } from '../../assess.js';
import { type Surface, surfaceKey, surfaceWords } from '../../compute/access/surfaces.js';
import type { UnitSystem } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';
import { type ScrewArea, type Screws, screwAreas } from '../../query/release/index.js';
import { readerOf } from '../../words/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, viewBounds } from '../extent.js';
import { openingMarks } from '../marks/openings.js';
import { surfaceOf } from '../marks/panels.js';
import { viewOfSurface } from '../projection.js';
import { type Mark, type Point, type Rect, rectAbout, rectangle, textMark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import type { PenName } from '../styles.js';
import { textWidthMm } from '../text-width.js';
import { phraseFor, wordsFor } from '../wording.js';
import { openingsOf, surfaceId, surfaceNote } from './panels.js';

/** Lengths of screws that one buys, and what is printed for each; the longest that is safe all over an area is printed. */
const US_SCREWS = [
  [0.5, '1/2'],
  [0.75, '3/4'],
  [1, '1'],
  [1.5, '1-1/2'],
  [2, '2'],
  [3, '3'],
] as const;
const METRIC_SCREWS = [12, 16, 20, 25, 30, 40, 50, 75] as const;
const screwsIn = (units: UnitSystem): readonly { readonly mm: number; readonly words: string }[] =>
  units === 'metric'
    ? METRIC_SCREWS.map((mm) => ({ mm, words: String(mm) }))
    : US_SCREWS.map(([inches, words]) => ({ mm: inches * MM_PER_IN, words }));

/** A sheet as it is drilled, divided into areas of six inches, each with the longest screw that meets nothing recorded in it. */
export function drillAreas(
  a: Assessment,
  map: Screws,
  surface: Surface,
  sheet: SheetSize,
  options: DrawingOptions = {},
): Drawing | undefined {
  const { model } = a;
  const { units } = model.shop;
  const sheets = map.sheets.filter(({ panel }) => surfaceKey(surfaceOf(panel, model)) === surfaceKey(surface));
  if (sheets.length === 0) return undefined;
  const view = viewOfSurface(surface);
  const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(shellExtent(model))) }], sheet, {
    sideMm: 3,
    aboveMm: 6,
    belowMm: 3,
    mostMm: 6,
  });
  const port = layout.ports[0] as Port;
  const lengths = screwsIn(units);
  const longestIn = ({ depthMm }: ScrewArea): number => lengths.findLastIndex(({ mm }) => mm <= depthMm);
  const marks: Mark[] = [];
  for (const one of sheets) {
    const outline = rectAbout(one.panel.outline.map(port.place)) as Rect;
    for (const { rect, level } of merged(screwAreas(map, one), longestIn, port)) marks.push(...areaMarks(rect, lengths, level));
    marks.push(rectangle('outlines', 'edge', outline, one.panel.id));
    const panelId = textMark('labels', 'id', [outline.x0 + 1, outline.y0 - 1.8], one.panel.id, { id: one.panel.id });
    if (textWidthMm(one.panel.id, 'id') < outline.x1 - outline.x0) marks.push(panelId);
  }
  const wall = openingsOf(surface);
  const w = wordsFor(model);
  const where = phraseFor(model)(surfaceWords(surface));
  return compose(
    {
      id: `drill-${surfaceId(surface)}`,
      title: w('drawn.drill', { where }),
      alt: w(units === 'metric' ? 'drawn.drill.alt.metric' : 'drawn.drill.alt.us', { where }),
      ...layout,
      front: view.front,
      units,
      reader: readerOf(model.shop),
      marks: [...(wall ? openingMarks(model, wall, port).marks : []), ...marks],
      wishes: [],
      notes: [surfaceNote(surface, model), w(units === 'metric' ? 'drawn.drill.metric' : 'drawn.drill.us')],
    },
    options,
  );
}

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

/** What a figure needs of a rectangle each way, mm. */
const FIGURE_MM = 3.2;

function areaMarks(rect: Rect, lengths: readonly { readonly words: string }[], level: number): readonly Mark[] {
  const pen: PenName = level < 0 ? 'area-none' : level < 2 ? 'area-short' : 'area-free';
  const words = level < 0 ? 'X' : (lengths[level]?.words ?? '');
  const middle: Point = [(rect.x0 + rect.x1) / 2, (rect.y0 + rect.y1) / 2];
  const [wide, high] = [rect.x1 - rect.x0, rect.y1 - rect.y0];
  const needs = textWidthMm(words, 'name-strong') + 0.6;
  const upright = needs > wide && high > wide;
  const fits = Math.min(wide, high) >= FIGURE_MM && (upright ? high : wide) >= needs;
  const area = rectangle('panels', pen, rect);
  if (!fits) return [area];
  return [area, textMark('labels', level < 0 ? 'name-strong' : 'name', middle, words, { anchor: 'middle', upright })];
}
