import type { Assessment } from '../../assess.js';
import { FACINGS, type Facing, type Panel } from '../../model/structure.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { chassisEnd, chassisPlan, chassisSide } from '../marks/chassis.js';
import { openingMarks } from '../marks/openings.js';
import { faceOf, panelAnchor, panelMark, panelPlaces, panelsOfFace } from '../marks/panels.js';
import { VIEW_OF_FACE } from '../projection.js';
import type { Mark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';

export const FACE_WORDS: Readonly<Record<Facing, string>> = {
  up: 'roof',
  down: 'underside',
  left: 'left side',
  right: 'right side',
  front: 'front',
  rear: 'rear',
};

/** Words for the outside face that a panel belongs to: `left side`; nothing for a lining, and for one that faces no way squarely. */
export function faceWords({ model }: Assessment, panel: Panel): string | undefined {
  const face = faceOf(panel, shellExtent(model));
  return face && FACE_WORDS[face];
}

/** Faces in the order in which one walks around the vehicle, then over and under it. */
const ORDER: readonly Facing[] = ['left', 'right', 'front', 'rear', 'up', 'down'];

/** Where every skin, belly and access panel is: one drawing a face that has any. */
export function panelsDrawings(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  return ORDER.flatMap((face) => {
    // An end is no higher than this, its blank strips included: front and rear then share a page, near the scale of the sides.
    const high = face === 'front' || face === 'rear' ? sheet.heightMm * 0.61 : sheet.heightMm;
    return panelsOfOneFace(a, face, { ...sheet, heightMm: high }, options) ?? [];
  });
}

function panelsOfOneFace(a: Assessment, face: Facing, sheet: SheetSize, options: DrawingOptions): Drawing | undefined {
  const { model } = a;
  const shell = shellExtent(model);
  const panels = panelsOfFace(model.shell.panels, face, shell);
  if (panels.length === 0) return undefined;
  const view = VIEW_OF_FACE[face];
  const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(shell)) }], sheet, {
    sideMm: 6,
    aboveMm: 8,
    belowMm: 8,
    mostMm: 30,
  });
  const port = layout.ports[0] as Port;
  const openings = openingMarks(model, face, port);
  const wishes = panels.map(
    (panel): LabelWish => ({
      text: panel.id,
      anchor: panelAnchor(panel, port),
      style: panel.panelKind === 'access' ? 'id-strong' : 'id',
      priority: panel.panelKind === 'access' ? 70 : 40,
      id: panel.id,
      centred: true,
      ...(panel.panelKind === 'access' ? {} : { also: panelPlaces(panel, port) }),
    }),
  );
  const access = panels.filter((panel) => panel.panelKind === 'access').length;
  return compose(
    {
      id: `panels-${face}`,
      title: `Panels: ${FACE_WORDS[face]}`,
      alt: `Panels of the ${FACE_WORDS[face]} seen from outside: ${panels.length}, of which ${access} access panels (heavy outline), each with its id.`,
      ...layout,
      front: view.front,
      units: model.shop.units,
      marks: [...panels.map((panel) => panelMark(panel, port)), ...openings.marks],
      wishes: [...wishes, ...openings.wishes],
      notes: ['Heavy outline: access panel.', ...(face === 'down' ? ['Seen from below: left side up.'] : [])],
      rest: 'in the panel schedule',
    },
    options,
  );
}

/** Small: the face that a panel is on, with the panel dark. */
export function panelKeyPlan(a: Assessment, panelId: string, small: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const panel = model.shell.panels.find(({ id }) => id === panelId);
  const shell = shellExtent(model);
  const face = FACINGS.find((one) => panelsOfFace(panel ? [panel] : [], one, shell).length > 0) ?? 'left';
  const view = VIEW_OF_FACE[face];
  const vehicle = vehicleExtent(model);
  const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(vehicle)) }], small, {
    sideMm: 2,
    aboveMm: 1,
    belowMm: 1,
    mostMm: 1,
  });
  const port = layout.ports[0] as Port;
  const { reduction: _reduction, ...placed } = layout;
  const others = panelsOfFace(model.shell.panels, face, shell).filter(({ id }) => id !== panelId);
  const marks: Mark[] = [
    ...(face === 'left' || face === 'right' ? chassisSide(model, vehicle, port) : []),
    ...(face === 'down' ? chassisPlan(model, vehicle, port) : []),
    ...(face === 'front' || face === 'rear' ? chassisEnd(model, vehicle, port, face) : []),
    ...others.map((other) => panelMark(other, port, other.panelKind === 'access' ? 'interior' : 'chassis', false, 'panels')),
    ...(panel ? keyMarks(panelMark(panel, port, 'subject', true, 'nodes'), panelAnchor(panel, port)) : []),
  ];
  const where = `${FACE_WORDS[face]}${face === 'down' ? ', seen from below' : ''}`;
  return compose(
    {
      id: `key-${panelId}`,
      title: `${panelId} on the vehicle`,
      alt: panel ? `${panelId} is on the ${where}; it is the dark panel.` : `Panel ${panelId} is not on record.`,
      ...placed,
      front: view.front,
      units: model.shop.units,
      marks,
      wishes: [],
      notes: [`${where[0]?.toUpperCase()}${where.slice(1)}. Not to scale.`],
    },
    options,
  );
}

/** A panel too small to see at this scale gets a ring around it. */
function keyMarks(mark: Mark, at: readonly [number, number]): readonly Mark[] {
  const corners = mark.kind === 'shape' ? mark.rings.flat() : [];
  const reach = Math.max(0, ...corners.map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
  if (reach > 4) return [mark];
  return [mark, { kind: 'circle', layer: 'nodes', pen: 'measured', center: at, radiusMm: reach + 1.6 }];
}
