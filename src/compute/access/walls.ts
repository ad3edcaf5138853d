import type { Box } from '../../geometry/box.js';
import { boxBetween } from '../../geometry/box.js';
import { add, scale } from '../../geometry/vector.js';
import type { SectionShape } from '../../model/library.js';
import type { Member } from '../../model/structure.js';
import { memberBox, sectionEnvelope } from '../solids.js';

/** One rectangle of metal in a section: middle and half sizes in depth and width, mm; turned about the line by `turn` radians. */
interface Wall {
  readonly depth: number;
  readonly width: number;
  readonly halfDepth: number;
  readonly halfWidth: number;
  readonly turn?: number;
}

/**
 * A line member as its walls of metal, so that a hand or a wire may pass through the hollow of a tube and between flanges.
 * How unsymmetrical sections lie follows the take-off's sections. Rounded corners and fillets are left square; round tubes
 * and corner radii are made of flat walls. A custom section is a full box: its form is not known.
 */
export function lineWalls(member: Member, shape: SectionShape): readonly Box[] {
  if (member.shape.kind !== 'line') return [];
  const whole = memberBox(member.shape, shape);
  const [along, depthAxis, widthAxis] = whole.axes;
  return sectionWalls(shape).map((wall) => {
    const cos = Math.cos(wall.turn ?? 0);
    const sin = Math.sin(wall.turn ?? 0);
    return {
      center: add(whole.center, add(scale(depthAxis, wall.depth), scale(widthAxis, wall.width))),
      axes: [along, add(scale(depthAxis, cos), scale(widthAxis, sin)), add(scale(widthAxis, cos), scale(depthAxis, -sin))],
      half: [whole.half[0], wall.halfDepth, wall.halfWidth],
    };
  });
}

function sectionWalls(shape: SectionShape): readonly Wall[] {
  const [depth, width] = sectionEnvelope(shape);
  /** A wall across the width at a place in the depth, and one along the depth at a place in the width. */
  const across = (at: number, thick: number): Wall => ({ depth: at, width: 0, halfDepth: thick / 2, halfWidth: width / 2 });
  const upright = (at: number, thick: number): Wall => ({ depth: 0, width: at, halfDepth: depth / 2, halfWidth: thick / 2 });
  switch (shape.shape) {
    case 'rectangular tube':
    case 'double hollow': {
      const wall = shape.wallMm;
      const tube = [
        across((depth - wall) / 2, wall),
        across((wall - depth) / 2, wall),
        upright((width - wall) / 2, wall),
        upright((wall - width) / 2, wall),
      ];
      return shape.shape === 'double hollow' ? [...tube, across(0, shape.webMm)] : tube;
    }
    case 'I-beam':
      return [
        across((depth - shape.flangeMm) / 2, shape.flangeMm),
        across((shape.flangeMm - depth) / 2, shape.flangeMm),
        upright(0, shape.webMm),
      ];
    case 'channel':
      return [
        across((depth - shape.flangeMm) / 2, shape.flangeMm),
        across((shape.flangeMm - depth) / 2, shape.flangeMm),
        upright((shape.webMm - width) / 2, shape.webMm),
      ];
    case 'angle':
      return [across((shape.wallMm - depth) / 2, shape.wallMm), upright((shape.wallMm - width) / 2, shape.wallMm)];
    case 'tee':
      return [across((depth - shape.flangeMm) / 2, shape.flangeMm), upright(0, shape.webMm)];
    case 'flat bar':
    case 'custom':
      return [across(0, depth)];
    case 'round bar':
      return [0, 1, 2, 3, 4, 5].map((step) => bar(shape.diameterMm / 2, (step * Math.PI) / 6));
    case 'round tube':
      return arc(shape.diameterMm / 2, shape.wallMm, 0, 0, 0, 2 * Math.PI);
    case 'corner radius': {
      const sweep = (shape.sweepDeg * Math.PI) / 180;
      return arc(shape.outerRadiusMm, shape.wallMm, -depth / 2, -width / 2, Math.PI / 4 - sweep / 2, sweep);
    }
  }
}

/** One of six rectangles, each turned by 30°, that fill a round bar but for slivers. */
const bar = (radius: number, turn: number): Wall => ({
  depth: 0,
  width: 0,
  halfDepth: radius * Math.cos(Math.PI / 12),
  halfWidth: radius * Math.sin(Math.PI / 12),
  turn,
});

/** Flat walls of at most 15° each along an arc about a place; the angle counts from +depth towards +width. */
function arc(radius: number, wall: number, depth: number, width: number, start: number, sweep: number): readonly Wall[] {
  const count = Math.max(1, Math.ceil(sweep / (Math.PI / 12)));
  const step = sweep / count;
  const middle = radius - wall / 2;
  return Array.from({ length: count }, (_, i) => {
    const angle = start + (i + 0.5) * step;
    return {
      depth: depth + middle * Math.cos(angle),
      width: width + middle * Math.sin(angle),
      halfDepth: wall / 2,
      // As long as its outer side, so that neighbours meet without a gap.
      halfWidth: radius * Math.tan(step / 2),
      turn: angle,
    };
  });
}

/** A component's outside as a box along the datum's axes; undefined where its size is not recorded. */
export function componentBox(component: {
  readonly at: Box['center'];
  readonly middle?: Box['center'];
  readonly sizeMm?: Box['center'];
}): Box | undefined {
  if (!component.sizeMm) return undefined;
  const half = scale(component.sizeMm, 0.5);
  const middle = component.middle ?? component.at;
  return boxBetween(add(middle, scale(half, -1)), add(middle, half));
}
