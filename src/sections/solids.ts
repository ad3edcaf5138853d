import type { Box } from '../geometry/box.js';
import { planarPolygon } from '../geometry/polygon.js';
import { add, dot, lerp, scale, subtract, type Vec3 } from '../geometry/vector.js';
import type { LineMember, Opening, SectionShape } from '../records/index.js';
import { type Piece, piecesOf } from './bent-line.js';
import { type MemberFrame, memberFrame } from './frame.js';
import { sectionEnvelope } from './index.js';

export { type MemberFrame, memberFrame } from './frame.js';

/** Joints, access, services and more ask for the same boxes. */
const BOXES = new WeakMap<LineMember, { readonly shape: SectionShape; readonly box: Box }>();

/** The box that a member on a line fills: axes are along, depth, width. Of a bent one: the box about all of it; what it fills are its `memberBoxes`. */
export function memberBox(line: LineMember, shape: SectionShape): Box {
  const known = BOXES.get(line);
  if (known?.shape === shape) return known.box;
  const box = line.bends ? boxAbout(memberBoxes(line, shape), line) : straightBox(line, memberFrame(line), shape, 0);
  BOXES.set(line, { shape, box });
  return box;
}

/** The boxes that a member on a line fills: one where it is straight; of a bend one a chord, the outer sides meeting. */
export function memberBoxes(line: LineMember, shape: SectionShape): readonly Box[] {
  return line.bends
    ? piecesOf(line).map((piece) => straightBox(piece, piece.frame, shape, piece.mitre))
    : [memberBox(line, shape)];
}

/** What a member fills between two places along its middle line, mm from `from`. */
export function boxesBetween(line: LineMember, shape: SectionShape, fromMm: number, toMm: number): readonly Box[] {
  let before = 0;
  return memberBoxes(line, shape).flatMap((box, i): readonly Box[] => {
    const lengthMm = line.bends ? (piecesOf(line)[i] as Piece).frame.lengthMm : 2 * box.half[0];
    const [low, high] = [Math.max(0, fromMm - before), Math.min(lengthMm, toMm - before)];
    before += lengthMm;
    if (high <= low) return [];
    const middle = (low + high) / 2 - lengthMm / 2;
    return [{ ...box, center: add(box.center, scale(box.axes[0], middle)), half: [(high - low) / 2, box.half[1], box.half[2]] }];
  });
}

function straightBox({ from, to }: Pick<LineMember, 'from' | 'to'>, frame: MemberFrame, shape: SectionShape, mitre: number): Box {
  const [depthMm, widthMm] = sectionEnvelope(shape);
  return {
    center: lerp(from, to, 0.5),
    axes: [frame.along, frame.depth, frame.width],
    half: [frame.lengthMm / 2 + (mitre * Math.max(depthMm, widthMm)) / 2, depthMm / 2, widthMm / 2],
  };
}

/** A box about others, along the line from end to end; along the datum where the ends meet. */
function boxAbout(boxes: readonly Box[], line: LineMember): Box {
  const { along, depth, width, lengthMm } = memberFrame(line);
  const axes: Box['axes'] =
    lengthMm > 0
      ? [along, depth, width]
      : [
          [1, 0, 0],
          [0, 0, 1],
          [0, 1, 0],
        ];
  const ends = axes.map((axis) => {
    const reach = (box: Box): number =>
      box.axes.reduce((sum, own, k) => sum + Math.abs(dot(own, axis)) * (box.half[k] as number), 0);
    const [low, high] = [
      Math.min(...boxes.map((box) => dot(box.center, axis) - reach(box))),
      Math.max(...boxes.map((box) => dot(box.center, axis) + reach(box))),
    ];
    return { middle: (low + high) / 2, half: (high - low) / 2 };
  });
  const center = axes.reduce<Vec3>((sum, axis, k) => add(sum, scale(axis, ends[k]?.middle ?? 0)), [0, 0, 0]);
  return { center, axes, half: ends.map(({ half }) => half) as unknown as Box['half'] };
}

export {
  bendFaults,
  developedLengthMm,
  type LinePoint,
  lineCentroid,
  linePath,
  stationAt,
  stationsOf,
} from './bent-line.js';

/** Corners of the two faces of a plate or panel of some thickness about its outline: [one face, other face]. */
export function plateFaces(outline: readonly Vec3[], thicknessMm: number): readonly [readonly Vec3[], readonly Vec3[]] {
  const offset = scale(planarPolygon(outline).normal, thicknessMm / 2);
  return [outline.map((corner) => add(corner, offset)), outline.map((corner) => subtract(corner, offset))];
}

/** Corners of an opening: along its sill, up by its height. Undefined where the sill is no line. */
export function openingCorners(opening: Opening): readonly [Vec3, Vec3, Vec3, Vec3] | undefined {
  const front = opening.sill[0];
  const rear = opening.sill.at(-1);
  if (!front || !rear || opening.sill.length < 2) return undefined;
  const up: Vec3 = [0, 0, opening.heightMm];
  return [front, rear, add(rear, up), add(front, up)];
}
