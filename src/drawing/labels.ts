import { Boxes } from './boxes.js';
import type { Ink } from './ink.js';
import type { KeptOff } from './kept-off.js';
import { grouped } from './label-groups.js';
import type { LabelWish } from './label-wish.js';
import { crossesRect } from './outline.js';
import { growRect, holds, isWithinRect, type Point, type Rect } from './scene.js';
import { textHeightMm, textWidthMm } from './text-width.js';

export type { LabelBlock, LabelWish } from './label-wish.js';

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

export interface PlacingOptions {
  /** What no label lies on. */
  readonly keptOff?: KeptOff;
  /** Whether labels that are shut in may stand in a list, with one leader. */
  readonly lists?: boolean;
}

/**
 * Places labels so that none overlaps another or leaves `room`. Greedy by priority, and in a stated order among equals, so the
 * same wishes give the same sheet. Each takes the cheapest place that is free: beside its anchor, on rings around it with
 * a leader, else anywhere in the room. What finds no place is given back. None lies on what is `keptOff`.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  room: Rect,
  taken: readonly Rect[],
  ink: Ink,
  { keptOff, lists = true }: PlacingOptions = {},
): Placement {
  let order: readonly LabelWish[] = [...wishes].sort((a, b) => b.priority - a.priority);
  let best = placeInOrder(order, { room, taken, ink, keptOff });
  for (let pass = 1; pass < PASSES && best.leftOut.length > 0; pass++) {
    // Those shut in by their neighbours go first the next time, as far as their priority allows.
    const shutIn = new Set(best.leftOut);
    order = [...order].sort((a, b) => b.priority - a.priority || Number(shutIn.has(b)) - Number(shutIn.has(a)));
    const apart = placeInOrder(order, { room, taken, ink, keptOff });
    if (countLeft(apart) < countLeft(best)) best = apart;
    if (best.leftOut.length === 0) break;
    if (!lists) continue;
    order = [...grouped(order, apart.leftOut)].sort((a, b) => b.priority - a.priority);
    const together = placeInOrder(order, { room, taken, ink, keptOff });
    if (countLeft(together) < countLeft(best)) best = together;
  }
  return best;
}

const countLeft = ({ leftOut }: Placement): number => leftOut.reduce((sum, wish) => sum + (wish.lines?.length ?? 1), 0);

interface Ground {
  readonly room: Rect;
  readonly taken: readonly Rect[];
  readonly ink: Ink;
  readonly keptOff: KeptOff | undefined;
}

function placeInOrder(ordered: readonly LabelWish[], { room, taken, ink, keptOff }: Ground): Placement {
  const placed: PlacedLabel[] = [];
  const leftOut: LabelWish[] = [];
  const boxes = new Boxes(taken);
  const leaders: (readonly [Point, Point])[] = [];
  const single = (wish: LabelWish): boolean => !wish.repeat && !wish.also && !wish.centred;
  const toCome = ordered.filter(single).map(({ anchor }) => anchor);
  for (const wish of ordered) {
    if (single(wish)) toCome.shift();
    const found = bestPlace(wish, { room, boxes, leaders, toCome, ink, keptOff });
    if (found) {
      placed.push(found);
      boxes.add(found.box);
      if (found.leader) leaders.push(found.leader);
    } else if (!wish.repeat) leftOut.push(wish);
  }
  return { placed, leftOut };
}

/** The cheapest place so far, and how it is found: a sheet has a million places to ask about, most of them taken. */
class Choice {
  private cost = Number.POSITIVE_INFINITY;
  private place: Omit<PlacedLabel, 'wish'> | undefined;
  private anchor: Point;
  private readonly half: Half;

  constructor(
    private readonly wish: LabelWish,
    private readonly sheet: Sheet,
  ) {
    this.half = halfSize(wish);
    this.anchor = wish.anchor;
  }

  found(): PlacedLabel | undefined {
    return this.place && { wish: { ...this.wish, anchor: this.anchor }, ...this.place };
  }

  /** Beside one of its anchors, or on so many rings about it; `later` is what another anchor is preferred by. */
  about(anchor: Point, later: number, rings: number): void {
    const [x, y] = anchor;
    const [halfWidth, halfHeight] = this.half;
    if (this.wish.centred) this.consider(anchor, x, y, later);
    const clear = (this.wish.clearMm ?? 0) + 0.4;
    const beside = later + (this.wish.centred ? 2 : 0);
    for (const [dx, dy] of SIDES) this.consider(anchor, x + dx * (halfWidth + clear), y + dy * (halfHeight + clear), beside);
    for (let ring = 0; ring < rings; ring++) {
      const radius = RINGS_MM[ring] as number;
      // Every place of this ring, and of those about it, costs at least its radius.
      if (later + radius >= this.cost) break;
      for (const [dx, dy] of DIRECTIONS)
        this.consider(anchor, x + dx * (radius + halfWidth), y + dy * (radius + halfHeight), later + radius);
    }
  }

  /** Rows over the whole room: a last resort, nearest still preferred, and looked at first. */
  anywhere(): void {
    const { room } = this.sheet;
    const { anchor, style } = this.wish;
    const [halfWidth, halfHeight] = this.half;
    const columns = steps(room.x0 + halfWidth, room.x1 - halfWidth, Math.max(3, (2 * halfWidth) / 3), anchor[0]);
    for (const y of steps(room.y0 + halfHeight, room.y1 - halfHeight, textHeightMm(style) + AIR_MM + 0.1, anchor[1])) {
      if (Math.abs(y - anchor[1]) >= this.cost) break;
      for (const x of columns) {
        const awayMm = Math.hypot(x - anchor[0], y - anchor[1]);
        if (awayMm >= this.cost) break;
        this.consider(anchor, x, y, awayMm);
      }
    }
  }

  private consider(anchor: Point, x: number, y: number, awayMm: number): void {
    if (awayMm >= this.cost) return;
    const { room, boxes } = this.sheet;
    const [halfWidth, halfHeight] = this.half;
    const box = { x0: x - halfWidth, y0: y - halfHeight, x1: x + halfWidth, y1: y + halfHeight };
    if (!isWithinRect(box, room) || boxes.overlap(box, AIR_MM)) return;
    const end = this.wish.block ? this.wish.block.leaderFrom(box, anchor) : nearestPoint(box, anchor);
    if (!end) return;
    const reach = Math.hypot(end[0] - anchor[0], end[1] - anchor[1]);
    const drawn = this.wish.block !== undefined || reach > (this.wish.clearMm ?? 0) + NEAREST_WITHOUT_LEADER_MM;
    const leader = drawn ? ([anchor, end] as const) : undefined;
    if (leader && boxes.underLine(anchor, end)) return;
    if (this.sheet.keptOff?.under(box)) return;
    const cost = costOf(box, leader, awayMm, this.sheet, this.cost);
    if (cost >= this.cost) return;
    this.cost = cost;
    this.anchor = anchor;
    this.place = { box, ...(leader ? { leader } : {}) };
  }
}

/** Even steps from one place to another, those nearest to a third one first. */
function steps(from: number, to: number, byMm: number, near: number): readonly number[] {
  const found: number[] = [];
  for (let at = from; at <= to; at += byMm) found.push(at);
  return found.sort((a, b) => Math.abs(a - near) - Math.abs(b - near));
}

interface Sheet {
  readonly room: Rect;
  readonly boxes: Boxes;
  readonly leaders: readonly (readonly [Point, Point])[];
  /** Anchors of labels still to be placed: under another label they would be cut off. */
  readonly toCome: readonly Point[];
  readonly ink: Ink;
  /** What no label lies on. */
  readonly keptOff: KeptOff | undefined;
}

function bestPlace(wish: LabelWish, sheet: Sheet): PlacedLabel | undefined {
  const choice = new Choice(wish, sheet);
  choice.about(wish.anchor, 0, wish.repeat ? NEAR_RINGS : RINGS_MM.length);
  wish.also?.forEach((anchor, index) => {
    choice.about(anchor, (index + 1) * OTHER_ANCHOR_COST, NEAR_RINGS);
  });
  if (!choice.found() && !wish.repeat) choice.anywhere();
  return choice.found();
}

/** What a free place costs, in millimetres of distance; not summed to its end where it is dearer than `mostCost`. */
function costOf(
  box: Rect,
  leader: readonly [Point, Point] | undefined,
  awayMm: number,
  { leaders, toCome, ink }: Sheet,
  mostCost: number,
): number {
  let cost = awayMm + ink.under(growRect(box, 0.2)) * 0.3;
  if (cost >= mostCost) return cost;
  const about = growRect(box, 0.6);
  for (const anchor of toCome) if (holds(about, anchor)) cost += COVERING_COST;
  if (cost >= mostCost) return cost;
  for (const [from, to] of leaders) {
    if (leader && cross(leader[0], leader[1], from, to)) cost += CROSSING_COST;
    if (crossesRect(from, to, box)) cost += CROSSING_COST;
  }
  return leader ? cost + ink.along(leader[0], leader[1]) * 0.1 : cost;
}

function halfSize(wish: LabelWish): Half {
  if (wish.disc) return [DISC_MM, DISC_MM];
  if (wish.block) return [wish.block.widthMm / 2, wish.block.heightMm / 2];
  const lines = wish.lines ?? [wish];
  const widest = Math.max(...lines.map(({ text }) => textWidthMm(text, wish.style)));
  return [widest / 2 + 0.2, (lines.length * textHeightMm(wish.style)) / 2];
}

type Half = readonly [width: number, height: number];

/** Right, above, below, left and the corners. */
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

const DIRECTIONS = Array.from({ length: ANGLES }, (_, k): Point => {
  const angle = (2 * Math.PI * (k + 0.5)) / ANGLES;
  return [Math.cos(angle), Math.sin(angle)];
});

/** The place of a box that lies nearest to a point. */
export const nearestPoint = (box: Rect, to: Point): Point => [
  Math.min(box.x1, Math.max(box.x0, to[0])),
  Math.min(box.y1, Math.max(box.y0, to[1])),
];

/** Whether segments ab and cd cross. */
const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
