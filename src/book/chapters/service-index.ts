import { zoneMap } from '../../compute/access/zones.js';
import type { Circuit, Run, ServiceNode } from '../../model/services.js';
import type { Book, ChapterMaker } from '../book.js';
import { type Column, type Columns, table } from '../table.js';
import { circuitOf, protectionWords, type WayIn, wayToNode, wayToRun } from '../where.js';
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
}

/** By name, by id or marking, by panel, by zone: each entry with its panel, its protection and its page. */
export const serviceIndex: ChapterMaker = (book) => {
  const entries = entriesOf(book);
  return {
    key: 'index',
    title: 'Service access index',
    template: 'service-index',
    data: {
      byName: byName(book, entries),
      byId: byId(book, entries),
      byPanel: byPanel(book, entries),
      byZone: byZone(book, entries),
      zones: zoneTable(book),
    },
  };
};

const order = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true, sensitivity: 'base' });

function entriesOf(book: Book): readonly Entry[] {
  const { shell } = book.assessment.model;
  const map = zoneMap(shell.zones);
  const ofCircuit = (circuit: Circuit): Entry => {
    const at = circuit.protection?.at;
    return entry(circuit.id, circuit.name, 'circuit', circuit, circuit, at ? wayToNode(book, at) : { panels: [], words: '' }, []);
  };
  const ofNode = (node: ServiceNode): Entry => {
    const circuit = circuitOf(book, node);
    const name = node.name ?? `${circuit?.name ?? ''} ${node.nodeKind}`.trim();
    const zones = map.holding(node.at).map((zone) => zone.id);
    return entry(node.id, name, node.nodeKind, node, circuit, wayToNode(book, node.id), zones);
  };
  const ofRun = (run: Run): Entry => {
    const circuit = circuitOf(book, run);
    const way = wayToRun(book, run.id);
    return entry(
      run.id,
      `${circuit?.name ?? book.draw.mediumName(run.medium)}, ${run.from} to ${run.to}`,
      'run',
      run,
      circuit,
      way,
      run.zones,
    );
  };
  return [...shell.circuits.map(ofCircuit), ...shell.nodes.map(ofNode), ...shell.runs.map(ofRun)];
}

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

function tail<R extends Entry>(c: Columns<R>): readonly Column<R>[] {
  return [
    c.refs(
      'Panel',
      (one) => one.way.panels,
      (one) => one.way.words,
    ),
    c.text('Protection', (one) => one.protection),
    c.page((one) => one.id),
  ];
}

function byName(book: Book, entries: readonly Entry[]) {
  return table(book.show, {
    look: 'dense',
    rows: entries.filter((one) => one.kind !== 'run').sort((a, b) => order(a.name, b.name) || order(a.id, b.id)),
    columns: (c) => [
      c.text(
        'Name',
        (one) => one.name,
        (one) => one.kind,
      ),
      c.refs('Id', (one) => [one.id]),
      ...tail(c),
    ],
    empty: 'No services are recorded.',
  });
}

function byId(book: Book, entries: readonly Entry[]) {
  const keyed = entries.flatMap((one) => [{ ...one, key: one.id }, ...one.markings.map((key) => ({ ...one, key }))]);
  return table(book.show, {
    look: 'dense',
    rows: keyed.sort((a, b) => order(a.key, b.key)),
    columns: (c) => [
      c.refs(
        'Id or marking',
        (one) => (one.key === one.id ? [one.id] : []),
        (one) => (one.key === one.id ? undefined : `${one.key}, see ${one.id}`),
      ),
      c.text(
        'Name',
        (one) => one.name,
        (one) => one.kind,
      ),
      ...tail(c),
    ],
    empty: 'No services are recorded.',
  });
}

function byPanel(book: Book, entries: readonly Entry[]) {
  const rows = entries
    .filter((one) => one.kind !== 'circuit')
    .flatMap((one) => one.way.panels.map((panel) => ({ ...one, panel })))
    .sort((a, b) => order(a.panel, b.panel) || order(a.id, b.id));
  return table(book.show, {
    look: 'dense',
    rows,
    group: (one) => one.panel,
    columns: (c) => [
      c.refs('Id', (one) => [one.id]),
      c.text(
        'Name',
        (one) => one.name,
        (one) => one.kind,
      ),
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
    .flatMap((one) => one.zones.map((zone) => ({ ...one, zone })))
    .sort((a, b) => order(a.zone, b.zone) || order(a.id, b.id));
  return table(book.show, {
    look: 'dense',
    rows,
    group: (one) => [one.zone, names.get(one.zone)].filter(Boolean).join(', '),
    columns: (c) => [
      c.refs('Id', (one) => [one.id]),
      c.text(
        'Name',
        (one) => one.name,
        (one) => one.kind,
      ),
      ...tail(c),
    ],
    empty: 'No zone has a recorded service.',
  });
}
