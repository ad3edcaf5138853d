import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import { MEDIA, type Medium, type ServiceNode } from '../../model/services.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { legendMarks } from '../legend.js';
import { chassisPlan, chassisSide } from '../marks/chassis.js';
import { componentMarks } from '../marks/equipment.js';
import { runMarks } from '../marks/services.js';
import { memberContext } from '../marks/structure.js';
import { VIEWS } from '../projection.js';
import type { Mark } from '../scene.js';
import { layOut, type SheetSize } from '../sheet.js';
import { NODE_SYMBOL_MM, nodeMarks } from '../symbols.js';
import { shorten } from '../text-width.js';

/** Components that matter to a rescuer by what they are called; nodes count by their kind. */
const DANGER = /batter|cylinder|propane|lpg|\bgas\b|generator|inverter|fuel|disconnect|shore|solar/iu;
const SWITCH = /disconnect|shut-?off|isolat|main|emergency|master/iu;
/** Of water, air and hydraulics only what stops all of it. */
const MAIN = /\bmain\b|\bmaster\b|emergency/iu;
const LONGEST_NAME_MM = 38;
/** What must not be cut into: drawn as lines. */
const DANGEROUS_MEDIA: readonly Medium[] = ['gas', 'ac'];

/** Plan over left side: energy sources, shut-offs and disconnects, gas and mains lines. */
export function emergencyPlan(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const { shell } = model;
  const vehicle = vehicleExtent(model);
  const corners = extentCorners(vehicle);
  const layout = layOut(
    [
      { view: VIEWS.plan, bounds: viewBounds(VIEWS.plan, corners) },
      { view: VIEWS.left, bounds: viewBounds(VIEWS.left, corners) },
    ],
    sheet,
    { sideMm: 8, aboveMm: 7, belowMm: 6, mostMm: 14 },
  );
  const nodes = shell.nodes.filter(isForRescue);
  const components = shell.components.filter(({ name }) => DANGER.test(name));
  const runs = shell.runs.filter((run) => DANGEROUS_MEDIA.includes(run.medium) && !run.abandoned);
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const port of layout.ports) {
    const plan = port.view === VIEWS.plan;
    marks.push(...(plan ? chassisPlan : chassisSide)(model, vehicle, port), ...memberContext(shell.members, model.library, port));
    marks.push(...runMarks(runs, port, { labelled: false }).marks);
    for (const component of components) marks.push(...componentMarks(component, port));
    for (const node of nodes) marks.push(...nodeMarks(node, port.place(node.at)));
    const named = (text: string, id: string, at: Vec3, priority: number): LabelWish => ({
      text,
      anchor: port.place(at),
      style: priority > 70 ? 'name-strong' : 'name',
      priority: plan ? priority : priority - 30,
      id,
      clearMm: NODE_SYMBOL_MM,
    });
    wishes.push(...nodes.map((node) => named(nameOf(node), node.id, node.at, node.nodeKind === 'source' ? 90 : 80)));
    wishes.push(...components.map((component) => named(component.name, component.id, component.at, 70)));
  }
  const media = MEDIA.filter(
    (medium) => runs.some((run) => run.medium === medium) || nodes.some((node) => node.medium === medium),
  );
  return compose(
    {
      id: 'emergency',
      title: 'For an emergency',
      alt: `Plan and left side with ${nodes.filter(({ nodeKind }) => nodeKind === 'source').length} energy sources, the shut-offs and disconnects, and the way of gas and mains lines.`,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + 7 },
      front: 'left',
      units: model.shop.units,
      marks: [...marks],
      legend: legendMarks(media, ['source', 'panel', 'valve'], [2, 3], sheet.widthMm - 4),
      wishes,
      notes: [
        'Above: plan, right (kerb) side up. Below: from the left. Lines: gas and mains as recorded; other wiring is not shown. Places as recorded, not proven safe to cut.',
      ],
      rest: 'in the shut-off table',
    },
    options,
  );
}

const isForRescue = (node: ServiceNode): boolean => {
  if (node.nodeKind === 'source') return true;
  const power = node.medium === 'ac' || node.medium === 'dc';
  if (node.nodeKind === 'panel') return power;
  if (node.nodeKind === 'valve' && node.medium === 'gas') return true;
  return (power || node.medium === 'gas' ? SWITCH : MAIN).test(node.name ?? '');
};

const nameOf = (node: ServiceNode): string => {
  const name = shorten(node.name ?? node.nodeKind, 'name-strong', LONGEST_NAME_MM);
  return name.includes(node.id) ? name : `${name} ${node.id}`;
};
