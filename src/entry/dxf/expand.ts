import { add, cross, norm, scale, unit, type Vec3 } from '../../geometry/vector.js';
import type { DxfDrawing, DxfEntity } from './read.js';

/** A straight piece, or an outline, in the drawing’s own place; blocks are laid out where they were put. */
export interface DxfShape {
  readonly is: 'line' | 'outline';
  readonly layer: string;
  readonly line: number;
  readonly points: readonly Vec3[];
  readonly said: Readonly<Record<string, string>>;
}

export interface DxfShapes {
  readonly shapes: readonly DxfShape[];
  /** What was left out, in words → how many. */
  readonly left: ReadonlyMap<string, number>;
}

const DEEPEST = 16;
const MOST_SHAPES = 100_000;

/** A place and two directions; the third follows. Columns of the matrix, then what is added. */
interface Frame {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
  readonly at: Vec3;
}

const WORLD: Frame = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], at: [0, 0, 0] };
const put = ({ x, y, z, at }: Frame, [a, b, c]: Vec3): Vec3 => add(add(scale(x, a), scale(y, b)), add(scale(z, c), at));
const turn = (frame: Frame, v: Vec3): Vec3 => put({ ...frame, at: [0, 0, 0] }, v);

/** Axes of the plane with a normal, by the format’s arbitrary axis rule: near the world’s Z the X axis is from Y, else from Z. */
function planeOf(normal: Vec3 | undefined): Frame {
  if (normal === undefined || norm(normal) === 0) return WORLD;
  const z = unit(normal);
  const x = unit(cross(Math.abs(z[0]) < 1 / 64 && Math.abs(z[1]) < 1 / 64 ? [0, 1, 0] : [0, 0, 1], z));
  return { x, y: cross(z, x), z, at: [0, 0, 0] };
}

/** Lays every block out where it was put. A block within itself is left out, and told. */
export function expandDrawing({ entities, blocks }: DxfDrawing): DxfShapes {
  const shapes: DxfShape[] = [];
  const left = new Map<string, number>();
  const leave = (what: string): void => void left.set(what, (left.get(what) ?? 0) + 1);
  let puts = 0;

  const walk = (
    list: readonly DxfEntity[],
    frame: Frame,
    layer: string | undefined,
    said: DxfShape['said'],
    within: readonly string[],
  ): void => {
    for (const entity of list) {
      if (shapes.length >= MOST_SHAPES || puts > MOST_SHAPES) {
        leave('pieces beyond the first 100,000');
        return;
      }
      // What lies on layer 0 of a block is on the layer that the block was put on.
      const own = entity.layer === '0' && layer !== undefined ? layer : entity.layer;
      if (entity.type === 'INSERT') insert(entity, frame, own, within);
      else shape(entity, frame, own, { ...said, ...entity.said });
    }
  };

  const insert = (entity: DxfEntity, frame: Frame, layer: string, within: readonly string[]): void => {
    const name = entity.block ?? '';
    const block = blocks.get(name);
    if (!block) {
      leave('inserts of a block that is not in the drawing');
      return;
    }
    if (within.includes(name)) {
      leave('blocks within themselves');
      return;
    }
    if (within.length >= DEEPEST) {
      leave('blocks deeper than 16 levels');
      return;
    }
    const { columns = 1, rows = 1, across = 0, along = 0 } = entity.grid ?? {};
    if (columns * rows > 1000) {
      leave('inserts in more than 1000 copies');
      return;
    }
    const plane = planeOf(entity.normal);
    const angle = ((entity.turnDeg ?? 0) * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const [sx, sy, sz] = entity.scale ?? [1, 1, 1];
    const turned = { x: [cos, sin, 0], y: [-sin, cos, 0] } as const;
    const axes = {
      x: turn(frame, turn(plane, scale(turned.x, sx))),
      y: turn(frame, turn(plane, scale(turned.y, sy))),
      z: turn(frame, turn(plane, [0, 0, sz])),
    };
    for (let i = 0; i < columns; i++) {
      for (let j = 0; j < rows; j++) {
        puts++;
        const shift = add(scale(turned.x, i * across), scale(turned.y, j * along));
        const at = put(frame, turn(plane, add(entity.points[0] as Vec3, shift)));
        const based = { ...axes, at };
        const copies = columns * rows > 1 ? {} : entity.said;
        walk(block.entities, { ...based, at: put(based, scale(block.base, -1)) }, layer, copies, [...within, name]);
      }
    }
  };

  const shape = (entity: DxfEntity, frame: Frame, layer: string, said: DxfShape['said']): void => {
    if (entity.bulged) {
      leave('polylines with arcs');
      return;
    }
    const plane = planeOf(entity.normal);
    const points = withoutRepeats(
      entity.points.map((point) => put(frame, entity.normal ? turn(plane, point) : point)),
      entity.closed,
    );
    const base = { layer, line: entity.line, said };
    if (entity.closed && points.length >= 3) shapes.push({ ...base, is: 'outline', points });
    else if (points.length >= 2) {
      for (let i = 1; i < points.length; i++) {
        const own = points.length === 2 ? said : said.is === undefined ? {} : { is: `length of a ${said.is}` };
        shapes.push({ ...base, said: own, is: 'line', points: [points[i - 1] as Vec3, points[i] as Vec3] });
      }
    } else leave('pieces without a length');
  };

  walk(entities, WORLD, undefined, {}, []);
  return { shapes, left };
}

/** A face of three corners has its last one twice; a closed line may end where it began. */
function withoutRepeats(points: readonly Vec3[], closed: boolean): readonly Vec3[] {
  const kept = points.filter((point, i) => i === 0 || !same(point, points[i - 1] as Vec3));
  const [first, last] = [kept[0], kept.at(-1)];
  return closed && kept.length > 1 && first && last && same(first, last) ? kept.slice(0, -1) : kept;
}

const same = (a: Vec3, b: Vec3): boolean => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < 1e-9;
