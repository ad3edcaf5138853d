import { linePath } from '../../compute/solids.js';
import { dot, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { KindName, Member } from '../../records/index.js';
import { type DrawingTap, flatIn } from './drawing.js';

/** Something that may have been meant by a tap. */
export interface TapCandidate<T> {
  readonly what: T;
  /** Its line or outline, or the one place of it. */
  readonly points: readonly Vec3[];
  /** Its inside counts. */
  readonly closed?: boolean;
}

/** What lies this near to each other on the drawing is told apart by what is nearer to the viewer, mm. */
const SAME_SPOT_MM = 25;

/** Those nearest to a tap as the drawing shows them, of what lies together the nearest to the viewer first. */
export function nearestToTap<T>({ view, flat }: DrawingTap, all: readonly TapCandidate<T>[], most: number): readonly T[] {
  return all
    .map((one) => {
      const away = awayOnDrawing(
        one.points.map((at) => flatIn(view, at)),
        flat,
        one.closed === true,
      );
      const depth = Math.max(...one.points.map((at) => dot(at, view.toViewer)));
      return { what: one.what, spot: Math.round(away / SAME_SPOT_MM), away, depth };
    })
    .sort((a, b) => a.spot - b.spot || b.depth - a.depth || a.away - b.away)
    .slice(0, most)
    .map(({ what }) => what);
}

type Spot = readonly [number, number];

function awayOnDrawing(points: readonly Spot[], at: Spot, closed: boolean): number {
  const [first] = points;
  if (!first) return Number.POSITIVE_INFINITY;
  const line = closed ? [...points, first] : points;
  if (closed && isInside(points, at)) return 0;
  return Math.min(
    Math.hypot(at[0] - first[0], at[1] - first[1]),
    ...line.slice(1).map((to, i) => fromSegment(at, line[i] as Spot, to)),
  );
}

function fromSegment(at: Spot, from: Spot, to: Spot): number {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const square = x * x + y * y;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((at[0] - from[0]) * x + (at[1] - from[1]) * y) / square));
  return Math.hypot(at[0] - from[0] - share * x, at[1] - from[1] - share * y);
}

const isInside = (ring: readonly Spot[], [x, y]: Spot): boolean =>
  ring.reduce((inside, [ax, ay], i) => {
    const [bx, by] = ring[(i + ring.length - 1) % ring.length] as Spot;
    return ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax ? !inside : inside;
  }, false);

/** Records that may be meant, by kind: those that the drawings show. */
export function tapCandidates({ shell }: Model, kinds: readonly KindName[]): readonly TapCandidate<string>[] {
  const of = (kind: KindName, all: readonly TapCandidate<string>[]) => (kinds.includes(kind) ? all : []);
  const lineOf = ({ shape }: Member): Pick<TapCandidate<string>, 'points' | 'closed'> =>
    shape.kind === 'line' ? { points: linePath(shape) } : { points: shape.outline, closed: true };
  return [
    ...of(
      'member',
      shell.members.map((one) => ({ what: one.id, ...lineOf(one) })),
    ),
    ...of(
      'panel',
      shell.panels.map(({ id, outline }) => ({ what: id, points: outline, closed: true })),
    ),
    ...of(
      'node',
      shell.nodes.flatMap(({ id, at }) => (at ? [{ what: id, points: [at] }] : [])),
    ),
    ...of(
      'run',
      shell.runs.map(({ id, path }) => ({ what: id, points: path })),
    ),
  ];
}
