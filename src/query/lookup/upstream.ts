import type { Circuit, Shell } from '../../records/index.js';

/**
 * The circuits whose own fuse or breaker stands before a circuit's: those that end where its protection is fed from. Empty where the
 * records join nothing to it.
 */
export function upstream(shell: Pick<Shell, 'runs' | 'circuits'>, circuit: Circuit): readonly Circuit[] {
  const at = circuit.protection?.at;
  if (at === undefined) return [];
  // Links without a circuit of their own (bus bars, the positions of a panel) belong to the place.
  const place = new Set([at]);
  const links = shell.runs.filter((run) => run.circuit === undefined && run.medium === circuit.medium);
  for (let before = 0; before !== place.size; ) {
    before = place.size;
    for (const { from, to } of links) {
      if (place.has(from)) place.add(to);
      else if (place.has(to)) place.add(from);
    }
  }
  const feeding = new Set(
    shell.runs
      .filter((run) => run.circuit !== circuit.id && (place.has(run.from) || place.has(run.to)))
      .map((run) => run.circuit),
  );
  return shell.circuits.filter((one) => feeding.has(one.id) && one.protection?.at !== undefined && !place.has(one.protection.at));
}
