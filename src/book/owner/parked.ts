import { amps, number } from '../../quantity/format.js';
import type { Circuit, Opening } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { phrasesFor, sentencesFor } from '../sentences.js';
import { ref, table } from '../table.js';
import { protectionWords } from '../where.js';
import { shutOffsOf } from './acts.js';

/** Setting up, the slide-out by hand, what may be plugged in. */
export const parked: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  return {
    key: 'parked',
    title: w('park.title'),
    template: 'owner-parked',
    data: {
      order: settingUp(book),
      slides: slidesAnswer(book),
      ...powerAnswer(book),
    },
  };
};

/** How each slide-out is moved by hand. */
export const slidesAnswer = (book: Book) =>
  book.assessment.model.shell.openings.filter(({ travelMm }) => travelMm !== undefined).map((one) => slideOut(book, one));

/** What may be plugged in, circuit by circuit, and what the supply sets. */
export function powerAnswer(book: Book) {
  const w = sentencesFor(book);
  return {
    power: outletTable(book),
    share: `${number((1500 / (20 * 120)) * 100)} %`,
    supply: w('power.supply', { supplies: supplies(book).join('; ') || w('word.notrecorded') }),
  };
}

function settingUp(book: Book): readonly string[] {
  const w = sentencesFor(book);
  const { shell } = book.assessment.model;
  const ids = (nodes: readonly { readonly id: string }[]): string => nodes.map(({ id }) => id).join(', ');
  const shore = shell.nodes.filter(({ role }) => role === 'shore inlet');
  const gas = shutOffsOf(book, 'gas');
  const water = shutOffsOf(book, 'water').filter(({ role }) => role === 'shut-off');
  return [
    w('park.level'),
    ...shell.chassis.axles.filter(({ lift }) => lift).map(({ id }) => w('park.axle', { id })),
    ...shell.openings.flatMap(({ id, travelMm }) =>
      travelMm === undefined ? [] : [w('park.slide', { id, travel: book.show.length(travelMm) })],
    ),
    ...(shore.length > 0 ? [w('park.shore', { id: ids(shore) })] : []),
    ...(gas.length > 0 ? [w('park.gas', { id: ids(gas) })] : []),
    ...(water.length > 0 ? [w('park.water', { valve: ids(water) })] : []),
  ];
}

/** How it is moved by hand, its fluid, relief setting and fuses, with a picture of the pack where there is one. */
function slideOut(book: Book, opening: Opening) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const driven = new Set(opening.drivenBy ?? []);
  const lines = shell.circuits.filter(({ id }) => driven.has(id));
  const nodes = shell.nodes.filter(({ id, circuit }) => driven.has(id) || (circuit !== undefined && driven.has(circuit)));
  const packs = new Set(nodes.flatMap(({ of }) => of ?? []));
  const electric = shell.nodes.filter(({ of, medium }) => ['dc', 'ac'].includes(medium) && of?.some((one) => packs.has(one)));
  const fed = new Set(electric.flatMap(({ circuit }) => circuit ?? []));
  const fuses = shell.circuits.filter(({ id }) => fed.has(id));
  const relief = lines.map((line) =>
    [phrase(protectionWords(line)), line.workingPressurePa && book.show.pressure(line.workingPressurePa)]
      .filter(Boolean)
      .join(', '),
  );
  const shows = new Set([...nodes.map(({ id }) => id), ...packs]);
  const picture = book.photos.all.find(({ photo, path }) => path && photo.of.some((id) => shows.has(id)));
  const facts = [
    { name: w('park.fluid'), value: opening.fluid ?? w('word.notrecorded') },
    { name: w('park.relief'), value: relief.join('; ') || w('word.notrecorded') },
    {
      name: w('park.fuses'),
      value: fuses.map((one) => `${one.id} ${phrase(protectionWords(one)) ?? ''}`).join('; ') || w('word.notrecorded'),
    },
  ];
  return {
    ref: ref(opening.id),
    byHand: opening.byHand ?? [],
    facts,
    ...(picture?.path ? { picture: { path: picture.path, caption: picture.photo.caption ?? '' } } : {}),
  };
}

interface OutletCircuit {
  readonly circuit: Circuit;
  readonly outlets: readonly string[];
}

const isPower = (medium: Circuit['medium']): boolean => medium === 'ac' || medium === 'dc';

/** NEC 210.20(A), unverified citation: a load of three hours or more takes no more than four fifths of its breaker. */
const FOR_HOURS = 0.8;

function outletTable(book: Book) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const rows = shell.circuits.flatMap((circuit): readonly OutletCircuit[] => {
    const outlets = shell.nodes
      .filter((node) => isPower(node.medium) && node.role === 'outlet' && node.circuit === circuit.id)
      .map(({ id }) => id);
    return outlets.length > 0 ? [{ circuit, outlets }] : [];
  });
  const watts = ({ circuit }: OutletCircuit, share: number): string | undefined => {
    const { protection, voltageV } = circuit;
    if (protection?.ratingA === undefined || voltageV === undefined) return w('word.notrecorded');
    return `${number(Math.floor(protection.ratingA * voltageV * share))} W`.replace(' ', '\u00a0');
  };
  return table<OutletCircuit>(book.show, {
    rows,
    columns: (c) => [
      c.id(
        w('power.circuit'),
        ({ circuit }) => circuit.id,
        ({ circuit }) => circuit.name,
      ),
      c.text(w('power.breaker'), ({ circuit }) => phrase(protectionWords(circuit, false))),
      c.text(w('power.outlets'), ({ outlets }) => outlets.join(', ')),
      c.text(w('power.short'), (one) => watts(one, 1)),
      c.text(w('power.long'), (one) => watts(one, FOR_HOURS)),
    ],
    empty: w('power.none'),
  });
}

/** Breakers next to the sources of AC: what a supply can carry. */
function supplies(book: Book): readonly string[] {
  const { nodes, runs } = book.assessment.model.shell;
  return nodes
    .filter(({ role, medium }) => medium === 'ac' && (role === 'shore inlet' || role === 'generator'))
    .flatMap((source) => {
      const beside = runs.flatMap(({ from, to }) => (from === source.id ? [to] : to === source.id ? [from] : []));
      const breaker = nodes.find((node) => beside.includes(node.id) && node.role === 'breaker');
      const rating = breaker?.rating?.dimension === 'current' ? amps(breaker.rating.value) : undefined;
      return rating ? [`${source.id} ${rating}`] : [];
    });
}
