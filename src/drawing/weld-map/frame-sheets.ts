import type { Assessment } from '../../assess.js';
import { length } from '../../quantity/format.js';
import { compose, type DrawingOptions } from '../compose.js';
import type { LabelWish } from '../labels.js';
import { type Mark, textMark } from '../scene.js';
import type { Port, SheetSize } from '../sheet.js';
import { frameLayouts } from '../views/cross-frames.js';
import type { SymbolKinds } from '../weld-symbol/kinds.js';
import { wordsFor } from '../wording.js';
import type { MapSheet } from './map-sheet.js';
import type { MapFrames } from './map-views.js';
import { mapMembers, memberNames, numberWishes, symbolNote, symbolWishes, weldDots } from './marks.js';
import { weldsOf } from './points.js';

/** Clear strip above and below each frame for its numbers, mm. */
const STRIP_MM = 10;

/** The frames across the vehicle, each square on with the welds within it, as many to a sheet as go. */
export function frameSheets(
  a: Assessment,
  map: MapFrames,
  kinds: SymbolKinds,
  sheet: SheetSize,
  options: DrawingOptions,
): readonly MapSheet[] {
  const { model } = a;
  const style = { standard: model.shop.weldSymbols, units: model.shop.units };
  const layouts = frameLayouts(map.frames, model, sheet, STRIP_MM);
  return layouts.map(({ shown, layout }, k) => {
    const marks: Mark[] = [];
    const wishes: LabelWish[] = [];
    const placed = shown.flatMap((frame, index) => {
      const port = layout.ports[index] as Port;
      marks.push(...mapMembers(frame.members, [], model, port));
      marks.push(textMark('labels', 'note', [1.5, port.frame.y0 - STRIP_MM + 2], `at x ${length(frame.xMm, model.shop.units)}`));
      const own = frame.points.map((point) => ({ point, at: port.place(point.at) }));
      wishes.push(...memberNames(own, frame.members, model, port));
      return own;
    });
    wishes.push(...symbolWishes(placed, kinds, style), ...numberWishes(placed));
    const part = layouts.length > 1 ? `, sheet ${k + 1} of ${layouts.length}` : '';
    const title = `${map.stageName}, frames across the vehicle${part}`;
    const drawing = compose(
      {
        id: `weld-map-${map.stage}-cross-frames-${k + 1}`,
        title,
        alt: `Weld map of ${title}: ${shown.length} frames seen from the front, each with its place along the vehicle and the number of each weld in it.`,
        ...layout,
        front: 'none',
        units: model.shop.units,
        marks: [...marks, ...weldDots(placed)],
        wishes,
        notes: [`${wordsFor(model)('drawn.kerb.front')} x: rearward of the datum.`, symbolNote(style)],
        rest: 'in the schedule',
      },
      options,
    );
    return { ...drawing, stage: map.stage, welds: weldsOf(placed.map(({ point }) => point)) };
  });
}
