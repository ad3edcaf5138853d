import type { Assessment } from '../../assess.js';
import type { Medium } from '../../model/services.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { legendMarks } from '../legend.js';
import { chassisPlan, chassisSide } from '../marks/chassis.js';
import { openingMarks } from '../marks/openings.js';
import { shellBox } from '../marks/shell-box.js';
import { MEDIUM_STYLES } from '../media.js';
import { VIEWS } from '../projection.js';
import { type RescueItem, rescueItems } from '../rescue.js';
import { area, circle, line, type Mark, type Point, text } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { singleLines } from '../single-lines.js';
import { NODE_SYMBOL_MM, nodeMarks } from '../symbols.js';

/** What must not be cut into: drawn as lines. */
const DANGEROUS_MEDIA: readonly Medium[] = ['gas', 'ac'];
/** A line bears its letter where it is longer than this, mm on the sheet. */
const LETTER_FROM_MM = 22;

/** Plan over left side: the bare shell, what a rescuer shuts or keeps away from by its number in the list, gas and mains lines. */
export function emergencyPlan(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
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
  const { items } = rescueItems(model.shell);
  const media = DANGEROUS_MEDIA.filter((medium) =>
    model.shell.runs.some((run) => run.medium === medium && !run.abandoned && run.path.length >= 2),
  );
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const port of layout.ports) {
    const plan = port.view === VIEWS.plan;
    marks.push(...(plan ? chassisPlan : chassisSide)(model, vehicle, port), shellBox(shell, port));
    if (!plan) marks.push(...openingMarks(model, 'left', port).marks.map(({ id: _id, ...mark }) => mark as Mark));
    for (const medium of media) marks.push(...dangerLines(a, medium, port));
    for (const item of items) {
      marks.push(...itemMarks(item, port.place(item.at)));
      wishes.push(numeral(item, port.place(item.at)));
    }
  }
  return compose(
    {
      id: 'emergency',
      title: 'Where it is',
      alt: `Plan and left side with ${items.length} numbered things to shut, to switch off or to keep away from: ${items
        .map(({ number, name }) => `${number} ${name}`)
        .join(', ')}; and the way of gas and mains lines.`,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + 4 },
      front: 'left',
      units: model.shop.units,
      marks,
      legend: legendMarks(media, [], [2, 3], sheet.widthMm - 4),
      wishes,
      notes: [
        'Above: plan, right (kerb) side up. Below: from the left. Lines: gas and mains as recorded; other wiring is not shown. No place is proven safe to cut.',
      ],
      rest: 'in the list',
    },
    options,
  );
}

function dangerLines(a: Assessment, medium: Medium, port: Port): readonly Mark[] {
  const runs = a.model.shell.runs.filter((run) => run.medium === medium && !run.abandoned && run.path.length >= 2);
  return singleLines(runs.map((run) => run.path.map(port.place))).flatMap(([from, to]): readonly Mark[] => {
    const piece = line('runs', `run-${medium}`, [from, to]);
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < LETTER_FROM_MM) return [piece];
    const spot: Point = [from[0] + (to[0] - from[0]) * 0.4, from[1] + (to[1] - from[1]) * 0.4];
    return [piece, text('runs', 'letter', spot, MEDIUM_STYLES[medium].letter, { anchor: 'middle', backed: true })];
  });
}

const itemMarks = (item: RescueItem, at: Point): readonly Mark[] =>
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
const numeral = (item: RescueItem, anchor: Point): LabelWish => ({
  text: String(item.number),
  anchor,
  style: 'numeral',
  priority: 100 - item.number,
  clearMm: NODE_SYMBOL_MM,
  disc: true,
});
