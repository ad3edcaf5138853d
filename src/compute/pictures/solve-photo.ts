import type { Model } from '../../model/shell.js';
import type { Photo } from '../../records/index.js';
import type { PictureFacts } from '../../records/picture-facts.js';
import { focalFromAngle, focalFromEquivalent, rayThrough } from '../camera/camera.js';
import type { Sighting } from '../camera/fit.js';
import { type SolvedPicture, solvePicture } from '../camera/solve.js';
import { isPoint, knownPoint, type NoPoint } from './known-points.js';

/** A photo tied to the datum, or why it is not. */
export interface SolvedPhoto extends SolvedPicture {
  readonly photo: Photo;
  readonly facts: PictureFacts;
  /** Points of `seen` that are no points: by their place in the list. */
  readonly noPoints: ReadonlyMap<number, NoPoint>;
}

/** Standard deviation of a picked pixel: a fingertip under a loupe. Common practice, no source. */
export const PICKED_PX = 2;
/** Worst error of a point told by the others that leaves a picture of use where the shop does not say, mm. */
export const OVERLAY_MM = 20;

/** Ties a photo to the datum by what is marked in it. */
export function solvePhoto(model: Model, photo: Photo, facts: PictureFacts): SolvedPhoto {
  const read = (photo.seen ?? []).map((seen) => ({ seen, point: knownPoint(model, seen) }));
  const noPoints = new Map(read.flatMap(({ point }, i) => (isPoint(point) ? [] : [[i, point] as const])));
  const size = { widthPx: facts.widthPx, heightPx: facts.heightPx };
  const focalPx =
    facts.equivalentMm !== undefined
      ? focalFromEquivalent(facts.equivalentMm, size)
      : photo.camera && focalFromAngle(photo.camera.angleDeg, size);
  const lens = { size, ...(focalPx === undefined ? {} : { focalPx }) };
  const limitMm = model.shop.limits.overlayMm ?? OVERLAY_MM;
  const sightings = (from?: SolvedPicture): readonly Sighting[] =>
    read.flatMap(({ seen, point }) => {
      if (!isPoint(point)) return [];
      const along =
        from?.fit?.method === 'camera'
          ? rayThrough(from.fit.camera, seen.px)
          : from?.fit?.method === 'plane'
            ? from.fit.plane.normal
            : undefined;
      return [{ at: point.at, px: seen.px, sigmaMm: point.sigmaMm(along), sigmaPx: PICKED_PX }];
    });
  const first = solvePicture(sightings(), lens, limitMm);
  // How wide a member's end looks is known once it is known from where it is seen.
  const near = first.fit?.method === 'camera' ? first.fit.camera : undefined;
  const solved = first.fit ? solvePicture(sightings(first), lens, limitMm, near) : first;
  return { ...solved, photo, facts, noPoints };
}
