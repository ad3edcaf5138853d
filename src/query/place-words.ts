import { linePath } from '../compute/solids.js';
import { type Bounds, boundsOf } from '../geometry/box.js';
import type { Vec3 } from '../geometry/vector.js';
import { getOwn } from '../get-own.js';
import { placedNodes } from '../model/placed.js';
import type { Shell } from '../records/index.js';

/** Words for a place, written and read: what is printed as `2 in left` is found by `left`. */

/** Nearer to the centre line than this is on it: neither left nor right, mm. Project default. */
const ON_CENTRE_MM = 25;
/** Half of the aisle that `centre` finds, mm. Project default. */
const HALF_AISLE_MM = 150;
/** So much of the height counts as the roof, and as the floor. Project default. */
const TOP = 0.85;

const NO_BREAK = '\u00a0';

/** A place as a reader walks to it: `11 ft 3 in aft, 2 in left, 4 in above rail`. `length` writes millimetres in the reader's units. */
export function placeWords({ length }: { readonly length: (mm: number) => string }, [x, y, z]: Vec3): string {
  const along = `${length(Math.abs(x))} ${x < 0 ? 'ahead' : 'aft'}`;
  const across = Math.abs(y) < ON_CENTRE_MM ? 'on the center line' : `${length(Math.abs(y))} ${y < 0 ? 'left' : 'right'}`;
  return `${along}, ${across}, ${length(Math.abs(z))} ${z < 0 ? 'below' : 'above'}${NO_BREAK}rail`;
}

type Says = (at: Vec3, bounds: Bounds) => boolean;

const share = (at: Vec3, { min, max }: Bounds, k: 0 | 2): number => (at[k] - min[k]) / Math.max(1, max[k] - min[k]);

/** Words for a part of the coach, and when a place is in it. Thirds along the length. */
const PLACES: Readonly<Record<string, Says>> = {
  left: ([, y]) => y <= -ON_CENTRE_MM,
  right: ([, y]) => y >= ON_CENTRE_MM,
  centre: ([, y]) => Math.abs(y) <= HALF_AISLE_MM,
  front: (at, bounds) => share(at, bounds, 0) < 1 / 3,
  middle: (at, bounds) => share(at, bounds, 0) >= 1 / 3 && share(at, bounds, 0) <= 2 / 3,
  rear: (at, bounds) => share(at, bounds, 0) > 2 / 3,
  roof: (at, bounds) => share(at, bounds, 2) >= TOP,
  belly: (at, bounds) => share(at, bounds, 2) < 1 - TOP,
};

const SAME: Readonly<Record<string, string>> = {
  center: 'centre',
  back: 'rear',
  aft: 'rear',
  ahead: 'front',
  fore: 'front',
  ceiling: 'roof',
  overhead: 'roof',
  floor: 'belly',
  underfloor: 'belly',
  driver: 'left',
  kerb: 'right',
  curb: 'right',
  street: 'left',
};

/** What a word says of a place; undefined where it is no word for a place. */
export function placeWord(word: string): Says | undefined {
  const name = getOwn(SAME, word) ?? word;
  return getOwn(PLACES, name);
}

/** What a shell reaches over: its members and panels; without any, its nodes. */
export function extentOf(shell: Shell): Bounds | undefined {
  const corners = [
    ...shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? linePath(shape) : shape.outline)),
    ...shell.panels.flatMap((panel) => panel.outline),
  ];
  const all = corners.length > 0 ? corners : placedNodes(shell.nodes).map((node) => node.at);
  return all.length > 0 ? boundsOf(all) : undefined;
}
