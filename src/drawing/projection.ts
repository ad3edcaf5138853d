import type { Surface } from '../compute/access/surfaces.js';
import { cross, dot, type Vec3 } from '../geometry/vector.js';
import type { Facing } from '../records/index.js';
import type { Point } from './scene.js';

/** One way of looking at the vehicle. All three vectors are of unit length and at right angles. */
export interface View {
  readonly name: string;
  /** What lies to the right on the sheet. */
  readonly right: Vec3;
  /** What lies up on the sheet. */
  readonly up: Vec3;
  /** From the vehicle to the viewer. */
  readonly toViewer: Vec3;
  /** Where the vehicle's front is on the sheet. */
  readonly front: 'left' | 'right' | 'none';
}

const view = (name: string, right: Vec3, up: Vec3, front: View['front']): View => ({
  name,
  right,
  up,
  toViewer: cross(right, up),
  front,
});

/** The datum is x rearward, y right, z up: see {@link View} for what each name stands for. */
export const VIEWS = {
  /** Looks down; front to the left, right (kerb) side up. */
  plan: view('plan', [1, 0, 0], [0, 1, 0], 'left'),
  /** Looks up from below; front to the left, left side up. */
  underside: view('underside', [1, 0, 0], [0, -1, 0], 'left'),
  left: view('left side', [1, 0, 0], [0, 0, 1], 'left'),
  right: view('right side', [-1, 0, 0], [0, 0, 1], 'right'),
  /** Looks rearward: the vehicle's right side is at the viewer's left. */
  front: view('front', [0, -1, 0], [0, 0, 1], 'none'),
  rear: view('rear', [0, 1, 0], [0, 0, 1], 'none'),
  /** A ceiling as in a mirror on the floor (ISO 5456-2, mirrored representation): lies as the floor plan does, seen from below. */
  ceiling: { ...view('ceiling', [1, 0, 0], [0, 1, 0], 'left'), toViewer: [0, 0, -1] },
  /** Isometric, ISO 5456-3: seen from the front, left and above. */
  pictorial: pictorial(),
} as const satisfies Record<string, View>;

function pictorial(): View {
  const s2 = Math.SQRT1_2;
  const s6 = 1 / Math.sqrt(6);
  return view('pictorial', [s2, -s2, 0], [s6, s6, 2 * s6], 'left');
}

/** The view that looks straight at an outside face. */
export const VIEW_OF_FACE: Readonly<Record<Facing, View>> = {
  up: VIEWS.plan,
  down: VIEWS.underside,
  left: VIEWS.left,
  right: VIEWS.right,
  front: VIEWS.front,
  rear: VIEWS.rear,
};

/** The view that looks straight at a surface from where a person would: a ceiling is mirrored, so that it lies as the floor plan. */
export const viewOfSurface = ({ side, faces }: Surface): View => (side === 'ceiling' ? VIEWS.ceiling : VIEW_OF_FACE[faces]);

/** Place in the view's own plane, mm of the vehicle; the second coordinate points up. */
export const project = (view: View, at: Vec3): Point => [dot(view.right, at), dot(view.up, at)];

/** Larger is nearer to the viewer, mm. */
export const nearness = (view: View, at: Vec3): number => dot(view.toViewer, at);
