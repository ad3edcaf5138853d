import type { SectionShape } from '../model/library.js';
import type { Point } from './scene.js';

/** Rings of a cross-section in mm, width to the right and depth up, about the middle of its bounding rectangle. */

const STEPS = 8;

function arc(center: Point, radius: number, fromDeg: number, toDeg: number, steps = STEPS): readonly Point[] {
  return Array.from({ length: steps + 1 }, (_, k): Point => {
    const angle = ((fromDeg + ((toDeg - fromDeg) * k) / steps) * Math.PI) / 180;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
}

const full = (radius: number): readonly Point[] => arc([0, 0], radius, 0, 360, 48).slice(0, -1);

/** A rectangle between corners, rounded. */
function rounded(x0: number, y0: number, x1: number, y1: number, radius: number): readonly Point[] {
  const r = Math.max(0, Math.min(radius, (x1 - x0) / 2, (y1 - y0) / 2));
  if (r === 0) {
    return [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
  }
  return [
    ...arc([x1 - r, y1 - r], r, 0, 90),
    ...arc([x0 + r, y1 - r], r, 90, 180),
    ...arc([x0 + r, y0 + r], r, 180, 270),
    ...arc([x1 - r, y0 + r], r, 270, 360),
  ];
}

/** A concave or convex corner at `corner` between unit directions to its neighbours, rounded by `radius`. */
function filleted(corners: readonly (readonly [x: number, y: number, radius: number])[]): readonly Point[] {
  return corners.flatMap(([x, y, radius], index): readonly Point[] => {
    if (radius <= 0) return [[x, y]];
    const [px, py] = corners[(index + corners.length - 1) % corners.length] as readonly [number, number, number];
    const [nx, ny] = corners[(index + 1) % corners.length] as readonly [number, number, number];
    const to = (qx: number, qy: number): Point => {
      const length = Math.hypot(qx - x, qy - y) || 1;
      return [(qx - x) / length, (qy - y) / length];
    };
    const [a, b] = [to(px, py), to(nx, ny)];
    // All corners of rolled shapes are right angles: the tangent length is the radius.
    const center: Point = [x + (a[0] + b[0]) * radius, y + (a[1] + b[1]) * radius];
    const from = Math.atan2(-b[1], -b[0]);
    const end = Math.atan2(-a[1], -a[0]);
    let sweep = end - from;
    if (sweep > Math.PI) sweep -= 2 * Math.PI;
    if (sweep < -Math.PI) sweep += 2 * Math.PI;
    const degrees = 180 / Math.PI;
    return arc(center, radius, from * degrees, (from + sweep) * degrees);
  });
}

export function sectionRings(shape: SectionShape): readonly (readonly Point[])[] {
  switch (shape.shape) {
    case 'rectangular tube':
    case 'double hollow':
      return hollow(shape);
    case 'I-beam':
      return [iBeam(shape.depthMm / 2, shape.widthMm / 2, shape.webMm / 2, shape.flangeMm, shape.filletMm)];
    case 'channel':
      return [channel(shape)];
    case 'tee':
      return [tee(shape.depthMm / 2, shape.widthMm / 2, shape.webMm / 2, shape.flangeMm, shape.filletMm)];
    case 'angle':
      return [angle(shape.depthMm / 2, shape.widthMm / 2, shape.wallMm, shape.filletMm, shape.toeRadiusMm)];
    case 'round bar':
      return [full(shape.diameterMm / 2)];
    case 'round tube':
      return [full(shape.diameterMm / 2), full(shape.diameterMm / 2 - shape.wallMm)];
    case 'corner radius': {
      const outer = arc([0, 0], shape.outerRadiusMm, 0, shape.sweepDeg, 24);
      const inner = arc([0, 0], shape.outerRadiusMm - shape.wallMm, shape.sweepDeg, 0, 24);
      return [[...outer, ...inner]];
    }
    default:
      return [rounded(-shape.widthMm / 2, -shape.depthMm / 2, shape.widthMm / 2, shape.depthMm / 2, 0)];
  }
}

function hollow(shape: Extract<SectionShape, { shape: 'rectangular tube' | 'double hollow' }>): readonly (readonly Point[])[] {
  const [h, b, t] = [shape.depthMm / 2, shape.widthMm / 2, shape.wallMm];
  const inner = Math.max(0, shape.cornerRadiusMm - t);
  const outside = rounded(-b, -h, b, h, shape.cornerRadiusMm);
  if (shape.shape === 'rectangular tube') return [outside, rounded(-b + t, -h + t, b - t, h - t, inner)];
  // The web lies across the depth and parts it into two equal hollows.
  const web = shape.webMm / 2;
  return [outside, rounded(-b + t, web, b - t, h - t, 0), rounded(-b + t, -h + t, b - t, -web, 0)];
}

function iBeam(h: number, b: number, w: number, f: number, r: number): readonly Point[] {
  return filleted([
    [-b, -h, 0],
    [b, -h, 0],
    [b, -h + f, 0],
    [w, -h + f, r],
    [w, h - f, r],
    [b, h - f, 0],
    [b, h, 0],
    [-b, h, 0],
    [-b, h - f, 0],
    [-w, h - f, r],
    [-w, -h + f, r],
    [-b, -h + f, 0],
  ]);
}

function channel(shape: Extract<SectionShape, { shape: 'channel' }>): readonly Point[] {
  const [h, b, f, r] = [shape.depthMm / 2, shape.widthMm / 2, shape.flangeMm, shape.filletMm];
  const back = -b + shape.webMm;
  return filleted([
    [-b, -h, 0],
    [b, -h, 0],
    [b, -h + f, 0],
    [back, -h + f, r],
    [back, h - f, r],
    [b, h - f, 0],
    [b, h, 0],
    [-b, h, 0],
  ]);
}

function tee(h: number, b: number, w: number, f: number, r: number): readonly Point[] {
  return filleted([
    [-w, -h, 0],
    [w, -h, 0],
    [w, h - f, r],
    [b, h - f, 0],
    [b, h, 0],
    [-b, h, 0],
    [-b, h - f, 0],
    [-w, h - f, r],
  ]);
}

function angle(h: number, b: number, t: number, fillet: number, toe: number): readonly Point[] {
  return filleted([
    [-b, -h, 0],
    [b, -h, 0],
    [b, -h + t, toe],
    [-b + t, -h + t, fillet],
    [-b + t, h, toe],
    [-b, h, 0],
  ]);
}

/** Name and size of each wall thickness and radius, for the note. */
export function wallsOf(shape: SectionShape): readonly (readonly [string, number])[] {
  switch (shape.shape) {
    case 'rectangular tube':
      return [['wall', shape.wallMm], ...radius('corner radius', shape.cornerRadiusMm)];
    case 'double hollow':
      return [['wall', shape.wallMm], ['web', shape.webMm], ...radius('corner radius', shape.cornerRadiusMm)];
    case 'I-beam':
    case 'channel':
    case 'tee':
      return [['web', shape.webMm], ['flange', shape.flangeMm], ...radius('fillet', shape.filletMm)];
    case 'angle':
      return [['wall', shape.wallMm], ...radius('fillet', shape.filletMm), ...radius('toe radius', shape.toeRadiusMm)];
    case 'round tube':
      return [['wall', shape.wallMm]];
    case 'corner radius':
      return [
        ['outer radius', shape.outerRadiusMm],
        ['wall', shape.wallMm],
      ];
    default:
      return [];
  }
}

const radius = (name: string, mm: number): readonly (readonly [string, number])[] => (mm > 0 ? [[name, mm]] : []);
