import { daysBetween } from '../quantity/day.js';
import { KIND_NAMES, kindOf } from '../records/kinds.js';
import { captionFrom } from './captions.js';
import { nextId } from './numbering.js';
import type { RecordIndex } from './record-index.js';
import type { Data } from './yaml-text.js';

/** What is known of a picture before it is a record. */
export interface Taken {
  readonly name: string;
  readonly sha256: string;
  /** It was HEIC: what is kept is the JPEG made of it. */
  readonly original?: { readonly sha256: string };
  readonly taken?: string;
  readonly bearingDeg?: number;
}

/** A picture as a record of photos.yaml. */
export interface PhotoDraft {
  readonly picture: Taken;
  /** Its file lies in the shell’s photos folder already, without a record: an earlier run was broken off. */
  readonly isThere: boolean;
  readonly id: string;
  readonly data: Data;
  /** Records of the day on which it was taken, the likeliest first: for a person to confirm, never written as fact. */
  readonly proposed: readonly string[];
}

export interface PhotosOf {
  readonly known: RecordIndex;
  /** Names in the shell’s photos folder. */
  readonly files: readonly string[];
  /** SHA-256 of pictures that have a record already. */
  readonly hashes: ReadonlySet<string>;
  /** SHA-256 → name of pictures in the shell’s photos folder that no record names. */
  readonly unrecorded: ReadonlyMap<string, string>;
  /** Runs and joints that are to be closed in and that no photo shows yet. */
  readonly unseen: readonly string[];
  readonly stage?: string;
  readonly of: readonly string[];
}

export interface PhotoDrafts {
  readonly drafts: readonly PhotoDraft[];
  /** Pictures that are there already, or twice in the folder. */
  readonly doubles: readonly string[];
}

const SAFE = /^[\w.-]{1,80}$/u;

/** Gives each new picture its number and its name; what is there already is passed over. */
export function photoDrafts(pictures: readonly Taken[], of: PhotosOf): PhotoDrafts {
  const seen = new Set(of.hashes);
  const names = new Set(of.files.map((name) => name.toLowerCase()));
  const given = new Set<string>();
  const doubles: string[] = [];
  const drafts: PhotoDraft[] = [];
  const inTime = [...pictures].sort((a, b) =>
    (a.taken ?? '~') < (b.taken ?? '~') ? -1 : (a.taken ?? '~') > (b.taken ?? '~') ? 1 : 0,
  );
  for (const picture of inTime) {
    if (seen.has(picture.sha256) || (picture.original && seen.has(picture.original.sha256))) {
      doubles.push(picture.name);
      continue;
    }
    seen.add(picture.sha256);
    if (picture.original) seen.add(picture.original.sha256);
    const id = nextId('photo', of.known, given) ?? freeId(of.known, given);
    given.add(id);
    const there = of.unrecorded.get(picture.sha256);
    const file = there ?? fileName(picture.original ? picture.name.replace(/\.\w+$/u, '.jpg') : picture.name, id, names);
    names.add(file.toLowerCase());
    drafts.push({
      picture,
      isThere: there !== undefined,
      id,
      data: dataOf(picture, id, file, of),
      proposed: of.of.length > 0 ? [] : proposedFor(picture, of),
    });
  }
  return { drafts, doubles };
}

function dataOf(picture: Taken, id: string, file: string, of: PhotosOf): Data {
  const own = picture.name.slice(Math.max(picture.name.lastIndexOf('/'), picture.name.lastIndexOf('\\')) + 1);
  const caption = captionFrom(own);
  const original = own === file ? undefined : { name: own.replace(/\p{Cc}/gu, ' '), ...(picture.original ?? {}) };
  return {
    id,
    file,
    ...(of.of.length > 0 ? { of: of.of } : {}),
    ...(picture.bearingDeg === undefined ? {} : { view: `towards ${Math.round(picture.bearingDeg)} degrees by the compass` }),
    ...(picture.taken === undefined ? {} : { taken: picture.taken }),
    ...(caption === undefined ? {} : { caption }),
    sha256: picture.sha256,
    ...(original === undefined ? {} : { original }),
    ...(of.stage === undefined ? {} : { stage: of.stage }),
  };
}

/** Where the shop’s photos have names and no numbers. */
function freeId(known: RecordIndex, given: ReadonlySet<string>): string {
  for (let n = 1; ; n++) {
    const id = `P-${String(n).padStart(4, '0')}`;
    if (known.taken('photo', id) === undefined && !given.has(id)) return id;
  }
}

/** The phone’s own name, by which it is found on the phone again, where that is free and plain. */
function fileName(name: string, id: string, taken: ReadonlySet<string>): string {
  const own = name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  if (SAFE.test(own) && !own.startsWith('.') && !taken.has(own.toLowerCase())) return own;
  const end = /\.[A-Za-z0-9]+$/u.exec(own)?.[0].toLowerCase() ?? '';
  return `${id.replace(/\//gu, '-')}${end}`;
}

/** As kinds say how likely a picture shows one of theirs. */
const LEAST_LIKELY = Math.max(...KIND_NAMES.map((kind) => kindOf(kind).more.pictured ?? 0));
const MOST = 8;

/** Records dated on the picture’s day or the day before or after; those of its stage and what nobody has pictured yet first. */
function proposedFor({ taken }: Taken, { known, unseen, stage }: PhotosOf): readonly string[] {
  if (taken === undefined) return [];
  const first = new Set(unseen);
  const scored = known.records.flatMap(({ kind, id, data }) => {
    const date = typeof data.date === 'string' ? data.date : undefined;
    const apart = date === undefined ? undefined : Math.abs(daysBetween(date, taken));
    const rank = kindOf(kind).more.pictured;
    if (id === undefined || rank === undefined || apart === undefined || !(apart <= 1)) return [];
    const otherStage = stage !== undefined && data.stage !== undefined && String(data.stage) !== stage;
    return [{ id, score: apart + (first.has(id) ? 0 : 2) + (otherStage ? 4 : 0) + (rank - 1) / LEAST_LIKELY }];
  });
  return scored
    .sort((a, b) => a.score - b.score)
    .slice(0, MOST)
    .map(({ id }) => id);
}
