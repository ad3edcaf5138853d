import type { Box } from '../geometry/box.js';
import { add, scale } from '../geometry/vector.js';
import type { Member, SectionShape } from '../records/index.js';
import { sectionWalls } from './index.js';
import { memberBoxes } from './solids.js';

/**
 * A line member as its walls of metal, so that a hand or a wire may pass through the hollow of a tube and between flanges.
 * How unsymmetrical sections lie follows the take-off's sections. Rounded corners and fillets are left square; round tubes
 * and corner radii are made of flat walls, and so are bends, a chord after the other. A custom section is a full box: its form is not known.
 */
export function lineWalls(member: Member, shape: SectionShape): readonly Box[] {
  const { shape: line } = member;
  if (line.kind !== 'line') return [];
  const walls = sectionWalls(shape).map((wall) => ({ ...wall, cos: Math.cos(wall.turn ?? 0), sin: Math.sin(wall.turn ?? 0) }));
  return memberBoxes(line, shape).flatMap(({ center, axes: [along, depthAxis, widthAxis], half }) =>
    walls.map(
      ({ depth, width, halfDepth, halfWidth, cos, sin }): Box => ({
        center: add(center, add(scale(depthAxis, depth), scale(widthAxis, width))),
        axes: [along, add(scale(depthAxis, cos), scale(widthAxis, sin)), add(scale(widthAxis, cos), scale(depthAxis, -sin))],
        half: [half[0], halfDepth, halfWidth],
      }),
    ),
  );
}
