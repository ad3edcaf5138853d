import type { Run } from '../../model/services.js';
import type { Shell } from '../../model/shell.js';
import { isSource, protectionNode } from './roles.js';

/** What has been done: nodes that were switched, shut or taken apart, and circuits whose fuse or breaker is out. */
export interface Done {
  readonly nodes: ReadonlySet<string>;
  readonly circuits: ReadonlySet<string>;
}

/**
 * Sources that still reach some runs and nodes. Walks the records themselves, run by run, and knows nothing of the graph that the
 * actions were chosen on.
 */
export function sourcesReaching(
  shell: Shell,
  start: { readonly nodes: readonly string[]; readonly runs: readonly string[] },
  done: Done,
): readonly string[] {
  const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
  const touching = new Map<string, Run[]>();
  for (const run of shell.runs) {
    for (const end of [run.from, run.to]) touching.set(end, [...(touching.get(end) ?? []), run]);
  }
  const known = new Set(shell.nodes.map((node) => node.id));
  const fuseAt = new Map(shell.circuits.map((circuit) => [circuit.id, protectionNode(circuit, shell)] as const));
  const isFused = (run: Run, node: string): boolean =>
    run.circuit !== undefined && known.has(node) && fuseAt.get(run.circuit) === node;
  const isOut = (run: Run, node: string): boolean => isFused(run, node) && done.circuits.has(run.circuit as string);

  const nodesSeen = new Set(start.nodes);
  const runsSeen = new Set(start.runs);
  const queue: (Run | string)[] = [...nodesSeen, ...[...runsSeen].flatMap((id) => runs.get(id) ?? [])];
  const visitRun = (run: Run): void => {
    if (runsSeen.has(run.id)) return;
    runsSeen.add(run.id);
    queue.push(run);
  };
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    if (typeof at === 'string') {
      const node = at;
      for (const run of touching.get(node) ?? []) if (!isOut(run, node)) visitRun(run);
      continue;
    }
    for (const end of [at.from, at.to]) {
      if (isOut(at, end)) continue;
      // Runs of one circuit meet at its fuse, before the node that holds it.
      if (isFused(at, end)) for (const run of touching.get(end) ?? []) if (run.circuit === at.circuit) visitRun(run);
      if (nodesSeen.has(end) || done.nodes.has(end) || !known.has(end)) continue;
      nodesSeen.add(end);
      queue.push(end);
    }
  }
  return shell.nodes.filter((node) => nodesSeen.has(node.id) && isSource(node)).map((node) => node.id);
}
