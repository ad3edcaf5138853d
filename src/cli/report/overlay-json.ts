import type { LocatedInPhoto } from '../../compute/pictures/locate.js';
import type { Overlay } from '../../compute/pictures/overlay.js';
import type { SolvedPhoto } from '../../compute/pictures/solve-photo.js';
import { envelope, place3 } from './json.js';

export function overlayJson(shell: string, { solved, drawn }: Overlay, revision: string | null): string {
  return envelope('overlay', shell, revision, {
    photo: solved.photo.id,
    method: solved.method,
    points: solved.points.map(({ px, at, residualPx, residualMm, leftOut }) => ({
      px: [px[0], px[1]],
      at_mm: place3(at),
      residual_px: residualPx,
      residual_mm: residualMm,
      left_out: leftOut,
    })),
    residual_mm: solved.residualMm,
    left_out_mm: solved.leftOutMm,
    usable: solved.usable,
    notes: solved.notes.map(({ what }) => what),
    drawn: drawn.map(({ id, kind, stretches }) => ({
      id,
      kind,
      px: stretches.flatMap((one) => one.px.map(([u, v]) => [u, v])),
      stretches: stretches.map((one) => ({ hidden: one.hidden, px: one.px.map(([u, v]) => [u, v]) })),
    })),
  });
}

export function locateJson(
  shell: string,
  {
    solved,
    px,
    on,
    found,
  }: {
    readonly solved: SolvedPhoto;
    readonly px: readonly [number, number];
    readonly on: string;
    readonly found: LocatedInPhoto;
  },
  revision: string | null,
): string {
  const located = 'at' in found ? found : undefined;
  return envelope('locate', shell, revision, {
    photo: solved.photo.id,
    px: [px[0], px[1]],
    on,
    at_mm: place3(located?.at),
    uncertainty_mm: located?.uncertaintyMm,
  });
}
