import { isPlanned } from '../../model/planned.js';
import { aheadOfProtection } from '../../query/isolate/graph/ahead.js';
import { zonesHolding } from '../../query/shown.js';
import type { Circuit, Run, ServiceNode, Zone } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { indexOrder } from '../index-order.js';
import { insulatorWords, sealWords } from '../passages.js';
import { ref, table } from '../table.js';
import { circuitOf, protectionWords, type WayIn, wayToNode, wayToRun } from '../where.js';
import { roughPlace } from './emergency.js';
import { everydayWords, type IndexLine } from './everyday-words.js';
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
  /** Where it is, in words that one walks by. */
  readonly place?: string;
  /** What a repairer renews or puts back there: seals, an insulator. */
  readonly care?: string;
  /** Of a run whose id is its circuit's with a number: a reader finds it under the circuit. */
  readonly underCircuit?: boolean;
}

/** By everyday words, by name, by id or marking in two columns; by zone in a line each. */
export const serviceIndex: ChapterMaker = (book) => {
  const entries = entriesOf(book);
  return {
    key: 'index',
    title: 'Service access index',
    template: 'service-index',
    data: {
      media: mediaKey(book),
      words: everydayWords(book),
      byName: byName(entries),
      byId: byId(entries),
      byZone: byZone(book, entries),
      zones: zoneTable(book),
    },
  };
};

const order = indexOrder('en');

function entriesOf(book: Book): readonly Entry[] {
  const { shell } = book.assessment.model;
  const holding = zonesHolding(shell);
  const nodes = new Map(shell.nodes.map((node) => [node.id, node]));
  // In few words: the exact place stands with the record, on the page that is named.
  const placed = (id: string | undefined): Pick<Entry, 'place'> => {
    const node = id === undefined ? undefined : nodes.get(id);
    if (node?.at === undefined) return node?.place ? { place: node.place } : {};
    return { place: [...slotWords(node), node.place ?? roughPlace(book, node.at)].join(', ') };
  };
  const ahead = aheadOfProtection(shell);
  const guarding = (id: string, circuit: Circuit | undefined) => (ahead.has(id) ? undefined : circuit);
  const ofCircuit = (circuit: Circuit): Entry => {
    const at = circuit.protection?.at;
    const way = at ? wayToNode(book, at) : { panels: [], words: '' };
    const seals = shell.runs.flatMap((run) => (run.circuit === circuit.id ? (sealWords(book, run) ?? []) : []));
    const care = [...new Set(seals)].join('; ');
    return {
      ...entry(circuit.id, circuit.name, 'circuit', circuit, circuit, way, []),
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

const slotWords = ({ slot }: ServiceNode): readonly string[] =>
  slot ? [[slot.row === undefined ? '' : `row ${slot.row}, `, `position ${slot.number}`].join('')] : [];

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

/** What it is, where its name does not tell, and what a repairer renews there. */
const kindOf = (one: Entry): string | undefined => {
  const kind = one.name.toLowerCase().includes(one.kind) ? undefined : one.kind;
  return [kind, one.place, one.care].filter(Boolean).join(', ') || undefined;
};

/** A line of a column, the panel to take off, the page that gives it in full. */
const line = (all: readonly Entry[], sub: string | undefined, key?: string): IndexLine => {
  const [one] = all as readonly [Entry];
  const panels = [...new Set(all.flatMap(({ way }) => way.panels))];
  const ids = all.map(({ id }) => id);
  return {
    name: nameOf(all),
    sub,
    refs: (ids.length > MOST_IDS ? [ids[0] as string, ids.at(-1) as string] : ids).map((id) => ref(id)),
    through: ids.length > MOST_IDS,
    ...(key === undefined || key === one.id ? {} : { see: `${key}, see` }),
    panels: panels.slice(0, MOST_PANELS).map((id) => ref(id)),
    reach: panels.length > 0 ? undefined : one.way.words || undefined,
    to: ref(one.id).to,
  };
};
/** Panels named of a long way, and ids of like things: the rest stands with the record. */
const MOST_PANELS = 2;
const MOST_IDS = 2;

const NUMBER = /\d+/u;
/** `light 1` to `light 6` are one line: `light 1 to 6`. */
function nameOf(all: readonly Entry[]): string {
  const [first, last] = [all[0]?.name ?? '', all.at(-1)?.name ?? ''];
  const to = NUMBER.exec(last)?.[0];
  return all.length > 1 && to !== undefined ? first.replace(NUMBER, (from) => `${from} to ${to}`) : first;
}

/** Like things of one circuit, or of none, whose names differ by their first number alone. */
function likeOnes(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  const groups = new Map<string, Entry[]>();
  for (const one of entries) {
    const base = one.id.replace(/\/[^/]*$/u, '');
    const key =
      NUMBER.test(one.name) && one.kind !== 'circuit'
        ? `${one.name.replace(NUMBER, '#')} ${one.kind} ${one.care ?? ''} ${base}`
        : one.id;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

const byName = (entries: readonly Entry[]): readonly IndexLine[] =>
  likeOnes(entries.filter((one) => one.kind !== 'run').sort((a, b) => order(a.name, b.name) || order(a.id, b.id)))
    .map((all) => line(all, kindOf(all[0] as Entry)))
    .sort((a, b) => order(a.name, b.name));

const byId = (entries: readonly Entry[]): readonly IndexLine[] =>
  entries
    .flatMap((one) => [...(one.underCircuit ? [] : [{ one, key: one.id }]), ...one.markings.map((key) => ({ one, key }))])
    .sort((a, b) => order(a.key, b.key))
    .map(({ one, key }) => line([one], one.kind === 'circuit' ? one.protection : undefined, key));

interface InZone {
  readonly zone: Zone;
  readonly ids: readonly string[];
}

/** What is in each cavity: joints and devices; the runs, where nothing else is. */
function byZone(book: Book, entries: readonly Entry[]) {
  const rows = book.assessment.model.shell.zones.flatMap((zone): readonly InZone[] => {
    const inside = entries.filter((one) => one.zones.includes(zone.id));
    const nodes = inside.filter(({ kind }) => kind !== 'run');
    // What passes is told of once a circuit is known: a hand looks for joints and devices.
    const ids = (nodes.length > 0 ? nodes : inside).map(({ id }) => id).sort(order);
    return ids.length > 0 ? [{ zone, ids }] : [];
  });
  return table<InZone>(book.show, {
    look: 'dense index',
    rows,
    columns: (c) => [
      c.refs(
        'Zone',
        ({ zone }) => [zone.id],
        ({ zone }) => zone.name,
      ),
      c.refs('Closed by', ({ zone }) => zone.closedBy),
      c.refs('What is in it', ({ ids }) => ids),
    ],
    empty: 'No zone has a recorded service.',
  });
}
