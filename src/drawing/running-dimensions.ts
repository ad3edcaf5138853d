import { sixtyFourths, type UnitSystem } from '../quantity/format.js';
import { MM_PER_IN } from '../quantity/units.js';
import { arrowHead } from './dimensions.js';
import { circle, line, type Mark, type Rect, textMark } from './scene.js';

/**
 * Running dimensions (ISO 129-1, from memory): every edge by its distance from one end, from which a tape is hooked. A ring marks
 * the end, an arrow each edge.
 */

/** Between a view and its dimension line, and from there to the figures, mm. */
const OFF_MM = 3;
const FIGURE_MM = 1.4;
const PAST_MM = 1;
const RING_MM = 0.7;
/** Figures nearer to each other than this would touch: the edge between has none. */
const APART_MM = 3.4;

/** What a strip of figures takes beside its view, mm. */
export const RUNNING_MM = 14;

/** A tape's figure without its unit: inches to 1/16, or mm. */
const tapeFigure = (mm: number, units: UnitSystem): string =>
  units === 'metric'
    ? String(Math.round(mm))
    : sixtyFourths((Math.round((mm / MM_PER_IN) * 16) / 16) * MM_PER_IN).replace(/ in$/u, '');

interface Running {
  /** Edges on the sheet, mm; the first is where the tape is hooked. */
  readonly edges: readonly number[];
  readonly reduction: number;
  readonly units: UnitSystem;
}

/** Edges that have room for a figure, in order away from the first; the last one always has its own. */
function roomy([origin, ...edges]: readonly number[]): readonly number[] {
  if (origin === undefined) return [];
  const away = [...new Set(edges)].sort((a, b) => Math.abs(a - origin) - Math.abs(b - origin));
  const last = away.at(-1);
  const kept: number[] = [origin];
  for (const edge of away) {
    if (Math.abs(edge - (kept.at(-1) as number)) < APART_MM) continue;
    if (last !== undefined && edge !== last && Math.abs(last - edge) < APART_MM) continue;
    kept.push(edge);
  }
  return kept;
}

/** Beneath a view, figures read from the right. */
export function runningAcross(frame: Rect, { edges, reduction, units }: Running): readonly Mark[] {
  const [origin, ...rest] = roomy(edges);
  if (origin === undefined) return [];
  const y = frame.y1 + OFF_MM;
  const figure = (x: number): Mark =>
    textMark('dimensions', 'dimension', [x, y + FIGURE_MM], tapeFigure(Math.abs(x - origin) * reduction, units), {
      anchor: 'end',
      upright: true,
    });
  return [
    circle('dimensions', 'mark', [origin, y], RING_MM),
    figure(origin),
    ...rest.flatMap((x, at): readonly Mark[] => [
      line('dimensions', 'dimension', [
        [at === 0 ? origin : (rest[at - 1] as number), y],
        [x, y],
      ]),
      line('dimensions', 'dimension', [
        [x, frame.y1 + 0.8],
        [x, y + PAST_MM],
      ]),
      arrowHead([x, y], x > origin ? 0 : Math.PI),
      figure(x),
    ]),
  ];
}

/** To the left of a view, figures read from below. */
export function runningUp(frame: Rect, { edges, reduction, units }: Running): readonly Mark[] {
  const [origin, ...rest] = roomy(edges);
  if (origin === undefined) return [];
  const x = frame.x0 - OFF_MM;
  const figure = (y: number): Mark =>
    textMark('dimensions', 'dimension', [x - FIGURE_MM, y], tapeFigure(Math.abs(y - origin) * reduction, units), {
      anchor: 'end',
    });
  return [
    circle('dimensions', 'mark', [x, origin], RING_MM),
    figure(origin),
    ...rest.flatMap((y, at): readonly Mark[] => [
      line('dimensions', 'dimension', [
        [x, at === 0 ? origin : (rest[at - 1] as number)],
        [x, y],
      ]),
      line('dimensions', 'dimension', [
        [frame.x0 - 0.8, y],
        [x - PAST_MM, y],
      ]),
      arrowHead([x, y], y > origin ? Math.PI / 2 : -Math.PI / 2),
      figure(y),
    ]),
  ];
}
