import type { Elsewhere, RecordElsewhere } from '../../model/elsewhere.js';
import type { Shell } from '../../model/shell.js';
import type { RecordBase } from '../../model/source.js';
import type { ShellList } from '../../store/layout.js';

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

/** How records of one list are compared. */
interface Compared {
  readonly list: ShellList;
  readonly what: string;
  /** This many must repeat before anything is said: a few may agree by chance. */
  readonly least: number;
  /** And this share of the records that can be compared. */
  readonly share?: number;
  readonly of: (shell: Shell) => readonly RecordBase[];
  /** What the record claims, as one text; undefined where it claims too little to be told apart from an honest like. */
  readonly claim: (typed: Typed) => string | undefined;
  /** A word of a record that claims something, which the other file must have before it is read at all. */
  readonly word: (typed: Typed) => string;
}

const date = (typed: Typed): string => String(typed.date);
/** Some fields as one text, where the record has at least `least` of `readings`. */
const claimOf =
  (keys: readonly string[], readings: readonly string[], least: number) =>
  (typed: Typed): string | undefined =>
    readings.filter((key) => typed[key] !== undefined).length < least || typed.date === undefined
      ? undefined
      : JSON.stringify(['date', ...keys, ...readings].map((key) => typed[key] ?? null));

const COMPARED: readonly Compared[] = [
  {
    list: 'tests',
    what: 'readings and dates',
    least: 1,
    of: ({ tests }) => tests,
    claim: claimOf(['kind', 'instrument'], ['measured', 'start', 'end', 'start_temperature', 'end_temperature', 'duration'], 3),
    word: date,
  },
  {
    list: 'weights',
    what: 'readings and dates',
    least: 1,
    of: ({ tickets }) => tickets,
    claim: claimOf(['gross'], ['readings', 'condition'], 2),
    word: date,
  },
  {
    list: 'openings',
    what: 'measured values and dates',
    least: 1,
    of: ({ openings }) => openings,
    claim: claimOf(['width', 'height'], ['measured'], 1),
    word: date,
  },
  {
    list: 'panels',
    what: 'bonding logs and dates',
    least: 3,
    of: ({ panels }) => panels,
    claim: claimOf(['id', 'fixing'], ['bond'], 1),
    word: date,
  },
  {
    list: 'welds',
    what: 'ids, welders and dates',
    least: 3,
    of: ({ welds }) => welds,
    claim: claimOf(['id'], ['welder', 'joins', 'inspections'], 3),
    word: date,
  },
  {
    list: 'members',
    what: 'ids and heats',
    least: 10,
    share: 0.5,
    of: ({ members }) => members,
    claim: ({ id, heat }) => (heat === undefined ? undefined : JSON.stringify([id, heat])),
    word: ({ heat }) => String(heat),
  },
];

/** Where a shell repeats records of one begun earlier: pasted and not made anew, or a coincidence worth a look. */
export function repeats(shell: Shell, elsewhere: Elsewhere): readonly Repeats[] {
  return COMPARED.flatMap((compared) => repeatsIn(compared, shell, elsewhere));
}

function repeatsIn(compared: Compared, shell: Shell, elsewhere: Elsewhere): readonly Repeats[] {
  const { list, what, least, share = 0 } = compared;
  const own = new Map<string, RecordBase>();
  const words = new Set<string>();
  for (const record of compared.of(shell)) {
    const claim = compared.claim(record.typed);
    if (claim === undefined) continue;
    own.set(claim, record);
    words.add(compared.word(record.typed));
  }
  if (own.size < least) return [];
  const byShell = new Map<string, { record: RecordBase; of: RecordElsewhere }[]>();
  for (const of of elsewhere.records(list, [...words], Math.max(1, Math.ceil((share * words.size) / 2)))) {
    const record = own.get(compared.claim(of.typed) ?? '');
    if (record) byShell.set(of.shell, [...(byShell.get(of.shell) ?? []), { record, of }]);
  }
  return [...byShell]
    .filter(([other]) => !elsewhere.beganBefore(other))
    .filter(([, pairs]) => pairs.length >= least && pairs.length >= share * own.size)
    .map(([other, pairs]) => ({ list, what, shell: other, pairs }));
}
