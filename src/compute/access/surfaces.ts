import { type Bounds, boundsOf } from '../../geometry/box.js';
import { type Facet, facet, height, inFacet, isInPolygon } from '../../geometry/facet.js';
import { dot, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { type Facing, OUTWARD, type Panel } from '../../records/index.js';
import { ofModel } from '../lazy.js';

export const SIDES = ['left', 'right', 'front', 'rear', 'roof', 'ceiling', 'floor', 'underside', 'partition'] as const;
export type Side = (typeof SIDES)[number];

/** The surface that a panel belongs to, and from where a person looks at it. */
export interface Surface {
  readonly side: Side;
  readonly seenFrom: 'inside' | 'outside';
  /** The way that the seen face looks. */
  readonly faces: Facing;
  /** Of a partition: where its plane stands along that axis, mm. Partitions within {@link SAME_PLANE_MM} are one. */
  readonly planeMm?: number;
}

/** A sheet so near to the plane of another is of the same surface, mm. */
const SAME_PLANE_MM = 25;
/** A lining stands within this of the outermost sheet of its side; what stands further in is a partition, mm. Project default. */
const WALL_MM = 250;

/** Surfaces of all panels by id: of what a panel is let into, else by its kind, the way it faces and where it stands. */
export const surfaces = ofModel('surfaces', surfacesOf);

function surfacesOf({ shell: { panels } }: Model): ReadonlyMap<string, Surface> {
  if (panels.length === 0) return new Map();
  const byId = new Map(panels.map((panel) => [panel.id, panel] as const));
  const sheets = panels.flatMap((panel): readonly Sheet[] => {
    const flat = facet(panel.outline);
    return flat ? [{ panel, flat }] : [];
  });
  const outer = boundsOf(panels.flatMap(({ outline }) => outline));
  const flats = new Map(sheets.map(({ panel, flat }) => [panel.id, flat] as const));
  const hosts = sheets.filter(({ panel }) => panel.panelKind !== 'access');
  return new Map(
    panels.map((panel) => {
      const host = hostOf(panel, byId) ?? hostByPlace(panel, flats.get(panel.id), hosts) ?? panel;
      return [panel.id, ownSurface(host, flats.get(host.id), outer)] as const;
    }),
  );
}

interface Sheet {
  readonly panel: Panel;
  readonly flat: Facet;
}

/** The last of the chain of `of`; a chain that runs in a circle ends where it would begin again. */
function hostOf(panel: Panel, byId: ReadonlyMap<string, Panel>): Panel | undefined {
  const seen = new Set([panel.id]);
  let host: Panel | undefined;
  for (let next = panel.of; next !== undefined && !seen.has(next); ) {
    const found = byId.get(next);
    if (!found) break;
    seen.add(next);
    host = found;
    next = found.of;
  }
  return host;
}

/** An access panel that names no host is taken to be in the sheet that it lies on. */
function hostByPlace(panel: Panel, flat: Facet | undefined, hosts: readonly Sheet[]): Panel | undefined {
  if (panel.panelKind !== 'access' || !flat) return undefined;
  let best: Panel | undefined;
  let least = SAME_PLANE_MM;
  for (const { panel: host, flat: sheet } of hosts) {
    const away = Math.abs(height(flat.center, sheet));
    if (
      away > least ||
      Math.abs(dot(flat.normal, sheet.normal)) < 0.95 ||
      !isInPolygon(inFacet(flat.center, sheet), sheet.outline)
    )
      continue;
    // A sheet that the panel looks out of, before one close behind it.
    if (best && away === least && host.facing !== panel.facing) continue;
    [best, least] = [host, away];
  }
  return best;
}

const BY_AXIS = [
  ['front', 'rear'],
  ['left', 'right'],
  ['down', 'up'],
] as const;
type Axis = 0 | 1 | 2;

function ownSurface(panel: Panel, flat: Facet | undefined, outer: Bounds): Surface {
  const axis = axisOf(panel, flat);
  const at = (flat?.center ?? panel.outline[0] ?? ([0, 0, 0] as Vec3))[axis];
  const beyond = at > (outer.min[axis] + outer.max[axis]) / 2;
  const away = BY_AXIS[axis][beyond ? 1 : 0];
  const back = BY_AXIS[axis][beyond ? 0 : 1];
  const kind = panel.panelKind;
  const facing = panel.facing && Math.abs(OUTWARD[panel.facing][axis]) === 1 ? panel.facing : undefined;
  if (kind === 'belly') return { side: 'underside', seenFrom: 'outside', faces: 'down' };
  if (kind === 'roof') return { side: 'roof', seenFrom: 'outside', faces: 'up' };
  if (kind === 'skin' || kind === 'cap') return outside(facing ?? away);
  if (kind === 'access' && (facing === undefined || facing === away)) return outside(facing ?? away);
  const faces = facing ?? back;
  if (axis === 2) return { side: faces === 'down' ? 'ceiling' : 'floor', seenFrom: 'inside', faces };
  const fromEdge = Math.min(at - outer.min[axis], outer.max[axis] - at);
  if (fromEdge > WALL_MM || faces === away) return { side: 'partition', seenFrom: 'inside', faces, planeMm: at };
  return { side: away as Side, seenFrom: 'inside', faces };
}

const OUTSIDE: Readonly<Record<Facing, Side>> = {
  up: 'roof',
  down: 'underside',
  left: 'left',
  right: 'right',
  front: 'front',
  rear: 'rear',
};

const outside = (faces: Facing): Surface => ({ side: OUTSIDE[faces], seenFrom: 'outside', faces });

/** The axis that a sheet stands across most; without an area, that of the way it faces. */
function axisOf({ facing }: Panel, flat: Facet | undefined): Axis {
  const normal = flat?.normal ?? OUTWARD[facing ?? 'left'];
  const sizes = normal.map(Math.abs);
  return sizes.indexOf(Math.max(...sizes)) as Axis;
}

/** Out of the face, towards who looks at it. */
export const outOf = ({ faces }: Surface): Vec3 => OUTWARD[faces];
/** Into the face, as a drill goes. */
export const intoFace = (surface: Surface): Vec3 => scale(outOf(surface), -1);

/** Surfaces that are drawn in one view have one key: `left outside`, `ceiling inside`, `partition rear 1200`. */
export const surfaceKey = ({ side, seenFrom, faces, planeMm }: Surface): string =>
  side === 'partition' ? `partition ${faces} ${Math.round((planeMm ?? 0) / SAME_PLANE_MM)}` : `${side} ${seenFrom}`;

/** `left side`, `left wall, inside`, `ceiling`, `partition, seen from the rear`. */
export function surfaceWords({ side, seenFrom, faces }: Surface): string {
  switch (side) {
    case 'roof':
    case 'ceiling':
    case 'floor':
    case 'underside':
      return side;
    case 'partition':
      return `partition, seen from the ${faces}`;
    case 'left':
    case 'right':
      return seenFrom === 'inside' ? `${side} wall, inside` : `${side} side`;
    default:
      return seenFrom === 'inside' ? `${side} wall, inside` : side;
  }
}

/** The surfaces that have any sheet: walking around the outside, over and under it, then inside, then partitions from the front. */
export function surfacesInOrder(model: Model): readonly Surface[] {
  const found = new Map<string, Surface>();
  for (const surface of surfaces(model).values()) {
    const key = surfaceKey(surface);
    if (!found.has(key)) found.set(key, surface);
  }
  const rank = (surface: Surface): number => ORDER.indexOf(`${surface.side} ${surface.seenFrom}`);
  return [...found.values()].sort(
    (a, b) => rank(a) - rank(b) || (a.planeMm ?? 0) - (b.planeMm ?? 0) || (a.faces < b.faces ? -1 : 1),
  );
}

const ORDER = [
  ...['left', 'right', 'front', 'rear', 'roof', 'underside'].map((side) => `${side} outside`),
  ...['left', 'right', 'front', 'rear', 'floor', 'ceiling', 'partition'].map((side) => `${side} inside`),
];
