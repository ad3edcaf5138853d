import { isInBox } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Run } from '../../records/index.js';
import { samples } from '../access/samples.js';
import type { ZoneMap } from '../access/zones.js';

/** Way points are measured to a wire's middle with a tape: this much beside a cavity is still in it, mm. House rule. */
const TAPE_MM = 25;

/** Where a run's way and the cavities that it names disagree. */
export interface Strays {
  /** Cavities that no part of its way comes into. */
  readonly never: readonly string[];
  /** The first way point outside between two that are inside: ways in and out of a cavity are no strays. */
  readonly via?: number;
}

/** Cavities without a place on record are left out, and so is a run without a way. */
export function strays(run: Pick<Run, 'zones' | 'path' | 'via' | 'toleranceMm'>, zones: ZoneMap): Strays {
  const slackMm = TAPE_MM + (run.toleranceMm ?? 0);
  const named = run.zones.filter((id) => (zones.boxes.get(id)?.length ?? 0) > 0);
  if (named.length === 0 || run.path.length < 2) return { never: [] };
  const isIn = (at: Vec3, zone: string): boolean => zones.boxes.get(zone)?.some((box) => isInBox(at, box, slackMm)) ?? false;
  const places = [...run.path, ...samples(run.path).map((piece) => piece.at)];
  const never = named.filter((zone) => !places.some((at) => isIn(at, zone)));
  const via = strayVia(run.via.map((at) => named.some((zone) => isIn(at, zone))));
  return { never, ...(via === undefined ? {} : { via }) };
}

function strayVia(inside: readonly boolean[]): number | undefined {
  const found = inside.findIndex((isIn, i) => !isIn && i > inside.indexOf(true) && i < inside.lastIndexOf(true));
  return inside.includes(true) && found >= 0 ? found : undefined;
}
