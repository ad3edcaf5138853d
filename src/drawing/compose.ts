import type { UnitSystem } from '../quantity/format.js';
import { type Reader, readerOf, sayTo } from '../words/index.js';
import { lowered, usedBounds } from './crop.js';
import { frontArrow, noteLines, noteRows, notesMm, scaleBar } from './furniture.js';
import { Ink, textBox } from './ink.js';
import { KeptOff } from './kept-off.js';
import { DISC_MM, type LabelWish, type PlacedLabel, placeLabels } from './labels.js';
import { circle, growRect, line, type Mark, type Point, type Rect, type Scene, textMark } from './scene.js';
import { FURNITURE_MM, scaleText } from './sheet.js';
import { isOutlinePen } from './styles.js';
import { toSvg } from './svg.js';

/** One drawing as the book takes it. */
export interface Drawing {
  readonly id: string;
  readonly title: string;
  /** What a reader who cannot see it is told. */
  readonly alt: string;
  /** `1:40`, or `not to scale`. */
  readonly scale: string;
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Records that are shown as subjects, in the order drawn. */
  readonly ids: readonly string[];
  /** Words of labels that found no room. */
  readonly leftOut?: readonly string[];
  /** The marks that the SVG was written from, for those who measure a finished sheet. */
  readonly marks?: readonly Mark[];
}

export interface DrawingOptions {
  /** Whether a record has a home in the book to link to. Default: every one. */
  readonly linkable?: (id: string) => boolean;
  /** Whether a record is not in the coach yet. Default: none is. */
  readonly planned?: (id: string) => boolean;
  /** For drawings made without a shop's settings. */
  readonly units?: UnitSystem;
  /** Where drawings are kept. Default: nowhere. */
  readonly kept?: KeptDrawings;
}

/** The drawing that was kept under the text of all that it is made of, or else `make`'s. */
export type KeptDrawings = (of: string, make: () => Drawing) => Drawing;

/** Everything that a view has to say before labels find their places. */
export interface ViewDraft {
  readonly id: string;
  readonly title: string;
  readonly alt: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Absent: not to scale, and no scale bar. */
  readonly reduction?: number;
  readonly front?: 'left' | 'right' | 'none';
  readonly units: UnitSystem;
  /** Who looks at it; English of the United States where none is named. */
  readonly reader?: Reader;
  readonly room: Rect;
  readonly marks: readonly Mark[];
  /** Rows that explain patterns and symbols, at the top of the sheet. */
  readonly legend?: readonly Mark[];
  readonly wishes: readonly LabelWish[];
  readonly notes?: readonly string[];
  /** False: no furniture strip at all. */
  readonly furniture?: boolean;
  /** Where a reader finds what found no room; for the note. */
  readonly rest?: string;
  /** False: labels that crowd each other are left out rather than set in a list. */
  readonly lists?: boolean;
}

/** Places labels, adds scale bar, arrow and notes, and writes the SVG. A kept drawing is without its `marks`. */
export function compose(draft: ViewDraft, options: DrawingOptions): Drawing {
  const shown = draft.marks.map((mark) => asPlanned(mark, options.planned));
  const of = options.kept && !options.linkable ? textOf({ ...draft, marks: shown }) : undefined;
  if (!options.kept || of === undefined) return composed(draft, shown, options);
  return options.kept(of, () => {
    const { marks, ...drawing } = composed(draft, shown, options);
    return drawing;
  });
}

/** Undefined where a label draws itself, and where JSON has no word for a value: then two drafts could have one text. */
function textOf(draft: ViewDraft): string | undefined {
  if (draft.wishes.some(({ block }) => block !== undefined)) return undefined;
  const text = JSON.stringify(draft);
  return /[[,:]null[\],}]/u.test(text) ? undefined : text;
}

function composed(draft: ViewDraft, shown: readonly Mark[], options: DrawingOptions): Drawing {
  const w = sayTo(draft.reader ?? readerOf({}));
  // A letter in a symbol is kept by the symbol about it, from which leaders start.
  const taken = draft.marks.flatMap((mark) =>
    mark.kind === 'text' && mark.layer !== 'nodes' ? [growRect(textBox(mark), 0.2)] : [],
  );
  const { widthMm, heightMm: laidOutMm } = draft;
  const keptOff = new KeptOff(shown, { x0: 0, y0: 0, x1: widthMm, y1: laidOutMm });
  const ink = new Ink(widthMm, laidOutMm, shown);
  const placement = placeLabels(draft.wishes, draft.room, taken, ink, { keptOff, lists: draft.lists !== false });
  const left = placement.leftOut.reduce((sum, wish) => sum + (wish.lines?.length ?? 1), 0);
  const notes = [
    ...(draft.notes ?? []),
    ...(shown.some((mark) => mark.kind !== 'text' && mark.planned) ? [w('drawn.planned')] : []),
    ...(left > 0 ? [leftWords(w, left, draft.rest ?? 'in the schedule')] : []),
  ];
  const { marks, heightMm } = cropped(draft, [...shown, ...placement.placed.flatMap(labelMarks)], notes);
  const scene: Scene = { widthMm: draft.widthMm, heightMm, title: draft.title, alt: draft.alt, marks };
  const ids = new Set(marks.flatMap((mark) => (mark.id === undefined ? [] : [mark.id])));
  return {
    id: draft.id,
    title: draft.title,
    alt: draft.alt,
    scale: draft.reduction === undefined ? w('drawn.scale.none') : scaleText(draft.reduction),
    svg: toSvg(scene, { linkable: options.linkable ?? (() => true) }),
    widthMm: draft.widthMm,
    heightMm,
    ids: [...ids],
    leftOut: placement.leftOut.map(({ text }) => text),
    marks,
  };
}

const leftWords = (w: ReturnType<typeof sayTo>, count: number, where: string): string =>
  count === 1 ? w('drawn.left.one', { where }) : w('drawn.left', { count, where });

function asPlanned(mark: Mark, planned: DrawingOptions['planned']): Mark {
  if (mark.kind === 'text' || mark.id === undefined || !planned?.(mark.id) || !isOutlinePen(mark.pen)) return mark;
  return { ...mark, planned: true };
}

const AIR_MM = 1.5;

/** Takes off the empty strips above and below what was drawn, and adds legend and furniture. */
function cropped(
  draft: ViewDraft,
  drawn: readonly Mark[],
  notes: readonly string[],
): { marks: readonly Mark[]; heightMm: number } {
  const legend = draft.legend ?? [];
  const used = usedBounds(drawn) ?? { x0: 0, y0: 0, x1: draft.widthMm, y1: 10 };
  const top = (usedBounds(legend)?.y1 ?? 0) + AIR_MM;
  const foot = furniture(draft, notes);
  const strip = foot.heightMm;
  // What the notes take beyond the strip that was laid out makes the sheet higher: no word of them is lost.
  const most = draft.heightMm + Math.max(0, strip - FURNITURE_MM);
  const heightMm = Math.ceil(Math.min(most, top + used.y1 - used.y0 + AIR_MM + strip));
  // Never lower than it was laid out: what is at the bottom edge must not fall off.
  const dy = Math.min(top - used.y0, heightMm - strip - used.y1);
  return { marks: [...lowered(drawn, dy), ...legend, ...lowered(foot.marks, heightMm - strip)], heightMm };
}

/** The words of a placed label, with its leader. */
export function labelMarks({ wish, box, leader }: PlacedLabel): readonly Mark[] {
  if (wish.block) return wish.block.marks(box, wish.anchor);
  const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const words: Mark[] = wish.lines ? [...listMarks(wish, wish.lines, box)] : [wordMark(wish, wish, middle, 'middle')];
  if (wish.disc) words.unshift(circle('labels', 'mark', middle, DISC_MM, wish.id));
  if (!leader) return words;
  // A leader that ends inside an outline ends in a dot (ISO 128 leader lines).
  const marks = [line('leaders', 'leader', leader), circle('leaders', 'leader-dot', leader[0], 0.3), ...words];
  if (!wish.lines) return marks;
  // A list is held together by a stroke at the side that its leader comes from.
  const side = leader[0][0] > (box.x0 + box.x1) / 2 ? box.x1 : box.x0;
  const stroke: readonly Point[] = [
    [side, box.y0],
    [side, box.y1],
  ];
  return [...marks, line('labels', 'leader', stroke)];
}

type Line = NonNullable<LabelWish['lines']>[number];

function listMarks(wish: LabelWish, lines: readonly Line[], box: Rect): readonly Mark[] {
  const step = (box.y1 - box.y0) / lines.length;
  return lines.map((one, index) => wordMark(wish, one, [box.x0 + 0.2, box.y0 + step * (index + 0.5)], 'start'));
}

const wordMark = (wish: LabelWish, one: Line, at: Point, anchor: 'start' | 'middle'): Mark =>
  textMark('labels', wish.style, at, one.text, { anchor, backed: !wish.disc, ...(one.id === undefined ? {} : { id: one.id }) });

interface Furniture {
  readonly marks: readonly Mark[];
  /** Height of the strip, mm. */
  readonly heightMm: number;
}

/** Room beside bar and arrow that notes can be read in; less, and they go beneath, over the whole width. */
const NOTES_BESIDE_MM = 55;
const ROWS_BESIDE = 3;

/** Scale bar, arrow and every word of the notes, from the top of the strip at y = 0. */
function furniture(draft: ViewDraft, notes: readonly string[]): Furniture {
  if (draft.furniture === false) return { marks: [], heightMm: 0 };
  const strip: Rect = { x0: 1, y0: 1, x1: draft.widthMm - 1, y1: FURNITURE_MM - 0.5 };
  const marks: Mark[] = [];
  let x = strip.x0;
  if (draft.reduction !== undefined) {
    const bar = scaleBar(draft.reduction, draft.units, [x, 5], Math.min(60, draft.widthMm * 0.3));
    marks.push(...bar.marks);
    x = bar.endX + 4;
  }
  if (draft.front && draft.front !== 'none') {
    const arrow = frontArrow(draft.front, [x, 5], sayTo(draft.reader ?? readerOf({}))('drawn.front'));
    marks.push(...arrow.marks);
    x = arrow.endX + 4;
  }
  const beside = noteRows(notes, strip.x1 - x);
  const fits = beside.length <= ROWS_BESIDE && (strip.x1 - x >= NOTES_BESIDE_MM || beside.length <= 1);
  if (fits) return { marks: [...marks, ...noteLines(beside, { ...strip, x0: x })], heightMm: FURNITURE_MM };
  const rows = noteRows(notes, strip.x1 - strip.x0);
  const y0 = marks.length > 0 ? FURNITURE_MM - 1 : 1;
  const y1 = y0 + notesMm(rows.length);
  return { marks: [...marks, ...noteLines(rows, { ...strip, y0, y1 })], heightMm: y1 + 0.5 };
}
