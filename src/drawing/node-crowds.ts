import { distance } from '../geometry/vector.js';
import type { PlacedNode } from '../model/placed.js';

/** Nodes nearer to each other than this belong to one crowd, mm. */
const NEAR_MM = 160;
/** From so many on, a crowd is drawn by itself, at a larger scale. */
const CROWD = 10;

/** Sets of nodes of which each is near another of its set, the large ones only, in the order of the record. */
export function crowdsOf(nodes: readonly PlacedNode[]): readonly (readonly PlacedNode[])[] {
  const left = new Set(nodes);
  const crowds: PlacedNode[][] = [];
  for (const first of nodes) {
    if (!left.delete(first)) continue;
    const crowd = [first];
    for (const one of crowd) {
      for (const other of left) {
        if (distance(one.at, other.at) > NEAR_MM) continue;
        left.delete(other);
        crowd.push(other);
      }
    }
    if (crowd.length >= CROWD) crowds.push(crowd);
  }
  return crowds;
}

/** The node that a crowd is called by: its distribution panel, else the first. */
export const nameOfCrowd = (crowd: readonly PlacedNode[]): PlacedNode =>
  crowd.find((node) => node.nodeKind === 'panel') ?? (crowd[0] as PlacedNode);
