import { isInSlab } from '../../geometry/slab.js';
import { dot, lerp, type Vec3 } from '../../geometry/vector.js';
import type { Medium } from '../../records/index.js';
import type { NearData, TapView } from '../pocket-data.js';

type Spot = readonly [number, number];

/**
 * What is drawn under a finger, whatever its depth: the access panels it lies on, then nodes and runs, nearest first. `reachMm` is half a
 * finger's width in the drawing, `isOn` whether a service is drawn.
 */
export function underFinger(
  { shell }: Pick<NearData, 'shell'>,
  view: TapView,
  spot: Spot,
  { reachMm, isOn }: { readonly reachMm: number; readonly isOn: (medium: Medium) => boolean },
): readonly string[] {
  const flat = (at: Vec3): Spot => [dot(view.right, at) - view.left, view.top - dot(view.up, at)];
  const panels = shell.panels.filter(({ id, outline }) => view.access.includes(id) && isWithin(spot, outline.map(flat)));
  const shown = (at: Vec3): boolean => view.part === undefined || isInSlab(at, view.part);
  const nodes = shell.nodes.flatMap(({ id, medium, at }) =>
    at && isOn(medium) && shown(at) ? [{ id, mm: apart(spot, flat(at)) }] : [],
  );
  const runs = shell.runs.flatMap(({ id, medium, path }) => {
    if (!isOn(medium)) return [];
    const stretches = path.slice(1).flatMap((to, i): readonly number[] => {
      const from = path[i] as Vec3;
      return shown(lerp(from, to, 0.5)) ? [fromStretch(spot, flat(from), flat(to))] : [];
    });
    return [{ id, mm: Math.min(...stretches) }];
  });
  const near = (all: readonly { readonly id: string; readonly mm: number }[]): readonly string[] =>
    all
      .filter(({ mm }) => mm <= reachMm)
      .sort((a, b) => a.mm - b.mm)
      .map(({ id }) => id);
  return [...panels.map(({ id }) => id), ...near(nodes), ...near(runs)];
}

const apart = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function fromStretch(spot: Spot, from: Spot, to: Spot): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((spot[0] - from[0]) * dx + (spot[1] - from[1]) * dy) / square;
  const share = Math.min(1, Math.max(0, along));
  return apart(spot, [from[0] + share * dx, from[1] + share * dy]);
}

/** By how often a line from there to the right crosses the outline. */
function isWithin([x, y]: Spot, outline: readonly Spot[]): boolean {
  let inside = false;
  outline.forEach(([x1, y1], i) => {
    const [x2, y2] = outline[(i + 1) % outline.length] as Spot;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  });
  return inside;
}
