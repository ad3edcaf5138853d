import type { Mark, Point, Rect } from './scene.js';
import type { TextStyleName } from './styles.js';

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
