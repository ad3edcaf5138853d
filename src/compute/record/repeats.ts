import type { Elsewhere, RecordElsewhere } from '../../model/elsewhere.js';
import type { Fields } from '../../records/field.js';
import type { ListedKind, RecordBase, Shell } from '../../records/index.js';
import type { Repeated } from '../../records/kind.js';
import { kindOf } from '../../records/kinds.js';
import type { ShellList } from '../../records/lists.js';
import { listName } from '../../records/shell.js';
import { LISTED_KINDS } from '../../records/shell-lists.js';

/** Records of a list that say word for word what records of another shell say. */
export interface Repeats {
  readonly list: ShellList;
  readonly shell: string;
  /** Each beside the record that it repeats. */
  readonly pairs: readonly { readonly record: RecordBase; readonly of: RecordElsewhere }[];
  /** What is the same: `readings and dates`. */
  readonly what: string;
}

type Typed = Readonly<Record<string, unknown>>;

/** How records of one kind are compared, as it says itself. */
interface Compared extends Repeated<Fields> {
  readonly kind: ListedKind;
  readonly list: ShellList;
}

const COMPARED: readonly Compared[] = LISTED_KINDS.flatMap((kind) => {
  const { home, more } = kindOf(kind);
  return more.repeated && home.in === 'shell' ? [{ ...more.repeated, kind, list: home.list as ShellList }] : [];
});

/** What a record claims, as one text; undefined where it claims too little to be told apart from an honest like. */
const claimOf = ({ same, readings, leastReadings, word }: Compared, typed: Typed): string | undefined =>
  readings.filter((key) => typed[key] !== undefined).length < leastReadings || typed[word] === undefined
    ? undefined
    : JSON.stringify([...same, ...readings].map((key) => typed[key] ?? null));

/** Where a shell repeats records of one begun earlier: pasted and not made anew, or a coincidence worth a look. */
export function repeats(shell: Shell, elsewhere: Elsewhere): readonly Repeats[] {
  return COMPARED.flatMap((compared) => repeatsIn(compared, shell, elsewhere));
}

function repeatsIn(compared: Compared, shell: Shell, elsewhere: Elsewhere): readonly Repeats[] {
  const { kind, list, what, least, share = 0, word } = compared;
  const own = new Map<string, RecordBase>();
  const words = new Set<string>();
  for (const record of shell[listName(kind)] as readonly RecordBase[]) {
    const claim = claimOf(compared, record.typed);
    if (claim === undefined) continue;
    own.set(claim, record);
    words.add(String(record.typed[word]));
  }
  if (own.size < least) return [];
  const byShell = new Map<string, { record: RecordBase; of: RecordElsewhere }[]>();
  for (const of of elsewhere.records(list, [...words], Math.max(1, Math.ceil((share * words.size) / 2)))) {
    const record = own.get(claimOf(compared, of.typed) ?? '');
    if (record) byShell.set(of.shell, [...(byShell.get(of.shell) ?? []), { record, of }]);
  }
  return [...byShell]
    .filter(([other]) => !elsewhere.beganBefore(other))
    .filter(([, pairs]) => pairs.length >= least && pairs.length >= share * own.size)
    .map(([other, pairs]) => ({ list, what, shell: other, pairs }));
}
