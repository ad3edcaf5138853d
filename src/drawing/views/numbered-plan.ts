import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Medium, ServiceNode } from '../../model/services.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { legendMarks } from '../legend.js';
import { chassisPlan, chassisSide } from '../marks/chassis.js';
import { openingMarks } from '../marks/openings.js';
import { shellBox } from '../marks/shell-box.js';
import { MEDIUM_STYLES } from '../media.js';
import { VIEWS } from '../projection.js';
import { area, circle, line, type Mark, type Point, text } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { singleLines } from '../single-lines.js';
import { NODE_SYMBOL_MM, nodeMarks } from '../symbols.js';

/** One place on the plan, with its number or letter in the list beside it. */
export interface NumberedItem {
  readonly label: string;
  readonly id: string;
  readonly at: Vec3;
  /** Drawn with the symbol of its kind; absent: a plain mark. */
  readonly node?: ServiceNode;
}

export interface NumberedPlan {
  readonly id: string;
  readonly title: string;
  readonly alt: string;
  readonly items: readonly NumberedItem[];
  /** Media whose lines are drawn besides. */
  readonly media: readonly Medium[];
  readonly note: string;
}

/** A line bears its letter where it is longer than this, mm on the sheet. */
const LETTER_FROM_MM = 22;

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
    { sideMm: 3, aboveMm: 5, belowMm: 1, mostMm: 3 },
  );
  const media = given.media.filter((medium) => drawnRuns(a, medium).length > 0);
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const port of layout.ports) {
    const plan = port.view === VIEWS.plan;
    marks.push(...(plan ? chassisPlan : chassisSide)(model, vehicle, port), shellBox(shell, port));
    if (!plan) marks.push(...openingMarks(model, 'left', port).marks.map(({ id: _id, ...mark }) => mark as Mark));
    for (const medium of media) marks.push(...lettered(a, medium, port));
    given.items.forEach((item, at) => {
      marks.push(...itemMarks(item, port.place(item.at)));
      wishes.push(numeral(item, port.place(item.at), 100 - at));
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
      marks,
      legend: legendMarks(media, [], [2, 3], sheet.widthMm - 4),
      wishes,
      notes: [given.note],
      rest: 'in the list',
    },
    options,
  );
}

const drawnRuns = (a: Assessment, medium: Medium) =>
  a.model.shell.runs.filter((run) => run.medium === medium && !run.abandoned && run.path.length >= 2);

function lettered(a: Assessment, medium: Medium, port: Port): readonly Mark[] {
  return singleLines(drawnRuns(a, medium).map((run) => run.path.map(port.place))).flatMap(([from, to]): readonly Mark[] => {
    const piece = line('runs', `run-${medium}`, [from, to]);
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < LETTER_FROM_MM) return [piece];
    const spot: Point = [from[0] + (to[0] - from[0]) * 0.4, from[1] + (to[1] - from[1]) * 0.4];
    return [piece, text('runs', 'letter', spot, MEDIUM_STYLES[medium].letter, { anchor: 'middle', backed: true })];
  });
}

const itemMarks = (item: NumberedItem, at: Point): readonly Mark[] =>
  item.node
    ? nodeMarks(item.node, at)
    : [
        circle('nodes', 'mark', at, NODE_SYMBOL_MM, item.id),
        area(
          'nodes',
          'mark-filled',
          [
            [at[0] - 0.5, at[1] - 0.5],
            [at[0] + 0.5, at[1] - 0.5],
            [at[0] + 0.5, at[1] + 0.5],
            [at[0] - 0.5, at[1] + 0.5],
          ],
          item.id,
        ),
      ];

/** Not a link: one that reads as a number is a page's. */
const numeral = (item: NumberedItem, anchor: Point, priority: number): LabelWish => ({
  text: item.label,
  anchor,
  style: 'numeral',
  priority,
  clearMm: NODE_SYMBOL_MM,
  disc: true,
});
