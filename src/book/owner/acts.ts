import { firstShutOffs } from '../../query/isolate/rescue.js';
import { placesOf } from '../../query/place.js';
import type { NodeRole, ServiceNode } from '../../records/index.js';
import { isSlideOut } from '../../records/opening.js';
import type { Book } from '../book.js';
import { phrasesFor, readerFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** One thing to do, with what it is done to. */
export interface EmergencyAct {
  readonly words: string;
  readonly where?: string;
  readonly node?: ServiceNode;
}

const withRole = (nodes: readonly ServiceNode[], ...roles: readonly NodeRole[]): readonly ServiceNode[] =>
  nodes.filter(({ role }) => role !== undefined && roles.includes(role));

/** First shut-offs of a medium: by roles and the graph, never by a name. */
export function shutOffsOf(book: Book, medium: ServiceNode['medium']): readonly ServiceNode[] {
  const { shell } = book.assessment.model;
  const first = firstShutOffs(shell);
  return shell.nodes.filter((node) => node.medium === medium && first.has(node.id) && node.role !== 'fuse');
}

/** What to do in an emergency, in order, from what is recorded of this coach. */
export function emergencyActs(book: Book): readonly EmergencyAct[] {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const places = placesOf(book.assessment.model, readerFor(book));
  const act = (words: string, node: ServiceNode): EmergencyAct => ({ words, node, where: sentenceStart(places(node.id) ?? '') });
  const named = (node: ServiceNode) => ({ id: node.id, name: node.name ?? phrase(node.nodeKind) ?? node.nodeKind });
  const electric = [...shutOffsOf(book, 'dc'), ...shutOffsOf(book, 'ac')];
  const generators = withRole(shell.nodes, 'generator');
  const besideGenerator = (node: ServiceNode): boolean =>
    shell.runs.some(({ from, to }) =>
      generators.some(({ id }) => (from === id && to === node.id) || (to === id && from === node.id)),
    );
  const acts = [
    ...shutOffsOf(book, 'gas').map((node) => act(w('act.gas', named(node)), node)),
    ...withRole(shell.nodes, 'shore inlet').map((node) => act(w('act.shore', named(node)), node)),
    ...electric.filter(besideGenerator).map((node) => act(w('act.generator', named(node)), node)),
    ...withRole(
      shell.nodes.filter(({ medium }) => medium === 'dc'),
      'switch',
    ).map((node) => act(w('act.switch', named(node)), node)),
    ...electric
      .filter((node) => node.role === 'breaker' && !besideGenerator(node))
      .map((node) => act(w('act.breaker', named(node)), node)),
    ...shutOffsOf(book, 'fuel').map((node) => act(w('act.fuel', named(node)), node)),
    ...shutOffsOf(book, 'water')
      .filter(({ role }) => role === 'shut-off')
      .map((node) => act(w('act.water', named(node)), node)),
  ];
  return [{ words: w('act.people') }, { words: w('act.call', { what: carries(book) }) }, { words: w('act.safe') }, ...acts];
}

/** It follows a full stop. */
const sentenceStart = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** What firemen are told that it carries: `propane; diesel; house battery, lithium`. */
const carries = (book: Book): string =>
  [
    ...new Set([
      ...book.assessment.model.shell.tanks
        .filter(({ use }) => use === 'gas' || use === 'fuel')
        .map(({ contents }) => phrasesFor(book)(contents) ?? contents),
      ...withRole(book.assessment.model.shell.nodes, 'battery').map(({ name, id }) => name ?? id),
    ]),
  ].join('; ');

/** What nothing aboard switches off. */
export function staysLive(book: Book): readonly string[] {
  const w = sentencesFor(book);
  const { nodes, runs } = book.assessment.model.shell;
  const next = (id: string): string =>
    runs.flatMap(({ from, to }) => (from === id ? [to] : to === id ? [from] : [])).join(', ') || id;
  const said = [
    ...withRole(nodes, 'battery').map(({ id }) => w('act.live.battery', { id: next(id) })),
    ...withRole(nodes, 'solar panel').map(({ id }) => w('act.live.solar', { id })),
  ];
  return said.length > 0 ? said : [w('act.live.none')];
}

/** Every opening that does not slide: what it is called, where, how large. */
export function waysOut(book: Book) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const places = placesOf(book.assessment.model, readerFor(book));
  return table(book.show, {
    look: 'dense tight',
    rows: shell.openings.filter((one) => !isSlideOut(one) && one.travelMm === undefined),
    columns: (c) => [
      c.text(
        w('head.what'),
        (one) => phrase(one.openingKind),
        (one) => one.note,
      ),
      c.text(w('head.where'), (one) => places(one.id)),
      c.text(w('act.size'), (one) => `${book.show.length(one.widthMm)} × ${book.show.length(one.heightMm)}`),
    ],
    empty: w('word.none'),
  });
}
