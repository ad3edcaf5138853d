import { onRoof, roofLinesOf } from '../../query/lookup/index.js';
import type { Declared } from '../../records/index.js';
import type { PlainKey } from '../../words/index.js';
import type { Book } from '../book.js';
import { sentencesFor } from '../sentences.js';
import { ref, table } from '../table.js';

/** One thing that somebody may want to do, by the words of the declarations that allow it. */
interface Use {
  readonly use: PlainKey;
  /** Declared kinds, of the closed list. */
  readonly kinds: readonly string[];
  /** What holds where nothing is declared. */
  readonly otherwise: PlainKey;
}

const LIFTING: readonly Use[] = [
  { use: 'declared.lift', kinds: ['lift'], otherwise: 'declared.lift.none' },
  { use: 'declared.jack', kinds: ['jack', 'stand'], otherwise: 'declared.jack.none' },
  { use: 'declared.tow', kinds: ['tow'], otherwise: 'declared.tow.none' },
  { use: 'declared.tie', kinds: ['tie down'], otherwise: 'declared.tow.none' },
];
const HANGING: readonly Use[] = [
  { use: 'declared.hang', kinds: ['mounting', 'wall load', 'floor load'], otherwise: 'declared.none' },
];
const ROOF: readonly Use[] = [{ use: 'declared.roof', kinds: ['roof load'], otherwise: 'declared.roof.none' }];

/** Lifting, jacking, towing, tying down: what comes off first, and the points together against the weight that hangs on them. */
export function liftingAnswer(book: Book) {
  const w = sentencesFor(book);
  return table<Allowed>(book.show, {
    look: 'tight',
    rows: allowed(book, LIFTING),
    columns: (c) => [
      c.text(w('declared.to'), (row) => w(row.use)),
      c.refs(w('declared.at'), (row) => row.points.map((one) => one.id)),
      c.text(w('declared.first'), (row) => firstOff(book, row)),
      c.text(
        w('declared.rated'),
        (row) => ratingWords(book, row),
        (row) => [inAll(book, row), row.points[0]?.note].filter(Boolean).join('; ') || undefined,
      ),
      c.text(w('declared.weight'), (row) => weightOn(book, row)),
      c.text(
        w('declared.by'),
        (row) => row.points[0]?.by,
        (row) => row.points[0]?.document,
      ),
      ...(book.edition === 'owner' ? [] : [c.page((row: Allowed) => row.points[0]?.id)]),
    ],
    empty: w('declared.none'),
  });
}
export const hangingAnswer = (book: Book) => usesTable(book, HANGING);
export const roofAnswer = (book: Book) => usesTable(book, ROOF);

/** Points that one person declared alike, for one use; without any, the plain word that none is declared. */
interface Allowed {
  readonly use: PlainKey;
  readonly points: readonly Declared[];
  readonly otherwise: PlainKey;
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
  const w = sentencesFor(book);
  return table<Allowed>(book.show, {
    look: 'tight',
    rows: allowed(book, uses),
    columns: (c) => [
      c.text(w('declared.to'), (row) => w(row.use)),
      c.refs(w('declared.at'), (row) => row.points.map((one) => one.id)),
      c.text(
        w('declared.rating'),
        (row) => ratingWords(book, row),
        (row) => row.points[0]?.note,
      ),
      c.text(w('declared.asked'), (row) => askedWords(book, row)),
      c.text(
        w('declared.by'),
        (row) => row.points[0]?.by,
        (row) => row.points[0]?.document,
      ),
      ...(book.edition === 'owner' ? [] : [c.page((row) => row.points[0]?.id)]),
    ],
    empty: w('declared.none'),
  });
}

function ratingWords(book: Book, { points: [one, ...more], otherwise }: Allowed): string {
  const w = sentencesFor(book);
  if (!one) return w(otherwise);
  const rating = one.rating ? book.show.rating(one.rating) : w('declared.rating.none');
  return more.length > 0 ? w('declared.each', { load: rating }) : rating;
}

/** Its recorded share of what it is declared for. */
function askedWords(book: Book, { points }: Allowed): string {
  const w = sentencesFor(book);
  const loads = loadsOn(book, points);
  if (loads.length === 0) return points.length === 0 ? '' : w('declared.unknown');
  const most = book.show.mass(Math.max(...loads.map((one) => one.loadKg)));
  return w('declared.recorded', { load: loads.length > 1 ? w('declared.most', { load: most }) : most });
}

const loadsOn = (book: Book, points: readonly Declared[]) =>
  book.assessment.figures.weights.pointLoads.filter((one) => points.some(({ id }) => id === one.id));

/** What comes off before anything is lifted; without a record of it, the plain word that it is not proved. */
function firstOff(book: Book, { points }: Allowed): string {
  const [first] = loadsOn(book, points);
  if (points.length === 0) return '';
  if (!first || first.unboltFirst.length === 0) return sentencesFor(book)('declared.first.none');
  return first.unboltFirst.map((one, at) => `${at + 1}. ${one}`).join('; ');
}

/** `4 points together 144 kN (32,373 lbf)`, where each has a rating of one kind. */
function inAll(book: Book, { points }: Allowed): string | undefined {
  const ratings = points.flatMap(({ rating }) => (rating ? [rating] : []));
  const [first] = ratings;
  if (!first || ratings.length < 2 || ratings.length < points.length || first.dimension !== 'force') return undefined;
  const value = ratings.reduce((sum, one) => sum + one.value, 0);
  const text = `${Math.floor(value / 100 + 1e-9) / 10} kN`;
  return sentencesFor(book)('declared.together', { count: points.length, load: book.show.rating({ ...first, text, value }) });
}

/** `19,287 lb (8,748 kg), the shell off its chassis; up to 5,106 lb (2,316 kg) at one point`. */
function weightOn(book: Book, { points }: Allowed): string {
  const w = sentencesFor(book);
  const loads = loadsOn(book, points);
  const [first] = loads;
  if (!first) return points.length === 0 ? '' : w('declared.weight.none');
  const whole = book.show.mass(first.ofKg);
  const most = book.show.mass(Math.max(...loads.map((one) => one.loadKg)));
  const weight = first.lifts === 'shell' ? w('declared.weight.shell', { whole }) : w('declared.weight.vehicle', { whole });
  return loads.length > 1 ? `${weight}; ${w('declared.weight.point', { load: most })}` : weight;
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
