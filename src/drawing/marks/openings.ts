import { type Surface, surfaceKey, surfacesInOrder } from '../../compute/access/surfaces.js';
import { add, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Opening } from '../../records/index.js';
import type { LabelWish } from '../labels.js';
import { type Mark, type Point, rectArea } from '../scene.js';
import type { Port } from '../sheet.js';
import { phraseFor } from '../wording.js';

/** Corners of an opening: along its sill, then up by its height. Without a sill on record: none. */
function openingOutline(opening: Opening): readonly Vec3[] {
  const [from, to] = opening.sill;
  if (!from || !to) return [];
  const up = scale([0, 0, 1], opening.heightMm);
  return [from, to, add(to, up), add(from, up)];
}

/** An opening whose sill lies this near to a partition’s plane is in it, mm: half of a thick partition, and the tape. Project default. */
const IN_PARTITION_MM = 75;

/** The partitions that an opening is in, each from both of its sides; none for one in an outside wall. */
function partitionsOf({ sill, wall }: Opening, partitions: readonly Surface[]): readonly Surface[] {
  if (sill.length < 2 || (wall !== undefined && wall.toLowerCase() !== 'partition')) return [];
  return partitions.filter(({ faces, planeMm = Infinity }) => {
    const axis = faces === 'front' || faces === 'rear' ? 0 : 1;
    return sill.every((at) => Math.abs(at[axis] - planeMm) <= IN_PARTITION_MM);
  });
}

/** The wall that an opening is in: as typed where it names a face, else by where its sill lies. */
export function openingFace(opening: Opening): Facing | undefined {
  const word = opening.wall?.toLowerCase();
  const named = (['left', 'right', 'front', 'rear', 'up', 'down'] as const).find((face) => face === word);
  if (named) return named;
  if (word === 'roof') return 'up';
  if (word === 'partition') return undefined;
  const [from, to] = opening.sill;
  if (!from || !to) return undefined;
  if (Math.abs(to[0] - from[0]) >= Math.abs(to[1] - from[1])) return (from[1] + to[1]) / 2 < 0 ? 'left' : 'right';
  return (from[0] + to[0]) / 2 < 0 ? 'front' : 'rear';
}

/** Openings of a wall, or of a partition. */
export function openingMarks(
  model: Model,
  of: Facing | Surface,
  port: Port,
): { readonly marks: readonly Mark[]; readonly wishes: readonly LabelWish[] } {
  const partitions = surfacesInOrder(model).filter(({ side }) => side === 'partition');
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  for (const opening of model.shell.openings) {
    const within = partitionsOf(opening, partitions);
    const isHere =
      typeof of === 'string'
        ? within.length === 0 && openingFace(opening) === of
        : within.some((one) => surfaceKey(one) === surfaceKey(of));
    if (!isHere) continue;
    const ring = openingOutline(opening).map(port.place);
    if (ring.length < 4) continue;
    marks.push(rectArea('hidden', 'opening', ring, opening.id));
    const middle: Point = [ring.reduce((sum, p) => sum + p[0], 0) / 4, ring.reduce((sum, p) => sum + p[1], 0) / 4];
    wishes.push({
      text: `${phraseFor(model)(opening.openingKind)} ${opening.id}`,
      anchor: middle,
      style: 'name',
      priority: 65,
      id: opening.id,
      centred: true,
    });
  }
  return { marks, wishes };
}
