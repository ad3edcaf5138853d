import type { Shell } from '../../records/index.js';

/** What stands on the marker of one end of a run. */
export interface Marker {
  readonly run: string;
  /** Marking of its circuit or its own: what the wire or pipe is called. */
  readonly marking: string;
  readonly here: string;
  readonly there: string;
  readonly unused?: 'spare' | 'abandoned';
}

/** Two for each run, one for either end, in the order of the record; first this end, then where the other one is. */
export function markers({ runs, circuits }: Pick<Shell, 'runs' | 'circuits'>): readonly Marker[] {
  const marked = new Map(circuits.map((circuit) => [circuit.id, circuit.marking]));
  return runs.flatMap((run): readonly Marker[] => {
    const unused = run.abandoned ? 'abandoned' : run.spare ? 'spare' : undefined;
    const both: Omit<Marker, 'here' | 'there'> = {
      run: run.id,
      marking: run.marking ?? marked.get(run.circuit ?? '') ?? '',
      ...(unused ? { unused } : {}),
    };
    return [
      { ...both, here: run.from, there: run.to },
      { ...both, here: run.to, there: run.from },
    ];
  });
}
