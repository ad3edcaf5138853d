import path from 'node:path';
import { dayOf } from '../../quantity/day.js';
import { UserError } from '../../user-error.js';
import { cutRecords, type FilePiece } from './cut.js';

/** How the demo store came about, as `templates/demo-history.yaml` has it. */
export interface DemoPlan {
  readonly people: Readonly<Record<string, { readonly name: string; readonly email: string }>>;
  readonly commits: readonly {
    /** ISO 8601 with offset: author’s and committer’s date. */
    readonly date: string;
    readonly by: string;
    readonly message: string;
    /** A shell that is closed after this commit. */
    readonly closes?: string;
  }[];
  readonly stages: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly files: Readonly<Record<string, string>>;
  readonly enters: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Files whose records were there from a day on, each without its `date` until that date. */
  readonly planned: Readonly<Record<string, string>>;
  readonly earlier: readonly Earlier[];
}

/** What a record said before a day: other words, or some of its lines not yet there. */
interface Earlier {
  readonly file: string;
  readonly id: string;
  readonly until: string;
  readonly now?: string;
  readonly was?: string;
  /** Lines of the record, counted from 1. */
  readonly lines?: readonly number[];
}

export const PLAN_FILE = 'templates/demo-history.yaml';

/**
 * The store as it stood at the end of each day, from its files as they are now: path → bytes. Throws {@link UserError} where the plan
 * speaks of a record that is not there.
 */
export function statesOf(plan: DemoPlan, store: ReadonlyMap<string, Buffer>): (day: string) => ReadonlyMap<string, Buffer> {
  const entries = [...store].map((file) => entryOf(file, plan)).sort((a, b) => (a.name < b.name ? -1 : 1));
  checkEarlier(plan, entries);
  return (day) => stateOn(entries, day);
}

/** A file with the day on which each part of it came in. */
interface Entry {
  readonly name: string;
  readonly pieces: readonly (FilePiece & { readonly enters: string; readonly earlier: readonly Earlier[] })[];
  readonly whole: Buffer;
}

function entryOf([name, whole]: readonly [string, Buffer], plan: DemoPlan): Entry {
  const fallback = Object.entries(plan.files).find(([pattern]) => fits(pattern, name))?.[1] ?? '';
  if (!name.endsWith('.yaml')) return { name, whole, pieces: [] };
  const shell = /^shells\/([^/]+)\//u.exec(name)?.[1] ?? '';
  const pieces = cutRecords(whole.toString('utf8')).map((piece) => {
    const earlier = plan.earlier.filter((one) => one.file === name && one.id === piece.record?.id);
    const stage = plan.stages[shell]?.[String(piece.record?.typed.stage)];
    const own = piece.record && lastDay(piece.record.typed, earlier.length > 0);
    const given = plan.enters[name]?.[piece.record?.id ?? ''] ?? plan.planned[name];
    return { ...piece, earlier: [...earlier, ...undatedUntil(piece, name, plan)], enters: given ?? own ?? stage ?? fallback };
  });
  return { name, whole, pieces };
}

/** A planned record’s date is the last thing that it got. */
function undatedUntil(piece: FilePiece, file: string, plan: DemoPlan): readonly Earlier[] {
  const typed = piece.record?.typed.date;
  if (plan.planned[file] === undefined || typeof typed !== 'string') return [];
  const now = new RegExp(`,\\s+date: ${typed}(?=,)`, 'u').exec(piece.text)?.[0];
  return now === undefined ? [] : [{ file, id: piece.record?.id ?? '', until: typed, now, was: '' }];
}

const fits = (pattern: string, name: string): boolean =>
  new RegExp(
    `^${pattern
      .split('*')
      .map((part) => part.replace(/[.+?^${}()|[\]\\]/gu, '\\$&'))
      .join('[^/]*')}$`,
    'u',
  ).test(name);

type Typed = Readonly<Record<string, unknown>>;

/** The last day that a record speaks of, as it stood when it was whole; its first where earlier versions of it are told. */
function lastDay(typed: Typed, first: boolean): string | undefined {
  const dates = [typed.date, typed.taken, typed.raised, (typed.fixing as Typed | undefined)?.applied];
  const later = [typed.closed, ...((typed.inspections as readonly Typed[] | undefined) ?? []).map((one) => one.date)];
  const known = (first ? dates : [...dates, ...later])
    .filter((one): one is string => typeof one === 'string')
    .map((one) => dayOf(one));
  return known.sort().at(-1);
}

function checkEarlier(plan: DemoPlan, entries: readonly Entry[]): void {
  for (const one of plan.earlier) {
    const piece = entries.find(({ name }) => name === one.file)?.pieces.find(({ record }) => record?.id === one.id);
    if (!piece) throw new UserError(`${PLAN_FILE} speaks of ${one.id} in ${one.file}, where it is not.`);
    if (one.now !== undefined && piece.text.split(one.now).length !== 2) {
      throw new UserError(`${PLAN_FILE} expects \`${one.now}\` once in ${one.id} of ${one.file}.`);
    }
  }
}

/** The store as it stood at the end of a day. A picture comes in with the line that names it. */
function stateOn(entries: readonly Entry[], day: string): ReadonlyMap<string, Buffer> {
  const state = new Map<string, Buffer>();
  const pictures = new Set<string>();
  for (const { name, pieces } of entries) {
    const present = pieces.filter((piece) =>
      piece.record === undefined && piece.list >= 0 ? false : piece.enters !== '' && piece.enters <= day,
    );
    if (present.length === 0) continue;
    const lists = new Set(present.map((piece) => piece.list));
    const text = pieces
      .filter((piece) => present.includes(piece) || (piece.record === undefined && lists.has(piece.list)))
      .map((piece) => textOn(piece, day))
      .join('');
    state.set(name, Buffer.from(text, 'utf8'));
    const folder = path.posix.dirname(name);
    for (const { record } of present)
      if (record?.typed.file !== undefined) pictures.add(`${folder}/${String(record.typed.file)}`);
  }
  for (const { name, whole } of entries) if (pictures.has(name)) state.set(name, whole);
  return state;
}

function textOn(piece: Entry['pieces'][number], day: string): string {
  return piece.earlier
    .filter((one) => day < one.until)
    .reduce((text, one) => {
      if (one.now !== undefined) return text.replace(one.now, () => one.was ?? '');
      const lines = text.split(/(?<=\n)/u);
      const first = lines.findIndex((line) => /^\s*- /u.test(line));
      return lines.filter((_, i) => !one.lines?.includes(i - first + 1)).join('');
    }, piece.text);
}
