import type { Box } from '../geometry/box.js';
import { add, scale } from '../geometry/vector.js';
import type { Member, SectionShape } from '../records/index.js';
import { sectionWalls } from './index.js';
import { memberBox } from './solids.js';

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
