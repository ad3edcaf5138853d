import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Weld } from '../../records/index.js';
import { memberCorners } from '../visibility.js';

/** One joint of a weld record, at its place. Like joints recorded once have a point each, all with the same number. */
export interface WeldPoint {
  readonly weld: Weld;
  readonly pair: readonly [string, string];
  readonly at: Vec3;
}

const pairKey = (a: string, b: string): string => JSON.stringify(a < b ? [a, b] : [b, a]);

/**
 * Where each weld is: as recorded where its one joint has a place on record; else the middle of the contact that was found; else,
 * where the two do not meet, between them. A weld of which neither part is on record has no point.
 */
export function weldPoints({ model, figures }: Assessment): readonly WeldPoint[] {
  const contacts = new Map(figures.joints.joints.map((joint) => [pairKey(...joint.members), joint.at]));
  return model.shell.welds.flatMap((weld) =>
    weld.joins.flatMap((pair): readonly WeldPoint[] => {
      const recorded = weld.joins.length === 1 ? weld.at : undefined;
      const at = recorded ?? contacts.get(pairKey(...pair)) ?? between(model, pair);
      return at ? [{ weld, pair, at }] : [];
    }),
  );
}

/** Middle of what two parts share, or of the space between them, axis by axis. */
function between(model: Model, pair: readonly [string, string]): Vec3 | undefined {
  const bounds = pair.map((id) => boundsOfPart(model, id));
  const [a, b] = [bounds[0] ?? bounds[1], bounds[1] ?? bounds[0]];
  if (!a || !b) return undefined;
  const middle = (k: 0 | 1 | 2): number => (Math.max(a.low[k], b.low[k]) + Math.min(a.high[k], b.high[k])) / 2;
  return [middle(0), middle(1), middle(2)];
}

function boundsOfPart(model: Model, id: string): { readonly low: Vec3; readonly high: Vec3 } | undefined {
  const member = model.shell.members.find((one) => one.id === id);
  const corners = member
    ? memberCorners(member, model.library)
    : (model.shell.panels.find((panel) => panel.id === id)?.outline ?? []);
  if (corners.length === 0) return undefined;
  const reach = (pick: (...values: number[]) => number): Vec3 => [
    pick(...corners.map((corner) => corner[0])),
    pick(...corners.map((corner) => corner[1])),
    pick(...corners.map((corner) => corner[2])),
  ];
  return { low: reach(Math.min), high: reach(Math.max) };
}

/** Ids of the welds of some points, each once, in the order of the points. */
export const weldsOf = (points: readonly WeldPoint[]): readonly string[] => [...new Set(points.map(({ weld }) => weld.id))];
