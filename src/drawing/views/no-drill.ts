import type { Assessment } from '../../assess.js';
import { lerp, type Vec3 } from '../../geometry/vector.js';
import type { Run } from '../../model/services.js';
import type { Facing } from '../../model/structure.js';
import { length } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { openingMarks } from '../marks/openings.js';
import { memberContext } from '../marks/structure.js';
import { lineLengthMm } from '../outline.js';
import { nearness, VIEW_OF_FACE } from '../projection.js';
import { line, type Mark, type Point, text } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { LINE_WIDTHS_MM, type PenName } from '../styles.js';
import { textWidthMm } from '../text-width.js';
import { nearFace } from './general.js';
import { FACE_WORDS } from './panels.js';

/** How deep behind a face is looked, and where the bands change, mm. */
type Bands = readonly { readonly upToMm: number; readonly pen: PenName }[];
const METRIC_BANDS: Bands = [
  { upToMm: 25, pen: 'depth-1' },
  { upToMm: 50, pen: 'depth-2' },
  { upToMm: 100, pen: 'depth-3' },
  { upToMm: 150, pen: 'depth-4' },
];
const US_BANDS: Bands = [1, 2, 4, 6].map((inches, index) => ({
  upToMm: inches * MM_PER_IN,
  pen: (METRIC_BANDS[index] as Bands[number]).pen,
}));
const bandsFor = (a: Assessment): Bands => (a.model.shop.units === 'metric' ? METRIC_BANDS : US_BANDS);
const deepest = (bands: Bands): number => (bands.at(-1) as Bands[number]).upToMm;
/** A run without a recorded tolerance is widened by this much, and the sheet says so, mm. */
const ASSUMED_TOLERANCE_MM = 25;
/** Pieces of a run are judged for depth at least this often, mm. */
const PIECE_MM = 50;
/** Shorter on the sheet than this is a spot. */
const SHORT_MM = 4;

/** A face from outside with everything that runs close behind it, widened by how well its place is known, dark where near. */
export function noDrillFace(a: Assessment, face: Facing, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { model } = a;
  const shell = shellExtent(model);
  const view = VIEW_OF_FACE[face];
  const bounds = viewBounds(view, extentCorners(shell));
  const layout = layOut([{ view, bounds }], sheet, { sideMm: 8, aboveMm: 16, belowMm: 10, mostMm: 34 });
  const port = layout.ports[0] as Port;
  const outer = faceDepth(shell, face);
  const { marks, wishes, runs, short } = bandsBehind(a, face, port, outer, layout.reduction);
  const openings = openingMarks(model, face, port);
  const assumed = runs.filter((run) => run.toleranceMm === undefined).length;
  return compose(
    {
      id: `no-drill-${face}`,
      title: `Do not drill: ${FACE_WORDS[face]}`,
      alt: `${FACE_WORDS[face]} from outside with ${runs.length} runs within ${length(deepest(bandsFor(a)), model.shop.units)} behind it, each as a band as wide as its place is uncertain; darker is nearer the surface.`,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + 7 },
      front: view.front,
      units: model.shop.units,
      marks: [...memberContext(nearFace(model, shell, face), model.library, port), ...openings.marks, ...marks],
      legend: bandLegend(a, [2, 3]),
      wishes: [...wishes, ...openings.wishes],
      notes: [
        'A blank place is not proven clear: find out before you drill.',
        short > 0 ? `${short} runs that come near at a spot only are named in the table.` : '',
        assumed > 0
          ? `${assumed} of ${runs.length} runs have no recorded tolerance: ${length(ASSUMED_TOLERANCE_MM, model.shop.units)} taken.`
          : '',
      ].filter(Boolean),
      rest: 'in the table',
    },
    options,
  );
}

const faceDepth = (shell: Extent, face: Facing): number =>
  Math.max(...extentCorners(shell).map((corner) => nearness(VIEW_OF_FACE[face], corner)));

interface Behind {
  readonly marks: readonly Mark[];
  readonly wishes: readonly LabelWish[];
  readonly runs: readonly Run[];
  /** Runs that come near at a spot only, and not within the first band: drawn without a name. */
  readonly short: number;
}

function bandsBehind(a: Assessment, face: Facing, port: Port, outer: number, reduction: number): Behind {
  const bands = bandsFor(a);
  const byBand: Mark[][] = bands.map(() => []);
  const wishes: LabelWish[] = [];
  const runs: Run[] = [];
  let short = 0;
  for (const run of a.model.shell.runs) {
    const radius = (a.figures.takeOff.runs.find(({ id }) => id === run.id)?.outsideDiameterMm ?? 0) / 2;
    const widen = radius + (run.toleranceMm ?? ASSUMED_TOLERANCE_MM);
    const pieces = piecesOf(run.path, bands, (at) => outer - nearness(VIEW_OF_FACE[face], at) - widen);
    if (pieces.length === 0) continue;
    runs.push(run);
    const widthMm = Math.max(LINE_WIDTHS_MM[4], (2 * widen) / reduction);
    for (const { band, points } of pieces) {
      const pen = (bands[band] as Bands[number]).pen;
      (byBand[band] as Mark[]).push({ ...line('runs', pen, points.map(port.place), run.id), widthMm });
    }
    const longest = [...pieces].sort((p, q) => q.points.length - p.points.length)[0] as (typeof pieces)[number];
    const anchor = port.place(longest.points[Math.floor(longest.points.length / 2)] as Vec3);
    const onSheet = lineLengthMm(longest.points.map(port.place));
    if (onSheet < SHORT_MM && longest.band > 0) short++;
    else wishes.push({ text: run.id, anchor, style: 'id', priority: 50 - longest.band * 5, id: run.id });
  }
  // The deepest first: what lies nearest the surface is painted over it.
  return { marks: byBand.reverse().flat(), wishes, runs, short };
}

/** Stretches of a path that lie in one depth band; what is outside the shell's face or too deep is left out. */
function piecesOf(
  path: readonly Vec3[],
  bands: Bands,
  depthOf: (at: Vec3) => number,
): readonly { band: number; points: readonly Vec3[] }[] {
  const pieces: { band: number; points: Vec3[] }[] = [];
  let open: { band: number; points: Vec3[] } | undefined;
  for (let i = 1; i < path.length; i++) {
    const a = path[i - 1] as Vec3;
    const b = path[i] as Vec3;
    const steps = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) / PIECE_MM));
    for (let k = 0; k < steps; k++) {
      const [from, to] = [lerp(a, b, k / steps), lerp(a, b, (k + 1) / steps)];
      const depth = Math.min(depthOf(from), depthOf(to));
      const band = bands.findIndex(({ upToMm }) => depth <= upToMm);
      if (open && open.band === band) open.points.push(to);
      else {
        open = band === -1 ? undefined : { band, points: [from, to] };
        if (open) pieces.push(open);
      }
    }
  }
  return pieces;
}

function bandLegend(a: Assessment, [x, y]: Point): readonly Mark[] {
  const units = a.model.shop.units === 'metric' ? 'metric' : 'us';
  let at = x;
  return bandsFor(a).flatMap(({ pen, upToMm }, index, bands): readonly Mark[] => {
    const low = index === 0 ? 0 : (bands[index - 1] as Bands[number]).upToMm;
    const words = low === 0 ? `within ${length(upToMm, units)}` : `${length(low, units)} to ${length(upToMm, units)}`;
    const swatch = line('furniture', pen, [
      [at, y],
      [at + 8, y],
    ]);
    const marks: readonly Mark[] = [{ ...swatch, widthMm: 2 }, text('furniture', 'note', [at + 9.5, y], words)];
    at += 9.5 + textWidthMm(words, 'note') + 5;
    return marks;
  });
}
