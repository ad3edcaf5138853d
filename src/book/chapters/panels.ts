import type { BehindItem } from '../../compute/access/types.js';
import { faceWords } from '../../drawing/index.js';
import { hazardsBehind } from '../../query/hazards.js';
import { aheadOfProtection } from '../../query/isolate/graph/ahead.js';
import { placesOf } from '../../query/place.js';
import { reachAt } from '../../query/reach-words.js';
import type { Panel } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { insulatorWords, sealWords } from '../passages.js';
import { ref, table } from '../table.js';
import { protectionWords } from '../where.js';
import { photoGapTable, photoHeadline } from './photo-gaps.js';

export const accessPanels = (book: Book): readonly Panel[] =>
  book.assessment.model.shell.panels.filter((panel) => panel.panelKind === 'access');

/** A card for each access panel: where it is, how it opens, everything behind it, what may hurt first. */
export const panels: ChapterMaker = (book) => ({
  key: 'panels',
  title: 'Access panels',
  template: 'panels',
  data: {
    figures: book.draw
      .panels(book.assessment, book.availableSize('landscape', 26))
      .map((figure) => ({ ...figure, sheet: 'landscape' })),
    cards: accessPanels(book).map((panel) => card(book, panel)),
    // What was not photographed is the shop's to answer for.
    ...(book.edition === 'shop' ? { pictures: photoHeadline(book), gaps: photoGapTable(book) } : {}),
  },
});

/** The facts that one needs before lifting a tool. */
function openingFacts(book: Book, panel: Panel) {
  const { show } = book;
  const { fixing } = panel;
  const opening = panel.openingMm?.map((mm) => show.length(mm)).join(' × ');
  const massKg = panel.massKg ?? book.assessment.figures.takeOff.panels.find(({ id }) => id === panel.id)?.massKg;
  const fasteners = [fixing?.count, fixing?.method].filter((one) => one !== undefined).join(' ');
  return [
    { name: 'Side', value: sentence(faceWords(book.assessment, panel)) },
    { name: 'Before it', value: beforeIt(book, panel) },
    { name: 'Place', value: placesOf(book.assessment.model)(panel.id) ?? 'not recorded' },
    { name: 'Clear opening', value: opening ?? 'not recorded' },
    { name: 'Fasteners', value: fasteners || 'not recorded' },
    { name: 'Tool', value: fixing?.driver ?? 'not recorded' },
    { name: 'Torque', value: fixing?.torqueNm === undefined ? 'not recorded' : show.torque(fixing.torqueNm) },
    fixing?.order !== undefined && { name: 'Order', value: fixing.order },
    { name: 'Seal to renew', value: [fixing?.sealant, fixing?.adhesive].filter(Boolean).join(', ') || 'none recorded' },
    massKg !== undefined &&
      massKg > 0 && { name: panel.massKg === undefined ? 'Weighs about' : 'Weighs', value: show.mass(massKg) },
  ].filter(Boolean);
}

function card(book: Book, panel: Panel) {
  const items = book.assessment.figures.access.behind[panel.id] ?? [];
  const services = items.filter((item) => item.kind !== 'member');
  const members = items
    .filter((item) => item.kind === 'member')
    .map((item) => ({ ref: ref(item.id), distance: book.show.length(item.distanceMm) }));
  const pictures = photosBehind(book, panel, items).map((id) => ref(id));
  const { shown, rest } = inHand(book, worstFirst(book, services));
  return {
    id: panel.id,
    name: panel.name,
    of: panel.of ? ref(panel.of) : undefined,
    facts: openingFacts(book, panel),
    note: panel.note,
    keyPlan: book.draw.panelKeyPlan(book.assessment, panel.id, { widthMm: 82, heightMm: 42 }),
    face: book.draw.panelFace(book.assessment, panel.id, { widthMm: 88, heightMm: 82 }),
    hazards: hazardWords(book, items),
    behind: behindTable(book, panel.id, shown, members.length > 0),
    rest: rest.slice(0, MOST_REST).map(({ id }) => ref(id)),
    more: Math.max(0, rest.length - MOST_REST),
    members: book.edition === 'shop' ? members : members.slice(0, MOST_MEMBERS),
    photos: pictures,
    overlay: overlayOf(
      book,
      panel,
      pictures.map(({ text }) => text),
    ),
    afterwards: members.length + pictures.length + rest.length > 0,
  };
}

/** What a hand through the panel can touch and be hurt by, in words; undefined where nothing is. */
function hazardWords(book: Book, items: readonly BehindItem[]): string | undefined {
  const found = hazardsBehind(book.assessment.model.shell, items);
  return found.map(({ word }, i) => (i === 0 ? word : `${word[0]?.toLowerCase()}${word.slice(1)}`)).join(', ') || undefined;
}

/** What may hurt before what may not, each nearest first. */
function worstFirst(book: Book, items: readonly BehindItem[]): readonly BehindItem[] {
  const worst = hazardsBehind(book.assessment.model.shell, items);
  const rank = ({ id }: BehindItem): number => {
    const at = worst.findIndex(({ ids }) => ids.includes(id));
    return at === -1 ? worst.length : at;
  };
  return [...items].sort((a, b) => rank(a) - rank(b) || a.distanceMm - b.distanceMm);
}

/** In the service book a card has what a hand meets first: what may hurt, and the nearest of the rest. */
const MOST_OF_A_HAZARD = 4;
const MOST_SHOWN = 10;
const MOST_MEMBERS = 3;
const MOST_REST = 8;

function inHand(
  book: Book,
  items: readonly BehindItem[],
): { readonly shown: readonly BehindItem[]; readonly rest: readonly BehindItem[] } {
  if (book.edition === 'shop') return { shown: items, rest: [] };
  const worst = hazardsBehind(book.assessment.model.shell, items);
  const hurting = new Set(worst.flatMap(({ ids }) => ids.slice(0, MOST_OF_A_HAZARD)));
  const others = items.filter(({ id }) => !worst.some(({ ids }) => ids.includes(id)));
  const nearest = new Set(others.slice(0, Math.max(0, MOST_SHOWN - hurting.size)).map(({ id }) => id));
  const isShown = ({ id }: BehindItem): boolean => hurting.has(id) || nearest.has(id);
  return { shown: items.filter(isShown), rest: items.filter((one) => !isShown(one)) };
}

/** What stands before the panel and must be taken away. */
function beforeIt(book: Book, panel: Panel): string {
  const approach = book.assessment.figures.access.approaches[panel.id];
  if (approach === undefined) return 'not known';
  const first = [...new Set([...approach.removeFirst, ...approach.blockedBy])];
  return first.join(', ') || 'nothing recorded stands before it';
}

/** Width of a photo with the record drawn on it, mm. */
const OVERLAY_MM = 128;

/** The first close-in photo that is tied to the coach and has something of the panel’s own in its view. */
function overlayOf(book: Book, panel: Panel, photos: readonly string[]) {
  for (const id of photos) {
    const drawing = book.draw.photoOverlay(book.assessment, id, OVERLAY_MM);
    const path = book.photos.byId.get(id)?.path;
    if (drawing && path && drawing.ids.includes(panel.id)) return { drawing, path, photo: ref(id) };
  }
  return undefined;
}

/** Pictures of the panel, or of a cavity that it opens onto, taken before it went on. */
function photosBehind(book: Book, panel: Panel, items: readonly BehindItem[]): readonly string[] {
  const shown = new Set([
    panel.id,
    ...items.filter(({ kind, reach }) => kind === 'zone' && reach !== 'beyond').map(({ id }) => id),
  ]);
  const own = book.assessment.model.shell.photos.filter((photo) => photo.of.includes(panel.id));
  const all = own.length > 0 ? own : book.assessment.model.shell.photos.filter((photo) => photo.of.some((id) => shown.has(id)));
  return all.slice(0, MOST_PHOTOS).map((photo) => photo.id);
}
const MOST_PHOTOS = 6;

function behindTable(book: Book, panel: string, items: readonly BehindItem[], keepEmpty: boolean) {
  const { shell } = book.assessment.model;
  const words = (item: BehindItem): string => {
    const record = shell.byId.get(item.id)?.record as
      | { name?: string; part?: string; nodeKind?: string; circuit?: string; medium?: string }
      | undefined;
    const circuit = shell.circuits.find((one) => one.id === record?.circuit);
    return record?.name ?? record?.part ?? circuit?.name ?? record?.nodeKind ?? item.kind;
  };
  const nodes = new Map(shell.nodes.map((node) => [node.id, node]));
  const runs = new Map(shell.runs.map((run) => [run.id, run]));
  const care = (id: string): string | undefined => {
    const [node, run] = [nodes.get(id), runs.get(id)];
    return node ? insulatorWords(node) : run && sealWords(book, run);
  };
  const protection = (item: BehindItem): string | undefined => {
    const record = shell.byId.get(item.id)?.record as { circuit?: string } | undefined;
    const circuit = shell.circuits.find((one) => one.id === record?.circuit);
    const words = aheadOfProtection(shell).has(item.id) ? undefined : protectionWords(circuit);
    return [words, care(item.id)].filter(Boolean).join('; ') || undefined;
  };
  const worst = hazardsBehind(shell, items);
  const hazard = (item: BehindItem) => worst.find(({ ids }) => ids.includes(item.id))?.word;
  const hurting = items.some((item) => hazard(item) !== undefined);
  return table(book.show, {
    caption: `Behind ${panel}: what may hurt first, then nearest first`,
    look: 'dense index',
    rows: items,
    group: (item) => (hurting ? sentence(hazard(item) ?? 'all else') : undefined),
    columns: (c) => [
      c.refs('Id', (item) => [item.id]),
      c.text('What', words, protection),
      c.length('Distance', (item) => item.distanceMm),
      c.text(
        'Reach',
        (item) => workWords(book, item),
        (item) => (item.blockedBy.length > 0 ? `behind ${item.blockedBy.join(', ')}` : undefined),
      ),
      c.page((item) => item.id),
    ],
    empty: 'No service, equipment or zone is recorded behind it.',
    keepEmpty,
  });
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** How far in, and what one can do there: `to the arm, tool, both hands`. */
const workWords = (book: Book, item: BehindItem): string =>
  [reachAt(item, book.show), item.tool && 'tool', item.twoHands && 'both hands'].filter(Boolean).join(', ');
