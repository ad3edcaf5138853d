import { isPlanned } from '../../model/planned.js';
import { aheadOfProtection } from '../../query/isolate/graph/ahead.js';
import { placesOf } from '../../query/place.js';
import { zonesHolding } from '../../query/shown.js';
import type { Circuit, Run, ServiceNode } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { insulatorWords, sealWords } from '../passages.js';
import { type Column, type Columns, table } from '../table.js';
import { circuitOf, protectionWords, type WayIn, wayToNode, wayToRun } from '../where.js';
import { mediaKey } from './reading.js';
import { zoneTable } from './zones.js';

/** One thing that somebody looks for. */
interface Entry {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly markings: readonly string[];
  readonly protection?: string;
  readonly way: WayIn;
  readonly zones: readonly string[];
  /** Of a circuit: its runs. */
  readonly runs?: string;
  /** Where it is, in words that one walks by. */
  readonly place?: string;
  /** What a repairer renews or puts back there: seals, an insulator. */
  readonly care?: string;
  /** Of a run whose id is its circuit's with a number: a reader finds it under the circuit. */
  readonly underCircuit?: boolean;
}

/** By name, by id or marking, by panel, by zone: each entry with its panel, its protection and its page. */
export const serviceIndex: ChapterMaker = (book) => {
  const entries = entriesOf(book);
  return {
    key: 'index',
    title: 'Service access index',
    template: 'service-index',
    data: {
      media: mediaKey(book),
      byName: byName(book, entries),
      byId: byId(book, entries),
      byPanel: byPanel(book, entries),
      byZone: byZone(book, entries),
      zones: zoneTable(book),
    },
  };
};

/** Made once: thousands are compared. */
const order = new Intl.Collator('en', { numeric: true, sensitivity: 'base' }).compare;

function entriesOf(book: Book): readonly Entry[] {
  const { shell } = book.assessment.model;
  const holding = zonesHolding(shell);
  const placeOf = placesOf(book.assessment.model);
  const placed = (id: string | undefined): Pick<Entry, 'place'> => {
    const place = id === undefined ? undefined : placeOf(id);
    return place === undefined ? {} : { place };
  };
  const ahead = aheadOfProtection(shell);
  const guarding = (id: string, circuit: Circuit | undefined) => (ahead.has(id) ? undefined : circuit);
  const runsOf = (id: string): string => {
    const all = shell.runs.filter((run) => run.circuit === id && !isPlanned(shell, run.id)).map((run) => run.id);
    const short = all.map((run) => (run.startsWith(`${id}/`) ? run.slice(id.length) : run));
    return short.length > 3 ? `${short[0]} … ${short.at(-1)}` : short.join(', ');
  };
  const ofCircuit = (circuit: Circuit): Entry => {
    const at = circuit.protection?.at;
    const way = at ? wayToNode(book, at) : { panels: [], words: '' };
    const runs = runsOf(circuit.id);
    const seals = shell.runs.flatMap((run) => (run.circuit === circuit.id ? (sealWords(book, run) ?? []) : []));
    const care = [...new Set(seals)].join('; ');
    return {
      ...entry(circuit.id, circuit.name, 'circuit', circuit, circuit, way, []),
      ...(runs ? { runs } : {}),
      ...placed(at),
      ...cared(care),
    };
  };
  const ofNode = (node: ServiceNode): Entry => {
    const circuit = circuitOf(book, node);
    const name = node.name ?? `${circuit?.name ?? ''} ${node.nodeKind}`.trim();
    const zones = (node.at ? holding(node.at) : []).map((zone) => zone.id);
    return {
      ...entry(node.id, name, node.nodeKind, node, guarding(node.id, circuit), wayToNode(book, node.id), zones),
      ...placed(node.id),
      ...cared(insulatorWords(node)),
    };
  };
  const ofRun = (run: Run): Entry => {
    const circuit = circuitOf(book, run);
    const underCircuit = run.circuit !== undefined && run.id.startsWith(`${run.circuit}/`);
    const way = wayToRun(book, run.id);
    return {
      ...entry(run.id, `${run.from} to ${run.to}`, 'run', run, guarding(run.id, circuit), way, run.zones),
      ...cared(sealWords(book, run)),
      underCircuit,
    };
  };
  // Nobody finds in the coach what is only planned.
  const built = <T extends { readonly id: string }>(all: readonly T[]): readonly T[] =>
    all.filter(({ id }) => !isPlanned(shell, id));
  return [...built(shell.circuits).map(ofCircuit), ...built(shell.nodes).map(ofNode), ...built(shell.runs).map(ofRun)];
}

const cared = (care: string | undefined): Pick<Entry, 'care'> => (care ? { care } : {});

function entry(
  id: string,
  name: string,
  kind: string,
  marked: { readonly marking?: string },
  circuit: Circuit | undefined,
  way: WayIn,
  zones: readonly string[],
): Entry {
  const protection = protectionWords(circuit);
  const markings = marked.marking && marked.marking !== id ? [marked.marking] : [];
  return { id, name, kind, markings, way, zones: [...new Set(zones)], ...(protection ? { protection } : {}) };
}

/** Panels named of a long way: the rest stands with the run. */
const MOST_PANELS = 2;
const LOOK = 'dense index';

function tail<R extends Entry>(c: Columns<R>): readonly Column<R>[] {
  return [
    c.refs(
      'Panel',
      (one) => one.way.panels.slice(0, MOST_PANELS),
      (one) => {
        const more = one.way.panels.length - MOST_PANELS;
        return more > 0 ? `and ${more} more` : one.way.words;
      },
    ),
    c.text('Protection', (one) => one.protection),
    c.page((one) => one.id),
  ];
}

/** What it is, where its name does not tell. */
const kindOf = (one: Entry): string | undefined => {
  const kind = one.name.toLowerCase().includes(one.kind) ? undefined : one.kind;
  return [kind, one.runs && `runs ${one.runs}`, one.place, one.care].filter(Boolean).join(', ') || undefined;
};

const runsAfter = (ids: readonly string[]) => ({ lead: ids.length === 1 ? 'Run on its way:' : 'Runs on their way:', ids });

function byName(book: Book, entries: readonly Entry[]) {
  return table(book.show, {
    look: LOOK,
    rows: entries.filter((one) => one.kind !== 'run').sort((a, b) => order(a.name, b.name) || order(a.id, b.id)),
    columns: (c) => [c.text('Name', (one) => one.name, kindOf), c.refs('Id', (one) => [one.id]), ...tail(c)],
    empty: 'No services are recorded.',
  });
}

function byId(book: Book, entries: readonly Entry[]) {
  const keyed = entries.flatMap((one) => [
    ...(one.underCircuit ? [] : [{ ...one, key: one.id }]),
    ...one.markings.map((key) => ({ ...one, key })),
  ]);
  return table(book.show, {
    look: LOOK,
    rows: keyed.sort((a, b) => order(a.key, b.key)),
    columns: (c) => [
      c.refs(
        'Id or marking',
        (one) => (one.key === one.id ? [one.id] : []),
        (one) => (one.key === one.id ? undefined : `${one.key}, see ${one.id}`),
      ),
      c.text('Name', (one) => one.name, kindOf),
      ...tail(c),
    ],
    empty: 'No services are recorded.',
  });
}

interface Placed extends Entry {
  /** A panel, or a zone. */
  readonly place: string;
}

/** What a hand looks for a line each; what only passes there in one run of ids, but where there is nothing else. */
function runsApart(rows: readonly Placed[]) {
  const runs = new Map<string, string[]>();
  const shown: Placed[] = [];
  const withNodes = new Set(rows.filter((one) => one.kind !== 'run').map((one) => one.place));
  for (const one of rows) {
    const first = !withNodes.has(one.place) && shown.at(-1)?.place !== one.place;
    if (one.kind !== 'run' || first) shown.push(one);
    else runs.set(one.place, [...(runs.get(one.place) ?? []), one.id]);
  }
  return { shown, runs };
}

function byPanel(book: Book, entries: readonly Entry[]) {
  const rows = entries
    .filter((one) => one.kind !== 'circuit')
    .flatMap((one) => one.way.panels.map((panel) => ({ ...one, place: panel })))
    .sort((a, b) => order(a.place, b.place) || order(a.id, b.id));
  const { shown, runs } = runsApart(rows);
  return table(book.show, {
    look: LOOK,
    rows: shown,
    group: (one) => one.place,
    after: (one) => runsAfter(runs.get(one.place) ?? []),
    columns: (c) => [
      c.refs('Id', (one) => [one.id]),
      c.text('Name', (one) => one.name, kindOf),
      c.text('Reach', (one) => (one.kind === 'run' ? 'on its way' : one.way.words)),
      c.text('Protection', (one) => one.protection),
      c.page((one) => one.id),
    ],
    empty: 'No panel opens onto a recorded service.',
  });
}

function byZone(book: Book, entries: readonly Entry[]) {
  const { zones } = book.assessment.model.shell;
  const names = new Map(zones.map((zone) => [zone.id, zone.name]));
  const rows = entries
    .flatMap((one) => one.zones.map((zone) => ({ ...one, place: zone })))
    .sort((a, b) => order(a.place, b.place) || order(a.id, b.id));
  const { shown, runs } = runsApart(rows);
  return table(book.show, {
    look: LOOK,
    rows: shown,
    group: (one) => [one.place, names.get(one.place)].filter(Boolean).join(', '),
    after: (one) => runsAfter(runs.get(one.place) ?? []),
    columns: (c) => [c.refs('Id', (one) => [one.id]), c.text('Name', (one) => one.name, kindOf), ...tail(c)],
    empty: 'No zone has a recorded service.',
  });
}
