import { type Bounds, boundsOf } from '../../geometry/box.js';
import { contact, spans } from '../../geometry/contact.js';
import { pairsNear } from '../../geometry/pairs.js';
import { add, cross, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { zoneMap } from '../access/zones.js';
import { bodyDistance, memberBody, memberBounds, memberMetal, panelBody, pointBody, type SolidBody } from './solids-of.js';
import type { ApartPair, Joint, JointCoverage, JointFigures, OffJoint } from './types.js';

/** Members whose outer surfaces come within this are a joint: fit-up gap and a tape's reading. Project default. */
export const JOINT_TOLERANCE_MM = 3;

/** Bounds are taken this much wider than they are computed: what is a joint is told from the surfaces. */
const ROUNDING_MM = 1e-6;

/** A weld's recorded place may lie this far off its joint: the middle of a long seam, read with a tape. Project default. */
export const OFF_JOINT_MM = 50;

/**
 * Joints found from geometry, beside the welds and clamps on record: members whose metal comes within 3 mm. A line member is the walls of
 * its section, a plate the prism of its outline. Skins and panels are no members. Where a joint is, is told from the section's outside.
 */
export function joints(model: Model): JointFigures {
  const { shell } = model;
  const solid = shell.members.flatMap((member) => {
    const bounds = memberBounds(member, model);
    return bounds ? [{ member, bounds }] : [];
  });
  const bodyOf = bodiesById(model);
  const metalOf = metalById(model, bodyOf);
  const recorded = recordedPairs(model);
  const found: Joint[] = [];
  const idOf = (i: number): string => (solid[i] as (typeof solid)[number]).member.id;
  for (const [i, j] of pairsNear(
    solid.map(({ bounds }) => bounds),
    JOINT_TOLERANCE_MM + ROUNDING_MM,
  )) {
    const [a, b] = [bodyOf(idOf(i)), bodyOf(idOf(j))];
    const joint = a && b && jointOf(a, b, recorded, metalOf);
    if (joint) found.push(joint);
  }
  const missing = found.filter((joint) => !isRecorded(joint)).map(({ members }) => members);
  const apart = apartPairs(model, metalOf);
  return {
    joints: found,
    found: found.length,
    recorded: found.length - missing.length,
    missing,
    withoutJoint: [...new Set(apart.map(({ weld }) => weld))],
    apart,
    offJoint: offJoints(model, bodyOf),
    ...coverage(found, model),
    assumptions: ASSUMPTIONS,
  };
}

/** A joint this near to a cavity counts as its: it stands in the cavity's wall. Project default. */
const BESIDE_ZONE_MM = 75;

const isRecorded = ({ welds, clamps }: Joint): boolean => welds.length > 0 || (clamps?.length ?? 0) > 0;

/** Joints found and recorded, by stage and by zone. */
function coverage(found: readonly Joint[], { shell, library }: Model): Pick<JointFigures, 'byStage' | 'byZone'> {
  const order = new Map(library.stages.map(({ id }, i) => [id, i]));
  const stages = new Map(shell.members.map(({ id, stage }) => [id, stage ?? '']));
  const later = (a: string, b: string): string => ((order.get(a) ?? -1) >= (order.get(b) ?? -1) ? a : b);
  const zones = zoneMap(shell.zones);
  const byStage: Record<string, JointCoverage> = {};
  const byZone: Record<string, JointCoverage> = {};
  const count = (sums: Record<string, JointCoverage>, key: string, joint: Joint): void => {
    const so = Object.hasOwn(sums, key) ? (sums[key] as JointCoverage) : { found: 0, recorded: 0 };
    sums[key] = { found: so.found + 1, recorded: so.recorded + (isRecorded(joint) ? 1 : 0) };
  };
  for (const joint of found) {
    const [a, b] = joint.members.map((id) => stages.get(id) ?? '') as [string, string];
    count(byStage, later(a, b), joint);
    const holding = zones.holding(joint.at, BESIDE_ZONE_MM);
    for (const { id } of holding) count(byZone, id, joint);
    if (holding.length === 0) count(byZone, '', joint);
  }
  return { byStage, byZone };
}

const ASSUMPTIONS = [
  `Members whose metal comes within ${JOINT_TOLERANCE_MM} mm of each other are taken as a joint (project default).`,
  'A member on a line is taken as the flat walls of its section, a plate as its outline and thickness; rounded corners count as square, a recorded bend as chords within half a millimetre of its arc; skins and panels are not members.',
];

interface Recorded {
  readonly welds: readonly string[];
  readonly clamps: readonly string[];
}

const key = (a: string, b: string): string => JSON.stringify(a < b ? [a, b] : [b, a]);

function recordedPairs({ shell }: Model): ReadonlyMap<string, Recorded> {
  const pairs = new Map<string, { welds: string[]; clamps: string[] }>();
  const at = (a: string, b: string) => {
    const pair = pairs.get(key(a, b)) ?? { welds: [], clamps: [] };
    pairs.set(key(a, b), pair);
    return pair;
  };
  for (const weld of shell.welds) for (const [a, b] of weld.joins) at(a, b).welds.push(weld.id);
  for (const clamp of shell.clamps) {
    for (const [i, a] of clamp.joins.entries()) for (const b of clamp.joins.slice(i + 1)) at(a, b).clamps.push(clamp.id);
  }
  return pairs;
}

function jointOf(a: SolidBody, b: SolidBody, recorded: ReadonlyMap<string, Recorded>, metalOf: BodyOf): Joint | undefined {
  // By their outsides first: most pairs are told apart by that, and the walls need not be made.
  if (bodyDistance(a, b, JOINT_TOLERANCE_MM) === undefined) return undefined;
  const [one, other] = [metalOf(a.id) ?? a, metalOf(b.id) ?? b];
  const gapMm = bodyDistance(one, other, JOINT_TOLERANCE_MM);
  if (gapMm === undefined) return undefined;
  const { welds, clamps } = recorded.get(key(a.id, b.id)) ?? { welds: [], clamps: [] };
  return { members: [a.id, b.id], ...placeOf(a, b, gapMm), gapMm, welds: [...new Set(welds)], clamps };
}

/** Middle of the contact, and the way around it: twice the sum of its two longer sides. */
function placeOf(
  a: SolidBody,
  b: SolidBody,
  gapMm: number,
): { readonly at: Vec3; readonly seamMm: number; readonly bounds: Bounds } {
  // Each side grown by half the gap and a hair meets the other.
  const reach = gapMm / 2 + 0.01;
  const contacts = a.parts.flatMap((one) => b.parts.flatMap((other) => contact(one, other, reach) ?? []));
  const area = contacts.reduce((sum, one) => sum + one.area, 0);
  if (area === 0) {
    const at = middleOf(a, b);
    return { at, seamMm: 0, bounds: { min: at, max: at } };
  }
  const at = contacts.reduce<Vec3>((sum, one) => add(sum, scale(one.middle, one.area / area)), [0, 0, 0]);
  const corners = contacts.flatMap((one) => one.corners);
  const [first = 0, second = 0] = spans(corners, axesOf(a));
  return { at, seamMm: 2 * (first + second), bounds: boundsOf(corners) };
}

/** Middle of what the two bounds share, for a contact in a single point. */
function middleOf(a: SolidBody, b: SolidBody): Vec3 {
  const low = a.bounds.min.map((value, k) => Math.max(value, b.bounds.min[k] as number));
  const high = a.bounds.max.map((value, k) => Math.min(value, b.bounds.max[k] as number));
  return [0, 1, 2].map((k) => ((low[k] as number) + (high[k] as number)) / 2) as unknown as Vec3;
}

/** Three directions at right angles of a body's first solid. */
function axesOf({ parts }: SolidBody): readonly Vec3[] {
  const solid = parts[0];
  if (!solid) return [];
  const normal = (solid.faces[0] as { readonly normal: Vec3 }).normal;
  const [from, to] = solid.edges[0] as readonly [Vec3, Vec3];
  const along = unit(subtract(to, from));
  return [normal, along, cross(normal, along)];
}

type BodyOf = (id: string) => SolidBody | undefined;

/** The body of a member, or of a panel, made when first asked for. */
function bodiesById(model: Model): BodyOf {
  const bodies = new Map<string, SolidBody | undefined>();
  const members = new Map(model.shell.members.map((member) => [member.id, member]));
  const panels = new Map(model.shell.panels.map((panel) => [panel.id, panel]));
  return (id) => {
    if (bodies.has(id)) return bodies.get(id);
    const [member, panel] = [members.get(id), panels.get(id)];
    const made = (member && memberBody(member, model)) ?? (panel && panelBody(panel));
    bodies.set(id, made);
    return made;
  };
}

/** The metal of a member, made when first asked for; of a panel its body. */
function metalById(model: Model, bodyOf: BodyOf): BodyOf {
  const made = new Map<string, SolidBody | undefined>();
  const members = new Map(model.shell.members.map((member) => [member.id, member]));
  return (id) => {
    if (made.has(id)) return made.get(id);
    const member = members.get(id);
    const metal = member ? memberMetal(member, model) : bodyOf(id);
    made.set(id, metal);
    return metal;
  };
}

/** Pairs that a weld joins on paper but not in space. A weld onto something without a shape is not judged. */
function apartPairs({ shell }: Model, bodyOf: BodyOf): readonly ApartPair[] {
  return shell.welds.flatMap((weld) =>
    weld.joins.flatMap(([first, second]) => {
      const [a, b] = [bodyOf(first), bodyOf(second)];
      if (!a || !b || bodyDistance(a, b, JOINT_TOLERANCE_MM) !== undefined) return [];
      return [{ weld: weld.id, members: [first, second] as const, gapMm: bodyDistance(a, b) ?? 0 }];
    }),
  );
}

/** Welds recorded at a place that is further than {@link OFF_JOINT_MM} from each pair that they join. */
function offJoints({ shell }: Model, bodyOf: BodyOf): readonly OffJoint[] {
  return shell.welds.flatMap(({ id, at, joins }) => {
    if (!at) return [];
    const place = pointBody(id, at);
    const distances = joins.flatMap(([first, second]): readonly OffJoint[] => {
      const [a, b] = [bodyOf(first), bodyOf(second)];
      if (!a || !b) return [];
      const distanceMm = Math.max(bodyDistance(place, a) ?? 0, bodyDistance(place, b) ?? 0);
      return [{ weld: id, members: [first, second], distanceMm }];
    });
    const nearest = distances.reduce<OffJoint | undefined>(
      (best, one) => (best && best.distanceMm <= one.distanceMm ? best : one),
      undefined,
    );
    return nearest && nearest.distanceMm > OFF_JOINT_MM ? [nearest] : [];
  });
}
