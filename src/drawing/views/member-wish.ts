import type { Model } from '../../model/shell.js';
import type { Member } from '../../records/index.js';
import { stationAt } from '../../sections/solids.js';
import type { LabelWish } from '../labels.js';
import { holds, type Point } from '../scene.js';
import type { Port } from '../sheet.js';
import { silhouette } from '../visibility.js';

/** Where along a member its id may stand, the middle first. */
const ALONG = [0.5, 0.38, 0.62, 0.25, 0.75, 0.12, 0.88] as const;

/** A member's id somewhere along it, if any of it is within the view. */
export function memberWish(member: Member, model: Model, port: Port): readonly LabelWish[] {
  const solid = silhouette(member, model.library, port.view);
  if (!solid) return [];
  const { shape } = member;
  const ring = solid.ring.map(port.placeFlat);
  const middle: Point = [
    ring.reduce((sum, point) => sum + point[0], 0) / ring.length,
    ring.reduce((sum, point) => sum + point[1], 0) / ring.length,
  ];
  const places = shape.kind === 'line' ? ALONG.map((share) => port.place(stationAt(shape, share).at)) : [middle];
  const [anchor, ...also] = places.filter((place) => holds(port.frame, place));
  return anchor ? [{ text: member.id, anchor, also, style: 'id', priority: 30, id: member.id }] : [];
}
