import type { Assessment } from '../../assess.js';
import { length, number, smallLength, type UnitSystem } from '../../quantity/format.js';
import type { Opening } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { acrossDimension, uprightDimension } from '../dimensions.js';
import type { LabelWish } from '../labels.js';
import { openingFace } from '../marks/openings.js';
import { alongLine, lineLengthMm } from '../outline.js';
import { project, VIEW_OF_FACE, VIEWS } from '../projection.js';
import { circle, line, type Mark, type Point, type Rect, rectArea, rectangle } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { FACE_WORDS } from './panels.js';

/** A header's sag is drawn this many times its size: at true scale nobody would see it. */
const SAG_DRAWN = 20;
/** A sag by calculation below this would print as nothing, mm. */
const LEAST_TOLD_MM = 0.1;

/** One opening as measured, seen from outside: sides, diagonals, header sag, gussets. */
export function openingDrawing(a: Assessment, openingId: string, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const units = a.model.shop.units;
  const opening = a.model.shell.openings.find(({ id }) => id === openingId);
  const width = opening?.widthMm ?? 1000;
  const height = opening?.heightMm ?? 1000;
  const view = VIEWS.left;
  const layout = layOut([{ view, bounds: { x0: 0, y0: 0, x1: width, y1: height } }], sheet, {
    sideMm: 14,
    aboveMm: 13,
    belowMm: 13,
    mostMm: 18,
  });
  const port = layout.ports[0] as Port;
  const frame = port.frame;
  const face = opening && openingFace(opening);
  // Seen from outside, the front is to the left on the left wall and to the right on the right one.
  const frontLeft = face !== 'right';
  const gussets = opening ? gussetsInPlace(a, opening, port) : [];
  const marks: Mark[] = opening
    ? [
        rectangle('background', 'nominal', frame),
        ...gussets.map(({ id, ring }) => rectArea('structure', 'plate', ring, id)),
        ...outlineMarks(opening, port, frontLeft),
        ...sideDimensions(opening, frame, frontLeft, units),
        ...diagonalsOf(frame).map((points) => line('dimensions', 'dimension', points)),
      ]
    : [];
  return compose(
    {
      id: `opening-${openingId}`,
      title: opening ? `${opening.openingKind} ${openingId}, as measured` : `Opening ${openingId}`,
      alt: opening ? openingAlt(a, opening) : `Opening ${openingId} is not on record.`,
      ...layout,
      front: face === 'left' ? 'left' : face === 'right' ? 'right' : 'none',
      units,
      marks,
      wishes: opening ? [...partWishes(opening, frame, gussets), ...diagonalWishes(opening, frame, units)] : [],
      notes: opening ? openingNotes(a, opening, gussets) : [`Opening ${openingId} is not on record.`],
    },
    options,
  );
}

function openingAlt(a: Assessment, opening: Opening): string {
  const face = openingFace(opening);
  const size = `${length(opening.widthMm, a.model.shop.units)} wide and ${length(opening.heightMm, a.model.shop.units)} high`;
  return `${opening.openingKind} ${opening.id}${face ? ` in the ${FACE_WORDS[face]}` : ''}, ${size}, seen from outside with its measured sides, diagonals and header sag.`;
}

/** Jambs and sill straight, the header along its measured sag. */
function outlineMarks(opening: Opening, port: Port, frontLeft: boolean): readonly Mark[] {
  const { x0, y0, x1, y1 } = port.frame;
  const sag = [...(opening.measured?.headerSag ?? [])].sort((p, q) => p.atMm - q.atMm);
  const reduction = opening.widthMm / (x1 - x0);
  const header: Point[] = [
    [x0, y0],
    ...sag.map(({ atMm, dropMm }): Point => {
      const along = Math.min(Math.max(atMm / reduction, 0), x1 - x0);
      return [frontLeft ? x0 + along : x1 - along, y0 + (dropMm * SAG_DRAWN) / reduction];
    }),
    [x1, y0],
  ];
  header.sort((p, q) => p[0] - q[0]);
  return [
    line(
      'outlines',
      'edge',
      [
        [x0, y0],
        [x0, y1],
        [x1, y1],
        [x1, y0],
      ],
      opening.id,
    ),
    line('outlines', 'edge', header, opening.id),
    ...sag.map((_, index) => circle('nodes', 'mark-filled', header[index + 1] as Point, 0.6)),
  ];
}

const compared = (measuredMm: number | undefined, nominalMm: number, units: UnitSystem): string =>
  measuredMm === undefined ? `${length(nominalMm, units)} nominal, not measured` : length(measuredMm, units);

function sideDimensions(opening: Opening, frame: Rect, frontLeft: boolean, units: UnitSystem): readonly Mark[] {
  const { topMm, bottomMm, frontMm, rearMm } = opening.measured ?? {};
  const { x0, y0, x1, y1 } = frame;
  const [leftMm, rightMm] = frontLeft ? [frontMm, rearMm] : [rearMm, frontMm];
  return [
    ...acrossDimension(x0, x1, y0 - 8, y0, compared(topMm, opening.widthMm, units)),
    ...acrossDimension(x0, x1, y1 + 8, y1, compared(bottomMm, opening.widthMm, units)),
    ...uprightDimension(y0, y1, x0 - 8, x0, compared(leftMm, opening.heightMm, units)),
    ...uprightDimension(y0, y1, x1 + 8, x1, compared(rightMm, opening.heightMm, units)),
  ];
}

/** From the lower to the upper corner, left to right, then the other one. */
const diagonalsOf = ({ x0, y0, x1, y1 }: Rect): readonly (readonly Point[])[] => [
  [
    [x0, y1],
    [x1, y0],
  ],
  [
    [x0, y0],
    [x1, y1],
  ],
];

/** Where along a diagonal its figure may point, off the crossing of the two. */
const ON_DIAGONAL = [0.28, 0.2, 0.36, 0.72, 0.8, 0.64] as const;

/** The lengths of the diagonals, each in its line where it has room, else beside the opening. */
function diagonalWishes(opening: Opening, frame: Rect, units: UnitSystem): readonly LabelWish[] {
  const diagonals = opening.measured?.diagonalsMm;
  return diagonalsOf(frame).map((points, index): LabelWish => {
    const [anchor, ...also] = ON_DIAGONAL.map((share) => alongLine(points, lineLengthMm(points) * share).at);
    const words = diagonals ? length(diagonals[index as 0 | 1], units) : 'not measured';
    return { text: words, anchor: anchor as Point, also, style: 'dimension', priority: 80, centred: true };
  });
}

interface Gusset {
  readonly id: string;
  readonly ring: readonly Point[];
}

/** Gusset plates where they stand, seen as the opening is: those that it names and those found at its corners. */
function gussetsInPlace(a: Assessment, opening: Opening, port: Port): readonly Gusset[] {
  const face = openingFace(opening);
  const [from, to] = [opening.sill[0], opening.sill.at(-1)];
  if (!face || !from || !to) return [];
  const view = VIEW_OF_FACE[face];
  const [left, lower] = [from, to].reduce<Point>(
    ([x, y], end) => [Math.min(x, project(view, end)[0]), Math.min(y, project(view, end)[1])],
    [Infinity, Infinity],
  );
  const found = a.figures.openings.find(({ id }) => id === opening.id)?.gussets ?? [];
  return [...new Set([...opening.gussets, ...found])].flatMap((id) => {
    const shape = a.model.shell.members.find((member) => member.id === id)?.shape;
    if (shape?.kind !== 'plate') return [];
    const flat = shape.outline.map((corner) => project(view, corner));
    return [{ id, ring: flat.map(([x, y]) => port.placeFlat([x - left, y - lower])) }];
  });
}

/** The header and the gussets by name. */
function partWishes(opening: Opening, { x0, y0, x1 }: Rect, gussets: readonly Gusset[]): readonly LabelWish[] {
  const header: LabelWish[] = opening.header
    ? [
        {
          text: `header ${opening.header}`,
          anchor: [(x0 + x1) / 2, y0],
          style: 'id',
          priority: 60,
          id: opening.header,
          clearMm: 1,
        },
      ]
    : [];
  return [
    ...header,
    ...gussets.map(({ id, ring }): LabelWish => {
      const middle: Point = [
        ring.reduce((sum, [x]) => sum + x, 0) / ring.length,
        ring.reduce((sum, [, y]) => sum + y, 0) / ring.length,
      ];
      return { text: id, anchor: middle, style: 'id', priority: 50, id, centred: true };
    }),
  ];
}

function openingNotes(a: Assessment, opening: Opening, drawn: readonly Gusset[]): readonly string[] {
  const units = a.model.shop.units;
  const figure = a.figures.openings.find(({ id }) => id === opening.id);
  const notes = ['Seen from outside. Dashed: nominal.'];
  if (figure?.diagonalDifferenceMm !== undefined)
    notes.push(`Diagonals differ by ${smallLength(figure.diagonalDifferenceMm, units)}.`);
  if (figure?.rackingDeg !== undefined) notes.push(`Racking ${number(figure.rackingDeg, 2)}°.`);
  if (figure?.sagMm !== undefined) notes.push(`Header sag ${smallLength(figure.sagMm, units)}, drawn ${SAG_DRAWN} times.`);
  const loadedMm = figure?.headerWithPanelMm;
  if (loadedMm !== undefined && loadedMm >= LEAST_TOLD_MM)
    notes.push(
      `Its own mass and the panels over it give ${smallLength(loadedMm, units)} by calculation, simply held at the sides.`,
    );
  const bare = figure?.cornersWithoutGusset ?? [];
  if (bare.length > 0) notes.push(`No gusset found at: ${bare.join(', ')}.`);
  const placeless = opening.gussets.filter((id) => drawn.every((one) => one.id !== id));
  if (placeless.length > 0) notes.push(`Gussets without a place on record: ${placeless.join(', ')}.`);
  return notes;
}
