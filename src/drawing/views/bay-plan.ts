import type { Assessment } from '../../assess.js';
import { massDown, volume } from '../../quantity/format.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { axleWishes, chassisNote, chassisPlan } from '../marks/chassis.js';
import { shellBox } from '../marks/shell-box.js';
import { VIEWS } from '../projection.js';
import { circle, type Mark, type Point, rectArea, rectangle } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { wordsFor } from '../wording.js';

/** For the owner: where bays, tanks, seats and axles are, with what each bay may take. */
export function bayPlan(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const { shell } = model;
  const vehicle = vehicleExtent(model);
  const layout = layOut([{ view: VIEWS.plan, bounds: viewBounds(VIEWS.plan, extentCorners(vehicle)) }], sheet, {
    sideMm: 8,
    aboveMm: 14,
    belowMm: 14,
    mostMm: 26,
  });
  const port = layout.ports[0] as Port;
  const marks: Mark[] = [...chassisPlan(model, vehicle, port), shellBox(shellExtent(model), port, 'skin-line')];
  const wishes: LabelWish[] = [...axleWishes(model, port, (x) => [x, vehicle.low[1], 0])];
  for (const tank of shell.tanks) {
    const at = port.place(tank.at);
    marks.push(circle('equipment', 'equipment', at, 2.4, tank.id));
    wishes.push({
      text: `${tank.id}: ${tank.contents}, ${volume(tank.capacityM3, model.shop.units)}`,
      anchor: at,
      style: 'name',
      priority: 70,
      id: tank.id,
      clearMm: 2.4,
    });
  }
  for (const seat of shell.seats) {
    const at = port.place(seat.at);
    marks.push(rectArea('equipment', 'mark', seatRing(at), seat.id));
    wishes.push({
      text: `seat ${seat.id}${seat.belted ? '' : ' (no belt)'}`,
      anchor: at,
      style: 'name',
      priority: 60,
      id: seat.id,
      clearMm: 2,
    });
  }
  for (const bay of shell.bays) {
    const at = port.place(bay.at);
    const allowance = a.figures.weights.bays.find(({ id }) => id === bay.id);
    const least = leastOf(bay.limitKg, allowance?.allowanceKg);
    marks.push(
      rectangle('equipment', 'equipment-strong', { x0: at[0] - 2.6, y0: at[1] - 2.6, x1: at[0] + 2.6, y1: at[1] + 2.6 }, bay.id),
    );
    const words = `${bay.name ?? bay.id}: ${least === undefined ? 'no limit on record' : `up to ${massDown(least, model.shop.units)}`}`;
    wishes.push({ text: words, anchor: at, style: 'name-strong', priority: 90, id: bay.id, clearMm: 2.6 });
  }
  return compose(
    {
      id: 'bay-plan',
      title: 'Bays, tanks, seats and axles',
      alt: `Plan of shell ${shell.id} with ${shell.bays.length} bays and what each may take, ${shell.tanks.length} tanks and ${shell.seats.length} seats.`,
      ...layout,
      front: 'left',
      units: model.shop.units,
      marks,
      wishes,
      notes: [
        wordsFor(model)('drawn.kerb.up'),
        'Squares: bays. Circles: tanks. A bay’s figure is the most it may take with the others empty.',
        chassisNote(model),
      ],
      rest: 'in the tables',
    },
    options,
  );
}

const leastOf = (...values: readonly (number | undefined)[]): number | undefined => {
  const known = values.filter((value) => value !== undefined);
  return known.length === 0 ? undefined : Math.max(0, Math.min(...known));
};

/** A seat from above, its back to the rear. */
const seatRing = ([x, y]: Point): readonly Point[] => [
  [x - 1.8, y - 1.5],
  [x + 1, y - 1.5],
  [x + 1.8, y - 1.8],
  [x + 1.8, y + 1.8],
  [x + 1, y + 1.5],
  [x - 1.8, y + 1.5],
];
