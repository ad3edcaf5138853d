import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Component, Medium, ServiceNode } from '../../records/index.js';
import { readerOf } from '../../words/index.js';
import { BADGE_HALF_MM, type Badge, badgeMarks } from '../badges.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import { type LabelWish, nearestPoint } from '../labels.js';
import { legendMarks } from '../legend.js';
import { chassisPlan, chassisSide } from '../marks/chassis.js';
import { boxRing } from '../marks/equipment.js';
import { openingMarks } from '../marks/openings.js';
import { RunLetters } from '../marks/run-letters.js';
import { shellBox } from '../marks/shell-box.js';
import { VIEWS } from '../projection.js';
import { circle, line, type Mark, type Point, rectArea, rectangle } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { singleLines } from '../single-lines.js';
import { NODE_SYMBOL_MM, nodeMarks } from '../symbols.js';
import { phraseFor, wordsFor } from '../wording.js';

/** One place on the plan, with its number or letter in the list beside it. */
export interface NumberedItem {
  readonly label: string;
  readonly id: string;
  readonly at: Vec3;
  /** Drawn with the symbol of its kind; absent: a plain mark. */
  readonly node?: ServiceNode;
  /** Its number stands in this shape; absent: in a ring. */
  readonly badge?: Badge;
}

export interface NumberedPlan {
  readonly id: string;
  readonly title: string;
  readonly alt: string;
  readonly items: readonly NumberedItem[];
  /** Media whose lines are drawn besides, each on a pale band: keep off. */
  readonly media: readonly ('gas' | 'ac')[];
  /** Parts that are drawn to their size. */
  readonly parts?: readonly Component[];
  readonly note: string;
}

/** Every number stands on the plan before any stands on the side view. */
const FIRST_VIEW = 1000;
/** A line bears its letter where it is longer than this, mm on the sheet. */
const LETTER_FROM_MM = 22;
const LETTER_AT = [0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;
/** Band under a line that must not be cut into, mm on the sheet. */
const BAND_MM = 2.4;

/** Plan over left side: the bare shell, and numbered places of things. */
export function numberedPlan(a: Assessment, sheet: SheetSize, given: NumberedPlan, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const shell = shellExtent(model);
  const vehicle = vehicleExtent(model);
  const corners = extentCorners(vehicle);
  const layout = layOut(
    [
      { view: VIEWS.plan, bounds: viewBounds(VIEWS.plan, corners) },
      { view: VIEWS.left, bounds: viewBounds(VIEWS.left, corners) },
    ],
    sheet,
    { sideMm: 2, aboveMm: 4, belowMm: 0, mostMm: 6 },
  );
  const media = given.media.filter((medium) => drawnRuns(a, medium).length > 0);
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const port of layout.ports) {
    const plan = port.view === VIEWS.plan;
    marks.push(...(plan ? chassisPlan : chassisSide)(model, vehicle, port), shellBox(shell, port));
    if (!plan) marks.push(...openingMarks(model, 'left', port).marks.map(({ id: _id, ...mark }) => mark as Mark));
    for (const { id, at, sizeMm } of given.parts ?? [])
      if (sizeMm) marks.push(rectArea('equipment', 'danger-box', boxRing(at, sizeMm, port), id));
    const letters = new RunLetters(given.items.map((item) => port.place(item.at)));
    for (const medium of media) marks.push(...lettered(a, medium, port, letters));
    given.items.forEach((item) => {
      marks.push(...itemMarks(item, port.place(item.at)));
      wishes.push((item.badge ? badge : numeral)(item, port.place(item.at), plan ? 2 * FIRST_VIEW : FIRST_VIEW));
    });
  }
  return compose(
    {
      id: given.id,
      title: given.title,
      alt: given.alt,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + 4 },
      front: 'left',
      units: model.shop.units,
      reader: readerOf(model.shop),
      marks,
      legend: legendMarks(media, [], [2, 2.2], sheet.widthMm - 4, phraseFor(model)),
      wishes,
      notes: [given.note],
      rest: wordsFor(model)('drawn.rest.list'),
    },
    options,
  );
}

const drawnRuns = (a: Assessment, medium: Medium) =>
  a.model.shell.runs.filter((run) => run.medium === medium && !run.abandoned && run.path.length >= 2);

function lettered(a: Assessment, medium: 'gas' | 'ac', port: Port, letters: RunLetters): readonly Mark[] {
  const lines = singleLines(drawnRuns(a, medium).map((run) => run.path.map(port.place)));
  const bands = lines.map((ends): Mark => ({ ...line('runs', `danger-${medium}`, ends), widthMm: BAND_MM }));
  const drawn = lines.flatMap(([from, to]): readonly Mark[] => {
    const piece = line('runs', `run-${medium}`, [from, to]);
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < LETTER_FROM_MM) return [piece];
    const spots = LETTER_AT.map((share): Point => [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
    return [piece, ...letters.at(medium, spots)];
  });
  return [...bands, ...drawn];
}

function itemMarks(item: NumberedItem, at: Point): readonly Mark[] {
  if (item.node) return nodeMarks(item.node, at);
  const half = 0.5;
  return [
    circle('nodes', 'mark', at, NODE_SYMBOL_MM, item.id),
    rectangle('nodes', 'mark-filled', { x0: at[0] - half, y0: at[1] - half, x1: at[0] + half, y1: at[1] + half }, item.id),
  ];
}

/** Not a link: one that reads as a number is a page's. */
const numeral = (item: NumberedItem, anchor: Point, priority: number): LabelWish => ({
  text: item.label,
  anchor,
  style: 'numeral',
  priority,
  clearMm: NODE_SYMBOL_MM,
  disc: true,
});

function badge(item: NumberedItem, anchor: Point, priority: number): LabelWish {
  const shape = item.badge as Badge;
  const half = BADGE_HALF_MM[shape];
  return {
    text: item.label,
    anchor,
    style: 'badge',
    priority,
    clearMm: NODE_SYMBOL_MM,
    block: {
      widthMm: 2 * half,
      heightMm: 2 * half,
      leaderFrom: (box) => nearestPoint(box, anchor),
      marks: (box) => {
        const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
        // To the middle: a pointed shape does not fill the corners of its room.
        const leader = [line('leaders', 'badge-leader', [anchor, middle]), circle('leaders', 'leader-dot', anchor, 0.3)];
        return [...leader, ...badgeMarks(shape, item.label, middle)];
      },
    },
  };
}
