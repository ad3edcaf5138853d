import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Member } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { shellExtent, viewBounds } from '../extent.js';
import { type Group, groupsOf, type StageOf, stagesOf } from '../frame-groups.js';
import { clipMarks, partsOf, type SheetPart, stripsOf } from '../halves.js';
import { ISO_ARROWS_MM, isoArrows } from '../iso-arrows.js';
import { memberContext, memberEdges, memberHiddenLines, memberMarks } from '../marks/structure.js';
import { bandsByMember, WELD_BAND_NOTE, weldBandMarks } from '../marks/weld-bands.js';
import { VIEWS } from '../projection.js';
import { growRect, type Mark, textMark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { memberCorners } from '../visibility.js';
import { wordsFor } from '../wording.js';
import { crossFrameDrawings, topOf } from './cross-frames.js';
import { memberWish } from './member-wish.js';

/** A drawing of frames, with the stage that it shows. */
export interface FrameDrawing extends Drawing {
  /** `none` for members without a stage. */
  readonly stage: string;
  /** Oblique and not to scale: goes with the stage's schedule, upright. */
  readonly pictorial: boolean;
}

/** Width and height of a pictorial at most: it stands on an upright page above its schedule, mm. */
const PICTORIAL_MM = { widthMm: 172, heightMm: 92 };

/**
 * Structure by stage: a pictorial of what the stage adds, then each face of the shell that it adds to, seen square on and
 * with every member's id.
 */
export function frameDrawings(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): FrameDrawing[] {
  const { model } = a;
  const shell = shellExtent(model);
  const drawings: FrameDrawing[] = [];
  const before: Member[] = [];
  for (const { stage, name, members } of stagesOf(model)) {
    drawings.push({ ...pictorial(model, { stage, name, members, before }, sheet, options), stage, pictorial: true });
    for (const group of groupsOf(members, model, shell)) {
      const square = frames(a, { stage, stageName: name, group }, sheet, options);
      drawings.push(...square.map((one) => ({ ...one, stage, pictorial: false })));
    }
    before.push(...members);
  }
  return drawings;
}

interface GroupOf {
  readonly stage: string;
  readonly stageName: string;
  readonly group: Group;
}

function frames(a: Assessment, of: GroupOf, sheet: SheetSize, options: DrawingOptions): readonly Drawing[] {
  const { stage, stageName, group } = of;
  const corners = [...group.members, ...group.around].flatMap((member) => memberCorners(member, a.model.library));
  const parts = partsOf(viewBounds(group.view, corners), group.members.length, group.view.front);
  return [
    ...parts.map((part) => frame(a, { ...of, part }, sheet, options)),
    ...crossFrameDrawings(a, { stage, stageName, frames: group.crossFrames }, sheet, options),
  ];
}

interface FrameOf extends GroupOf {
  readonly part: SheetPart;
}

function frame(a: Assessment, { stage, stageName, group, part }: FrameOf, sheet: SheetSize, options: DrawingOptions): Drawing {
  const { model } = a;
  const soft = bandsByMember(a);
  const count = group.members.length;
  // What stands in a cross frame has its id there: from above its parts hide each other.
  const inFrames = new Set(group.crossFrames.flatMap((one) => one.members));
  const tops = new Set(group.crossFrames.map((one) => topOf(one, model)));
  const labelled = group.members.filter((member) => !inFrames.has(member) || tops.has(member));
  const mostMm = Math.min(40, 10 + 0.5 * count);
  const strips = stripsOf(part, count, group.view.front);
  const wantedMm = strips.length * Math.max(90, 60 + 3.5 * count);
  const size = { widthMm: sheet.widthMm, heightMm: Math.min(sheet.heightMm, wantedMm) };
  const layout = layOut(
    strips.map(({ bounds }) => ({ view: group.view, bounds })),
    size,
    { sideMm: 7, aboveMm: 8, belowMm: 8, mostMm },
  );
  const half = part.suffix === '' ? '' : `, ${part.suffix}`;
  return compose(
    {
      id: `frame-${stage}-${group.name}${half}`.replaceAll(/[ ,]+/gu, '-'),
      title: `${stageName}: ${group.name}${half}`,
      alt: `${stageName}, ${group.name}${half}, ${group.view.name} view: ${count} ${count === 1 ? 'member' : 'members'} drawn as solids, each with its id.`,
      ...layout,
      front: group.view.front,
      units: model.shop.units,
      marks: layout.ports.flatMap((port, k) => [
        ...stripName(port, strips[k]),
        ...clipMarks(
          [
            ...memberContext(group.around, model.library, port),
            ...memberMarks(group.members, model.library, port, true, (member) =>
              weldBandMarks(member, soft, model.library, port),
            ),
            ...memberHiddenLines(group.members, model.library, port),
          ],
          growRect(port.frame, 0.5),
        ),
      ]),
      wishes: layout.ports.flatMap((port) => labelled.flatMap((member) => memberWish(member, model, port))),
      notes: [
        group.view === VIEWS.plan ? wordsFor(model)('drawn.kerb.up') : '',
        WELD_BAND_NOTE,
        group.crossFrames.length > 0
          ? 'Frames across the vehicle: each is named by its top member here; its parts are on the sheets that follow.'
          : '',
      ].filter(Boolean),
      rest: 'in the member schedule',
    },
    options,
  );
}

/** Which of two strips it is, above it. */
const stripName = ({ frame: { x0, y0 } }: Port, strip: SheetPart | undefined): readonly Mark[] =>
  strip?.suffix ? [textMark('labels', 'name-strong', [x0, y0 - 6], strip.suffix)] : [];

interface Pictorial extends StageOf {
  readonly before: readonly Member[];
}

function pictorial(
  model: Model,
  { stage, name, members, before }: Pictorial,
  sheet: SheetSize,
  options: DrawingOptions,
): Drawing {
  const view = VIEWS.pictorial;
  const corners: readonly Vec3[] = [...before, ...members].flatMap((member) => memberCorners(member, model.library));
  const half = {
    widthMm: Math.min(sheet.widthMm, PICTORIAL_MM.widthMm),
    heightMm: Math.min(sheet.heightMm, PICTORIAL_MM.heightMm),
  };
  const strips = { sideMm: 3, aboveMm: 2, belowMm: 2, mostMm: 2 };
  const layout = layOut([{ view, bounds: viewBounds(view, corners) }], half, strips, 'as large as it goes');
  const port = layout.ports[0] as Port;
  const { reduction: _reduction, ...placed } = layout;
  return compose(
    {
      id: `frame-${stage}-pictorial`,
      title: `${name}: what this stage adds`,
      alt: `${name}, seen from the front left and above: ${members.length} members of this stage in dark lines over ${before.length} of the stages before.`,
      ...placed,
      units: model.shop.units,
      marks: [
        ...memberContext(before, model.library, port),
        ...memberEdges(members, model.library, port),
        // A long thing seen from the front left and above leaves the upper left corner free.
        ...isoArrows(view, [layout.room.x0 + ISO_ARROWS_MM.sideMm, layout.room.y0 + ISO_ARROWS_MM.aboveMm]),
      ],
      wishes: [],
      notes: [`Isometric, not to scale. Dark: ${name}.${before.length > 0 ? ' Pale: earlier stages.' : ''}`],
    },
    options,
  );
}
