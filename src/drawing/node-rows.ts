import type { PlacedNode } from '../model/placed.js';
import type { Point } from './scene.js';

/** From so many on, nodes that stand in a line and are numbered along it have their ids at its ends only. */
const LEAST = 4;
/** Off the line by no more than this, mm on the sheet. */
const STRAIGHT_MM = 1;

/** An id and its number at the end: `DC-05/L` and 3. */
function numbered(id: string): { readonly stem: string; readonly number: number } | undefined {
  const found = /^(?<stem>.*\D)(?<number>\d{1,3})$/u.exec(id)?.groups;
  return found ? { stem: found.stem as string, number: Number(found.number) } : undefined;
}

/**
 * Nodes between the ends of a row: those of one kind whose ids count up by one from place to place along a straight line on the sheet.
 * Their ids are told by those at its ends.
 */
export function withinRows(nodes: readonly PlacedNode[], place: (node: PlacedNode) => Point): ReadonlySet<string> {
  const stems = new Map<string, { readonly node: PlacedNode; readonly number: number }[]>();
  for (const node of nodes) {
    const own = numbered(node.id);
    if (!own) continue;
    const key = `${node.nodeKind} ${own.stem}`;
    stems.set(key, [...(stems.get(key) ?? []), { node, number: own.number }]);
  }
  const within = new Set<string>();
  for (const row of stems.values()) {
    const inOrder = [...row].sort((a, b) => a.number - b.number);
    const counts = inOrder.every(({ number }, at) => at === 0 || number === (inOrder[at - 1]?.number ?? 0) + 1);
    if (inOrder.length < LEAST || !counts || !isRow(inOrder.map(({ node }) => place(node)))) continue;
    for (const { node } of inOrder.slice(1, -1)) within.add(node.id);
  }
  return within;
}

/** Whether places follow each other along a straight line. */
function isRow(places: readonly Point[]): boolean {
  const [first, last] = [places[0] as Point, places.at(-1) as Point];
  const long = Math.hypot(last[0] - first[0], last[1] - first[1]);
  if (long < STRAIGHT_MM) return false;
  const [dx, dy] = [(last[0] - first[0]) / long, (last[1] - first[1]) / long];
  let before = -Infinity;
  return places.every(([x, y]) => {
    const along = (x - first[0]) * dx + (y - first[1]) * dy;
    const aside = Math.abs((y - first[1]) * dx - (x - first[0]) * dy);
    const follows = along > before && aside <= STRAIGHT_MM;
    before = along;
    return follows;
  });
}
