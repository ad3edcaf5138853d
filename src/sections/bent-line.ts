import { add, cross, distance, dot, lerp, scale, subtract, unit, type Vec3 } from '../geometry/vector.js';
import type { LineMember } from '../records/index.js';
import { type MemberFrame, memberFrame } from './frame.js';

/** The middle line of a member on a line: straight lengths and arcs, end to end. Lengths in mm, angles in radians. */
export type LineStretch =
  | { readonly is: 'straight'; readonly from: Vec3; readonly to: Vec3; readonly frame: MemberFrame }
  | {
      readonly is: 'arc';
      readonly centre: Vec3;
      readonly radiusMm: number;
      /** Unit axis of the bend: the line turns about it, right-handed. */
      readonly axis: Vec3;
      readonly angle: number;
      readonly from: Vec3;
      /** The section’s directions where the arc begins. */
      readonly frame: MemberFrame;
    };

/** A bend that does not fit between its neighbours. */
export interface BendFault {
  /** Index in `bends`. */
  readonly bend: number;
  /** The largest radius of the middle line that fits there while the others stay as they are; 0 where the line turns straight back. */
  readonly mostMm: number;
}

/** A tangent point may lie this far beyond the end of its straight length: a rounded dimension, mm. */
const FIT_MM = 1;
/** Turns smaller than this are none. */
const STRAIGHT = 1e-6;

const STRETCHES = new WeakMap<LineMember, readonly LineStretch[]>();

/**
 * The middle line, bends as true arcs. The section turns with it: at each bend its directions are turned about the bend’s axis. Where a
 * bend does not fit, it is taken as sharp as it has to be; `bendFaults` says so.
 */
export function stretchesOf(line: LineMember): readonly LineStretch[] {
  const known = STRETCHES.get(line);
  if (known) return known;
  const made = makeStretches(line);
  STRETCHES.set(line, made);
  return made;
}

const cornersOf = ({ from, to, bends = [] }: LineMember): readonly Vec3[] => [from, ...bends.map(({ at }) => at), to];

interface Turn {
  readonly angle: number;
  /** From the corner to where the arc begins and ends, mm. */
  readonly tangentMm: number;
  readonly radiusMm: number;
}

function turnsOf(line: LineMember): readonly Turn[] {
  const corners = cornersOf(line);
  return (line.bends ?? []).map(({ radiusMm }, i) => {
    const [a, b, c] = corners.slice(i, i + 3) as [Vec3, Vec3, Vec3];
    const cos = Math.min(1, Math.max(-1, dot(unit(subtract(b, a)), unit(subtract(c, b)))));
    const angle = Math.acos(cos);
    if (angle < STRAIGHT) return { angle: 0, tangentMm: 0, radiusMm };
    return { angle, radiusMm, tangentMm: radiusMm * Math.tan(angle / 2) };
  });
}

export function bendFaults(line: LineMember): readonly BendFault[] {
  const corners = cornersOf(line);
  const turns = turnsOf(line);
  return turns.flatMap(({ angle, tangentMm }, i): readonly BendFault[] => {
    if (angle === 0) return [];
    const room = [i, i + 1].map((leg) => {
      const other = turns[leg === i ? i - 1 : i + 1]?.tangentMm ?? 0;
      return distance(corners[leg] as Vec3, corners[leg + 1] as Vec3) - other;
    });
    const mostMm = Math.max(0, Math.min(...room)) / Math.tan(angle / 2);
    return Math.PI - angle < STRAIGHT || tangentMm > Math.min(...room) + FIT_MM
      ? [{ bend: i, mostMm: Math.PI - angle < STRAIGHT ? 0 : mostMm }]
      : [];
  });
}

/** Tangents cut down to what each straight length has for them. */
function fittedTangents(line: LineMember): readonly number[] {
  const corners = cornersOf(line);
  const turns = turnsOf(line);
  const wanted = turns.map(({ tangentMm }) => tangentMm);
  return wanted.map((tangent, i) => {
    const shares = [i, i + 1].map((leg) => {
      const length = distance(corners[leg] as Vec3, corners[leg + 1] as Vec3);
      const both = tangent + (wanted[leg === i ? i - 1 : i + 1] ?? 0);
      return both <= length || both === 0 ? tangent : (length * tangent) / both;
    });
    return Math.min(tangent, ...shares);
  });
}

function makeStretches(line: LineMember): readonly LineStretch[] {
  const corners = cornersOf(line);
  if (corners.length === 2) return [{ is: 'straight', from: line.from, to: line.to, frame: memberFrame(line) }];
  const turns = turnsOf(line);
  const tangents = fittedTangents(line);
  const found: LineStretch[] = [];
  let frame = memberFrame({ from: line.from, to: corners[1] as Vec3, rollDeg: line.rollDeg });
  let at = line.from;
  const goTo = (to: Vec3): void => {
    const lengthMm = distance(at, to);
    if (lengthMm > STRAIGHT) found.push({ is: 'straight', from: at, to, frame: { ...frame, lengthMm } });
    at = to;
  };
  turns.forEach(({ angle }, i) => {
    const corner = corners[i + 1] as Vec3;
    const out = unit(subtract(corners[i + 2] as Vec3, corner));
    const tangentMm = tangents[i] as number;
    goTo(subtract(corner, scale(frame.along, tangentMm)));
    if (angle === 0 || Math.PI - angle < STRAIGHT) return;
    const axis = unit(cross(frame.along, out));
    const radiusMm = tangentMm / Math.tan(angle / 2);
    const inward = cross(axis, frame.along);
    if (radiusMm > STRAIGHT)
      found.push({ is: 'arc', centre: add(at, scale(inward, radiusMm)), radiusMm, axis, angle, from: at, frame });
    frame = turned(frame, axis, angle);
    at = add(corner, scale(out, tangentMm));
  });
  goTo(line.to);
  return found;
}

/** A vector turned about a unit axis, right-handed (Rodrigues). */
function turnedAbout(v: Vec3, axis: Vec3, angle: number): Vec3 {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return add(add(scale(v, cos), scale(cross(axis, v), sin)), scale(axis, dot(axis, v) * (1 - cos)));
}

const turned = ({ along, depth, width, lengthMm }: MemberFrame, axis: Vec3, angle: number): MemberFrame => ({
  along: turnedAbout(along, axis, angle),
  depth: turnedAbout(depth, axis, angle),
  width: turnedAbout(width, axis, angle),
  lengthMm,
});

const stretchLengthMm = (one: LineStretch): number =>
  one.is === 'straight' ? distance(one.from, one.to) : one.radiusMm * one.angle;

/** Length along the middle line, mm: what a bender cuts, since the middle neither stretches nor shrinks. */
export const developedLengthMm = (line: LineMember): number =>
  line.bends ? stretchesOf(line).reduce((sum, one) => sum + stretchLengthMm(one), 0) : distance(line.from, line.to);

/** A place on an arc, and the section’s directions there. */
function onArc(arc: Extract<LineStretch, { is: 'arc' }>, angle: number): { readonly at: Vec3; readonly frame: MemberFrame } {
  return {
    at: add(arc.centre, turnedAbout(subtract(arc.from, arc.centre), arc.axis, angle)),
    frame: turned(arc.frame, arc.axis, angle),
  };
}

/** Middle of the line’s metal: the middle of its stretches, each moved aside by the section’s own centroid (mm towards depth, width). */
export function lineCentroid(line: LineMember, asideMm: readonly [number, number]): Vec3 {
  const whole = developedLengthMm(line);
  const middles = stretchesOf(line).map((one) => ({ share: stretchLengthMm(one) / whole, at: middleOf(one, asideMm) }));
  if (!(whole > 0)) return line.from;
  return middles.reduce<Vec3>((sum, { share, at }) => add(sum, scale(at, share)), [0, 0, 0]);
}

function middleOf(one: LineStretch, [depthMm, widthMm]: readonly [number, number]): Vec3 {
  const aside = add(scale(one.frame.depth, depthMm), scale(one.frame.width, widthMm));
  if (one.is === 'straight') return add(lerp(one.from, one.to, 0.5), aside);
  // The centroid of a circular arc lies R sin(a)/a from its centre, a half of its angle (Machinery’s Handbook, centers of gravity).
  const out = unit(subtract(one.from, one.centre));
  const half = one.angle / 2;
  const radius = one.radiusMm + dot(aside, out);
  const along = scale(one.axis, dot(aside, one.axis));
  return add(add(one.centre, along), scale(turnedAbout(out, one.axis, half), (radius * Math.sin(half)) / half));
}

/** A place on the middle line, and the section’s directions there. */
export interface LinePoint {
  readonly at: Vec3;
  readonly frame: MemberFrame;
}

/** The place a share of the way (0–1) along the middle line. */
export function stationAt(line: LineMember, share: number): LinePoint {
  const all = stretchesOf(line);
  let left = share * developedLengthMm(line);
  for (const one of all) {
    const length = stretchLengthMm(one);
    if (left <= length || one === all.at(-1)) {
      if (one.is === 'arc') return onArc(one, Math.min(1, left / length) * one.angle);
      return { at: length === 0 ? one.from : lerp(one.from, one.to, Math.min(1, left / length)), frame: one.frame };
    }
    left -= length;
  }
  return { at: line.from, frame: memberFrame(line) };
}

/** A chord leaves its arc by no more than this, mm. */
const CHORD_MM = 0.5;
/** And turns by no more than this at each end. */
const CHORD_ANGLE = Math.PI / 18;

const chordsOf = ({ radiusMm, angle }: Extract<LineStretch, { is: 'arc' }>): number =>
  Math.ceil(angle / Math.min(CHORD_ANGLE, 2 * Math.acos(Math.max(-1, 1 - CHORD_MM / Math.max(radiusMm, CHORD_MM)))));

/** Stations so close that straight pieces between them stay within half a millimetre of the line, ends included. */
export function stationsOf(line: LineMember): readonly LinePoint[] {
  const found: LinePoint[] = [];
  for (const one of stretchesOf(line)) {
    if (one.is === 'straight') {
      found.push({ at: one.from, frame: one.frame }, { at: one.to, frame: one.frame });
      continue;
    }
    const count = chordsOf(one);
    for (let k = 0; k <= count; k++) found.push(onArc(one, (k / count) * one.angle));
  }
  // Where a stretch ends the next begins.
  const parted = found.filter(({ at }, i) => i === 0 || distance(at, (found[i - 1] as LinePoint).at) > STRAIGHT);
  return parted.length > 1 ? parted : found;
}

/** The middle line as a polyline. */
export const linePath = (line: LineMember): readonly Vec3[] =>
  line.bends ? stationsOf(line).map(({ at }) => at) : [line.from, line.to];

/** A straight piece of the line: of a bend, a chord, and by how much of its own half size it is longer so that the outer walls meet. */
export interface Piece {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly frame: MemberFrame;
  readonly mitre: number;
}

export function piecesOf(line: LineMember): readonly Piece[] {
  return stretchesOf(line).flatMap((one): readonly Piece[] => {
    if (one.is === 'straight') return [{ from: one.from, to: one.to, frame: one.frame, mitre: 0 }];
    const count = chordsOf(one);
    const step = one.angle / count;
    return Array.from({ length: count }, (_, k): Piece => {
      const [from, to] = [onArc(one, k * step), onArc(one, (k + 1) * step)];
      const frame = { ...onArc(one, (k + 0.5) * step).frame, lengthMm: distance(from.at, to.at) };
      return { from: from.at, to: to.at, frame, mitre: Math.tan(step / 2) };
    });
  });
}
