import { MEDIUM_STYLES } from '../drawing/media.js';
import { convexHull } from '../drawing/outline.js';
import { project } from '../drawing/projection.js';
import type { Point } from '../drawing/scene.js';
import { boxCorners, memberCorners, silhouette } from '../drawing/visibility.js';
import { planarPolygon } from '../geometry/polygon.js';
import { lerp, type Vec3 } from '../geometry/vector.js';
import { anchor } from '../model/anchor.js';
import type { Model } from '../model/shell.js';
import { solidsIn } from '../query/shown.js';
import { MEDIA, type Medium, type Panel } from '../records/index.js';
import { xml } from './pocket.js';
import type { CoachView } from './views.js';

/** One drawing of the coach, few elements and many strokes: everything of one kind is one path. */
export interface PlanDrawing {
  /** Outlines alone, for the small drawing on each card. */
  readonly symbol: string;
  readonly svg: string;
  readonly media: readonly Medium[];
}

const flatOf =
  ({ view, bounds }: CoachView) =>
  (at: Vec3): Point => {
    const [x, y] = project(view, at);
    return [Math.round(x - bounds.x0), Math.round(bounds.y1 - y)];
  };

/** Steps from corner to corner: half as long as places. */
function path(points: readonly Point[], closed: boolean): string {
  const [first, ...rest] = points;
  if (!first) return '';
  let [x, y] = first;
  const steps = rest.map(([u, v]) => {
    const step = `${u - x} ${v - y}`;
    [x, y] = [u, v];
    return step;
  });
  return `M${first[0]} ${first[1]}${steps.length > 0 ? `l${steps.join(' ')}` : ''}${closed ? 'z' : ''}`;
}

/** Dots as strokes of no length with round ends. */
const dot = ([x, y]: Point): string => `M${x} ${y}h0`;

export const windowOf = ({ bounds }: Pick<CoachView, 'bounds'>): string =>
  `0 0 ${bounds.x1 - bounds.x0} ${bounds.y1 - bounds.y0}`;

export const symbolId = (view: Pick<CoachView, 'key'>): string => `s-${view.key}`;

/** Where a place lies in a view's drawing. */
export const spotIn = (view: CoachView, at: Vec3): Point => flatOf(view)(at);

export function planDrawing(model: Model, view: CoachView, linked: (id: string) => boolean): PlanDrawing {
  const { shell } = model;
  const flat = flatOf(view);
  const ring = (panel: Panel): string => [panel.outline, ...panel.holes].map((one) => path(one.map(flat), true)).join('');
  const access = view.panels.filter((panel) => panel.panelKind === 'access');
  const sheets = view.panels.filter((panel) => panel.panelKind !== 'access');
  const outlines = sheets.map(ring).join('');
  const members = shell.members
    .flatMap((member) => {
      if (!memberCorners(member, model.library).some(view.shows)) return [];
      const shape = silhouette(member, model.library, view.view);
      if (!shape) return [];
      return [
        path(
          shape.ring.map(([x, y]): Point => [Math.round(x - view.bounds.x0), Math.round(view.bounds.y1 - y)]),
          true,
        ),
      ];
    })
    .join('');
  const equipment = solidsIn(model)
    .filter(({ box }) => view.shows(box.center))
    .map(({ box }) => path(convexHull(boxCorners(box).map(flat)), true))
    .join('');
  const layers = MEDIA.flatMap((medium) => layer(model, medium, view));
  const symbol = `<symbol id="${symbolId(view)}" viewBox="${windowOf(view)}"><path class="sk" d="${outlines || members}"/><path class="ac" d="${access.map(ring).join('')}"/></symbol>`;
  const svg = [
    `<path class="eq" d="${equipment}"/><path class="mb" d="${members}"/>`,
    // Of the whole view's size: else a part that is zoomed in on would show it in the part's.
    `<use href="#${symbolId(view)}" width="${view.bounds.x1 - view.bounds.x0}" height="${view.bounds.y1 - view.bounds.y0}"/>`,
    ...layers.map(({ markup }) => markup),
    ...access.map((panel) => label(panel, flat, linked(panel.id))),
    '<g class="ring"></g>',
  ].join('');
  return { symbol, svg, media: layers.map(({ medium }) => medium) };
}

/** The runs and nodes of one service that belong to the view. */
function layer({ shell }: Model, medium: Medium, view: CoachView): readonly { medium: Medium; markup: string }[] {
  const flat = flatOf(view);
  const runs = shell.runs
    .filter((run) => run.medium === medium)
    .flatMap((run) => stretches(run.path, view))
    .map((stretch) => path(stretch.map(flat), false))
    .join('');
  const nodes = shell.nodes
    .flatMap(({ at, medium: own }) => (own === medium && at && view.shows(at) ? [dot(flat(at))] : []))
    .join('');
  if (runs === '' && nodes === '') return [];
  const { letter } = MEDIUM_STYLES[medium];
  const markup = `<g class="ly ly-${medium}" data-medium="${medium}"><title>${letter}</title><path class="ru" d="${runs}"/><path class="no" d="${nodes}"/></g>`;
  return [{ medium, markup }];
}

/** The parts of a path whose stretches have their middle in the view. */
function stretches(line: readonly Vec3[], { shows }: CoachView): readonly (readonly Vec3[])[] {
  const parts: Vec3[][] = [];
  for (const [i, to] of line.entries()) {
    const from = line[i - 1];
    if (!from || !shows(lerp(from, to, 0.5))) continue;
    const last = parts.at(-1);
    if (last?.at(-1) === from) last.push(to);
    else parts.push([from, to]);
  }
  return parts;
}

function label(panel: Panel, flat: (at: Vec3) => Point, isLinked: boolean): string {
  const [x, y] = flat(planarPolygon(panel.outline).centroid);
  const area = `<path class="hit" d="${path(panel.outline.map(flat), true)}"/>`;
  const words = `${area}<text x="${x}" y="${y}">${xml(panel.id)}</text>`;
  return isLinked ? `<a href="#${anchor(panel.id)}">${words}</a>` : words;
}
