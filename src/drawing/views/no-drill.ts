import type { Assessment } from '../../assess.js';
import { type Surface, surfaceKey, surfaceWords } from '../../compute/access/surfaces.js';
import { WELD_BAND_MM } from '../../compute/welding/weld-bands.js';
import { boxBetween } from '../../geometry/box.js';
import { inFacet, isInPolygon } from '../../geometry/facet.js';
import { add, lerp, scale, type Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import { length } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';
import { ASSUMED_TOLERANCE_MM, drilledSheets, isFarBeside, underFace } from '../../query/release/index.js';
import { heatAffectedBoxes } from '../../query/shown.js';
import type { Member, Run } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import { fitsOn, HALF_SHEET_STRIPS, halfSheet } from '../half-sheet.js';
import type { LabelWish } from '../labels.js';
import { openingMarks } from '../marks/openings.js';
import { surfaceOf } from '../marks/panels.js';
import { shellBox } from '../marks/shell-box.js';
import { memberContext } from '../marks/structure.js';
import { membersNearFace } from '../near-face.js';
import { withinRows } from '../node-rows.js';
import { lineLengthMm } from '../outline.js';
import { nearness, viewOfSurface } from '../projection.js';
import { line, type Mark, overlaps, type Point, rectAbout, rectangle, textMark } from '../scene.js';
import { layOut, type Margins, type Port, type SheetSize } from '../sheet.js';
import { LINE_WIDTHS_MM, type PenName } from '../styles.js';
import { textWidthMm } from '../text-width.js';
import { boxCorners, memberCorners, middleOf } from '../visibility.js';
import { openingsOf, surfaceId, surfaceNote } from './panels.js';

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
/** Pieces of a run are judged for depth at least this often, mm. */
const PIECE_MM = 50;
/** A stretch of more pieces (a kilometre: a slip in a place) is shown whole as the nearest band, which is the safe side. */
const MOST_PIECES = 20_000;
/** Shorter on the sheet than this is a spot: what it ends at has a name. */
const SHORT_MM = 7;

/** With more to label than this a side has its sheet to itself. */
const MOST_SHARED = 60;

/** A face on its sheet; the sides of a shell with little in them on half of it, so that both share one. */
export function noDrillFace(a: Assessment, surface: Surface, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  if (surface.side === 'left' || surface.side === 'right') {
    const half = halfSheet(sheet);
    const drawn = faceOnSheet(a, surface, half, HALF_SHEET_STRIPS, options);
    if (drawn.labels <= MOST_SHARED && fitsOn(half, drawn.drawing)) return drawn.drawing;
  }
  return faceOnSheet(a, surface, sheet, { sideMm: 8, aboveMm: 16, belowMm: 10, mostMm: 34 }, options).drawing;
}

/**
 * A face as one drills it, with everything that runs or stands close behind it, widened by how well its place is known, dark where near,
 * and the soft metal about welds. Depth counts from the outside of the sheet that lies there.
 */
function faceOnSheet(a: Assessment, surface: Surface, sheet: SheetSize, strips: Margins, options: DrawingOptions) {
  const { model } = a;
  const shell = shellExtent(model);
  const view = viewOfSurface(surface);
  const words = surfaceWords(surface);
  const bounds = viewBounds(view, extentCorners(shell));
  const layout = layOut([{ view, bounds }], sheet, strips);
  const port = layout.ports[0] as Port;
  const depthOf = depthUnder(a, shell, surface);
  const { marks, wishes, runs, short } = bandsBehind(a, port, depthOf, layout.reduction);
  const blocks = blocksBehind(a, port, depthOf);
  const welds = weldsBehind(a, port, depthOf);
  const wall = openingsOf(surface);
  const openings = wall ? openingMarks(model, wall, port) : { marks: [], wishes: [] };
  const assumed = runs.filter((run) => run.toleranceMm === undefined).length;
  const allWishes = [...wishes, ...blocks.wishes, ...openings.wishes];
  const drawing = compose(
    {
      id: `no-drill-${surfaceId(surface)}`,
      title: `Do not drill: ${words}`,
      alt: `${words} from ${surface.seenFrom}, with ${runs.length} runs within ${length(deepest(bandsFor(a)), model.shop.units)} behind it, each as a band as wide as its place is uncertain; darker is nearer the surface. ${blocks.wishes.length} nodes and pieces of equipment and ${welds.length} places of soft metal about welds are marked as well.`,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + 7 },
      front: view.front,
      units: model.shop.units,
      marks: [
        shellBox(shell, port, 'skin-line'),
        ...memberContext(membersNear(a, shell, surface), model.library, port),
        ...openings.marks,
        ...welds,
        ...blocks.marks,
        ...marks,
      ],
      legend: bandLegend(a, [2, 3]),
      wishes: allWishes,
      notes: [
        surfaceNote(surface, model),
        'A blank place is not proven clear: find out before you drill.',
        welds.length > 0 ? `Dotted squares: soft metal, ${length(WELD_BAND_MM, 'both')} each way from a weld: no screw.` : '',
        short === 1 ? 'One run that comes near at a spot only is drawn without a name.' : '',
        short > 1 ? `${short} runs that come near at a spot only are drawn without a name.` : '',
        assumed > 0
          ? `${assumed} of ${runs.length} runs have no recorded tolerance: ${length(ASSUMED_TOLERANCE_MM, model.shop.units)} taken.`
          : '',
      ].filter(Boolean),
      rest: 'in the lists of runs',
    },
    options,
  );
  return { drawing, labels: allWishes.length };
}

/** How deep under the face something lies that reaches so far about a place; the sheet there counts, else the outermost of the shell. */
interface DepthOf {
  at(place: Vec3, aboutMm: number): number;
  isUnderSheet(place: Vec3): boolean;
}

function depthUnder({ model }: Assessment, shell: Extent, surface: Surface): DepthOf {
  const view = viewOfSurface(surface);
  const outer = Math.max(...extentCorners(shell).map((corner) => nearness(view, corner)));
  const sheets = sheetsOf(model, surface);
  const under = (place: Vec3, aboutMm: number): number | undefined => {
    let least: number | undefined;
    for (const sheet of sheets) {
      if (isFarBeside(sheet, place, aboutMm)) continue;
      const { depthMm, besideMm } = underFace(sheet, place);
      if (besideMm <= aboutMm && (least === undefined || depthMm < least)) least = depthMm;
    }
    return least;
  };
  const inHole = (place: Vec3): number | undefined => {
    const sheet = sheets.find((one) => isInPolygon(inFacet(place, one.facet), one.facet.outline));
    return surface.seenFrom === 'inside' && sheet ? underFace(sheet, place).depthMm : undefined;
  };
  return {
    at: (place, aboutMm) => {
      // From inside nothing is behind a lining but what is under one, or behind an access panel in it.
      const depth =
        under(place, aboutMm) ?? inHole(place) ?? (surface.seenFrom === 'inside' ? Infinity : outer - nearness(view, place));
      // What stands wholly before the face is behind none.
      return depth < -aboutMm ? Infinity : depth - aboutMm;
    },
    isUnderSheet: (place) => under(place, 0) !== undefined,
  };
}

const sheetsOf = (model: Assessment['model'], surface: Surface) =>
  drilledSheets(model).filter(({ panel }) => surfaceKey(surfaceOf(panel, model)) === surfaceKey(surface));

/** Frame close behind a face: behind a lining, what lies within the depth that is looked. */
function membersNear({ model }: Assessment, shell: Extent, surface: Surface): readonly Member[] {
  if (surface.seenFrom === 'outside') return membersNearFace(model, shell, surface.faces);
  const sheets = sheetsOf(model, surface);
  return model.shell.members.filter((member) => {
    const middle = middleOf(memberCorners(member, model.library));
    return sheets.some((sheet) => {
      const { depthMm, besideMm } = underFace(sheet, middle);
      return depthMm > 0 && depthMm < METRIC_DEEPEST_MM && besideMm < METRIC_DEEPEST_MM;
    });
  });
}
const METRIC_DEEPEST_MM = 150;

const bandOf = (bands: Bands, depthMm: number): number => bands.findIndex(({ upToMm }) => depthMm <= upToMm);

/** Nodes and equipment of known size near the face: each as a patch as large as it may reach, in the tone of its depth. */
function blocksBehind(
  a: Assessment,
  port: Port,
  depthOf: DepthOf,
): { readonly marks: readonly Mark[]; readonly wishes: readonly LabelWish[] } {
  const bands = bandsFor(a);
  const marks: Mark[] = [];
  const wishes: LabelWish[] = [];
  const nodes = placedNodes(a.model.shell.nodes);
  const within = withinRows(nodes, ({ at }) => port.place(at));
  const patch = (id: string, at: Vec3, size: Vec3, depthMm: number, priority: number): void => {
    const band = bandOf(bands, depthMm);
    const around = rectAbout([-1, 1].map((side) => port.place(add(at, scale(size, side / 2)))));
    if (band === -1 || !around || !overlaps(around, port.frame)) return;
    const middle = (around.y0 + around.y1) / 2;
    const mark = line(
      'nodes',
      (bands[band] as Bands[number]).pen,
      [
        [around.x0, middle],
        [around.x1, middle],
      ],
      id,
    );
    marks.push({ ...mark, widthMm: Math.max(LINE_WIDTHS_MM[4], around.y1 - around.y0) });
    // Between the ends of a row the numbers follow.
    if (within.has(id)) return;
    wishes.push({
      text: id,
      anchor: [(around.x0 + around.x1) / 2, middle],
      style: 'id-large',
      priority: priority - band * 5,
      id,
    });
  };
  for (const { id, at, toleranceMm = ASSUMED_TOLERANCE_MM } of nodes) {
    patch(id, at, [2 * toleranceMm, 2 * toleranceMm, 2 * toleranceMm], depthOf.at(at, toleranceMm), 20);
  }
  for (const { id, at, sizeMm, toleranceMm = ASSUMED_TOLERANCE_MM } of a.model.shell.components) {
    if (!sizeMm) continue;
    const size = add(sizeMm, [2 * toleranceMm, 2 * toleranceMm, 2 * toleranceMm]);
    const corners = boxCorners(boxBetween(add(at, scale(size, -0.5)), add(at, scale(size, 0.5))));
    // What hangs beside every sheet of the face is behind none.
    if (![at, ...corners].some((place) => depthOf.isUnderSheet(place))) continue;
    patch(id, at, size, Math.min(...corners.map((corner) => depthOf.at(corner, 0))), 30);
  }
  return { marks, wishes };
}

/** The soft metal about the welds that a screw of the first band would meet. */
function weldsBehind(a: Assessment, port: Port, depthOf: DepthOf): readonly Mark[] {
  const first = (bandsFor(a)[0] as Bands[number]).upToMm;
  return heatAffectedBoxes(a).flatMap(({ box }): readonly Mark[] => {
    const corners = boxCorners(box);
    const depths = corners.map((corner) => depthOf.at(corner, 0));
    if (Math.min(...depths) > first || Math.max(...depths) < 0) return [];
    const around = rectAbout(corners.map(port.place));
    return around ? [rectangle('outlines', 'weld-soft', around)] : [];
  });
}

interface Behind {
  readonly marks: readonly Mark[];
  readonly wishes: readonly LabelWish[];
  readonly runs: readonly Run[];
  /** Runs that come near at a spot only, and not within the first band: drawn without a name. */
  readonly short: number;
}

function bandsBehind(a: Assessment, port: Port, depthOf: DepthOf, reduction: number): Behind {
  const bands = bandsFor(a);
  const byBand: Mark[][] = bands.map(() => []);
  const wishes: LabelWish[] = [];
  const runs: Run[] = [];
  let short = 0;
  for (const run of a.model.shell.runs) {
    const radius = (a.figures.takeOff.runs.find(({ id }) => id === run.id)?.outsideDiameterMm ?? 0) / 2;
    const widen = radius + (run.toleranceMm ?? ASSUMED_TOLERANCE_MM);
    const pieces = piecesOf(run.path, bands, (at) => depthOf.at(at, widen));
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
    else wishes.push({ text: run.id, anchor, style: 'id-large', priority: 50 - longest.band * 5, id: run.id });
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
    if (steps > MOST_PIECES) {
      open = undefined;
      pieces.push({ band: 0, points: [a, b] });
      continue;
    }
    let to = lerp(a, b, 0);
    let toDepth = depthOf(to);
    for (let k = 0; k < steps; k++) {
      const [from, fromDepth] = [to, toDepth];
      to = lerp(a, b, (k + 1) / steps);
      toDepth = depthOf(to);
      const band = bandOf(bands, Math.min(fromDepth, toDepth));
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
  const units = 'both';
  let at = x;
  return bandsFor(a).flatMap(({ pen, upToMm }, index, bands): readonly Mark[] => {
    const low = index === 0 ? 0 : (bands[index - 1] as Bands[number]).upToMm;
    const words = low === 0 ? `within ${length(upToMm, units)}` : `to ${length(upToMm, units)}`;
    const swatch = line('furniture', pen, [
      [at, y],
      [at + 8, y],
    ]);
    const marks: readonly Mark[] = [{ ...swatch, widthMm: 2 }, textMark('furniture', 'note', [at + 9.5, y], words)];
    at += 9.5 + textWidthMm(words, 'note') + 5;
    return marks;
  });
}
