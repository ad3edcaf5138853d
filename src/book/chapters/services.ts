import { placesOf } from '../../query/place.js';
import type { Circuit, Medium, Run, ServiceNode } from '../../records/index.js';
import { MEDIA } from '../../records/index.js';
import type { Book, Chapter } from '../book.js';
import { decisionsOf } from '../decisions.js';
import { shortRefs, spansColumn } from '../id-spans.js';
import { insulatorWords, sealWords } from '../passages.js';
import { table } from '../table.js';
import { circuitOf, madeOf, panelColumn, placeColumn, protectionWords, wayToRun } from '../where.js';

const ELECTRIC: readonly Medium[] = ['dc', 'ac', 'data'];

/** A chapter for each medium that the shell has. */
export function servicesChapter(book: Book): readonly Chapter[] {
  const used = new Set(book.assessment.model.shell.services.map((service) => service.medium));
  return MEDIA.filter((medium) => used.has(medium)).map((medium) => mediumChapter(book, medium));
}

function mediumChapter(book: Book, medium: Medium): Chapter {
  const { shell } = book.assessment.model;
  const name = book.draw.mediumName(medium);
  const of = <R extends { readonly medium: Medium }>(list: readonly R[]) => list.filter((one) => one.medium === medium);
  return {
    key: `service-${medium}`,
    title: name,
    template: 'service',
    data: {
      medium,
      letter: book.draw.mediumLetter(medium),
      names: of(shell.services).map((service) => service.name),
      electric: ELECTRIC.includes(medium),
      gas: medium === 'gas',
      mains: medium === 'ac',
      figures: book.draw
        .services(book.assessment, medium, book.availableSize('landscape', 16))
        .map((figure) => ({ ...figure, sheet: 'landscape' })),
      faces: facesOf(book, medium),
      lines: book.draw.lineDiagrams(book.assessment, medium, book.availableSize('portrait', 18)),
      circuits: ELECTRIC.includes(medium) ? circuitTable(book, of(shell.circuits)) : lineTable(book, of(shell.circuits)),
      nodes: connectionTable(book, of(shell.nodes)),
      runs: runTable(book, of(shell.runs)),
      tolerance: toleranceWords(book, usualTolerance(of(shell.runs))),
      trapped:
        medium === 'water' || medium === 'drain' ? trappedTable(book, new Set(of(shell.runs).map((run) => run.id))) : undefined,
      spare: of(shell.runs)
        .filter((run) => run.spare || run.abandoned)
        .map((run) => ({ id: run.id, what: run.abandoned ? 'abandoned' : 'spare' })),
    },
  };
}

/** Panels of fuses or breakers of a medium, as one stands before them. */
function facesOf(book: Book, medium: Medium) {
  const { shell } = book.assessment.model;
  const panels = new Set(shell.nodes.filter((node) => node.medium === medium).map((node) => `face-${node.id}`));
  const room = { widthMm: book.availableSize('portrait').widthMm, heightMm: FACE_MM };
  return book.draw.distributionFaces(book.assessment, room).filter(({ id }) => panels.has(id));
}
const FACE_MM = 200;

/** What a conductor may carry is never rounded up. */
const down = (a: number | undefined): number | undefined => (a === undefined ? undefined : Math.floor(a + 1e-9));

function circuitTable(book: Book, circuits: readonly Circuit[]) {
  const figures = new Map(book.assessment.figures.services.circuits.map((one) => [one.id, one]));
  const { runs } = book.assessment.model.shell;
  const runsOf = (circuit: Circuit) => runs.filter((run) => run.circuit === circuit.id).map((run) => run.id);
  const drop = (circuit: Circuit) => {
    const given = figures.get(circuit.id)?.drop;
    return given === undefined ? undefined : given * 100;
  };
  return table(book.show, {
    look: 'dense index',
    rows: circuits,
    home: (circuit) => circuit.id,
    marks: (circuit) => decisionsOf(book, circuit.id),
    columns: (c) => [
      c.id(
        'Circuit',
        (circuit) => circuit.id,
        (circuit) =>
          [circuit.marking && circuit.marking !== circuit.id ? `marked ${circuit.marking}` : undefined, circuit.colour]
            .filter(Boolean)
            .join(', '),
      ),
      c.text(
        'Name',
        (circuit) => circuit.name,
        (circuit) => circuit.note,
      ),
      c.count('Volt', (circuit) => circuit.voltageV, 1),
      c.refs(
        'Protected at; wire',
        (circuit) => [circuit.protection?.at],
        (circuit) => [protectionWords(circuit, false), madeOf(circuit)].filter(Boolean).join('; ') || undefined,
      ),
      c.refs(
        'Runs',
        (circuit) => runsOf(circuit).slice(0, MOST_RUNS),
        (circuit) => {
          const more = runsOf(circuit).length - MOST_RUNS;
          return more > 0 ? `and ${more} more` : undefined;
        },
      ),
      c.count('Load', (circuit) => figures.get(circuit.id)?.loadA ?? circuit.loadA, 1, 'A'),
      c.count('Ampacity', (circuit) => down(figures.get(circuit.id)?.ampacityA), 0, 'A'),
      c.length('Length', (circuit) => figures.get(circuit.id)?.lengthMm),
      c.count('Drop', drop, 1, '%'),
    ],
    empty: 'No circuits are recorded.',
  });
}

function lineTable(book: Book, circuits: readonly Circuit[]) {
  return table(book.show, {
    rows: circuits,
    home: (circuit) => circuit.id,
    marks: (circuit) => decisionsOf(book, circuit.id),
    columns: (c) => [
      c.id('Line', (circuit) => circuit.id),
      c.text(
        'Name',
        (circuit) => circuit.name,
        (circuit) => circuit.note,
      ),
      c.text('Size', (circuit) => madeOf(circuit)),
      c.pressure('Working pressure', (circuit) => circuit.workingPressurePa),
      c.text('Protection', (circuit) => protectionWords(circuit)),
      c.text('Marking', (circuit) => circuit.marking),
    ],
    empty: 'No lines are recorded.',
  });
}

function connectionTable(book: Book, nodes: readonly ServiceNode[]) {
  const joined = new Map<string, string[]>();
  const again = samePlaces(book, nodes);
  for (const run of book.assessment.model.shell.runs) {
    for (const end of [run.from, run.to]) joined.set(end, [...(joined.get(end) ?? []), run.id]);
  }
  return table(book.show, {
    look: 'dense index',
    rows: nodes,
    home: (node) => node.id,
    marks: (node) => decisionsOf(book, node.id),
    columns: (c) => [
      c.id(
        'ID',
        (node) => node.id,
        (node) => (node.marking && node.marking !== node.id ? `marked ${node.marking}` : undefined),
      ),
      c.text(
        'What',
        (node) => [node.name, node.nodeKind].filter(Boolean).join(', '),
        (node) =>
          [
            node.position,
            node.rating?.text,
            node.torqueNm === undefined ? undefined : `torque ${book.show.torque(node.torqueNm)}`,
            insulatorWords(node),
            node.note,
          ]
            .filter(Boolean)
            .join(', '),
      ),
      placeColumn(
        book,
        'Where',
        (node) => node.at,
        (node) => node.id,
        (node) => again.has(node.id),
      ),
      panelColumn(book),
      {
        head: 'Runs',
        kind: 'id',
        cell: (node) => {
          const all = joined.get(node.id) ?? [];
          const more = all.length - MOST_JOINED;
          return {
            refs: shortRefs(all.slice(0, MOST_JOINED)),
            ...(all.length === 0 ? { text: '–' } : {}),
            ...(more > 0 ? { sub: `and ${more} more in the list of runs` } : {}),
          };
        },
      },
    ],
    empty: 'No connections are recorded.',
  });
}

/** Nodes that stand where the one in the line above stands, as far as words go: their lines have the tape's place alone. */
function samePlaces(book: Book, nodes: readonly ServiceNode[]): ReadonlySet<string> {
  const placeOf = placesOf(book.assessment.model);
  return new Set(
    nodes.flatMap(({ id, at }, i) => {
      const before = nodes[i - 1];
      return at && before?.at && placeOf(before.id) === placeOf(id) ? [id] : [];
    }),
  );
}

/** Runs of a circuit that its line names: the first, and with it the place of the others in the list of runs. */
const MOST_RUNS = 1;
/** A distribution panel joins dozens: named one below the other they would fill a page. */
const MOST_JOINED = 6;

/** What most runs of a medium say, told once above their list; runs that say otherwise have it in their line. */
function usualTolerance(runs: readonly Run[]): number | undefined {
  const counts = new Map<number, number>();
  for (const { toleranceMm } of runs) if (toleranceMm !== undefined) counts.set(toleranceMm, (counts.get(toleranceMm) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

const toleranceWords = (book: Book, mm: number | undefined): string | undefined =>
  mm === undefined ? undefined : `± ${book.show.length(mm)}`;

function runTable(book: Book, runs: readonly Run[]) {
  const usual = usualTolerance(runs);
  const figures = new Map(book.assessment.figures.takeOff.runs.map((one) => [one.id, one]));
  // The name of a circuit stands in the first of its lines.
  const firsts = new Set(runs.filter((run, i) => run.circuit && run.circuit !== runs[i - 1]?.circuit).map(({ id }) => id));
  return table(book.show, {
    look: 'dense index',
    rows: runs,
    home: (run) => run.id,
    marks: (run) => decisionsOf(book, run.id),
    columns: (c) => [
      c.id(
        'Run',
        (run) => run.id,
        (run) => (run.abandoned ? 'abandoned' : run.spare ? 'spare' : undefined),
      ),
      c.refs('From', (run) => [run.from]),
      c.refs('To', (run) => [run.to]),
      c.text(
        'Made of',
        (run) => madeOf(run) ?? madeOf(circuitOf(book, run)),
        (run) => [run.note, firsts.has(run.id) ? circuitOf(book, run)?.name : undefined].filter(Boolean).join('; ') || undefined,
      ),
      c.length('Length', (run) => figures.get(run.id)?.lengthMm),
      c.refs(
        'Through',
        (run) => run.zones,
        (run) =>
          [
            run.toleranceMm === usual ? undefined : (toleranceWords(book, run.toleranceMm) ?? 'no tolerance'),
            sealWords(book, run),
          ]
            .filter(Boolean)
            .join('; ') || undefined,
      ),
      spansColumn(
        'Panels to follow it',
        (run) => wayToRun(book, run.id).panels,
        (run) => wayToRun(book, run.id).words,
      ),
    ],
    empty: 'No runs are recorded.',
  });
}

export function trappedTable(book: Book, runs: ReadonlySet<string>) {
  return table(book.show, {
    rows: book.assessment.figures.services.trapped.filter((one) => one.runs.some((id) => runs.has(id))),
    columns: (c) => [
      c.refs('Line', (one) => one.runs),
      placeColumn(book, 'Lowest place', (one) => one.at),
      c.count('Kept when level', (one) => one.levelLitres, 2, 'L'),
      c.count('On a 3 % slope', (one) => one.slopeLitres, 2, 'L'),
      c.text('Outlet', (one) => (one.noOutlet ? 'none' : 'does not empty this place')),
    ],
    empty: 'No low place keeps water after the drains and taps are opened.',
  });
}
