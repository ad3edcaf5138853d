import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { parse } from 'yaml';
import type { DemoPlan } from '../../../src/cli/demo/plan.js';
import { scale, type Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import type { Medium, Photo } from '../../../src/records/index.js';
import { EQUIVALENT_MM, HIGH, sceneSvg, type View, WIDE } from './scene.js';

interface Shot extends Omit<View, 'card' | 'runs'> {
  readonly photo: string;
  readonly card: string;
  /** Runs are painted in. */
  readonly services?: boolean;
  /** Held upright: the picture is stored on its side, as a telephone does. */
  readonly upright?: boolean;
  /** The telephone wrote where it was. */
  readonly located?: boolean;
  /** No new picture: that of another photo as a messenger packs it again, without its date. */
  readonly copy_of?: string;
}

const SHOTS = parse(readFileSync(new URL('views.yaml', import.meta.url), 'utf8')) as Readonly<Record<string, readonly Shot[]>>;
const PLAIN: Omit<Shot, 'photo'> = { target: [0, 0, 60], look: [0, 1, 0], across: 160, depth: 160, card: 'OVERVIEW', light: 0.5 };

const COLOURS: Partial<Record<Medium, string>> = {
  dc: '#b3261e',
  ac: '#e0e0d8',
  data: '#2f6f3a',
  water: '#2456a6',
  drain: '#3a3a3a',
  gas: '#c7a500',
  air: '#d9d9f2',
  hydraulic: '#6d4420',
  duct: '#9aa0a4',
};
const WIDTHS_IN: Partial<Record<Medium, number>> = { duct: 3, drain: 1.6, gas: 0.8 };

/** Makes the pictures of a shell that are named in its records and not there; gives their files. Those that are there stay. */
export async function makeMissingPictures(folder: string, model: Model, plan: DemoPlan): Promise<readonly string[]> {
  const made: string[] = [];
  for (const photo of model.shell.photos) {
    const file = path.join(folder, photo.file);
    if (existsSync(file)) continue;
    writeFileSync(file, await pictureOf(photo, folder, model, plan));
    made.push(file);
  }
  return made;
}

async function pictureOf(photo: Photo, folder: string, model: Model, plan: DemoPlan): Promise<Buffer> {
  const shot = { ...PLAIN, ...SHOTS[model.shell.id]?.find((one) => one.photo === photo.id) };
  if (shot.copy_of !== undefined) {
    const copied = model.shell.photos.find(({ id }) => id === shot.copy_of)?.file ?? '';
    return sharp(path.join(folder, copied)).rotate().jpeg({ quality: 74 }).toBuffer();
  }
  const taken = (photo.taken ?? '').slice(0, 10);
  const begun = plan.stages[model.shell.id] ?? {};
  const stood = model.shell.members.filter(({ stage }) => (begun[stage ?? ''] ?? '') <= taken);
  const view: View = { ...shot, card: [shot.card, model.shell.id, taken], runs: shot.services ? runsOf(model) : [] };
  const clean = sharp(Buffer.from(sceneSvg(view, stood, model.library.sections)), { density: 72 })
    .resize(WIDE, HIGH)
    .removeAlpha();
  const picture = sharp(grainy(await clean.raw().toBuffer(), photo.id), { raw: { width: WIDE, height: HIGH, channels: 3 } });
  const exif = {
    IFD0: { Make: 'Ondervale', Model: 'shop telephone', DateTime: `${taken.replaceAll('-', ':')} 16:04:00` },
    IFD2: { FocalLengthIn35mmFilm: String(EQUIVALENT_MM) },
    // A made-up place in the open sea.
    ...(shot.located
      ? { IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '31/1 14/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '48/1 30/1 0/1' } }
      : {}),
  };
  return (shot.upright ? picture.rotate(270) : picture)
    .jpeg({ quality: 56, mozjpeg: true })
    .withExif(exif)
    .withMetadata({ orientation: shot.upright ? 6 : 1, exif })
    .toBuffer();
}

/** Grain of a small sensor, levels of 256. */
const GRAIN = 3;

/** The same grain for the same photo: Park and Miller’s generator, from its id. */
function grainy(levels: Buffer, id: string): Buffer {
  let seed = [...id].reduce((sum, sign) => (sum * 31 + (sign.codePointAt(0) as number)) % 2147483647, 7) || 1;
  const next = (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  return Buffer.from(
    levels.map((level) => Math.min(255, Math.max(0, Math.round(level + GRAIN * (next() + next() + next() - 1.5) * 2)))),
  );
}

const runsOf = ({ shell }: Model): View['runs'] =>
  shell.runs.map(({ medium, path: way }) => ({
    colour: COLOURS[medium] ?? '#888888',
    wide: WIDTHS_IN[medium] ?? 0.6,
    path: way.map((point): Vec3 => scale(point, 1 / 25.4)),
  }));
