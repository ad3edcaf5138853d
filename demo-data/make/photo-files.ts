import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import type { SectionShape } from '../../src/model/library.js';
import type { Part } from './coach/types.js';
import { at, type P } from './inches.js';
import { HIGH, sceneSvg, type View, WIDE } from './scene.js';
import type { Rec } from './yaml.js';

export interface Shot {
  readonly id: string;
  readonly of: readonly string[];
  readonly view: string;
  readonly taken: string;
  readonly caption: string;
  readonly by: string;
  readonly scene: View;
  /** Held upright: the picture is stored on its side, as a telephone does. */
  readonly upright?: boolean;
  /** No new picture: that of another shot as a messenger packs it again, without its date. */
  readonly copyOf?: string;
  /** The telephone wrote where it was. */
  readonly located?: boolean;
}

export const fileOf = (shot: Shot): string => `${shot.id.toLowerCase()}.jpg`;

/** The JPEG that is there already, else a new one: fonts differ from machine to machine, so pictures are made once. */
export async function photoBytes(
  shot: Shot,
  folder: string,
  parts: readonly Part[],
  sections: ReadonlyMap<string, SectionShape>,
): Promise<Buffer> {
  const file = path.join(folder, fileOf(shot));
  if (existsSync(file)) return readFileSync(file);
  if (shot.copyOf !== undefined) {
    return sharp(path.join(folder, `${shot.copyOf.toLowerCase()}.jpg`))
      .rotate()
      .jpeg({ quality: 74 })
      .toBuffer();
  }
  const picture = sharp(Buffer.from(sceneSvg(shot.scene, parts, sections)));
  const turned = shot.upright ? picture.rotate(270) : picture;
  const exif = {
    IFD0: { Make: 'Ondervale', Model: 'shop telephone', DateTime: `${shot.taken.replace(/-/gu, ':')} 16:04:00` },
    // A made-up place in the open sea.
    ...(shot.located
      ? { IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '31/1 14/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '48/1 30/1 0/1' } }
      : {}),
  };
  return turned
    .jpeg({ quality: 56, mozjpeg: true })
    .withExif(exif)
    .withMetadata({ orientation: shot.upright ? 6 : 1, exif })
    .toBuffer();
}

/** The box that a picture shows: as wide and high as it is, as deep as there is light. */
function extent({ target, look, across, depth }: View): readonly (readonly string[])[] {
  const sizes = look.map(Math.abs);
  const into = sizes.indexOf(Math.max(...sizes));
  const high = into === 2 ? 1 : 2;
  const half = [0, 1, 2].map((k) => Math.round((k === into ? depth : k === high ? (across * HIGH) / WIDE : across) / 2));
  return [-1, 1].map((side) => at(target.map((value, k) => value + side * (half[k] as number)) as unknown as P));
}

export const photoRecords = (shots: readonly Shot[], bytes: ReadonlyMap<string, Buffer>): readonly Rec[] =>
  shots.map((shot): Rec => {
    const file = bytes.get(shot.id);
    return {
      id: shot.id,
      file: fileOf(shot),
      of: shot.of,
      view: shot.view,
      taken: shot.taken,
      by: shot.by,
      caption: shot.caption,
      ...(shot.scene.runs.length > 0 ? { shows: extent(shot.scene) } : {}),
      ...(file ? { sha256: createHash('sha256').update(file).digest('hex') } : {}),
    };
  });
