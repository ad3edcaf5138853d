import type { DrawnRecord, Overlay } from '../compute/pictures/overlay.js';
import { toSvg } from '../drawing/svg.js';
import { photoOverlay } from '../drawing/views/photo-overlay.js';
import type { Pocket } from './pocket.js';

/** Width of what is drawn over a photo, mm: its lettering is then as large as a phone’s. */
const OVERLAY_MM = 90;
/** Beyond so many letters less is drawn: a view of the whole coach shows thousands of lines and nothing to be read. */
const MOST_LETTERS = 50_000;

/** What is recorded in a photo’s view, to be laid over it; undefined where the photo is not tied to the coach. */
export function overlaySvg({ assessment }: Pocket, photo: string): string | undefined {
  const overlay = assessment.figures.overlays.get(photo);
  if (!overlay?.solved.usable) return undefined;
  const drawnWith = (drawn: readonly DrawnRecord[]): string => {
    const less: Overlay = { ...overlay, drawn };
    return toSvg(photoOverlay(assessment.model, less, OVERLAY_MM), { linkable: () => false });
  };
  for (const keep of LESS) {
    const svg = drawnWith(keep(overlay.drawn));
    if (svg.length <= MOST_LETTERS) return svg;
  }
  return undefined;
}

/** All; then members only where they are in front; then what one works on alone; then what is in front of it. */
const LESS: readonly ((drawn: readonly DrawnRecord[]) => readonly DrawnRecord[])[] = [
  (drawn) => drawn,
  (drawn) => drawn.flatMap((one) => (one.kind === 'member' ? inFront(one) : [one])),
  (drawn) => drawn.filter(({ kind }) => kind !== 'member'),
  (drawn) => drawn.filter(({ kind }) => kind !== 'member').flatMap(inFront),
];

const inFront = (one: DrawnRecord): readonly DrawnRecord[] => {
  const stretches = one.stretches.filter(({ hidden }) => !hidden);
  return stretches.length > 0 ? [{ ...one, stretches }] : [];
};
