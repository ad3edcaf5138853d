import { boxBetween, isInBox } from '../../geometry/box.js';
import { distance, dot, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { NodeKind, Photo, Run, Shell, Zone } from '../../records/index.js';
import { stillCounts } from '../record/changed-on.js';
import { samples } from './samples.js';
import { type ZoneMap, zoneMap } from './zones.js';

/** A stretch of a concealed run that no picture shows. */
export interface PhotoGap {
  readonly run: string;
  /** Along the run, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Cavities that it lies in. */
  readonly zones: readonly string[];
  /** The panels that close them; the day on which all of them were on, where known: it is too late then. */
  readonly panels: readonly string[];
  readonly closed?: string;
}

/** What a photo shows by the camera that its marked points give; undefined where they give none. */
export type PhotoSight = (photo: Photo) => ((at: Vec3) => boolean) | undefined;

export interface PhotoCoverage {
  /** Length of run that lies in concealed cavities, mm, and how much of it a picture of before close-in shows. */
  readonly runLengthMm: number;
  readonly shownMm: number;
  readonly gaps: readonly PhotoGap[];
  /** Concealed joints with the pictures that show each. */
  readonly joints: readonly { readonly id: string; readonly zones: readonly string[]; readonly photos: readonly string[] }[];
  /** Concealed cavities whose panels are all on, by their dates. */
  readonly closed: readonly string[];
  /** Pictures that name a run, cavity or joint but do not say how far they show: they prove no length. */
  readonly withoutExtent: readonly string[];
}

/** What can come apart, leak or work loose: two pictures of each (common practice, no source). */
const JOINTS: ReadonlySet<NodeKind> = new Set(['terminal', 'splice', 'connector', 'junction', 'valve', 'fitting']);
export const PHOTOS_OF_A_JOINT = 2;
/** A place measured on the coach may lie this far outside the box drawn for its cavity or picture, mm. Common practice, no source. */
const SLACK_MM = 15;
/** Things somewhat behind the middle of a picture are in it as well: up to this many times as far from the camera. Project default. */
const BEYOND = 1.5;

/**
 * How much of what is closed in now, or will be, a picture shows. A picture counts for what it names (`of`: the run, its circuit, the
 * joint, or the cavity), as far as its camera shows by marked points, else as its `shows` or `camera` says, and if it was taken after the last
 * change of what it shows, and on or before the day the cavity was closed.
 */
export function photoCoverage(model: Model, sight: PhotoSight = () => undefined): PhotoCoverage {
  const { shell } = model;
  const shows = (photo: Photo, at: Vec3): boolean => sight(photo)?.(at) ?? isClaimed(photo, at);
  const zones = zoneMap(shell.zones.filter((zone) => zone.concealed));
  const closing = new Map(shell.zones.map((zone) => [zone.id, closedOn(zone, shell)] as const));
  const counts = (photo: Photo, names: readonly (string | undefined)[], at: Vec3, held: readonly Zone[]): boolean => {
    const day = dayOf(photo.taken ?? photo.date);
    if (!names.some((name) => name !== undefined && photo.of.includes(name))) return false;
    const inTime = held.every((zone) => {
      const closed = closing.get(zone.id);
      return closed === undefined || (day !== undefined && day <= closed);
    });
    return inTime && shows(photo, at);
  };
  const current = (photos: readonly Photo[], id: string): readonly Photo[] =>
    photos.filter((photo) => stillCounts(model, id, photo.taken ?? photo.date));
  const runs = shell.runs
    .filter((run) => run.planned !== true)
    .map((run) => runCoverage(run, current(shell.photos, run.id), zones, closing, counts, shows));
  const joints = placedNodes(shell.nodes).flatMap((node) => {
    const held = JOINTS.has(node.nodeKind) && node.planned !== true ? zones.holding(node.at, SLACK_MM) : [];
    if (held.length === 0) return [];
    const names = [node.id, node.circuit, ...held.map((zone) => zone.id)];
    const seen = current(shell.photos, node.id).filter(
      (photo) => (node.photos.includes(photo.id) && shows(photo, node.at)) || counts(photo, names, node.at, held),
    );
    return [{ id: node.id, zones: held.map((zone) => zone.id), photos: seen.map((photo) => photo.id) }];
  });
  const concealed = new Set([...shell.zones.filter((zone) => zone.concealed), ...shell.runs, ...shell.nodes].map(({ id }) => id));
  return {
    runLengthMm: sum(runs.map((one) => one.concealedMm)),
    shownMm: sum(runs.map((one) => one.shownMm)),
    gaps: runs.flatMap((one) => one.gaps),
    joints,
    closed: shell.zones.filter((zone) => zone.concealed && closing.get(zone.id) !== undefined).map((zone) => zone.id),
    withoutExtent: shell.photos
      .filter((photo) => !photo.shows && !photo.camera && !sight(photo) && photo.of.some((id) => concealed.has(id)))
      .map((photo) => photo.id),
  };
}

type Counts = (photo: Photo, names: readonly (string | undefined)[], at: Vec3, held: readonly Zone[]) => boolean;

function runCoverage(
  run: Run,
  photos: readonly Photo[],
  zones: ZoneMap,
  closing: ReadonlyMap<string, string | undefined>,
  counts: Counts,
  shows: (photo: Photo, at: Vec3) => boolean,
): { readonly concealedMm: number; readonly shownMm: number; readonly gaps: readonly PhotoGap[] } {
  let concealedMm = 0;
  let shownMm = 0;
  let alongMm = 0;
  const gaps: { -readonly [K in keyof PhotoGap]: PhotoGap[K] }[] = [];
  let open: (typeof gaps)[number] | undefined;
  for (const { at, lengthMm } of samples(run.path)) {
    const held = zones.holding(at, SLACK_MM);
    const start = alongMm;
    alongMm += lengthMm;
    if (held.length === 0) {
      open = undefined;
      continue;
    }
    concealedMm += lengthMm;
    const names = [run.id, run.circuit, ...held.map((zone) => zone.id)];
    if (photos.some((photo) => counts(photo, names, at, held) || (run.photos.includes(photo.id) && shows(photo, at)))) {
      shownMm += lengthMm;
      open = undefined;
      continue;
    }
    const ids = held.map((zone) => zone.id);
    if (open && open.zones.join() === ids.join()) {
      open.toMm = alongMm;
      open.to = at;
    } else {
      const closed = latest(held.map((zone) => closing.get(zone.id)));
      const panels = [...new Set(held.flatMap((zone) => zone.closedBy))];
      open = { run: run.id, fromMm: start, toMm: alongMm, from: at, to: at, zones: ids, panels, ...(closed ? { closed } : {}) };
      gaps.push(open);
    }
  }
  return { concealedMm, shownMm, gaps };
}

/** True where the picture’s record says how far it shows, and the place is in that. */
function isClaimed({ shows: box, camera }: Photo, at: Vec3): boolean {
  if (box) return isInBox(at, boxBetween(box[0], box[1]), SLACK_MM);
  if (!camera) return false;
  const away = distance(at, camera.at);
  const middle = distance(camera.towards, camera.at);
  if (away === 0 || middle === 0 || away > BEYOND * middle) return false;
  const turned = dot(unit(subtract(at, camera.at)), unit(subtract(camera.towards, camera.at)));
  return turned >= Math.cos((Math.min(camera.angleDeg, 180) / 2) * (Math.PI / 180));
}

/** The day on which the last panel over a cavity went on; undefined while one has no date. */
function closedOn(zone: Zone, { panels }: Shell): string | undefined {
  const over = panels.filter((panel) => zone.closedBy.includes(panel.id));
  const days = over.map((panel) => panel.date ?? panel.fixing?.applied);
  return days.length > 0 && !days.includes(undefined) ? latest(days) : undefined;
}

const latest = (days: readonly (string | undefined)[]): string | undefined =>
  days.filter((day) => day !== undefined).reduce<string | undefined>((a, b) => (a === undefined || b > a ? b : a), undefined);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
