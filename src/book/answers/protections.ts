import { protectionPlaces } from '../../drawing/index.js';
import { aheadOfProtection } from '../../query/isolate/graph/ahead.js';
import { stillLive, upstream } from '../../query/lookup/index.js';
import type { Circuit } from '../../records/index.js';
import type { Book } from '../book.js';
import { table } from '../table.js';
import { protectionWords, wayToNode } from '../where.js';

/** All fuses, breakers, regulators and relief valves, in-line ones included: one table, and one plan with a letter at each place. */
export function protectionsAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const letters = new Map(protectionPlaces(shell).flatMap(({ letter, nodes }) => nodes.map((node) => [node, letter] as const)));
  const names = new Map(shell.nodes.map((node) => [node.id, node.name]));
  const at = (circuit: Circuit) => circuit.protection?.at;
  const ahead = aheadOfProtection(shell);
  /** What lies before the device, as the cylinder's side of a regulator. */
  const notIts = (circuit: Circuit): string => {
    const runs = shell.runs.filter((run) => run.circuit === circuit.id && ahead.has(run.id)).map((run) => run.id);
    return runs.length > 0 ? `not ${runs.join(', ')}, before it` : '';
  };
  return {
    figure: book.draw.protectionPlan(book.assessment, { widthMm: book.availableSize('portrait').widthMm, heightMm: 130 }),
    table: table<Circuit>(book.show, {
      look: 'dense tight',
      rows: shell.circuits.filter((circuit) => circuit.protection),
      group: (circuit) => book.draw.mediumName(circuit.medium),
      columns: (c) => [
        c.text('On plan', (circuit) => letters.get(at(circuit) ?? '')),
        c.refs(
          'At',
          (circuit) => [at(circuit)],
          (circuit) => names.get(at(circuit) ?? ''),
        ),
        c.text('What', (circuit) => protectionWords(circuit, false)),
        c.refs(
          'Protects',
          (circuit) => [circuit.id],
          (circuit) => [circuit.name, notIts(circuit)].filter(Boolean).join('; '),
        ),
        c.refs('Fed through', (circuit) => upstream(shell, circuit).map((one) => one.protection?.at)),
        c.refs(
          'Panel',
          (circuit) => (at(circuit) ? wayToNode(book, at(circuit) as string).panels : []),
          (circuit) => (at(circuit) ? wayToNode(book, at(circuit) as string).words : 'place not recorded'),
        ),
        // The owner's book has no list of circuits to go on to.
        ...(book.edition === 'owner' ? [] : [c.page((circuit) => circuit.id)]),
      ],
      empty: 'No fuse, breaker or other protection is recorded.',
    }),
    bare: shell.circuits
      .filter((circuit) => !circuit.protection && ['dc', 'ac'].includes(circuit.medium))
      .map((circuit) => ({ id: circuit.id, name: circuit.name })),
  };
}

/** What one main leaves live, and what makes a panel dead. */
export function liveAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const names = new Map(shell.nodes.map((node) => [node.id, node.name ?? node.nodeKind]));
  const named = (id: string) => ({ id, name: names.get(id) ?? '' });
  return stillLive(book.assessment).map(({ panel, isolation, opened }) => ({
    ...named(panel),
    sources: isolation.sources.map(named),
    verified: isolation.verified,
    unknown: isolation.unknown,
    left: isolation.sourcesLeft.map(named),
    mains: table(book.show, {
      rows: opened,
      columns: (c) => [
        c.refs(
          'With only this off',
          (one) => [one.id],
          (one) => [names.get(one.id), one.circuit && `circuit ${one.circuit}`].filter(Boolean).join(', '),
        ),
        c.refs(
          'Panel still fed by',
          (one) => one.sources,
          (one) => (one.sources.length === 0 ? 'no recorded source' : one.sources.map((id) => names.get(id)).join(', ')),
        ),
        c.refs(
          'Still live at the switch',
          (one) => one.before.runs,
          (one) => (one.before.runs.length === 0 ? 'no recorded run' : `from ${one.before.sources.join(', ')}`),
        ),
        c.refs(
          'Panel to take off',
          (one) => wayToNode(book, one.id).panels,
          (one) => wayToNode(book, one.id).words,
        ),
        c.page((one) => one.id),
      ],
      empty: 'Nothing is recorded that parts it from its sources: not verified.',
    }),
  }));
}
