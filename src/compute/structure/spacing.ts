import { distance, lerp, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { LineMember, Member, MemberRole } from '../../records/index.js';

/** Members that stand side by side in one row: the trusses, or the posts of a wall. */
export interface SpacingFigure {
  /** `trusses`, `posts, left wall` … */
  readonly row: string;
  /** Places along the row where one stands. */
  readonly stations: number;
  /** Widest distance between two neighbours, middle to middle; openings do not count. */
  readonly widestMm: number;
  /** Every pair of neighbours further apart than the shop's rule. */
  readonly wide: readonly WideGap[];
}

export interface WideGap {
  readonly between: readonly [string, string];
  readonly gapMm: number;
  /** Middle of the gap. */
  readonly at: Vec3;
}

/** Members this near along the row are one place: a post beside a jamb, both chords of a truss. Project default. */
const SAME_PLACE_MM = 60;
/** Posts within this of each other across the wall are in one wall. Project default. */
const SAME_WALL_MM = 150;
/** A tape's reading on top of the rule. */
const ROUNDING_MM = 3;

/** How far apart members of role truss and post stand, row by row, against the shop's `truss_spacing`. */
export function spacings(model: Model): readonly SpacingFigure[] {
  const standing = lines(model, 'post').filter(({ shape }) => direction(shape) === 2);
  const across = lines(model, 'truss').filter(({ shape }) => direction(shape) === 1);
  const rows: Row[] = [{ name: 'trusses', along: 0, members: across }, ...walls(standing)];
  return rows.flatMap((row) => spacingOf(row, model) ?? []);
}

type OnLine = Member & { readonly shape: LineMember };
interface Row {
  readonly name: string;
  /** Axis along which its members follow each other. */
  readonly along: 0 | 1;
  /** The wall that openings name, where it is one. */
  readonly wall?: string;
  readonly members: readonly OnLine[];
}

const lines = ({ shell }: Model, role: MemberRole): readonly OnLine[] =>
  shell.members.filter((member): member is OnLine => member.shape.kind === 'line' && member.role === role);

/** The axis that a line mostly follows. */
function direction({ from, to }: LineMember): number {
  const sizes = subtract(to, from).map(Math.abs);
  return sizes.indexOf(Math.max(...sizes));
}

const middle = ({ shape }: OnLine): Vec3 => lerp(shape.from, shape.to, 0.5);

/** Side walls are the posts farthest out on either side, end walls those farthest to front and rear; what is left is partitions. */
function walls(posts: readonly OnLine[]): readonly Row[] {
  const wall = (name: string, axis: 0 | 1, sign: 1 | -1): Row => {
    const out = (post: OnLine): number => sign * middle(post)[axis];
    const edge = Math.max(...posts.map(out));
    return {
      name: `posts, ${name} wall`,
      wall: name,
      along: axis === 0 ? 1 : 0,
      members: posts.filter((post) => out(post) >= edge - SAME_WALL_MM),
    };
  };
  return posts.length === 0 ? [] : [wall('left', 1, -1), wall('right', 1, 1), wall('front', 0, -1), wall('rear', 0, 1)];
}

function spacingOf({ name, along, wall, members }: Row, model: Model): SpacingFigure | undefined {
  const places: { at: number; member: OnLine }[] = [];
  for (const member of [...members].sort((a, b) => middle(a)[along] - middle(b)[along])) {
    const at = middle(member)[along];
    if (at - (places.at(-1)?.at ?? -Infinity) > SAME_PLACE_MM) places.push({ at, member });
  }
  if (places.length < 2) return undefined;
  const gaps = places.slice(1).flatMap((next, i): readonly WideGap[] => {
    const before = places[i] as (typeof places)[number];
    if (opensWithin(before.at, next.at, along, wall, model)) return [];
    return [
      {
        between: [before.member.id, next.member.id],
        gapMm: next.at - before.at,
        at: lerp(middle(before.member), middle(next.member), 0.5),
      },
    ];
  });
  const limit = model.shop.limits.trussSpacingMm;
  return {
    row: name,
    stations: places.length,
    widestMm: Math.max(0, ...gaps.map(({ gapMm }) => gapMm)),
    wide: gaps.filter(({ gapMm }) => gapMm > limit + ROUNDING_MM),
  };
}

/** True where an opening of that wall lies between the two places. */
function opensWithin(from: number, to: number, along: 0 | 1, wall: string | undefined, { shell }: Model): boolean {
  if (wall === undefined) return false;
  return shell.openings.some(({ wall: of, sill }) => {
    const [a, b] = [sill[0], sill.at(-1)];
    if (of !== wall || !a || !b || distance(a, b) === 0) return false;
    const [low, high] = [Math.min(a[along], b[along]), Math.max(a[along], b[along])];
    return low < to - SAME_PLACE_MM && high > from + SAME_PLACE_MM;
  });
}
