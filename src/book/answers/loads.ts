import { onRoof, roofLinesOf } from '../../query/lookup/index.js';
import type { Declared } from '../../records/index.js';
import type { Book } from '../book.js';
import { ref, table } from '../table.js';

/** One thing that somebody may want to do, by the words of the declarations that allow it. */
interface Use {
  readonly use: string;
  /** Declared kinds, of the closed list. */
  readonly kinds: readonly string[];
  /** What holds where nothing is declared. */
  readonly otherwise: string;
}

const NOT_HERE = 'not declared: do not do it here';
const LIFTING: readonly Use[] = [
  { use: 'Lift the shell', kinds: ['lift'], otherwise: `${NOT_HERE}; a licensed engineer declares it first` },
  { use: 'Jack', kinds: ['jack', 'stand'], otherwise: `${NOT_HERE}: jack only at the chassis maker’s places, by its manual` },
  { use: 'Tow, recover', kinds: ['tow'], otherwise: `${NOT_HERE}: only at the chassis maker’s places, by its manual` },
  {
    use: 'Tie down',
    kinds: ['tie down'],
    otherwise: `${NOT_HERE}: only at the chassis maker’s places, by its manual`,
  },
];
const HANGING: readonly Use[] = [
  { use: 'Hang or mount on wall, roof or floor', kinds: ['mounting', 'wall load', 'floor load'], otherwise: NOT_HERE },
];
const ROOF: readonly Use[] = [
  { use: 'Walk on the roof, or load it', kinds: ['roof load'], otherwise: 'not declared: keep off the roof' },
];

/** Lifting, jacking, towing, tying down: what comes off first, and the points together against the weight that hangs on them. */
export function liftingAnswer(book: Book) {
  return table<Allowed>(book.show, {
    look: 'tight',
    rows: allowed(book, LIFTING),
    columns: (c) => [
      c.text('To', (row) => row.use),
      c.refs('At', (row) => row.points.map((one) => one.id)),
      c.text('First unbolt or take off', (row) => firstOff(book, row)),
      c.text(
        'Rated',
        (row) => ratingWords(book, row),
        (row) => [inAll(book, row), row.points[0]?.note].filter(Boolean).join('; ') || undefined,
      ),
      c.text('Weight on them', (row) => weightOn(book, row)),
      c.text(
        'Declared by',
        (row) => row.points[0]?.by,
        (row) => row.points[0]?.document,
      ),
      ...(book.edition === 'owner' ? [] : [c.page((row: Allowed) => row.points[0]?.id)]),
    ],
    empty: NOT_HERE,
  });
}
export const hangingAnswer = (book: Book) => usesTable(book, HANGING);
export const roofAnswer = (book: Book) => usesTable(book, ROOF);

/** Points that one person declared alike, for one use; without any, the plain word that none is declared. */
interface Allowed {
  readonly use: string;
  readonly points: readonly Declared[];
  readonly otherwise: string;
}

function allowed(book: Book, uses: readonly Use[]): readonly Allowed[] {
  const { declared } = book.assessment.model.shell;
  return uses.flatMap(({ use, kinds, otherwise }): readonly Allowed[] => {
    const alike = new Map<string, Declared[]>();
    for (const one of declared.filter(({ declaredKind }) => kinds.includes(declaredKind))) {
      const key = JSON.stringify([one.declaredKind, one.rating?.text, one.by, one.document, one.note]);
      alike.set(key, [...(alike.get(key) ?? []), one]);
    }
    const found = [...alike.values()].map((points) => ({ use, points, otherwise }));
    return found.length > 0 ? found : [{ use, points: [], otherwise }];
  });
}

function usesTable(book: Book, uses: readonly Use[]) {
  return table<Allowed>(book.show, {
    look: 'tight',
    rows: allowed(book, uses),
    columns: (c) => [
      c.text('To', (row) => row.use),
      c.refs('At', (row) => row.points.map((one) => one.id)),
      c.text(
        'Rating',
        (row) => ratingWords(book, row),
        (row) => row.points[0]?.note,
      ),
      c.text('Asked to carry', (row) => askedWords(book, row)),
      c.text(
        'Declared by',
        (row) => row.points[0]?.by,
        (row) => row.points[0]?.document,
      ),
      ...(book.edition === 'owner' ? [] : [c.page((row) => row.points[0]?.id)]),
    ],
    empty: NOT_HERE,
  });
}

function ratingWords(book: Book, { points: [one, ...more], otherwise }: Allowed): string {
  if (!one) return otherwise;
  const rating = one.rating ? book.show.rating(one.rating) : 'no rating declared';
  return more.length > 0 ? `${rating} each` : rating;
}

/** Its recorded share of what it is declared for. */
function askedWords(book: Book, { points }: Allowed): string {
  const loads = loadsOn(book, points);
  const [first] = loads;
  if (!first) return points.length === 0 ? '' : 'not known: nothing recorded hangs on it';
  const most = Math.max(...loads.map((one) => one.loadKg));
  return `${loads.length > 1 ? `up to ${book.show.mass(most)} each` : book.show.mass(most)} as recorded`;
}

const loadsOn = (book: Book, points: readonly Declared[]) =>
  book.assessment.figures.weights.pointLoads.filter((one) => points.some(({ id }) => id === one.id));

/** What comes off before anything is lifted; without a record of it, the plain word that it is not proved. */
function firstOff(book: Book, { points }: Allowed): string {
  const [first] = loadsOn(book, points);
  if (points.length === 0) return '';
  if (!first || first.unboltFirst.length === 0) return 'not recorded: not proved, ask who declared it';
  return first.unboltFirst.map((one, at) => `${at + 1}. ${one}`).join('; ');
}

/** `4 points: 144 kN (32,373 lbf) in all`, where each has a rating of one kind. */
function inAll(book: Book, { points }: Allowed): string | undefined {
  const ratings = points.flatMap(({ rating }) => (rating ? [rating] : []));
  const [first] = ratings;
  if (!first || ratings.length < 2 || ratings.length < points.length || first.dimension !== 'force') return undefined;
  const value = ratings.reduce((sum, one) => sum + one.value, 0);
  const text = `${Math.floor(value / 100 + 1e-9) / 10} kN`;
  return `${points.length} points together ${book.show.rating({ ...first, text, value })}`;
}

/** `19,287 lb (8,748 kg), the shell off its chassis; up to 5,106 lb (2,316 kg) at one point`. */
function weightOn(book: Book, { points }: Allowed): string {
  const loads = loadsOn(book, points);
  const [first] = loads;
  if (!first) return points.length === 0 ? '' : 'not known: no weight is recorded';
  const what = { shell: 'the shell off its chassis', 'whole vehicle': 'the whole vehicle', 'not recorded': 'the whole vehicle' }[
    first.lifts
  ];
  const most = Math.max(...loads.map((one) => one.loadKg));
  const share = loads.length > 1 ? `; up to ${book.show.mass(most)} at one point` : '';
  return `${book.show.mass(first.ofKg)}, ${what}${share}`;
}

/** Places that differ by less than this are one line across the roof, mm. */
const SAME_LINE_MM = 20;

/** Where the roof has a truss under it, in each unit that the book shows, and what stands on it. */
export function roofLines(book: Book) {
  const { shell } = book.assessment.model;
  const stations = roofLinesOf(shell)
    .map((member) => (member.shape.kind === 'line' ? (member.shape.from[0] + member.shape.to[0]) / 2 : 0))
    .sort((a, b) => a - b);
  const lines = stations.filter((x, at) => at === 0 || x - (stations[at - 1] as number) > SAME_LINE_MM);
  return {
    lines: lines.length === 0 ? [] : book.show.ways.station.map(({ unit, write }) => `${lines.map(write).join(', ')} ${unit}`),
    onRoof: onRoof(shell).map((one) => ({ ref: ref(one.id), name: one.name })),
  };
}
