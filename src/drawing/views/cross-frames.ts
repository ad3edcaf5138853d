import type { Assessment } from '../../assess.js';
import type { Model } from '../../model/shell.js';
import { length } from '../../quantity/format.js';
import type { Member } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { memberMarks } from '../marks/structure.js';
import { bandsByMember, WELD_BAND_NOTE, weldBandMarks } from '../marks/weld-bands.js';
import { VIEWS } from '../projection.js';
import { type Mark, type Rect, textMark } from '../scene.js';
import { FURNITURE_MM, fittingScale, type Layout, layOut, type Port, SCALES, type SheetSize } from '../sheet.js';
import { memberCorners, middleOf } from '../visibility.js';
import { wordsFor } from '../wording.js';
import { memberWish } from './member-wish.js';

/** Trusses and bows: members that stand in one plane across the vehicle and hide each other from above. */

/** Members whose middles are this near along the vehicle may be one frame, mm. */
const SAME_STATION_MM = 60;
/** A member thicker than this along the vehicle is not part of a cross frame, mm. */
const FLAT_MM = 160;
const FEWEST_MEMBERS = 5;
const SIDE_MM = 10;
const STRIP_MM = 9;

export interface CrossFrame {
  readonly xMm: number;
  readonly members: readonly Member[];
}

export function crossFrames(members: readonly Member[], model: Model): readonly CrossFrame[] {
  const flat = members
    .map((member) => ({ member, corners: memberCorners(member, model.library) }))
    .filter(({ corners }) => {
      const xs = corners.map((corner) => corner[0]);
      return Math.max(...xs) - Math.min(...xs) <= FLAT_MM;
    })
    .map(({ member, corners }) => ({ member, xMm: middleOf(corners)[0] }))
    .sort((a, b) => a.xMm - b.xMm);
  const found: { xMm: number; members: Member[] }[] = [];
  for (const { member, xMm } of flat) {
    const last = found.at(-1);
    if (last && xMm - last.xMm <= SAME_STATION_MM) last.members.push(member);
    else found.push({ xMm, members: [member] });
  }
  return found.filter((frame) => frame.members.length >= FEWEST_MEMBERS);
}

interface SheetOf {
  readonly stage: string;
  readonly stageName: string;
  readonly frames: readonly CrossFrame[];
}

/** The member that is seen from above, and names the frame there. */
export function topOf(frame: CrossFrame, model: Model): Member {
  const height = (member: Member): number => middleOf(memberCorners(member, model.library))[2];
  return frame.members.reduce((best, member) => (height(member) > height(best) ? member : best));
}

/** Frames that share a sheet, and how they lie on it. */
export interface FrameLayout<F extends CrossFrame> {
  readonly shown: readonly F[];
  readonly layout: Layout;
}

/** As many frames to a sheet as go at a large scale, evenly over the sheets. */
export function frameLayouts<F extends CrossFrame>(
  frames: readonly F[],
  model: Model,
  sheet: SheetSize,
  stripMm: number,
): readonly FrameLayout<F>[] {
  const bounds = frames.map((frame) =>
    viewBounds(
      VIEWS.front,
      frame.members.flatMap((member) => memberCorners(member, model.library)),
    ),
  );
  const sheets = sheetsNeeded(bounds, sheet, stripMm);
  const perSheet = Math.ceil(frames.length / sheets);
  return Array.from({ length: sheets }, (_, k) => {
    const shown = frames.slice(k * perSheet, (k + 1) * perSheet);
    const views = bounds.slice(k * perSheet, (k + 1) * perSheet).map((rect) => ({ view: VIEWS.front, bounds: rect }));
    return { shown, layout: layOut(views, sheet, { sideMm: SIDE_MM, aboveMm: stripMm, belowMm: stripMm, mostMm: stripMm }) };
  });
}

/** A smaller scale is taken where it saves this share of the sheets, and is not smaller than by this factor. */
const WORTH = 0.75;
const MOST_SMALLER = 1.5;

function sheetsNeeded(bounds: readonly Rect[], sheet: SheetSize, stripMm: number): number {
  const width = Math.max(...bounds.map((rect) => rect.x1 - rect.x0));
  const height = Math.max(...bounds.map((rect) => rect.y1 - rect.y0));
  const roomMm = sheet.heightMm - FURNITURE_MM - 2;
  const largest = fittingScale(width, height, sheet.widthMm - 2 * SIDE_MM, roomMm - 2 * stripMm);
  const at = (reduction: number): number => {
    const perSheet = Math.max(1, Math.floor(roomMm / (height / reduction + 2 * stripMm)));
    return Math.ceil(bounds.length / perSheet);
  };
  const smaller = SCALES.filter((reduction) => reduction > largest && reduction <= MOST_SMALLER * largest);
  return smaller.reduce((best, reduction) => (at(reduction) <= WORTH * best ? at(reduction) : best), at(largest));
}

/** Every cross frame square on. */
export function crossFrameDrawings(
  a: Assessment,
  { stage, stageName, frames }: SheetOf,
  sheet: SheetSize,
  options: DrawingOptions,
): readonly Drawing[] {
  if (frames.length === 0) return [];
  const { model } = a;
  const soft = bandsByMember(a);
  const layouts = frameLayouts(frames, model, sheet, STRIP_MM);
  return layouts.map(({ shown, layout }, k) => {
    const marks: Mark[] = [];
    const wishes: LabelWish[] = [];
    shown.forEach((frame, index) => {
      const port = layout.ports[index] as Port;
      marks.push(
        ...memberMarks(frame.members, model.library, port, true, (member) => weldBandMarks(member, soft, model.library, port)),
      );
      marks.push(textMark('labels', 'note', [1.5, port.frame.y0 - 7], `at x ${length(frame.xMm, model.shop.units)}`));
      wishes.push(...frame.members.flatMap((member) => memberWish(member, model, port)));
    });
    const part = layouts.length > 1 ? `, sheet ${k + 1} of ${layouts.length}` : '';
    return compose(
      {
        id: `frame-${stage}-cross-frames-${k + 1}`,
        title: `${stageName}: frames across the vehicle${part}`,
        alt: `${stageName}, ${shown.length} frames across the vehicle seen from the front, each with its place along the vehicle and the ids of its members.`,
        ...layout,
        front: 'none',
        units: model.shop.units,
        marks,
        wishes,
        notes: [`${wordsFor(model)('drawn.kerb.front')} x: rearward of the datum.`, WELD_BAND_NOTE],
        rest: 'in the member schedule',
      },
      options,
    );
  });
}
