import type { RecordBase, RecordKind, Shell } from '../records/index.js';

const known = new WeakMap<Shell, ReadonlySet<string>>();

/** Ids of what is recorded and not in the coach yet (`planned: yes`). A circuit is planned while all its runs are. */
function plannedIds(shell: Shell): ReadonlySet<string> {
  const found = known.get(shell) ?? gather(shell);
  known.set(shell, found);
  return found;
}

/** Behind the name of what somebody would look for in vain. */
export const PLANNED_WORDS = '(planned, not in the coach yet)';

export const isPlanned = (shell: Shell, id: string): boolean => plannedIds(shell).has(id);

function gather(shell: Shell): ReadonlySet<string> {
  const planned = new Set<string>();
  for (const { record } of shell.byId.values())
    if ((record as Partial<RecordBase>).planned === true) planned.add((record as RecordBase).id);
  const built = new Set(shell.runs.flatMap(({ id, circuit }) => (planned.has(id) ? [] : [circuit])));
  for (const { id, circuit } of shell.runs)
    if (circuit !== undefined && planned.has(id) && !built.has(circuit)) planned.add(circuit);
  return planned;
}

/** Records of one kind that somebody builds, by whether they are in the coach. */
export interface BuildCount {
  readonly kind: RecordKind;
  readonly planned: number;
  readonly done: number;
}

/** What somebody builds: it is planned until it is there. A zone or a circuit is only a name for what is in it. */
export const BUILT_KINDS = [
  'member',
  'weld',
  'panel',
  'opening',
  'node',
  'run',
  'component',
  'clamp',
] as const satisfies readonly RecordKind[];

/** Records of these kinds, counted by planned and done; a kind without records is left out. */
export function buildCounts(
  shell: Shell,
  of: readonly { readonly kind: RecordKind; readonly record: { readonly id: string } }[],
): readonly BuildCount[] {
  const planned = plannedIds(shell);
  return BUILT_KINDS.flatMap((kind): readonly BuildCount[] => {
    const own = of.filter((one) => one.kind === kind);
    const waiting = own.filter(({ record }) => planned.has(record.id)).length;
    return own.length === 0 ? [] : [{ kind, planned: waiting, done: own.length - waiting }];
  });
}
