import type { Pixel } from '../../compute/camera/camera.js';
import type { Computed } from '../../compute/figures.js';
import type { DrawnRecord, Overlay, PictureStretch } from '../../compute/pictures/overlay.js';
import type { Model } from '../../model/shell.js';
import { smallLength } from '../../quantity/format.js';
import { type Drawing, type DrawingOptions, labelMarks } from '../compose.js';
import { Ink, textBox } from '../ink.js';
import { type LabelWish, placeLabels } from '../labels.js';
import { MEDIUM_STYLES } from '../media.js';
import { circle, growRect, line, type Mark, type Point, type Rect, type Scene, textMark } from '../scene.js';
import type { Layer, PenName } from '../styles.js';
import { toSvg } from '../svg.js';
import { nodeMarks } from '../symbols.js';

/** Ids on one picture: more hide it. */
const MOST_LABELS = 40;
/** Lines shorter than this on the sheet have no name, mm. */
const LEAST_NAMED_MM = 6;

/** The drawing of a photo’s overlay as the book takes it; undefined where the photo is not tied to the coach. */
export function photoOverlayDrawing(
  { model, figures }: Computed,
  photo: string,
  widthMm: number,
  options: DrawingOptions = {},
): Drawing | undefined {
  const overlay = figures.overlays.get(photo);
  if (!overlay?.solved.usable) return undefined;
  const scene = photoOverlay(model, overlay, widthMm);
  return {
    id: `overlay-${photo}`,
    title: scene.title,
    alt: scene.alt,
    scale: 'not to scale',
    svg: toSvg(scene, { linkable: options.linkable ?? (() => true) }),
    widthMm,
    heightMm: scene.heightMm,
    ids: overlay.drawn.map(({ id }) => id),
    marks: scene.marks,
  };
}

/** What is recorded, to be laid over a photo that is `widthMm` wide; without the photo itself. */
export function photoOverlay(model: Model, overlay: Overlay, widthMm: number): Scene {
  const { solved, drawn } = overlay;
  const perPx = widthMm / solved.facts.widthPx;
  const heightMm = solved.facts.heightPx * perPx;
  const on = ([u, v]: Pixel): Point => [u * perPx, v * perPx];
  const marks = [
    ...drawn.flatMap((one) => recordMarks(model, one, on)),
    ...pointMarks(overlay, on),
    ...foot(model, overlay, perPx, heightMm),
  ];
  const room: Rect = { x0: 1, y0: 1, x1: widthMm - 1, y1: heightMm - 1 };
  const taken = marks.flatMap((mark) => (mark.kind === 'text' ? [growRect(textBox(mark), 0.4)] : []));
  const wishes = drawn
    .flatMap((one) => wishOf(one, on, room) ?? [])
    .sort((a, b) => b.priority - a.priority)
    .slice(0, MOST_LABELS);
  const labels = placeLabels(wishes, room, taken, new Ink(widthMm, heightMm, marks)).placed.flatMap(labelMarks);
  return {
    widthMm,
    heightMm,
    title: `What is recorded in photo ${solved.photo.id}`,
    alt: altOf(overlay),
    marks: [...marks, ...labels],
  };
}

const LAYER: Readonly<Record<DrawnRecord['kind'], Layer>> = {
  member: 'structure',
  panel: 'panels',
  opening: 'outlines',
  component: 'equipment',
  run: 'runs',
  node: 'nodes',
};

function recordMarks(model: Model, record: DrawnRecord, on: (px: Pixel) => Point): readonly Mark[] {
  const layer = LAYER[record.kind];
  if (record.kind === 'node') {
    const node = model.shell.nodes.find(({ id }) => id === record.id);
    const at = record.stretches[0]?.px[0];
    return node && at ? nodeMarks(node, on(at)) : [];
  }
  return record.stretches.flatMap(({ px, hidden }) => {
    const points = px.map(on);
    const screws = record.screws === undefined || hidden ? [] : [line(layer, 'screw-row', points)];
    const drawn = line(layer, penOf(record, hidden), points, record.id);
    return record.kind === 'member' ? [drawn] : [line(layer, 'casing', points), drawn, ...screws];
  });
}

function penOf({ kind, medium }: DrawnRecord, hidden: boolean): PenName {
  if (kind === 'run' && medium) return hidden ? `run-behind-${medium}` : `run-${medium}`;
  if (kind === 'opening') return 'seen-opening';
  if (kind === 'panel') return hidden ? 'seen-panel-behind' : 'seen-panel';
  return hidden ? 'seen-member-behind' : 'seen-member';
}

/** The known points by number; one that was left out is struck through. */
function pointMarks({ solved }: Overlay, on: (px: Pixel) => Point): readonly Mark[] {
  return solved.points.flatMap(({ px, leftOut }, i) => {
    const [x, y] = on(px);
    const strike = leftOut
      ? [
          line('dimensions', 'edge', [
            [x - 2, y - 2],
            [x + 2, y + 2],
          ]),
        ]
      : [];
    return [
      circle('dimensions', 'known-point', [x, y], 0.9),
      ...strike,
      textMark('dimensions', 'dimension', [x + 1.6, y - 1.6], String(i + 1), { backed: true }),
    ];
  });
}

/** Lengths for a bar, mm: whole feet and inches, or whole decimetres. */
const BARS = { us: [76.2, 152.4, 304.8, 609.6], metric: [100, 200, 300, 500] } as const;

/** A scale at the depth of the known points, and how good the picture is. */
function foot(model: Model, { solved, pxPerMm }: Overlay, perPx: number, heightMm: number): readonly Mark[] {
  if (pxPerMm === undefined || solved.leftOutMm === undefined) return [];
  const { units } = model.shop;
  const sheetPerMm = pxPerMm * perPx;
  const bar = BARS[units === 'metric' ? 'metric' : 'us'].find((mm) => mm * sheetPerMm >= 15) ?? 304.8;
  const y = heightMm - 4;
  const end = 4 + bar * sheetPerMm;
  const points: readonly Point[] = [
    [4, y - 1],
    [4, y],
    [end, y],
    [end, y - 1],
  ];
  const residual = solved.residualMm === undefined ? '' : ` · points agree to ${smallLength(solved.residualMm, units)}`;
  const good = `Good to ± ${smallLength(Math.ceil(solved.leftOutMm), units)}${residual}`;
  return [
    line('furniture', 'casing', points),
    line('furniture', 'edge', points),
    textMark(
      'furniture',
      'dimension',
      [end + 1.5, y - 0.5],
      `${smallLength(bar, units)} at the points 1 to ${solved.points.length} · ${good}`,
      { backed: true },
    ),
  ];
}

const PRIORITY: Readonly<Record<DrawnRecord['kind'], number>> = {
  node: 40,
  run: 30,
  panel: 20,
  opening: 18,
  component: 15,
  member: 10,
};

function wishOf(record: DrawnRecord, on: (px: Pixel) => Point, room: Rect): LabelWish | undefined {
  const seen = [...record.stretches].sort((a, b) => Number(a.hidden) - Number(b.hidden) || lengthOf(b, on) - lengthOf(a, on));
  const best = seen[0];
  if (!best) return undefined;
  const points = best.px.map(on).filter(([x, y]) => x > room.x0 && x < room.x1 && y > room.y0 && y < room.y1);
  const anchor = points[Math.floor(points.length / 2)];
  if (!anchor || (record.kind !== 'node' && lengthOf(best, on) < LEAST_NAMED_MM)) return undefined;
  const letter = record.kind === 'run' && record.medium ? ` ${MEDIUM_STYLES[record.medium].letter}` : '';
  return {
    text: `${record.id}${letter}`,
    anchor,
    also: [0.25, 0.75].map((share) => points[Math.floor(points.length * share)] ?? anchor),
    style: record.kind === 'node' || record.kind === 'panel' ? 'id-strong' : 'id',
    priority: PRIORITY[record.kind] - (best.hidden ? 5 : 0),
    id: record.id,
    clearMm: record.kind === 'node' ? 1.2 : 0.5,
  };
}

const lengthOf = ({ px }: PictureStretch, on: (px: Pixel) => Point): number =>
  px.slice(1).reduce((sum, to, i) => {
    const [a, b] = [on(px[i] as Pixel), on(to)];
    return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
  }, 0);

function altOf({ solved, drawn }: Overlay): string {
  const of = (kind: DrawnRecord['kind']): readonly string[] => drawn.filter((one) => one.kind === kind).map(({ id }) => id);
  const named = [...of('panel'), ...of('node'), ...of('run')].slice(0, 12);
  const rest = drawn.length - named.length;
  return `Photo ${solved.photo.id} with the record drawn over it: ${named.join(', ') || 'no services'}${rest > 0 ? ` and ${rest} more` : ''}. Full lines are in front, dashed lines behind something.`;
}
