import { mkdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Sharp } from 'sharp';
import writeFileAtomic from 'write-file-atomic';
import type { StoreText } from '../model/load-types.js';
import { dayOf } from '../quantity/day.js';
import type { PictureFacts } from '../records/picture-facts.js';
import { type Exif, momentOf, readExif } from './exif.js';
import { hashPhotos } from './hash-photos.js';
import { pictureFacts } from './picture-facts.js';

/** What a picture's file says by itself. */
export interface PhotoFacts {
  /** SHA-256 of the file, hex. */
  readonly sha256: string;
  /** How it looks, as one digit for each of 16 × 16 places: 0 darker to the right, 1 even, 2 brighter. Absent for what is no picture. */
  readonly look?: string;
  /** Day on which the camera says that it was taken, ISO 8601. */
  readonly taken?: string;
  /** Its size and lens. */
  readonly picture?: PictureFacts;
}

/** As kept between runs: size and times of change say whether a picture is still the same; no program can set the last one back. */
interface CachedFacts extends PhotoFacts {
  readonly size: number;
  readonly changedMs: number;
  readonly movedMs: number;
}

const PLACES = 16;
/** Levels of 256 within which two neighbours count as even: an even sky must not be noise. */
const EVEN = 8;
const AT_ONCE = 4;

/**
 * Facts of every picture of a shell: path in the store → facts. What was learnt is kept beside Git's own files (`gitDir`), so that
 * only new and changed pictures are opened again.
 */
export async function photoFacts(
  text: StoreText,
  shell: string,
  gitDir: string | undefined,
): Promise<ReadonlyMap<string, PhotoFacts>> {
  const folder = `shells/${shell}/photos/`;
  const files = [...text.photos.keys()].filter((one) => one.startsWith(folder)).sort();
  if (files.length === 0) return new Map();
  const kept = gitDir === undefined ? new Map<string, CachedFacts>() : await readKept(fileOf(gitDir, shell));
  const stamps = await stampsOf(text, files);
  const facts = new Map<string, CachedFacts>();
  for (const [file, stamp] of stamps) {
    const was = kept.get(file);
    if (was && KEYS.every((key) => was[key] === stamp[key])) facts.set(file, was);
  }
  const fresh = new Map([...stamps].filter(([file]) => !facts.has(file)));
  if (fresh.size === 0) return facts;
  for (const [file, learnt] of await learn(text, shell, fresh)) facts.set(file, learnt);
  if (gitDir !== undefined) await keep(fileOf(gitDir, shell), facts);
  return facts;
}

const KEYS = ['size', 'changedMs', 'movedMs'] as const;
type Stamp = Pick<CachedFacts, (typeof KEYS)[number]>;

async function stampsOf(text: StoreText, files: readonly string[]): Promise<ReadonlyMap<string, Stamp>> {
  const stamps = new Map<string, Stamp>();
  for (const file of files) {
    const found = await stat(path.join(text.root, file)).catch(() => undefined);
    if (found) stamps.set(file, { size: found.size, changedMs: Math.trunc(found.mtimeMs), movedMs: Math.trunc(found.ctimeMs) });
  }
  return stamps;
}

/** Opens pictures, a few at once. One that cannot be read is left out. */
async function learn(
  text: StoreText,
  shell: string,
  fresh: ReadonlyMap<string, Stamp>,
): Promise<ReadonlyMap<string, CachedFacts>> {
  const asked = new Map([...fresh].map(([file, { size }]) => [file, size]));
  const hashes = [...(await hashPhotos({ ...text, photos: asked }, shell))];
  const learnt = new Map<string, CachedFacts>();
  for (let i = 0; i < hashes.length; i += AT_ONCE) {
    await Promise.all(
      hashes.slice(i, i + AT_ONCE).map(async ([file, sha256]) => {
        learnt.set(file, { ...(fresh.get(file) as Stamp), sha256, ...(await seen(path.join(text.root, file))) });
      }),
    );
  }
  return learnt;
}

/** Upright, grey, spread over all levels, 16 × 17 places: each is compared with its right-hand neighbour (a difference hash). */
async function seen(file: string): Promise<Omit<PhotoFacts, 'sha256'>> {
  const { openPicture } = await import('./picture.js');
  const [levels, camera, picture] = await Promise.all([
    openPicture(file, 'warning')
      .then((picture) => grey(picture).raw().toBuffer())
      .catch(() => undefined),
    openPicture(file, 'none')
      .then((picture) => picture.metadata())
      .then(({ exif }) => readExif(exif))
      .catch(() => undefined),
    pictureFacts(file),
  ]);
  const day = cameraDay(camera);
  return {
    ...(levels ? { look: lookOf(levels) } : {}),
    ...(day === undefined ? {} : { taken: day }),
    ...(picture ? { picture } : {}),
  };
}

const grey = (picture: Sharp): Sharp =>
  picture
    .rotate()
    .greyscale()
    .normalise()
    .resize(PLACES + 1, PLACES, { fit: 'fill' });

function lookOf(levels: Buffer): string {
  let look = '';
  for (let y = 0; y < PLACES; y++) {
    for (let x = 0; x < PLACES; x++) {
      const at = y * (PLACES + 1) + x;
      const step = (levels[at + 1] as number) - (levels[at] as number);
      look += step > EVEN ? '2' : step < -EVEN ? '0' : '1';
    }
  }
  return look;
}

function cameraDay(camera: Exif | undefined): string | undefined {
  const moment = momentOf(camera?.dateTimeOriginal ?? camera?.dateTimeDigitized ?? camera?.dateTime);
  return moment && 'iso' in moment ? dayOf(moment.iso) : undefined;
}

const fileOf = (gitDir: string, shell: string): string => path.join(gitDir, 'shellbook', 'photos', `${shell}.json`);

async function readKept(file: string): Promise<Map<string, CachedFacts>> {
  try {
    const { form, photos } = JSON.parse(await readFile(file, 'utf8')) as { form: string; photos: Record<string, CachedFacts> };
    return form === FORM ? new Map(Object.entries(photos).filter(([, kept]) => isKept(kept))) : new Map();
  } catch {
    return new Map();
  }
}

/** Whoever can write there may have written anything. */
const isKept = ({ sha256, look, taken }: Partial<CachedFacts>): boolean =>
  typeof sha256 === 'string' && [look, taken].every((one) => one === undefined || typeof one === 'string');

/** Another way of looking makes what was kept useless. */
const FORM = `dhash ${PLACES} ${EVEN}, lens`;

async function keep(file: string, photos: ReadonlyMap<string, CachedFacts>): Promise<void> {
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFileAtomic(file, `${JSON.stringify({ form: FORM, photos: Object.fromEntries(photos) })}\n`);
  } catch {
    // Only time is lost.
  }
}
