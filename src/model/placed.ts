import type { Vec3 } from '../geometry/vector.js';
import type { Run, ServiceNode, Shell } from '../records/index.js';

/** A node whose place is on record: a wire list may name one before the tape was laid. */
export type PlacedNode = ServiceNode & { readonly at: Vec3 };

export const isPlaced = (node: ServiceNode): node is PlacedNode => node.at !== undefined;

/** The nodes that have a place, in the order of the records. */
export const placedNodes = (nodes: readonly ServiceNode[]): readonly PlacedNode[] => nodes.filter(isPlaced);

/** A run's way is known where both its ends have a place. */
export const hasWay = ({ path }: Pick<Run, 'path'>): boolean => path.length > 0;

/** Nodes without a place and runs without a way, by id: no answer about distance, reach or length has them in it. */
export const unplaced = ({ nodes, runs }: Pick<Shell, 'nodes' | 'runs'>): readonly string[] => [
  ...nodes.filter((node) => !isPlaced(node)).map(({ id }) => id),
  ...runs.filter((run) => !hasWay(run)).map(({ id }) => id),
];
