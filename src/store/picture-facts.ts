import path from 'node:path';
import type { PictureFacts } from '../records/picture-facts.js';
import { type Exif, type ExifName, readExif } from './exif.js';
import { openPicture } from './picture.js';

const FULL_FRAME_WIDTH_MM = 36;
const SIDEWAYS = 5;

/**
 * Size of a picture as it is shown upright, and its focal length as 35 mm film would have it: as the camera wrote it (Exif 2.32, tag
 * A405), else from the true focal length and the resolution of the sensor (920A, A20E, A210). Undefined where it is no picture.
 */
export async function pictureFacts(given: Buffer | string): Promise<PictureFacts | undefined> {
  const head = await openPicture(given, 'none')
    .then((picture) => picture.metadata())
    .catch(() => undefined);
  if (!head?.width || !head.height) return undefined;
  const turned = (head.orientation ?? 1) >= SIDEWAYS;
  const [widthPx, heightPx] = turned ? [head.height, head.width] : [head.width, head.height];
  const equivalentMm = equivalentOf(readExif(head.exif));
  return { widthPx, heightPx, ...(equivalentMm === undefined ? {} : { equivalentMm }) };
}

/** Those of some pictures of a store, by their paths in it; what is no picture is left out. One after the other: only their heads are read. */
export async function pictureFactsOf(root: string, files: readonly string[]): Promise<ReadonlyMap<string, PictureFacts>> {
  const facts = new Map<string, PictureFacts>();
  for (const file of files) {
    const found = await pictureFacts(path.join(root, file)).catch(() => undefined);
    if (found) facts.set(file, found);
  }
  return facts;
}

/** Millimetres in the unit of the sensor's resolution: 2 inch, 3 cm, 4 mm, 5 µm. */
const UNIT_MM: Readonly<Record<number, number>> = { 2: 25.4, 3: 10, 4: 1, 5: 0.001 };
const SHORTEST_MM = 5;
const LONGEST_MM = 2000;

function equivalentOf(exif: Exif): number | undefined {
  const number = (key: ExifName): number | undefined => {
    const value = exif[key];
    return typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : undefined;
  };
  const said = number('focalLengthIn35mm');
  const [focal, resolution, width] = [number('focalLength'), number('focalPlaneXResolution'), number('pixelXDimension')];
  const unit = UNIT_MM[number('focalPlaneResolutionUnit') ?? 2];
  const worked = focal && resolution && width && unit ? (focal * FULL_FRAME_WIDTH_MM) / ((width / resolution) * unit) : undefined;
  const equivalent = said ?? worked;
  return equivalent !== undefined && equivalent >= SHORTEST_MM && equivalent <= LONGEST_MM ? equivalent : undefined;
}
