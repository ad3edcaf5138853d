import type { Assessment } from '../../assess.js';
import { type Surface, surfacesInOrder, surfaceWords } from '../../compute/access/surfaces.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Panel } from '../../records/index.js';
import { readerOf } from '../../words/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { chassisEnd, chassisPlan, chassisSide } from '../marks/chassis.js';
import { openingMarks } from '../marks/openings.js';
import { outsideOf, panelAnchor, panelMark, panelPlaces, panelsOfSurface, surfaceOf } from '../marks/panels.js';
import { shellBox } from '../marks/shell-box.js';
import { viewOfSurface } from '../projection.js';
import type { Mark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { phraseFor, wordsFor } from '../wording.js';

export const FACE_WORDS: Readonly<Record<Facing, string>> = {
  up: 'roof',
  down: 'underside',
  left: 'left side',
  right: 'right side',
  front: 'front',
  rear: 'rear',
};

/** Words for the surface that a panel belongs to: `left side`, `right wall, inside`, `ceiling`. */
export const faceWords = ({ model }: Assessment, panel: Panel): string => surfaceWords(surfaceOf(panel, model));

/** Where every panel is: one drawing a surface that has any, from outside, then from inside. */
export function panelsDrawings(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  return surfacesInOrder(a.model).flatMap((surface) => {
    // An end is no higher than this, its blank strips included: front and rear then share a page, near the scale of the sides.
    const end = ['front', 'rear', 'partition'].includes(surface.side);
    return (
      panelsOfOneSurface(
        a,
        surface,
        { ...sheet, heightMm: end ? Math.max(sheet.heightMm * 0.61, Math.min(sheet.heightMm, LEAST_END_MM)) : sheet.heightMm },
        options,
      ) ?? []
    );
  });
}

/** What an end needs to be drawn as large as a side, mm. */
const LEAST_END_MM = 62;

/** The wall or partition whose openings a surface shows. */
export const openingsOf = (surface: Surface): Facing | Surface | undefined => {
  const { side, seenFrom, faces } = surface;
  if (side === 'partition') return surface;
  if (side === 'left' || side === 'right' || side === 'front' || side === 'rear') return side;
  return seenFrom === 'outside' ? faces : undefined;
};

/** `seen from inside`, with what a reader must know of how it lies. */
export function surfaceNote({ side, seenFrom }: Surface, model: Model): string {
  const w = wordsFor(model);
  if (side === 'underside') return w('drawn.seen.below');
  if (side === 'ceiling') return w('drawn.seen.ceiling');
  if (side === 'floor' || side === 'roof') return w('drawn.seen.above');
  return w(`drawn.seen.${seenFrom}`);
}

/** Ids of drawings: the outside faces keep the ones that books before had. */
export const surfaceId = ({ side, seenFrom, faces, planeMm }: Surface): string => {
  if (seenFrom === 'outside') return faces;
  return side === 'partition' ? `partition-${faces}-${Math.round(planeMm ?? 0)}` : `${side}-inside`;
};

function panelsOfOneSurface(a: Assessment, surface: Surface, sheet: SheetSize, options: DrawingOptions): Drawing | undefined {
  const { model } = a;
  const shell = shellExtent(model);
  const panels = panelsOfSurface(model, surface);
  if (panels.length === 0) return undefined;
  const view = viewOfSurface(surface);
  const w = wordsFor(model);
  const where = phraseFor(model)(surfaceWords(surface));
  const wall = openingsOf(surface);
  const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(shell)) }], sheet, {
    sideMm: 6,
    aboveMm: 8,
    belowMm: 8,
    mostMm: 30,
  });
  const port = layout.ports[0] as Port;
  const openings = wall ? openingMarks(model, wall, port) : { marks: [], wishes: [] };
  const wishes = panels.map(
    (panel): LabelWish => ({
      text: panel.id,
      anchor: panelAnchor(panel, port),
      style: panel.panelKind === 'access' ? 'id-strong' : 'id-large',
      priority: panel.panelKind === 'access' ? 70 : 40,
      id: panel.id,
      centred: true,
      ...(panel.panelKind === 'access' ? {} : { also: panelPlaces(panel, port) }),
    }),
  );
  const access = panels.filter((panel) => panel.panelKind === 'access').length;
  return compose(
    {
      id: `panels-${surfaceId(surface)}`,
      title: w('drawn.panels', { where }),
      alt: w('drawn.panels.alt', { where, seen: w(`drawn.panels.${surface.seenFrom}`), count: panels.length, access }),
      ...layout,
      front: view.front,
      units: model.shop.units,
      reader: readerOf(model.shop),
      marks: [...panels.map((panel) => panelMark(panel, port)), ...openings.marks],
      wishes: [...wishes, ...openings.wishes],
      notes: [w('drawn.panels.heavy'), surfaceNote(surface, model)],
      rest: w('drawn.rest.panels'),
    },
    options,
  );
}

/** Small: the face that a panel is on, with the panel dark. */
export function panelKeyPlan(a: Assessment, panelId: string, small: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const panel = model.shell.panels.find(({ id }) => id === panelId);
  const surface = panel ? surfaceOf(panel, model) : outsideOf('left');
  const { faces: face, seenFrom } = surface;
  const view = viewOfSurface(surface);
  const vehicle = vehicleExtent(model);
  const strips = { sideMm: 2, aboveMm: 1, belowMm: 1, mostMm: 1 };
  const bounds = viewBounds(view, extentCorners(vehicle));
  const layout = layOut([{ view, bounds }], small, strips, 'as large as it goes');
  const port = layout.ports[0] as Port;
  const { reduction: _reduction, ...placed } = layout;
  const others = panelsOfSurface(model, surface).filter(({ id }) => id !== panelId);
  const marks: Mark[] = [
    ...(seenFrom === 'inside' ? [shellBox(shellExtent(model), port, 'skin-line')] : chassisOf(face, model, vehicle, port)),
    ...others.map((other) => panelMark(other, port, other.panelKind === 'access' ? 'interior' : 'chassis', false, 'panels')),
    ...(panel ? keyMarks(panelMark(panel, port, 'subject', true, 'nodes'), panelAnchor(panel, port)) : []),
  ];
  const where = `${surfaceWords(surface)}${SEEN[surface.side] ?? ''}`;
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

/** How a surface is looked at that its name does not say. */
const SEEN: Partial<Record<Surface['side'], string>> = {
  underside: ', seen from below',
  ceiling: ', as in a mirror on the floor',
};

function chassisOf(face: Facing, model: Model, vehicle: Extent, port: Port): readonly Mark[] {
  if (face === 'left' || face === 'right') return chassisSide(model, vehicle, port);
  if (face === 'down') return chassisPlan(model, vehicle, port);
  return face === 'up' ? [] : chassisEnd(model, vehicle, port, face);
}

/** A panel too small to see at this scale gets a ring around it. */
function keyMarks(mark: Mark, at: readonly [number, number]): readonly Mark[] {
  const corners = mark.kind === 'shape' ? mark.rings.flat() : [];
  const reach = Math.max(0, ...corners.map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
  if (reach > 4) return [mark];
  return [mark, { kind: 'circle', layer: 'nodes', pen: 'measured', center: at, radiusMm: reach + 1.6 }];
}
