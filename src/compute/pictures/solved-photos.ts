import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { PictureFacts } from '../../records/picture-facts.js';
import type { PhotoSight } from '../access/photos.js';
import { projectPoint } from '../camera/camera.js';
import { inSight } from './in-sight.js';
import { scaleAt } from './overlay.js';
import { type SolvedPhoto, solvePhoto } from './solve-photo.js';

/** Less than this and a splice is a speck: 1 in is 12 px. Project default, px per mm. */
const READ_PX_PER_MM = 0.5;

/** What the files say of the pictures: path in the store → facts; absent where nobody looked. */
export type PictureFactsOf = (file: string) => PictureFacts | undefined;

/** Every photo with marked points, tied to the datum or with why not. */
export function solvedPhotos(model: Model, factsOf: PictureFactsOf): ReadonlyMap<string, SolvedPhoto> {
  const { shell } = model;
  return new Map(
    shell.photos.flatMap((photo) => {
      const facts = (photo.seen?.length ?? 0) > 0 ? factsOf(`shells/${shell.id}/photos/${photo.file}`) : undefined;
      return facts ? [[photo.id, solvePhoto(model, photo, facts)] as const] : [];
    }),
  );
}

/** Where a place lies for a photo that is tied to space. */
export type Sighted = 'seen' | 'outside' | 'too small' | { readonly hiddenBy: string };

/** Whether a photo really shows a place: in its frame, near enough to be read, and nothing before it. Undefined where it cannot tell. */
export function sightedIn(model: Model, solved: SolvedPhoto): ((at: Vec3, own?: ReadonlySet<string>) => Sighted) | undefined {
  const { fit, facts, usable } = solved;
  if (!usable || fit?.method !== 'camera') return undefined;
  const { camera } = fit;
  const sight = inSight(model, solved.photo);
  return (at, own = new Set()) => {
    const px = projectPoint(camera, at)?.px;
    if (!px || px[0] < 0 || px[1] < 0 || px[0] > facts.widthPx || px[1] > facts.heightPx) return 'outside';
    if (scaleAt(fit, at) < READ_PX_PER_MM) return 'too small';
    const hiddenBy = sight.hiddenBy(camera.centre, at, own);
    return hiddenBy === undefined ? 'seen' : { hiddenBy };
  };
}

/** For coverage: what each solved photo shows, by geometry; the others speak by their `shows` or `camera`. */
export function photoSight(model: Model, solved: ReadonlyMap<string, SolvedPhoto>): PhotoSight {
  const known = new Map([...solved].map(([id, one]) => [id, sightedIn(model, one)] as const));
  return (photo) => {
    const sighted = known.get(photo.id);
    return sighted && ((at) => sighted(at) === 'seen');
  };
}
