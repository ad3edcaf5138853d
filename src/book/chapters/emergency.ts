import { RESCUE_GROUPS, type RescueItem, rescueBadge, rescueItems, shellExtent } from '../../drawing/index.js';
import { firstShutOffs } from '../../query/isolate/rescue.js';
import type { ServiceNode } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { inLanguage } from '../language.js';
import { phrasesFor, readerFor, sentencesFor } from '../sentences.js';
import { showIn } from '../show.js';
import { type Ref, ref } from '../table.js';
import { IN_THE_OPEN, wayToNode } from '../where.js';

const OTHER_MEDIA = ['water', 'air', 'hydraulic'] as const;
/** The list beside the plan: as narrow as lets what is not fuel stand there; and the space between them, mm. */
const LIST_MM = [64, 70, 76, 82];
const GAP_MM = 4;
const LEAST_PLAN_MM = 86;
/** Heading, caution and the spaces between, mm. */
const ABOVE_MM = 24;
/** Of the list, in mm: a group's title with its space, a line of an item, the least of an item, the space after it. */
const TITLE_MM = 7.6;
const LINE_MM = 3.85;
const LEAST_ITEM_MM = 7.4;
const ITEM_GAP_MM = 0.6;
/** Mean width of a letter, and the room of the number before the words, mm. */
const LETTER_MM = 1.45;
const BADGE_MM = 10.5;
/** Space between the two columns beneath the plan, mm; as in book.css. */
const COLUMNS_GAP_MM = 6;

/** One page, read in seconds: a numbered plan of gas, fuel, mains and batteries as large as the sheet takes, the list beside it. */
export const emergencyChapter: ChapterMaker = (given) => {
  const book = inLanguageOf(given, given.everybody);
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const { items, more } = rescueItems(shell);
  // Of water, air and hydraulics only what stops all of it: the first valve on the lines of a source.
  const first = firstShutOffs(shell);
  const others = shell.nodes
    .filter((node) => OTHER_MEDIA.some((medium) => medium === node.medium) && first.has(node.id))
    .map((node) => ({
      ref: ref(node.id),
      name: `${phrase(book.draw.mediumName(node.medium))?.toLowerCase()}: ${node.name ?? phrase(node.nodeKind)}`,
      ...(node.position ? { normally: phrase(node.position) } : {}),
      place: roughPlace(book, node.at),
      ...openWith(book, node),
    }));
  // A name that the shop gave stays as it is.
  const spoken = ({ name, node }: Pick<RescueItem, 'name' | 'node'>): string => (node?.name ? name : (phrase(name) ?? name));
  const groups: readonly Listed[] = RESCUE_GROUPS.map((title) => ({
    title: phrase(title) ?? title,
    more: (more.get(title) ?? []).map((one) => ({ ref: ref(one.id), name: spoken(one) })),
    items: items
      .filter((item) => item.group === title)
      .map((item) => ({
        ...(item.at ? { badge: { svg: rescueBadge(title, item.number, phrase(title)) } } : {}),
        ref: ref(item.id),
        name: spoken(item),
        place: roughPlace(book, item.at),
        ...(item.node ? { normally: phrase(item.node.position), ...openWith(book, item.node) } : {}),
      })),
  }));
  const [gas, fuel, ...electric] = groups;
  const named = OTHER_MEDIA.filter((medium) => shell.nodes.some((node) => node.medium === medium && first.has(node.id)));
  const rest: Listed = {
    title: w('emergency.off', { media: inWords(named.map((one) => phrase(book.draw.mediumName(one)) ?? one)) }),
    more: [],
    items: others,
  };
  const listed = [gas, ...electric, fuel, rest].filter((group) => group !== undefined).filter((group) => group.items.length > 0);
  const roomMm = book.availableSize('landscape').heightMm - ABOVE_MM;
  const listMm =
    LIST_MM.find((mm) => shared(listed, roomMm, mm).beneath.every((one) => one === fuel || one === rest)) ?? LIST_MM[0];
  const { beside, beneath } = shared(listed, roomMm, listMm as number);
  const planMm = book.availableSize('landscape').widthMm - (listMm as number) - GAP_MM;
  const beneathMm = beneath.length > 0 ? 2 + beneathHeight(beneath, (planMm - COLUMNS_GAP_MM) / 2) : 0;
  return {
    key: 'emergency',
    title: w('emergency.title'),
    template: 'emergency',
    reader: readerFor(book),
    ...(book.edition === 'service' ? { front: true } : {}),
    data: {
      rest: w(book.edition === 'owner' ? 'emergency.rest.list' : 'emergency.rest.chapter'),
      figure: book.draw.emergencyPlan(book.assessment, {
        widthMm: planMm,
        heightMm: Math.max(LEAST_PLAN_MM, roomMm - beneathMm),
      }),
      columns: `1fr ${listMm}mm`,
      beside,
      beneath,
    },
  };
};

/** The same book, read in another language. */
const inLanguageOf = (book: Book, language: Book['everybody']): Book => ({
  ...book,
  assessment: inLanguage(book.assessment, language),
  show: showIn(book.assessment.model.shop.units, language),
});

/** `Water, compressed air`. */
const inWords = (words: readonly string[]): string => words.map((word, i) => (i === 0 ? word : word.toLowerCase())).join(', ');

interface Listed {
  readonly title: string;
  /** Those that are not on the plan. */
  readonly more: readonly { readonly ref: Ref; readonly name: string }[];
  readonly items: readonly {
    /** Its number in the shape of its group; absent: not on the plan. */
    readonly badge?: { readonly svg: string };
    readonly name: string;
    readonly place: string;
    readonly ref: Ref;
    readonly normally?: string | undefined;
    readonly panels?: readonly Ref[];
    readonly words?: string | undefined;
  }[];
}

/** What finds room beside the plan, in this order; the others stand beneath it. */
function shared(
  listed: readonly Listed[],
  roomMm: number,
  listMm: number,
): { readonly beside: Listed[]; readonly beneath: Listed[] } {
  const beside: Listed[] = [];
  const beneath: Listed[] = [];
  let used = 0;
  for (const group of listed) {
    const high = heightOf(group, listMm);
    const fits = used + high <= roomMm;
    if (fits) used += high;
    (fits ? beside : beneath).push(group);
  }
  return { beside, beneath };
}

/**
 * Height of the groups beneath the plan: the first to the left, the others to the right of it, below one another; one alone fills both
 * columns; as in book.css.
 */
function beneathHeight(groups: readonly Listed[], columnMm: number): number {
  const [only, another] = groups;
  if (only && !another) return TITLE_MM + (heightOf(only, columnMm) - TITLE_MM) / 2 + LEAST_ITEM_MM;
  const [first = 0, ...others] = groups.map((group) => heightOf(group, columnMm));
  return Math.max(
    first,
    others.reduce((sum, high) => sum + high, 0),
  );
}

function heightOf({ items, more }: Listed, columnMm: number): number {
  const lineLetters = Math.floor((columnMm - BADGE_MM) / LETTER_MM);
  return items.reduce((sum, { name, ref, normally = '', place, panels = [], words = '' }) => {
    const opened = panels.reduce((all, one) => all + one.text.length + 2, panels.length > 0 ? 7 : 0);
    const letters = [name, ref.text, normally, place, words].reduce((all, one) => all + (one ? one.length + 2 : 0), opened);
    return sum + Math.max(LEAST_ITEM_MM, Math.ceil(letters / lineLetters) * LINE_MM) + ITEM_GAP_MM;
  }, TITLE_MM + moreHeight(more, columnMm));
}

/** Of the line that names what is not on the plan; it has no badge beside it. */
function moreHeight(more: Listed['more'], columnMm: number): number {
  if (more.length === 0) return 0;
  const letters = more.reduce((sum, { ref, name }) => sum + ref.text.length + name.length + 3, MORE_LETTERS);
  // Names break where they may, so that a line is not filled to its end.
  return Math.ceil((letters * LETTER_MM) / columnMm + 0.5) * LINE_MM + ITEM_GAP_MM;
}
/** Of `Also, in the chapter of its service:`, with room for its Spanish. */
const MORE_LETTERS = 44;

/** A rail's depth: what hangs lower hangs under the vehicle, mm. */
const UNDER_MM = -50;

/** Where to run to, in the words of one who stands there: `front, left, under the floor`. The exact place is told with the record. */
export function roughPlace(book: Book, at: ServiceNode['at']): string {
  const w = sentencesFor(book);
  if (!at) return w('rough.none');
  const [x, y, z] = at;
  const { low, high } = shellExtent(book.assessment.model);
  const share = (x - low[0]) / (high[0] - low[0]);
  const along = share < 1 / 3 ? 'front' : share < 2 / 3 ? 'middle' : 'rear';
  const half = Math.max(high[1], -low[1]);
  const across = Math.abs(y) < half / 4 ? 'center' : y < 0 ? 'left' : 'right';
  const up = z / high[2];
  const height = z < UNDER_MM ? 'under' : up < 0.3 ? 'low' : up < 0.7 ? 'hand' : up < 0.95 ? 'high' : 'roof';
  return [w(`rough.${along}`), w(`rough.${across}`), w(`rough.${height}`)].join(', ');
}

function openWith(book: Book, node: ServiceNode) {
  const way = wayToNode(book, node.id);
  const words = way.words === IN_THE_OPEN ? undefined : phrasesFor(book)(way.words);
  return { panels: way.panels.map((id) => ref(id)), words };
}
