import { type Bounds, boundsOf } from '../../geometry/box.js';
import { type Convex, convexOfPlate } from '../../geometry/convex.js';
import { add, scale, type Vec3 } from '../../geometry/vector.js';
import { getOwn } from '../../get-own.js';
import type { Model } from '../../model/shell.js';
import { type Axle, type Opening, OUTWARD } from '../../records/index.js';
import { isSlideOut } from '../../records/opening.js';
import { openingCorners } from '../solids.js';

/** The room that a tyre or a slide takes as it moves. */
export interface MovingPart {
  /** Axle or opening. */
  readonly id: string;
  readonly kind: 'tyre' | 'slide';
  /** `tires left of steer`, `slide-out SO-1`. */
  readonly name: string;
  readonly room: Convex;
  /** Circuits, runs and nodes that belong to it. */
  readonly own: readonly string[];
  readonly bounds: Bounds;
}

/** A tyre or slide of which not enough is recorded to know its room. */
export interface UnknownEnvelope {
  readonly id: string;
  readonly kind: MovingPart['kind'];
  /** Keys that want typing, as a shop would. */
  readonly missing: readonly string[];
}

export function movingParts({ shell }: Model): {
  readonly parts: readonly MovingPart[];
  readonly unknown: readonly UnknownEnvelope[];
} {
  const found = [
    ...shell.chassis.axles.map((axle) => tyreRooms(axle, shell.chassis.frame.railTopAboveGroundMm)),
    ...shell.openings.filter(isSlideOut).map(slideRoom),
  ];
  return {
    parts: found.flatMap((one) => ('missing' in one ? [] : one)),
    unknown: found.flatMap((one) => ('missing' in one ? [one] : [])),
  };
}

/**
 * Both sides of an axle. A tyre is a disc of its diameter and width; unladen its middle stands half its diameter over the ground,
 * from there it goes up by bump and down by rebound, turned by up to the steering angle. Its room is the upright oblong with round
 * ends that holds all of that, so it is a little too large and never too small.
 */
function tyreRooms(axle: Axle, railTopMm: number | undefined): readonly MovingPart[] | UnknownEnvelope {
  const { tyres, trackMm, travel, dual, steered, steerDeg } = axle;
  const { diameterMm, widthMm, spacingMm } = tyres ?? {};
  const missing = [
    railTopMm === undefined && '`frame: {rail_top_above_ground: …}`',
    trackMm === undefined && '`track`',
    (diameterMm === undefined || widthMm === undefined) && '`tyres: {diameter: …, width: …}`',
    dual && spacingMm === undefined && '`tyres: {spacing: …}`',
    travel === undefined && '`travel: {bump: …, rebound: …}`',
    steered && steerDeg === undefined && '`steer_angle`',
  ].filter((one) => one !== false);
  if (
    railTopMm === undefined ||
    trackMm === undefined ||
    diameterMm === undefined ||
    widthMm === undefined ||
    !travel ||
    missing.length > 0
  )
    return { id: axle.id, kind: 'tyre', missing };
  const wideMm = dual ? widthMm + (spacingMm ?? 0) : widthMm;
  const turned = turnedDisc(diameterMm / 2, wideMm / 2, steered ? (steerDeg ?? 0) : 0);
  const hubMm = -railTopMm + diameterMm / 2;
  return (['left', 'right'] as const).map((side): MovingPart => {
    const y = ((side === 'left' ? -1 : 1) * trackMm) / 2;
    const ring = uprightOblong([axle.xMm, y, hubMm - travel.reboundMm], [axle.xMm, y, hubMm + travel.bumpMm], turned.radiusMm);
    return part(axle.id, 'tyre', `tires ${side} of axle ${axle.id}`, ring, 2 * turned.halfMm);
  });
}

/** Half length along the vehicle and half width of a disc, the most while it turns about its upright axis by up to an angle. */
function turnedDisc(radiusMm: number, halfMm: number, mostDeg: number): { readonly radiusMm: number; readonly halfMm: number } {
  const most = (mostDeg * Math.PI) / 180;
  const longest = Math.min(most, Math.atan2(halfMm, radiusMm));
  const widest = Math.min(most, Math.atan2(radiusMm, halfMm));
  return {
    radiusMm: radiusMm * Math.cos(longest) + halfMm * Math.sin(longest),
    halfMm: radiusMm * Math.sin(widest) + halfMm * Math.cos(widest),
  };
}

/** Corners about two places one over the other, in a plane along the vehicle: two half circles, made of sides that touch them outside. */
function uprightOblong(low: Vec3, high: Vec3, radiusMm: number): readonly Vec3[] {
  const reach = radiusMm / Math.cos(Math.PI / SIDES);
  return Array.from({ length: SIDES }, (_, i): Vec3 => {
    const angle = ((i + 0.5) * 2 * Math.PI) / SIDES;
    const from = Math.sin(angle) > 0 ? high : low;
    return [from[0] + reach * Math.cos(angle), from[1], from[2] + reach * Math.sin(angle)];
  });
}
const SIDES = 24;

/** From as far in as the slide stands to as far out as it goes, through the whole of its opening. */
function slideRoom(opening: Opening): readonly MovingPart[] | UnknownEnvelope {
  const corners = openingCorners(opening);
  const { travelMm, depthMm, wall } = opening;
  const outward = wall === undefined ? undefined : getOwn(OUTWARD, wall);
  const missing = [
    !corners && '`sill`',
    !outward && '`wall: left`',
    travelMm === undefined && '`travel`',
    depthMm === undefined && '`depth`',
  ].filter((one) => one !== false);
  if (!corners || !outward || travelMm === undefined || depthMm === undefined) return { id: opening.id, kind: 'slide', missing };
  const middle = scale(outward, (travelMm - depthMm) / 2);
  const ring = corners.map((corner) => add(corner, middle));
  return [part(opening.id, 'slide', `slide-out ${opening.id}`, ring, travelMm + depthMm, opening.drivenBy)];
}

function part(
  id: string,
  kind: MovingPart['kind'],
  name: string,
  ring: readonly Vec3[],
  thickMm: number,
  own: readonly string[] = [],
): MovingPart {
  const room = convexOfPlate(ring, thickMm)[0] as Convex;
  return { id, kind, name, room, own, bounds: boundsOf(room.corners) };
}
