import type { Circuit, Run, ServiceNode } from '../../../records/index.js';

/** What isolation knows of a node: facts, and no word of a name. */
export type NodeFacts = Pick<ServiceNode, 'id' | 'medium' | 'nodeKind' | 'role' | 'of'>;
export type RunFacts = Pick<Run, 'id' | 'medium' | 'from' | 'to' | 'fromSide' | 'toSide' | 'circuit'>;
export type CircuitFacts = Pick<Circuit, 'id' | 'medium' | 'protection'>;

/** The services of one shell as far as isolation goes by them; a `Shell` is one. Plain data, as a page outside Node may carry it. */
export interface ServiceFacts {
  readonly nodes: readonly NodeFacts[];
  readonly runs: readonly RunFacts[];
  readonly circuits: readonly CircuitFacts[];
}

/** Something that the record does not say, and what to record or measure. */
export interface Unknown {
  readonly id: string;
  readonly what: string;
}

/** One end of a run at a node. */
export interface RunEnd {
  readonly run: RunFacts;
  /** Its side of the node as recorded. */
  readonly side?: string;
  /** `from` and `to` of one run may be the same node. */
  readonly end: 'from' | 'to';
}

/** The run ends at each node, in the order of the runs. */
export function endsByNode(runs: readonly RunFacts[]): ReadonlyMap<string, readonly RunEnd[]> {
  const ends = new Map<string, RunEnd[]>();
  const put = (node: string, end: RunEnd): void => {
    const known = ends.get(node);
    if (known) known.push(end);
    else ends.set(node, [end]);
  };
  for (const run of runs) {
    put(run.from, { run, end: 'from', ...(run.fromSide === undefined ? {} : { side: run.fromSide }) });
    put(run.to, { run, end: 'to', ...(run.toSide === undefined ? {} : { side: run.toSide }) });
  }
  return ends;
}
