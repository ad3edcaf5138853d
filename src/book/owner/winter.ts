import { drainPlan } from '../../query/lookup/index.js';
import { placesOf } from '../../query/place.js';
import type { ServiceNode } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { phrasesFor, readerFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';
import { placeColumn, protectionWords, wayToNode } from '../where.js';
import { shutOffsOf } from './acts.js';

/** Winterizing: heat and gas off first, then every valve in order with what comes out there. */
export const winter: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { shell } = book.assessment.model;
  const wet = new Set(shell.runs.filter(({ medium }) => medium === 'water' || medium === 'drain').map(({ id }) => id));
  return {
    key: 'winter',
    title: w('winter.title'),
    template: 'owner-winter',
    data: { first: firstSteps(book), steps: stepTable(book), trapped: trapped(book, wet) },
  };
};

/** The valves and the breaker or fuse of whatever belongs to the same equipment as a node. */
function feedsOf(book: Book, node: ServiceNode): readonly string[] {
  const phrase = phrasesFor(book);
  const { nodes, runs, circuits } = book.assessment.model.shell;
  const mine = nodes.filter((one) => one.id === node.id || one.of?.some((id) => node.of?.includes(id)));
  const valves = mine
    .filter(({ medium }) => medium === 'gas')
    .flatMap(({ id }) => runs.flatMap(({ from, to }) => (to === id ? [from] : from === id ? [to] : [])))
    .filter((id) => nodes.find((one) => one.id === id)?.role === 'shut-off');
  const electric = mine
    .flatMap(({ medium, circuit }) => (medium === 'dc' || medium === 'ac' ? (circuit ?? []) : []))
    .flatMap((id) => circuits.find((one) => one.id === id) ?? [])
    .map((circuit) => `${circuit.id} (${phrase(protectionWords(circuit)) ?? ''})`);
  return [...new Set([...valves, ...electric])];
}

function firstSteps(book: Book): readonly string[] {
  const w = sentencesFor(book);
  const { nodes } = book.assessment.model.shell;
  const water = nodes.filter(({ medium }) => medium === 'water');
  const heaters = new Map(water.filter(({ role }) => role === 'heater').map((node) => [node.of?.join() ?? node.id, node]));
  const pumps = water.filter(({ role }) => role === 'pump');
  const gas = shutOffsOf(book, 'gas');
  return [
    ...[...heaters.values()].map((node) => {
      const feeds = feedsOf(book, node);
      return feeds.length > 0 ? w('winter.heater', { gas: feeds.join(', ') }) : w('winter.heater.plain');
    }),
    ...(gas.length > 0 ? [w('winter.gas', { id: gas.map(({ id }) => id).join(', ') })] : []),
    ...pumps.flatMap((node) => {
      const feeds = feedsOf(book, node);
      return feeds.length > 0 ? [w('winter.pump', { fuse: feeds.join(', ') })] : [];
    }),
  ];
}

function stepTable(book: Book) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const nodes = new Map(book.assessment.model.shell.nodes.map((node) => [node.id, node] as const));
  const places = placesOf(book.assessment.model, readerFor(book));
  return table(book.show, {
    look: 'dense tight',
    rows: drainPlan(book.assessment).steps.map((step, i) => ({ ...step, no: i + 1, node: nodes.get(step.id) })),
    columns: (c) => [
      c.count(w('winter.step'), (one) => one.no),
      c.text(w('winter.do'), (one) => w(`winter.act.${one.do}`)),
      c.refs(w('head.id'), (one) => [one.id]),
      c.text(w('head.what'), (one) => one.node?.name ?? phrase(one.node?.nodeKind)),
      c.text(w('head.where'), (one) => places(one.id)),
      c.refs(w('head.panel'), (one) => wayToNode(book, one.id).panels),
      c.text(w('winter.out'), (one) => (one.litres === undefined ? undefined : book.show.volume(one.litres / 1000))),
      c.text(w('winter.done'), () => '____'),
    ],
    empty: w('word.none'),
  });
}

/** Low places that keep water when all is open. */
function trapped(book: Book, runs: ReadonlySet<string>) {
  const w = sentencesFor(book);
  return table(book.show, {
    rows: book.assessment.figures.services.trapped.filter((one) => one.runs.some((id) => runs.has(id))),
    columns: (c) => [
      c.refs(w('winter.line'), (one) => one.runs),
      placeColumn(book, w('winter.lowest'), (one) => one.at),
      c.count(w('winter.level'), (one) => one.levelLitres, 2, 'L'),
      c.count(w('winter.slope'), (one) => one.slopeLitres, 2, 'L'),
      c.text(w('winter.outlet'), (one) => w(one.noOutlet ? 'winter.outlet.none' : 'winter.outlet.other')),
    ],
    empty: w('winter.none'),
  });
}
