import { floorHeight } from '../compute/access/approach.js';
import { extentCorners, vehicleExtent, viewBounds } from '../drawing/extent.js';
import { nearness, VIEWS, type View } from '../drawing/projection.js';
import type { Rect } from '../drawing/scene.js';
import { isInSlab, type Slab } from '../geometry/slab.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { TapView } from '../page/pocket-data.js';
import { panelSurfaces } from '../query/shown.js';
import type { Panel } from '../records/index.js';

const KEYS = [
  ...(['plan', 'left-out', 'left-in', 'right-out', 'right-in', 'ceiling', 'underside', 'roof'] as const),
  ...(['front-out', 'front-in', 'rear-out', 'rear-in'] as const),
];
export type CoachViewKey = (typeof KEYS)[number];

/** One way of looking at the coach, as the page draws it: mm from the upper left corner of the view's plane. */
export interface CoachView {
  readonly key: CoachViewKey;
  readonly view: View;
  readonly bounds: Rect;
  readonly panels: readonly Panel[];
  /** Whether what lies there belongs to the view: what is on the far side would only confuse. */
  shows(at: Vec3): boolean;
  readonly tap: TapView;
}

const VIEW: Readonly<Record<CoachViewKey, View>> = {
  plan: VIEWS.plan,
  roof: VIEWS.plan,
  ceiling: VIEWS.ceiling,
  underside: VIEWS.underside,
  'left-out': VIEWS.left,
  'left-in': VIEWS.right,
  'right-out': VIEWS.right,
  'right-in': VIEWS.left,
  'front-out': VIEWS.front,
  'front-in': VIEWS.rear,
  'rear-out': VIEWS.rear,
  'rear-in': VIEWS.front,
};

/** Space around what is drawn, mm of the coach. */
const AIR_MM = 150;

/** The views that have anything to show; none of a shell without members and panels. */
export function coachViews(model: Model): readonly CoachView[] {
  const { shell } = model;
  if (shell.members.length === 0 && shell.panels.length === 0) return [];
  const extent = vehicleExtent(model);
  const { low, high } = extent;
  const middle = low.map((value, k) => (value + (high[k] as number)) / 2) as unknown as Vec3;
  const corners = extentCorners(extent);
  return KEYS.flatMap((key): readonly CoachView[] => {
    const view = VIEW[key];
    const own = shell.panels.filter((panel) => viewKeyOf(panel, model) === key);
    if (own.length === 0 && key !== 'plan') return [];
    const bounds = grown(viewBounds(view, corners));
    const part = partOf(key, low, high);
    const inside = key === 'plan' || key === 'ceiling' || key.endsWith('-in');
    return [
      {
        key,
        view,
        bounds,
        panels: own,
        shows: (at) => part === undefined || isInSlab(at, part),
        tap: {
          key,
          ...(part ? { part } : {}),
          access: own.filter(({ panelKind }) => panelKind === 'access').map(({ id }) => id),
          right: view.right,
          up: view.up,
          toViewer: view.toViewer,
          left: bounds.x0,
          top: bounds.y1,
          standsAt: inside ? nearness(view, middle) : Math.max(...corners.map((at) => nearness(view, at))) + 1,
          planeAt: key === 'plan' ? (floorHeight(model) ?? middle[2]) : Math.max(...corners.map((at) => nearness(view, at))),
        },
      },
    ];
  });
}

const grown = (rect: Rect): Rect => ({
  x0: Math.floor(rect.x0 - AIR_MM),
  y0: Math.floor(rect.y0 - AIR_MM),
  x1: Math.ceil(rect.x1 + AIR_MM),
  y1: Math.ceil(rect.y1 + AIR_MM),
});

/** The view that a panel is drawn in; partitions and floors stand in the plan. */
export function viewKeyOf(panel: Panel, model: Model): CoachViewKey {
  const surface = panelSurfaces(model).get(panel.id);
  switch (surface?.side) {
    case 'roof':
    case 'ceiling':
    case 'underside':
      return surface.side;
    case 'left':
    case 'right':
    case 'front':
    case 'rear':
      return `${surface.side}-${surface.seenFrom === 'inside' ? 'in' : 'out'}`;
    default:
      return 'plan';
  }
}

/** Shares of width, length and height that still belong to a side. Project default. */
const NEAR_SIDE = 0.25;

/** The part of the coach that belongs to a view; all of it in the plan. */
function partOf(key: CoachViewKey, low: Vec3, high: Vec3): Slab | undefined {
  const at = (axis: 0 | 1 | 2, share: number): number => low[axis] + share * Math.max(1, high[axis] - low[axis]);
  if (key === 'plan') return undefined;
  if (key === 'roof' || key === 'ceiling') return { axis: 2, above: at(2, 1 - NEAR_SIDE) };
  if (key === 'underside') return { axis: 2, below: at(2, 0.45) };
  if (key.startsWith('left')) return { axis: 1, below: at(1, NEAR_SIDE) };
  if (key.startsWith('right')) return { axis: 1, above: at(1, 1 - NEAR_SIDE) };
  if (key.startsWith('front')) return { axis: 0, below: at(0, NEAR_SIDE) };
  return { axis: 0, above: at(0, 1 - NEAR_SIDE / 1.5) };
}
