import { type Box, clipToBox } from '../../geometry/box.js';
import { planarPolygon } from '../../geometry/polygon.js';
import { add, distance, dot, lerp, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Panel, Zone } from '../../records/index.js';
import { zoneBoxes } from '../access/zones.js';
import type { Pixel } from '../camera/camera.js';
import { type Located, locateOn, type Meets } from '../camera/locate.js';
import { memberBoxesOf } from './in-sight.js';
import { ON_PLANE_MM } from './overlay.js';
import { PICKED_PX, type SolvedPhoto } from './solve-photo.js';

/** A place read from a picture, or why none can be. */
export type LocatedInPhoto = Located | { readonly why: 'not usable' | 'no surface' | 'other plane' | 'misses' };

/** Rays are followed this far, mm. */
const FAR_MM = 50_000;

/** The place on a panel, member or zone under a picture's point. In a zone: the middle of the way through it, and how far that is from its ends. */
export function locateInPhoto(model: Model, solved: SolvedPhoto, px: Pixel, id: string): LocatedInPhoto {
  const { fit } = solved;
  if (!solved.usable || !fit) return { why: 'not usable' };
  const surface = surfaceOf(model, id);
  if (!surface) return { why: 'no surface' };
  if (
    fit.method === 'plane' &&
    !surface.places.every((at) => Math.abs(dot(subtract(at, fit.plane.origin), fit.plane.normal)) <= ON_PLANE_MM)
  )
    return { why: 'other plane' };
  const found = locateOn(fit, px, surface.meets, PICKED_PX);
  if (!found) return { why: 'misses' };
  const depthMm = fit.method === 'camera' ? surface.halfWayMm(fit.camera.centre, found.at) : 0;
  return { at: found.at, uncertaintyMm: Math.hypot(found.uncertaintyMm, depthMm) };
}

interface Surface {
  readonly meets: Meets;
  /** Of it, to tell whether it lies in the plane of a picture. */
  readonly places: readonly Vec3[];
  /** Half of the way through it: the place may be anywhere on that. */
  halfWayMm(from: Vec3, at: Vec3): number;
}

function surfaceOf(model: Model, id: string): Surface | undefined {
  const { shell } = model;
  const entry = shell.byId.get(id);
  if (entry?.kind === 'panel') return flat((entry.record as Panel).outline);
  if (entry?.kind === 'member') {
    const member = shell.members.find((one) => one.id === id);
    if (member?.shape.kind === 'plate') return flat(member.shape.outline);
    const boxes = member ? memberBoxesOf(model, member) : [];
    return boxes.length === 0
      ? undefined
      : { meets: (from, along) => firstOf(boxes, from, along)?.near, places: boxes.flatMap(cornersOf), halfWayMm: () => 0 };
  }
  if (entry?.kind === 'zone') {
    const boxes = zoneBoxes(entry.record as Zone);
    const through = (from: Vec3, along: Vec3) => firstOf(boxes, from, along);
    return {
      meets: (from, along) => {
        const way = through(from, along);
        return way && lerp(way.near, way.far, 0.5);
      },
      places: boxes.flatMap(cornersOf),
      halfWayMm: (from, at) => {
        const way = through(from, unit(subtract(at, from)));
        return way ? distance(way.near, way.far) / 2 : 0;
      },
    };
  }
  return undefined;
}

function flat(outline: readonly Vec3[]): Surface | undefined {
  if (outline.length < 3) return undefined;
  const { normal, centroid, area } = planarPolygon(outline);
  if (area === 0) return undefined;
  return {
    places: outline,
    halfWayMm: () => 0,
    meets: (from, along) => {
      const towards = dot(along, normal);
      const by = dot(subtract(centroid, from), normal) / towards;
      return Math.abs(towards) > 1e-6 && by > 0 && by < FAR_MM ? add(from, scale(along, by)) : undefined;
    },
  };
}

/** Where a line of sight enters and leaves. */
interface Passage {
  readonly near: Vec3;
  readonly far: Vec3;
}

/** The passage that a line of sight meets first. */
const firstOf = (boxes: readonly Box[], from: Vec3, along: Vec3): Passage | undefined =>
  boxes
    .flatMap((box) => enters(from, along, box) ?? [])
    .reduce<Passage | undefined>((a, b) => (a && distance(from, a.near) <= distance(from, b.near) ? a : b), undefined);

function enters(from: Vec3, along: Vec3, box: Box): Passage | undefined {
  const to = add(from, scale(along, FAR_MM));
  const part = clipToBox(from, to, box);
  return part && { near: lerp(from, to, part[0]), far: lerp(from, to, part[1]) };
}

function cornersOf({ center, axes, half }: Box): readonly Vec3[] {
  const signs = [-1, 1];
  return signs.flatMap((a) =>
    signs.flatMap((b) =>
      signs.map((c) =>
        [a, b, c].reduce<Vec3>((at, sign, k) => add(at, scale(axes[k] as Vec3, sign * (half[k] as number))), center),
      ),
    ),
  );
}
