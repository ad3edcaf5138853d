import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { SeenPoint } from '../../records/index.js';
import { isPoint, knownPoint } from './known-points.js';

/** A point that a picture may show, by the record that gives it. */
export type PointName = Pick<SeenPoint, 'end' | 'corner'> & { readonly is: string };

export const pointLabel = ({ is, end, corner }: PointName): string =>
  `${is}${end ? ` ${end} end` : corner ? ` corner ${corner}` : ''}`;
/** As it stands before `px` in a line of `seen`. */
export const pointTyped = ({ is, end, corner }: PointName): string =>
  `is: ${is}${end ? `, end: ${end}` : corner ? `, corner: ${corner}` : ''}`;

/** Every point that a record of the shell gives, with its place. */
export function namedPoints(model: Model): readonly { readonly named: PointName; readonly at: Vec3 }[] {
  const { shell } = model;
  const all: PointName[] = [
    ...shell.nodes.map(({ id }) => ({ is: id })),
    ...shell.members.flatMap(({ id, shape }) =>
      shape.kind === 'plate'
        ? []
        : (Math.abs(shape.to[2] - shape.from[2]) > 1 ? (['low', 'high'] as const) : (['from', 'to'] as const)).map((end) => ({
            is: id,
            end,
          })),
    ),
    ...shell.panels.flatMap(({ id, outline }) => outline.map((_, i) => ({ is: id, corner: i + 1 }))),
    ...shell.openings.flatMap(({ id }) => [1, 2, 3, 4].map((corner) => ({ is: id, corner }))),
  ];
  return all.flatMap((named) => {
    const point = knownPoint(model, { ...named, px: [0, 0] });
    return isPoint(point) ? [{ named, at: point.at }] : [];
  });
}
