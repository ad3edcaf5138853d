import type { Assessment } from '../assess.js';
import type { CommitList } from '../book/input.js';
import { type Show, showIn } from '../book/show.js';
import { escapeXml } from '../drawing/svg.js';
import { anchor } from '../model/anchor.js';
import { type PlaceOf, placesOf } from '../query/place.js';
import type { RecordKind } from '../records/index.js';
import { type Reader, say, translated, type WordKey } from '../words/index.js';
import type { PocketEdition } from './input.js';
import type { PagePicture } from './pictures.js';
import type { CoachView } from './views.js';

export const xml = escapeXml;

/** What every part of a page is made from: the record as its edition may see it, and for whom. */
export interface Pocket {
  readonly assessment: Assessment;
  readonly edition: PocketEdition;
  readonly reader: Reader;
  readonly show: Show;
  readonly fingerprint: string;
  readonly history: CommitList;
  readonly dirty: boolean;
  readonly views: readonly CoachView[];
  /** Pictures that are on the page, by photo id. */
  readonly pictures: ReadonlyMap<string, PagePicture>;
  /** A sentence of the catalogue, its blanks filled in. */
  readonly say: (key: WordKey, values?: Readonly<Record<string, string | number>>) => string;
  /** A sentence or word of an answer, in the reader's language. */
  readonly told: (text: string) => string;
  /** Where a record is, in words for the reader. */
  readonly placeOf: PlaceOf;
}

type Given = Pick<Pocket, 'assessment' | 'edition' | 'reader' | 'fingerprint' | 'history' | 'dirty' | 'views' | 'pictures'>;

export function pocketOf(given: Given): Pocket {
  const { assessment, reader } = given;
  return {
    ...given,
    // Both systems, so that a page has either without another page.
    show: showIn('both', reader.language),
    say: (key, values = {}) => (say as (of: Reader, key: WordKey, values: object) => string)(reader, key, values),
    told: (text) => translated(reader, text),
    placeOf: placesOf(assessment.model, reader),
  };
}

/** A link to a card; without a card the words alone. */
export interface CardLink {
  readonly text: string;
  readonly to?: string;
}

/** A line of a card or list: what it is, and what is recorded. */
export interface CardLine {
  readonly head?: string;
  readonly text?: string;
  readonly links?: readonly CardLink[];
}

/** One thing with its card. */
export interface Card {
  readonly id: string;
  readonly recordKind: RecordKind;
  readonly to: string;
  readonly title: string;
  readonly kind: string;
  readonly lines: readonly CardLine[];
  readonly hazards?: readonly { readonly word: string; readonly act: string }[];
  readonly locator?: Locator;
  readonly photos?: readonly PhotoLink[];
  readonly isolation?: IsolationCard;
  readonly behind?: Behind;
  /** What finds it: all that it is called, and all else. */
  readonly names: string;
  readonly more: string;
}

export interface Locator {
  readonly symbol: string;
  readonly window: string;
  readonly x: number;
  readonly y: number;
  readonly label: string;
  /** The view to show it in. */
  readonly to: string;
}

export interface PhotoLink {
  readonly id: string;
  readonly to: string;
  readonly symbol: string;
  readonly window: string;
  readonly label: string;
}

export interface IsolationCard {
  readonly title: string;
  readonly steps: readonly {
    readonly text: string;
    readonly place?: string;
    readonly links: readonly CardLink[];
  }[];
  readonly proved?: string;
  readonly unproved?: string;
  readonly missing: readonly string[];
  readonly left?: string;
  readonly notes: readonly string[];
}

export interface Behind {
  readonly nearest: readonly CardLine[];
  readonly rest: readonly CardLine[];
  readonly restTitle: string;
  readonly nothing?: string;
}

export const linkTo = (id: string, has: (id: string) => boolean): CardLink =>
  has(id) ? { text: id, to: anchor(id) } : { text: id };
