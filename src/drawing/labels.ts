import { Boxes } from './boxes.js';
import type { Ink } from './ink.js';
import { grouped } from './label-groups.js';
import { clipSegment } from './outline.js';
import { grow, holds, type Mark, overlaps, type Point, type Rect, within } from './scene.js';
import type { TextStyleName } from './styles.js';
import { textHeightMm, textWidthMm } from './text-width.js';

/** A text that wants to stand near a place. */
export interface LabelWish {
  readonly text: string;
  readonly anchor: Point;
  /** Other places that it may as well point at, as along a member or a run. */
  readonly also?: readonly Point[];
  readonly style: TextStyleName;
  /** Higher is placed first and dropped last. */
  readonly priority: number;
  readonly id?: string;
  /** Half size of the symbol that it belongs to: the label stays clear of it, mm. */
  readonly clearMm?: number;
  /** True: best right on its anchor, as a panel's id within the panel. */
  readonly centred?: boolean;
  /** Several short texts under one another, with one leader: `text` is then only their sum. */
  readonly lines?: readonly { readonly text: string; readonly id?: string }[];
  /** True: in a ring of {@link DISC_MM}. */
  readonly disc?: boolean;
  /** Drawn by itself instead of words, as a welding symbol: its size, the end of its leader and its marks. */
  readonly block?: LabelBlock;
  /** Repeats of a label are left out silently, and never stand far away. */
  readonly repeat?: boolean;
}

/** A label with a shape of its own, whose leader starts where the shape says. */
export interface LabelBlock {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Nothing where its leader would run back over itself: such a place is not taken. */
  readonly leaderFrom: (box: Rect, anchor: Point) => Point | undefined;
  /** Leader included. */
  readonly marks: (box: Rect, anchor: Point) => readonly Mark[];
}

export interface PlacedLabel {
  readonly wish: LabelWish;
  readonly box: Rect;
  /** From the anchor to the label, where it stands away from it. */
  readonly leader?: readonly [Point, Point];
}

export interface Placement {
  readonly placed: readonly PlacedLabel[];
  /** Wishes for which no room was left, repeats not counted. */
  readonly leftOut: readonly LabelWish[];
}

/** Radius of the ring about a number, mm. */
export const DISC_MM = 2.7;

const AIR_MM = 0.5;
const RINGS_MM = [3, 5, 7.5, 10, 13, 16, 20, 25, 31, 38, 46, 56] as const;
/** Repeats and other anchors are only tried this near: far away the first anchor does as well. */
const NEAR_RINGS = 3;
const ANGLES = 20;
const NEAREST_WITHOUT_LEADER_MM = 1.2;
/** What crossing another leader or lying on one costs, as millimetres of distance. */
const CROSSING_COST = 14;
/** What lying on the anchor of a label yet to come costs. */
const COVERING_COST = 25;
const OTHER_ANCHOR_COST = 0.4;
/** How often a crowded sheet is tried again. */
const PASSES = 4;

/**
 * Places labels so that none overlaps another or leaves `room`. Greedy by priority, and in a stated order among equals, so the
 * same wishes give the same sheet. Each takes the cheapest place that is free: beside its anchor, on rings around it with
 * a leader, else anywhere in the room. What finds no place is given back.
 */
export function placeLabels(wishes: readonly LabelWish[], room: Rect, taken: readonly Rect[], ink: Ink): Placement {
  let order: readonly LabelWish[] = [...wishes].sort((a, b) => b.priority - a.priority);
  let best = placeInOrder(order, room, taken, ink);
  for (let pass = 1; pass < PASSES && best.leftOut.length > 0; pass++) {
    // Those shut in by their neighbours go first the next time, as far as their priority allows.
    const shutIn = new Set(best.leftOut);
    order = [...order].sort((a, b) => b.priority - a.priority || Number(shutIn.has(b)) - Number(shutIn.has(a)));
    const apart = placeInOrder(order, room, taken, ink);
    if (countLeft(apart) < countLeft(best)) best = apart;
    if (best.leftOut.length === 0) break;
    order = [...grouped(order, apart.leftOut)].sort((a, b) => b.priority - a.priority);
    const together = placeInOrder(order, room, taken, ink);
    if (countLeft(together) < countLeft(best)) best = together;
  }
  return best;
}

const countLeft = ({ leftOut }: Placement): number => leftOut.reduce((sum, wish) => sum + (wish.lines?.length ?? 1), 0);

function placeInOrder(ordered: readonly LabelWish[], room: Rect, taken: readonly Rect[], ink: Ink): Placement {
  const placed: PlacedLabel[] = [];
  const leftOut: LabelWish[] = [];
  const boxes = new Boxes(taken);
  const leaders: (readonly [Point, Point])[] = [];
  const anchors = new Set(ordered.filter((wish) => !wish.repeat && !wish.also && !wish.centred));
  for (const wish of ordered) {
    anchors.delete(wish);
    const found = bestPlace(wish, { room, boxes, leaders, anchors, ink });
    if (found) {
      placed.push(found);
      boxes.add(found.box);
      if (found.leader) leaders.push(found.leader);
    } else if (!wish.repeat) leftOut.push(wish);
  }
  return { placed, leftOut };
}

interface State {
  readonly room: Rect;
  readonly boxes: Boxes;
  readonly leaders: readonly (readonly [Point, Point])[];
  /** Labels still to be placed: on their anchors they would be cut off. */
  readonly anchors: ReadonlySet<LabelWish>;
  readonly ink: Ink;
}

interface Judged {
  readonly placed: PlacedLabel;
  readonly cost: number;
}

function bestPlace(wish: LabelWish, state: State): PlacedLabel | undefined {
  let best: Judged | undefined;
  const consider = (wanted: LabelWish, box: Rect, awayMm: number): void => {
    if (best && awayMm >= best.cost) return;
    const judged = judge(wanted, box, awayMm, state, best?.cost ?? Number.POSITIVE_INFINITY);
    if (judged && (!best || judged.cost < best.cost)) best = judged;
  };
  const half = halfSize(wish);
  [wish.anchor, ...(wish.also ?? [])].forEach((anchor, index) => {
    const wanted = { ...wish, anchor };
    const [x, y] = anchor;
    const later = index * OTHER_ANCHOR_COST;
    if (wish.centred) consider(wanted, boxAt(half, x, y), later);
    for (const box of beside(wanted, half)) consider(wanted, box, later + (wish.centred ? 2 : 0));
    const rings = wish.repeat || index > 0 ? NEAR_RINGS : RINGS_MM.length;
    for (let ring = 0; ring < rings; ring++) {
      const radius = RINGS_MM[ring] as number;
      // Every place of this ring, and of those about it, costs at least its radius.
      if (best && later + radius >= best.cost) break;
      for (const [dx, dy] of DIRECTIONS)
        consider(wanted, boxAt(half, x + dx * (radius + half[0]), y + dy * (radius + half[1])), later + radius);
    }
  });
  if (!best && !wish.repeat) for (const [box, awayMm] of anywhere(wish, half, state.room)) consider(wish, box, awayMm);
  return best?.placed;
}

/** Nothing where the place is taken, or dearer than `mostCost`. */
function judge(wish: LabelWish, box: Rect, awayMm: number, state: State, mostCost: number): Judged | undefined {
  if (!within(box, state.room) || state.boxes.near(box, AIR_MM, (other) => overlaps(box, other, AIR_MM))) return undefined;
  const end = wish.block ? wish.block.leaderFrom(box, wish.anchor) : nearestPoint(box, wish.anchor);
  if (!end) return undefined;
  const away = Math.hypot(end[0] - wish.anchor[0], end[1] - wish.anchor[1]);
  const drawn = wish.block !== undefined || away > (wish.clearMm ?? 0) + NEAREST_WITHOUT_LEADER_MM;
  const leader = drawn ? ([wish.anchor, end] as const) : undefined;
  if (leader && state.boxes.near(leaderBox(leader), 0, (other) => passes(leader, other))) return undefined;
  let cost = awayMm + state.ink.under(grow(box, 0.2)) * 0.3;
  if (cost >= mostCost) return undefined;
  for (const { anchor } of state.anchors) if (holds(grow(box, 0.6), anchor)) cost += COVERING_COST;
  if (cost >= mostCost) return undefined;
  for (const other of state.leaders) {
    if (leader && cross(leader, other)) cost += CROSSING_COST;
    if (passes(other, box)) cost += CROSSING_COST;
  }
  if (leader) cost += state.ink.along(leader[0], leader[1]) * 0.1;
  return { placed: { wish, box, ...(leader ? { leader } : {}) }, cost };
}

const leaderBox = ([a, b]: readonly [Point, Point]): Rect => ({
  x0: Math.min(a[0], b[0]),
  y0: Math.min(a[1], b[1]),
  x1: Math.max(a[0], b[0]),
  y1: Math.max(a[1], b[1]),
});

/** Whether a leader runs over a box. The first line only saves time. */
function passes([a, b]: readonly [Point, Point], box: Rect): boolean {
  if (
    Math.max(a[0], b[0]) < box.x0 ||
    Math.min(a[0], b[0]) > box.x1 ||
    Math.max(a[1], b[1]) < box.y0 ||
    Math.min(a[1], b[1]) > box.y1
  )
    return false;
  return clipSegment(a, b, box) !== undefined;
}

function halfSize(wish: LabelWish): Half {
  if (wish.disc) return [DISC_MM, DISC_MM];
  if (wish.block) return [wish.block.widthMm / 2, wish.block.heightMm / 2];
  const lines = wish.lines ?? [wish];
  const widest = Math.max(...lines.map(({ text }) => textWidthMm(text, wish.style)));
  return [widest / 2 + 0.2, (lines.length * textHeightMm(wish.style)) / 2];
}

type Half = readonly [width: number, height: number];

const boxAt = ([halfWidth, halfHeight]: Half, x: number, y: number): Rect => ({
  x0: x - halfWidth,
  y0: y - halfHeight,
  x1: x + halfWidth,
  y1: y + halfHeight,
});

const SIDES = [
  [1, 0],
  [0, -1],
  [0, 1],
  [-1, 0],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;

/** Right, left, above, below and the corners, touching the symbol's clear space. */
function* beside(wish: LabelWish, half: Half): Generator<Rect> {
  const clear = (wish.clearMm ?? 0) + 0.4;
  const [x, y] = wish.anchor;
  for (const [dx, dy] of SIDES) yield boxAt(half, x + dx * (half[0] + clear), y + dy * (half[1] + clear));
}

const DIRECTIONS = Array.from({ length: ANGLES }, (_, k): Point => {
  const angle = (2 * Math.PI * (k + 0.5)) / ANGLES;
  return [Math.cos(angle), Math.sin(angle)];
});

/** Rows over the whole room: a last resort, nearest still preferred. */
function* anywhere(wish: LabelWish, half: Half, room: Rect): Generator<readonly [Rect, number]> {
  const [width, height] = [2 * half[0], 2 * half[1]];
  for (let y = room.y0 + height / 2; y <= room.y1 - height / 2; y += textHeightMm(wish.style) + AIR_MM + 0.1) {
    for (let x = room.x0 + width / 2; x <= room.x1 - width / 2; x += Math.max(3, width / 3)) {
      yield [boxAt(half, x, y), Math.hypot(x - wish.anchor[0], y - wish.anchor[1])];
    }
  }
}

const nearestPoint = (box: Rect, to: Point): Point => [
  Math.min(box.x1, Math.max(box.x0, to[0])),
  Math.min(box.y1, Math.max(box.y0, to[1])),
];

function cross(a: readonly [Point, Point], b: readonly [Point, Point]): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a[0], a[1], b[0]) * side(a[0], a[1], b[1]) < 0 && side(b[0], b[1], a[0]) * side(b[0], b[1], a[1]) < 0;
}
