import { type Camera, focalFromEquivalent, projectPoint } from '../../../src/compute/camera/camera.js';
import { memberBox } from '../../../src/compute/solids.js';
import { type Box, boxBetween } from '../../../src/geometry/box.js';
import { add, dot, lerp, scale, subtract, unit, type Vec3 } from '../../../src/geometry/vector.js';
import type { Member, Section } from '../../../src/records/index.js';
import { cameraTowards } from '../../support/cameras.js';

/** What a camera saw: parts and runs near a place, a zone card, a tape. */
export interface View {
  readonly target: Vec3;
  /** Direction in which the camera looks. */
  readonly look: Vec3;
  /** How much of the coach is across the picture, in. */
  readonly across: number;
  readonly depth: number;
  readonly card: readonly string[];
  readonly runs: readonly { readonly colour: string; readonly path: readonly Vec3[]; readonly wide: number }[];
  readonly boxes?: readonly { readonly from: Vec3; readonly to: Vec3; readonly colour: string }[];
  /** 0 to 1: each picture is lit a little differently. */
  readonly light: number;
}

export const WIDE = 900;
export const HIGH = 675;
const MM = 25.4;
const inches = (mm: Vec3): Vec3 => scale(mm, 1 / MM);

type Point = readonly [number, number];

interface Face {
  readonly points: readonly Point[];
  readonly far: number;
  readonly fill: string;
}

/** An SVG of the view: faces painted from the far ones to the near ones. */
export function sceneSvg(view: View, members: readonly Member[], sections: ReadonlyMap<string, Section>): string {
  const camera = cameraOf(view);
  const near = (p: Vec3, reach: number): boolean => {
    const d = subtract(p, camera.target);
    return (
      Math.abs(dot(d, camera.right)) < view.across * 0.75 + reach &&
      Math.abs(dot(d, camera.up)) < view.across * 0.6 + reach &&
      Math.abs(dot(d, camera.look)) < view.depth
    );
  };
  const solids: (readonly [Box, string])[] = [];
  const plates: (readonly Vec3[])[] = [];
  for (const { shape } of members) {
    if (shape.kind === 'plate') {
      const outline = shape.outline.map(inches);
      if (near(outline[0] as Vec3, 12)) plates.push(outline);
      continue;
    }
    const section = sections.get(shape.section)?.dimensions;
    if (section === undefined) continue;
    const middle = nearestOnLine(inches(shape.from), inches(shape.to), camera.target);
    if (!near(middle, 4)) continue;
    // Only what the picture can show: the rest of a long rail would lie behind the camera.
    const [from, to] = [shape.from, shape.to].map((end) => scale(within(inches(end), middle, view.across * 1.1), MM));
    const { center, axes, half } = memberBox({ ...shape, from: from as Vec3, to: to as Vec3 }, section);
    solids.push([{ center: inches(center), axes, half: inches(half) }, '#b9c2c9']);
  }
  for (const box of view.boxes ?? []) solids.push([boxBetween(box.from, box.to), box.colour]);
  const faces: Face[] = solids.flatMap(([box, colour]) => facesOf(box, colour, camera, view.light));
  for (const plate of plates) {
    const points = camera.ring(plate);
    const middle = camera.depth(
      scale(
        plate.reduce((sum, p) => add(sum, p), [0, 0, 0] as Vec3),
        1 / plate.length,
      ),
    );
    if (points.length > 2) faces.push({ points, far: middle, fill: shade('#aab6bd', 0.7 + view.light * 0.3) });
  }
  const lines = view.runs.flatMap((run) =>
    run.path.slice(1).flatMap((to, i) => {
      const from = run.path[i] as Vec3;
      if (!near(nearestOnLine(from, to, camera.target), 2)) return [];
      return camera.stretches(from, to).map(({ points, far }) => ({
        far: far - 2,
        svg: `<path d="M${points.map(([x, y]) => `${f(x)} ${f(y)}`).join('L')}" fill="none" stroke="${run.colour}" stroke-width="${f(Math.max(2, (run.wide * camera.focalPx) / far))}" stroke-linecap="round"/>`,
      }));
    }),
  );
  const painted = [
    ...faces.map((face) => ({
      far: face.far,
      svg: `<path d="M${face.points.map(([x, y]) => `${f(x)} ${f(y)}`).join('L')}Z" fill="${face.fill}" stroke="#4a5258" stroke-width="0.7"/>`,
    })),
    ...lines,
  ]
    .sort((a, b) => b.far - a.far)
    .map((one) => one.svg);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDE}" height="${HIGH}" viewBox="0 0 ${WIDE} ${HIGH}">${wall(view.light)}${painted.join('')}${card(view.card)}${tape(camera.scale)}</svg>`;
}

const f = (n: number): string => n.toFixed(1);

/** Focal length of the made-up telephone, as on 35 mm film, and how much its lens bends straight lines. */
export const EQUIVALENT_MM = 26;
export const LENS_K1 = -0.012;
/** What is nearer than this to the lens is not painted, in. */
const NEAREST_IN = 3;
const PIECES = 8;

/** Where the camera of a view stands, mm in the datum. */
export function lensOf(view: Pick<View, 'target' | 'look' | 'across'>): Camera {
  const size = { widthPx: WIDE, heightPx: HIGH };
  const focalPx = focalFromEquivalent(EQUIVALENT_MM, size);
  const away = (view.across * focalPx) / WIDE;
  const target = scale(view.target, MM);
  const centre = subtract(target, scale(unit(view.look), away * MM));
  return cameraTowards(centre, target, focalPx, size, LENS_K1);
}

function cameraOf(view: View) {
  const lens = lensOf(view);
  const centre = inches(lens.centre);
  const { look, right } = lens;
  const up = scale(lens.down, -1);
  const depth = (p: Vec3): number => dot(subtract(p, centre), look);
  const put = (p: Vec3): Point | undefined => projectPoint(lens, scale(p, MM))?.px;
  /** A ring before the lens, its sides bent as the lens bends them. */
  const ring = (corners: readonly Vec3[]): readonly Point[] => {
    const kept = corners.flatMap((from, i) => {
      const to = corners[(i + 1) % corners.length] as Vec3;
      const [a, b] = [depth(from) - NEAREST_IN, depth(to) - NEAREST_IN];
      const cut = a * b < 0 ? [lerp(from, to, a / (a - b))] : [];
      return a >= 0 ? [from, ...cut] : cut;
    });
    return kept.flatMap((from, i) => {
      const to = kept[(i + 1) % kept.length] as Vec3;
      return Array.from({ length: PIECES }, (_, k) => put(lerp(from, to, k / PIECES))).filter((one) => one !== undefined);
    });
  };
  /** A line in short lengths, each as far away as it is. */
  const stretches = (from: Vec3, to: Vec3): readonly { readonly points: readonly Point[]; readonly far: number }[] => {
    const count = Math.max(1, Math.ceil(Math.hypot(...subtract(to, from)) / 6));
    return Array.from({ length: count }, (_, k) => [lerp(from, to, k / count), lerp(from, to, (k + 1) / count)] as const).flatMap(
      ([a, b]) => {
        const far = (depth(a) + depth(b)) / 2;
        const points = [put(a), put(b)].filter((one) => one !== undefined);
        return far > NEAREST_IN && points.length === 2 ? [{ points, far }] : [];
      },
    );
  };
  return {
    look,
    right,
    up,
    target: view.target,
    centre,
    focalPx: lens.focalPx,
    scale: WIDE / view.across,
    depth,
    ring,
    stretches,
  };
}

function nearestOnLine(from: Vec3, to: Vec3, at: Vec3): Vec3 {
  const along = subtract(to, from);
  const t = Math.min(1, Math.max(0, dot(subtract(at, from), along) / dot(along, along)));
  return add(from, scale(along, t));
}

function within(end: Vec3, middle: Vec3, reach: number): Vec3 {
  const away = subtract(end, middle);
  const length = Math.hypot(...away);
  return length <= reach ? end : add(middle, scale(away, reach / length));
}

function facesOf(box: Box, colour: string, camera: ReturnType<typeof cameraOf>, light: number): readonly Face[] {
  const sun = unit([0.4 - light, -0.5 + light * 0.6, 0.8]);
  return box.axes.flatMap((axis, k) => {
    const side = dot(axis, subtract(camera.centre, box.center)) > 0 ? 1 : -1;
    const normal = scale(axis, side);
    const middle = add(box.center, scale(normal, box.half[k] as number));
    if (dot(normal, subtract(camera.centre, middle)) <= 0) return [];
    const [u, v] = [(k + 1) % 3, (k + 2) % 3];
    const corner = (a: number, b: number): Vec3 =>
      add(
        middle,
        add(scale(box.axes[u] as Vec3, a * (box.half[u] as number)), scale(box.axes[v] as Vec3, b * (box.half[v] as number))),
      );
    const bright = 0.55 + 0.45 * Math.max(0, dot(normal, sun));
    const points = camera.ring([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]);
    return points.length > 2 ? [{ points, far: camera.depth(middle), fill: shade(colour, bright) }] : [];
  });
}

function shade(colour: string, bright: number): string {
  const parts = [1, 3, 5].map((i) => Math.round(Number.parseInt(colour.slice(i, i + 2), 16) * Math.min(1, bright)));
  return `rgb(${parts.join(',')})`;
}

const wall = (light: number): string =>
  `<defs><linearGradient id="w" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="${shade('#8b8577', 0.75 + light * 0.3)}"/><stop offset="1" stop-color="#4e4b45"/></linearGradient></defs><rect width="100%" height="100%" fill="url(#w)"/>`;

/** The card that lies in every picture: zone, shell, day. */
function card(lines: readonly string[]): string {
  const height = 24 + lines.length * 26;
  const text = lines
    .map(
      (line, i) =>
        `<text x="44" y="${62 + i * 26}" font-family="DejaVu Sans, sans-serif" font-size="${i === 0 ? 24 : 19}" font-weight="${i === 0 ? 700 : 400}" fill="#1b1b1b">${line}</text>`,
    )
    .join('');
  const longest = Math.max(...lines.map((line, i) => line.length * (i === 0 ? 15.5 : 11.6)));
  return `<g transform="rotate(-1.5 40 40)"><rect x="28" y="30" width="${longest + 40}" height="${height}" fill="#f4f1e6" stroke="#2b2b2b" stroke-width="2"/>${text}</g>`;
}

/** A tape along the bottom, in inches of the picture’s own scale. */
function tape(pixels: number): string {
  const step = pixels > 6 ? 1 : 12;
  const ticks: string[] = [];
  for (let n = 0; 20 + n * step * pixels < WIDE - 20; n++) {
    const x = 20 + n * step * pixels;
    const long = n % (step === 1 ? 12 : 4) === 0;
    ticks.push(`<path d="M${f(x)} 640v${long ? 24 : 12}" stroke="#111" stroke-width="${long ? 2.4 : 1}"/>`);
    if (long)
      ticks.push(
        `<text x="${f(x + 3)}" y="634" font-family="DejaVu Sans, sans-serif" font-size="15" fill="#fff">${n * step}</text>`,
      );
  }
  return `<rect x="14" y="640" width="${WIDE - 28}" height="26" fill="#e9c61d" stroke="#3a3206"/>${ticks.join('')}`;
}
