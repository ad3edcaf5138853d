import { memberBox } from '../../compute/solids.js';
import type { Box } from '../../geometry/box.js';
import { add, dot, scale, subtract } from '../../geometry/vector.js';
import type { Library, Member } from '../../records/index.js';
import { hiddenLines } from '../hidden-lines.js';
import { line, type Mark, type Point, rectArea } from '../scene.js';
import type { Port } from '../sheet.js';
import type { Layer, PenName } from '../styles.js';
import { farthestFirst, type Silhouette, silhouette } from '../visibility.js';

const flatRing = (solid: Silhouette, port: Port): readonly Point[] => solid.ring.map(port.placeFlat);

function silhouettes(members: readonly Member[], library: Library, port: Port): readonly Silhouette[] {
  const solids = members.flatMap((member) => silhouette(member, library, port.view) ?? []);
  return farthestFirst(solids, port.view);
}

function outlineMark(solid: Silhouette, port: Port, layer: Layer, pen: PenName, id?: string): Mark {
  const ring = flatRing(solid, port);
  const mark = ring.length < 3 ? line(layer, pen, ring, id) : rectArea(layer, pen, ring, id);
  return solid.member.planned ? { ...mark, planned: true } : mark;
}

/** Members as solids: nearer ones hide farther ones. With `subject`, each is linked to its record; `over` is painted right on each. */
export function memberMarks(
  members: readonly Member[],
  library: Library,
  port: Port,
  subject: boolean,
  over: (member: Member) => readonly Mark[] = () => [],
): readonly Mark[] {
  return silhouettes(members, library, port).flatMap((solid) => [
    outlineMark(
      solid,
      port,
      'structure',
      solid.member.shape.kind === 'plate' ? 'plate' : 'member',
      subject ? solid.member.id : undefined,
    ),
    ...over(solid.member),
  ]);
}

/** As solids with the edges that meet at each one's nearest corner: for pictorials. */
export function memberEdges(members: readonly Member[], library: Library, port: Port): readonly Mark[] {
  return silhouettes(members, library, port).flatMap((solid) => {
    const { shape } = solid.member;
    const outline = outlineMark(solid, port, 'structure', shape.kind === 'plate' ? 'plate' : 'member');
    const section = shape.kind === 'line' ? library.sections.get(shape.section) : undefined;
    // Between the chords of a bend there is no edge.
    if (shape.kind === 'plate' || shape.bends || !section) return [outline];
    return [outline, ...nearEdges(memberBox(shape, section.dimensions), port)];
  });
}

function nearEdges(box: Box, port: Port): readonly Mark[] {
  const steps = box.axes.map((axis, k) => scale(axis, Math.sign(dot(axis, port.view.toViewer)) * (box.half[k] as number)));
  const corner = steps.reduce((at, step) => add(at, step), box.center);
  return steps.map((step) => line('structure', 'edge-thin', [port.place(corner), port.place(subtract(corner, scale(step, 2)))]));
}

/** The same members as a pale background. */
export function memberContext(
  members: readonly Member[],
  library: Library,
  port: Port,
  pen: PenName | ((member: Member) => PenName) = 'context',
): readonly Mark[] {
  const penOf = typeof pen === 'function' ? pen : () => pen;
  return silhouettes(members, library, port).map((solid) => outlineMark(solid, port, 'background', penOf(solid.member)));
}

/** Members behind something: thin dashed outlines over it. */
export function memberHidden(members: readonly Member[], library: Library, port: Port): readonly Mark[] {
  return silhouettes(members, library, port).map((solid) => {
    const ring = flatRing(solid, port);
    return ring.length < 3 ? line('hidden', 'hidden', ring) : { ...rectArea('hidden', 'hidden', ring) };
  });
}

/** Dashed edges of those members that lie behind others of them. */
export const memberHiddenLines = (members: readonly Member[], library: Library, port: Port): readonly Mark[] =>
  hiddenLines(silhouettes(members, library, port), port);
