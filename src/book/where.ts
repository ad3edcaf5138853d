import type { NodeAccess, PanelReach, RunAccess } from '../compute/access/types.js';
import type { Vec3 } from '../geometry/vector.js';
import { amps } from '../quantity/format.js';
import { placesOf } from '../query/place.js';
import { placeWords } from '../query/place-words.js';
import { reachAt, reachWords } from '../query/reach-words.js';
import type { Circuit, Run, ServiceNode } from '../records/index.js';
import { spelt } from '../words/index.js';
import type { Book } from './book.js';
import { readerFor } from './sentences.js';
import { type Show, showIn } from './show.js';
import { type Column, columnsIn } from './table.js';

const NO_BREAK = '\u00a0';

/**
 * The column of places: where both systems are shown, the second stands small under the first. With an id, the place in words that one
 * walks by comes first, and the tape's under it. `again`: the words are those of the row above, and the tape's place alone is told.
 */
export function placeColumn<R>(
  book: Book,
  head: string,
  at: (row: R) => Vec3 | undefined,
  id?: (row: R) => string | undefined,
  again?: (row: R) => boolean,
): Column<R> {
  const { system } = book.show;
  const first = showIn(system === 'both' ? 'us' : system);
  const second = system === 'both' ? showIn('metric') : undefined;
  const reader = readerFor(book);
  const written = (at: Vec3, show: Show): string => spelt(reader, placeWords(show, at));
  return {
    head,
    kind: 'text',
    cell: (row) => {
      const place = at(row);
      const named = id?.(row);
      const words = named === undefined ? undefined : placesOf(book.assessment.model, reader)(named);
      if (!place) return { text: words ?? PLACE_NOT_RECORDED };
      if (words) return { text: again?.(row) ? THE_SAME : words, sub: written(place, first) };
      return { text: written(place, first), ...(second ? { sub: written(place, second) } : {}) };
    },
  };
}

/** The column of the panel that lays a node open, and how far it is reached. */
export const panelColumn = <R extends { readonly id: string }>(book: Book): Column<R> =>
  columnsIn<R>(book.show).refs(
    'Panel',
    ({ id }) => wayToNode(book, id).panels,
    ({ id }) => wayToNode(book, id).words,
  );

export { reachWords };

/** How a node or run is got at, in one line, with the panel to open. */
export interface WayIn {
  readonly panels: readonly string[];
  readonly words: string;
}

const THE_SAME = 'the same,';
export const IN_THE_OPEN = 'exposed';
export const PLACE_NOT_RECORDED = 'place not recorded';
const WAY_NOT_RECORDED = 'way not recorded';

export function wayToNode(book: Book, id: string): WayIn {
  const access = accessOf(book).nodes.get(id);
  if (access?.open) return { panels: [], words: IN_THE_OPEN };
  if (access?.placed === false) return { panels: [], words: PLACE_NOT_RECORDED };
  return wayThrough(access, book);
}

export function wayToRun(book: Book, id: string): WayIn {
  const access = accessOf(book).runs.get(id);
  if (access?.lengthMm === 0) return { panels: [], words: WAY_NOT_RECORDED };
  if (access?.openMm !== undefined && access.openMm >= access.lengthMm - 1) return { panels: [], words: IN_THE_OPEN };
  if (access?.follow.length) return { panels: access.follow, words: shareWords(book, access) };
  return wayThrough(access, book);
}

const shareWords = (book: Book, access: RunAccess): string =>
  access.lengthMm > 0 ? `${book.show.percent(access.inReachMm / access.lengthMm, 0)} in reach` : '';

function wayThrough(access: Pick<NodeAccess, 'panels'> | undefined, book: Pick<Book, 'show'>): WayIn {
  const best: PanelReach | undefined = access?.panels[0];
  if (!best || best.reach === 'beyond') return { panels: [], words: 'no panel reaches it' };
  const before = best.approach?.clear === false ? `, but ${best.approach.blockedBy.join(', ')} stands before the panel` : '';
  const blocked = best.blockedBy.length > 0 ? `, behind ${best.blockedBy.join(', ')}` : '';
  return { panels: [best.panel], words: `${reachAt(best, book.show)}${before}${blocked}` };
}

interface ById {
  readonly nodes: ReadonlyMap<string, NodeAccess>;
  readonly runs: ReadonlyMap<string, RunAccess>;
}
const kept = new WeakMap<object, ById>();

function accessOf(book: Book): ById {
  const { access } = book.assessment.figures;
  let found = kept.get(access);
  if (!found) {
    found = { nodes: new Map(access.nodes.map((one) => [one.id, one])), runs: new Map(access.runs.map((one) => [one.id, one])) };
    kept.set(access, found);
  }
  return found;
}

/** `fuse 15 A at DCP`. */
export function protectionWords(circuit: Circuit | undefined, withPlace = true): string | undefined {
  const protection = circuit?.protection;
  if (!protection) return undefined;
  const rating = protection.ratingA === undefined ? '' : ` ${amps(protection.ratingA)}`;
  return `${protection.kind}${rating}${withPlace && protection.at ? ` at ${protection.at}` : ''}`;
}

/** The circuit that a node or run belongs to: its own, else that of the one run that ends there. */
export function circuitOf(book: Book, one: ServiceNode | Run): Circuit | undefined {
  const { shell } = book.assessment.model;
  const named = one.circuit;
  if (named !== undefined) return shell.circuits.find((circuit) => circuit.id === named);
  const circuits = new Set(shell.runs.filter((run) => run.from === one.id || run.to === one.id).map((run) => run.circuit));
  const [only] = circuits;
  return circuits.size === 1 ? shell.circuits.find((circuit) => circuit.id === only) : undefined;
}

/** What a conductor or pipe is made of, in a few words. */
export function madeOf(one: Pick<Run, 'conductor' | 'size'> | Circuit | undefined): string | undefined {
  if (one?.size) return one.size.text;
  const wire = one?.conductor;
  if (!wire) return undefined;
  const size = wire.awg ? `${wire.awg} AWG` : wire.areaMm2 ? `${wire.areaMm2} mm²` : wire.type;
  const count = wire.conductors > 1 ? `${wire.conductors} × ` : '';
  const rating = wire.ratingC ? `, ${Math.round(wire.ratingC)} °C` : '';
  const text = `${count}${size ?? 'wire'}${wire.material === 'aluminium' ? ' aluminium' : ''}`;
  return `${text.replaceAll(' ', NO_BREAK)}${rating.replaceAll(/(?<=\d) /gu, NO_BREAK)}`;
}
