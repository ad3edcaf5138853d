import { add, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Opening } from '../../records/index.js';
import type { LabelWish } from '../labels.js';
import { type Mark, type Point, rectArea } from '../scene.js';
import type { Port } from '../sheet.js';

/** Corners of an opening: along its sill, then up by its height. Without a sill on record: none. */
export function openingOutline(opening: Opening): readonly Vec3[] {
  const [from, to] = opening.sill;
  if (!from || !to) return [];
  const up = scale([0, 0, 1], opening.heightMm);
  return [from, to, add(to, up), add(from, up)];
}

/** The wall that an opening is in: as typed where it names a face, else by where its sill lies. */
export function openingFace(opening: Opening): Facing | undefined {
  const word = opening.wall?.toLowerCase();
  const named = (['left', 'right', 'front', 'rear', 'up', 'down'] as const).find((face) => face === word);
  if (named) return named;
  if (word === 'roof') return 'up';
  const [from, to] = opening.sill;
  if (!from || !to) return undefined;
  if (Math.abs(to[0] - from[0]) >= Math.abs(to[1] - from[1])) return (from[1] + to[1]) / 2 < 0 ? 'left' : 'right';
  return (from[0] + to[0]) / 2 < 0 ? 'front' : 'rear';
}

export function openingMarks(
  model: Model,
  face: Facing,
  port: Port,
): { readonly marks: readonly Mark[]; readonly wishes: readonly LabelWish[] } {
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const opening of model.shell.openings) {
    if (openingFace(opening) !== face) continue;
    const ring = openingOutline(opening).map(port.place);
    if (ring.length < 4) continue;
    marks.push(rectArea('hidden', 'opening', ring, opening.id));
    const middle: Point = [ring.reduce((sum, p) => sum + p[0], 0) / 4, ring.reduce((sum, p) => sum + p[1], 0) / 4];
    wishes.push({
      text: `${opening.openingKind} ${opening.id}`,
      anchor: middle,
      style: 'name',
      priority: 65,
      id: opening.id,
      centred: true,
    });
  }
  return { marks, wishes };
}
