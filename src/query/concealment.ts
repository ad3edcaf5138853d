import { zoneMap } from '../compute/access/zones.js';
import { boundsOf } from '../geometry/box.js';
import { planarPolygon } from '../geometry/polygon.js';
import type { Vec3 } from '../geometry/vector.js';
import { placedNodes } from '../model/placed.js';
import type { Model } from '../model/shell.js';
import { dayOf } from '../quantity/day.js';
import type { NodeKind, Panel, Run, ServiceNode, Zone } from '../records/index.js';

/** A run or joint that a panel closes in. */
export type Concealed = ConcealedItem & {
  readonly zones: readonly string[];
  /** The panels that must all be on before nobody sees it any more. */
  readonly panels: readonly Panel[];
  /** The day on which the last of them went on; absent while one has no date. */
  readonly closed?: { readonly date: string; readonly panel: string };
};

type ConcealedItem = { readonly kind: 'run'; readonly record: Run } | { readonly kind: 'node'; readonly record: ServiceNode };

/** What can come apart, leak or work loose. */
const JOINTS: ReadonlySet<NodeKind> = new Set(['terminal', 'splice', 'connector', 'junction', 'valve', 'fitting']);
/** A place measured on the coach may lie this far outside the box drawn for its cavity, mm. Common practice, no source. */
const SLACK_MM = 15;

/** Every run and joint in a concealed zone that names the panels which close it. */
export function concealed({ shell }: Model): readonly Concealed[] {
  const zones = shell.zones.filter((zone) => zone.concealed && zone.closedBy.length > 0);
  const places = zoneMap(zones);
  const panels = new Map(shell.panels.map((panel) => [panel.id, panel]));
  const closers = (inside: readonly Zone[]): readonly Panel[] =>
    inside.flatMap((zone) => zone.closedBy.flatMap((id) => panels.get(id) ?? []));
  const runs = shell.runs.flatMap((record) => {
    if (record.planned) return [];
    const inside = zones.filter((zone) => record.zones.includes(zone.id));
    return withClosing({ kind: 'run', record }, inside, closers(inside));
  });
  const nodes = placedNodes(shell.nodes).flatMap((record) => {
    if (!JOINTS.has(record.nodeKind) || record.planned) return [];
    const inside = places.holding(record.at, SLACK_MM);
    const all = closers(inside);
    const over = all.filter((panel) => covers(panel, record.at));
    return withClosing({ kind: 'node', record }, inside, over.length > 0 ? over : all);
  });
  return [...runs, ...nodes];
}

function withClosing(item: ConcealedItem, zones: readonly Zone[], panels: readonly Panel[]): readonly Concealed[] {
  if (panels.length === 0) return [];
  const dated = panels.flatMap((panel) => {
    const date = closingDate(panel);
    return date === undefined ? [] : [{ date, panel: panel.id }];
  });
  const last = dated.length === panels.length ? dated.reduce((a, b) => (b.date > a.date ? b : a)) : undefined;
  return [{ ...item, zones: zones.map((zone) => zone.id), panels, ...(last ? { closed: last } : {}) }];
}

/** The day a panel went on: its own date, else the day its adhesive was applied. */
export const closingDate = (panel: Pick<Panel, 'date' | 'fixing'>): string | undefined => panel.date ?? panel.fixing?.applied;

/** The day on which adhesive past its last day was spread; undefined where it was in date, or a day is not on record. */
export function expiredAdhesive(
  panel: Pick<Panel, 'date' | 'fixing'>,
): { readonly applied: string; readonly expires: string } | undefined {
  const expires = panel.fixing?.expires;
  const applied = panel.fixing?.applied ?? closingDate(panel);
  return expires === undefined || applied === undefined || dayOf(applied) <= dayOf(expires) ? undefined : { applied, expires };
}

/** Seen square to the panel, the place lies within the panel's bounds. */
function covers(panel: Panel, at: Vec3): boolean {
  if (panel.outline.length < 3) return false;
  const { min, max } = boundsOf(panel.outline);
  const { normal } = planarPolygon(panel.outline);
  const through = [0, 1, 2].reduce((a, b) => (Math.abs(normal[b] as number) > Math.abs(normal[a] as number) ? b : a));
  return [0, 1, 2].every(
    (axis) =>
      axis === through || ((at[axis] as number) >= (min[axis] as number) && (at[axis] as number) <= (max[axis] as number)),
  );
}
