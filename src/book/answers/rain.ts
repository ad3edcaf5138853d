import { onRoof } from '../../query/lookup/index.js';
import { placesOf } from '../../query/place.js';
import { placeWords } from '../../query/place-words.js';
import { lastRainTest } from '../../query/topics/rain.js';
import type { Book } from '../book.js';
import { idSpans } from '../id-spans.js';
import { outsidePassages, SEALED_WORD } from '../passages.js';
import { showIn } from '../show.js';
import { table } from '../table.js';

/** A place where rain can come in. */
interface WayIn {
  /** From where to where aft of the datum, mm: a stain is looked for from its own place. */
  readonly aftMm: readonly [from: number, to: number];
  readonly ids: readonly string[];
  readonly what: string;
  readonly where?: string;
  readonly sealed?: string;
  /** Records that rain tests and findings name. */
  readonly tested: readonly string[];
}

const NO_SEAL = 'not recorded';

/** Where rain can come in, from front to rear: sheets of the roof, what stands on it, openings, and runs that pass the skin. */
export function rainAnswer(book: Book) {
  const rows = [...roofSheets(book), ...roofThings(book), ...openingWays(book), ...passageWays(book)];
  return table<WayIn>(book.show, {
    look: 'dense tight',
    rows: rows.sort((a, b) => a.aftMm[0] - b.aftMm[0] || a.aftMm[1] - b.aftMm[1]),
    columns: (c) => [
      c.text('Aft', (one) => aftWords(book, one.aftMm)),
      { head: 'Comes in at', kind: 'id', cell: (one) => ({ refs: idSpans(one.ids), sub: one.what }) },
      c.text('Where', (one) => one.where),
      c.text('Sealed with', (one) => one.sealed ?? NO_SEAL),
      c.text('Last rain test', (one) => rainTest(book, one.tested)),
      c.refs('Found before', (one) => foundOn(book, one.tested)),
      c.page((one) => one.ids[0]),
    ],
    empty: 'No opening, roof sheet or passage of the outside skin is recorded.',
  });
}

const extent = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];

/** `4 ft 4 in to 8 ft 2 in`, with millimetres behind where both systems are shown. */
function aftWords({ show }: Book, [from, to]: readonly [number, number]): string {
  const ways = show.ways.length.map(({ unit, write }) => {
    const words = write === show.ways.length[0]?.write && unit === 'ft in' ? '' : ` ${unit}`;
    return `${[...new Set([write(from), write(to)])].join(' to ')}${words}`;
  });
  const [first, second] = ways;
  return second ? `${first} (${second})` : `${first}`;
}

const roofSheets = (book: Book): readonly WayIn[] =>
  book.assessment.model.shell.panels
    .filter(({ panelKind }) => panelKind === 'roof')
    .map(({ id, outline, fixing }) => ({
      aftMm: extent(outline.map(([x]) => x)),
      ids: [id],
      what: 'roof sheet, its seams',
      ...placeOf(book, id),
      ...(fixing?.sealant || fixing?.adhesive ? { sealed: [fixing.sealant, fixing.adhesive].filter(Boolean).join(', ') } : {}),
      tested: [id],
    }));

const roofThings = (book: Book): readonly WayIn[] =>
  onRoof(book.assessment.model.shell).map(({ id, name, at, middle: centre }) => ({
    aftMm: [(centre ?? at)[0], (centre ?? at)[0]],
    ids: [id],
    what: `${name}: its seal, and its condensate`,
    ...placeOf(book, id),
    tested: [id],
  }));

const openingWays = (book: Book): readonly WayIn[] =>
  book.assessment.model.shell.openings.map(({ id, openingKind, sill }) => ({
    aftMm: sill.length > 0 ? extent(sill.map(([x]) => x)) : [0, 0],
    ids: [id],
    what: openingKind,
    ...placeOf(book, id),
    tested: [id],
  }));

/** Those of the belly are looked for from below: they stand with the plumbing. */
const passageWays = (book: Book): readonly WayIn[] => {
  const { system } = book.show;
  const show = showIn(system === 'both' ? 'us' : system);
  const { panels, runs } = book.assessment.model.shell;
  const belly = new Set(panels.filter(({ panelKind }) => panelKind === 'belly').map(({ id }) => id));
  return runs.flatMap(({ id }) =>
    outsidePassages(book, id)
      .filter(({ through }) => !belly.has(through))
      .map((one) => ({
        aftMm: [one.at[0], one.at[0]] as const,
        ids: [id, one.through],
        what: 'run through the outside skin',
        where: placeWords(show, one.at),
        sealed: one.sealed ? SEALED_WORD : 'not verified',
        tested: [id],
      })),
  );
};

const placeOf = (book: Book, id: string): { readonly where?: string } => {
  const where = placesOf(book.assessment.model)(id);
  return where ? { where } : {};
};

function rainTest(book: Book, ids: readonly string[]): string {
  const newest = lastRainTest(book.assessment.model, ids);
  return newest ? `${newest.id}, ${book.show.date(newest.date) || 'no date'}: ${newest.verdict}` : 'none recorded';
}

const foundOn = (book: Book, ids: readonly string[]): readonly string[] =>
  book.assessment.model.shell.findings.filter(({ of }) => ids.some((id) => of.includes(id))).map(({ id }) => id);
