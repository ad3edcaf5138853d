import { distance, type Vec3 } from '../geometry/vector.js';
import { isPlaced } from '../model/placed.js';
import { letters } from '../quantity/format.js';
import type { Shell } from '../records/index.js';

/** One place where protection sits: a panel with its positions, or a single fuse in a line. */
export interface ProtectionPlace {
  /** A, B … Z, AA …, from front to rear. */
  readonly letter: string;
  readonly at: Vec3;
  /** The first node there. */
  readonly id: string;
  readonly nodes: readonly string[];
  readonly circuits: readonly string[];
}

/** Nearer to each other than this they are one place to a reader with a torch, mm. */
const SAME_PLACE_MM = 400;

/** Places of all fuses, breakers, regulators and relief valves of a shell. Pure: the plan and the table both ask it. */
export function protectionPlaces(shell: Pick<Shell, 'nodes' | 'circuits'>): readonly ProtectionPlace[] {
  const nodes = new Map(shell.nodes.map((node) => [node.id, node]));
  const places: { at: Vec3; id: string; nodes: string[]; circuits: string[] }[] = [];
  for (const { id: circuit, protection } of shell.circuits) {
    const node = protection?.at === undefined ? undefined : nodes.get(protection.at);
    if (!node || !isPlaced(node)) continue;
    const near = places.find((one) => distance(one.at, node.at) <= SAME_PLACE_MM);
    const place = near ?? { at: node.at, id: node.id, nodes: [], circuits: [] };
    if (!near) places.push(place);
    if (!place.nodes.includes(node.id)) place.nodes.push(node.id);
    place.circuits.push(circuit);
  }
  return places.sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1]).map((place, at) => ({ ...place, letter: letters(at) }));
}
