import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import { MEDIA, type Medium, NODE_KINDS, type Run, type ServiceNode } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import { fitsOn, HALF_SHEET_STRIPS, halfSheet } from '../half-sheet.js';
import { clipMarks, partsOf, type SheetPart } from '../halves.js';
import type { LabelWish } from '../labels.js';
import { legendMarks } from '../legend.js';
import { panelMark, panelPlaces, surfaceOf } from '../marks/panels.js';
import { nodeMarksAndWishes, runMarks } from '../marks/services.js';
import { memberContext } from '../marks/structure.js';
import { MEDIUM_STYLES } from '../media.js';
import { VIEWS, type View, viewOfSurface } from '../projection.js';
import { growRect, holds, type Mark } from '../scene.js';
import { layOut, type Margins, type Port, type SheetSize } from '../sheet.js';
import { wordsFor } from '../wording.js';
import { accessWish } from './general.js';

const LEGEND_MM = 7;
/** With more to label than this a view has its sheet to itself. */
const MOST_SHARED = 40;

const SIGHTS = [
  { view: VIEWS.plan, id: 'plan', title: 'plan' },
  { view: VIEWS.left, id: 'side', title: 'seen from the left' },
] as const;

/**
 * Plan, then elevation from the left, of everything in one medium; the structure is pale, access panels are dashed. What is small
 * enough to be labelled so shares one sheet; where there is too much to label on one, each comes in a front and a rear half.
 */
export function serviceDrawings(a: Assessment, medium: Medium, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  const { shell } = a.model;
  const runs = shell.runs.filter((run) => run.medium === medium);
  const nodes = shell.nodes.filter((node) => node.medium === medium);
  if (runs.length === 0 && nodes.length === 0) return [];
  const corners = extentCorners(serviceExtent(shellExtent(a.model), nodes));
  const shared = sharingOneSheet({ a, medium, runs, nodes }, corners, sheet, options);
  if (shared) return shared;
  return SIGHTS.flatMap((sight) =>
    partsOf(viewBounds(sight.view, corners), runs.length + nodes.length, sight.view.front).flatMap((part) =>
      serviceDrawing({ a, medium, runs, nodes, sight, part }, sheet, options),
    ),
  );
}

interface ServiceView {
  readonly a: Assessment;
  readonly medium: Medium;
  readonly runs: readonly Run[];
  readonly nodes: readonly ServiceNode[];
  readonly sight: (typeof SIGHTS)[number];
  readonly part: SheetPart;
}

/** Both views half a sheet high, where every label finds room. */
function sharingOneSheet(
  of: Omit<ServiceView, 'sight' | 'part'>,
  corners: readonly Vec3[],
  sheet: SheetSize,
  options: DrawingOptions,
): Drawing[] | undefined {
  if (of.runs.length + of.nodes.length > MOST_SHARED) return undefined;
  const half = halfSheet(sheet);
  const drawn: Drawing[] = [];
  for (const sight of SIGHTS) {
    const part: SheetPart = { bounds: viewBounds(sight.view, corners), suffix: '' };
    // What the upper one leaves of its half is the lower one's.
    const room = { ...half, heightMm: (drawn.length + 1) * half.heightMm - drawn.reduce((sum, one) => sum + one.heightMm, 0) };
    for (const one of serviceDrawing({ ...of, sight, part }, room, options, HALF_SHEET_STRIPS)) {
      if (!fitsOn(room, one)) return undefined;
      drawn.push(one);
    }
  }
  return drawn;
}

function serviceDrawing(
  { a, medium, runs, nodes, sight, part }: ServiceView,
  sheet: SheetSize,
  options: DrawingOptions,
  strips?: Margins,
): readonly Drawing[] {
  const { view } = sight;
  const mostMm = Math.min(44, 14 + 0.6 * (runs.length + nodes.length));
  const layout = layOut(
    [{ view, bounds: part.bounds }],
    sheet,
    strips ?? { sideMm: 8, aboveMm: 10 + LEGEND_MM, belowMm: 10, mostMm },
  );
  const port = layout.ports[0] as Port;
  const clip = growRect(port.frame, 1);
  const shown = placedNodes(nodes).filter((node) => holds(clip, port.place(node.at)));
  const run = runMarks(runs, port, { clip });
  const node = nodeMarksAndWishes(shown, port);
  if (run.marks.length + node.marks.length === 0) return [];
  const background = serviceBackground(a, port, view);
  const kinds = NODE_KINDS.filter((kind) => shown.some((one) => one.nodeKind === kind));
  const { name } = MEDIUM_STYLES[medium];
  const half = part.suffix === '' ? '' : `, ${part.suffix}`;
  return [
    compose(
      {
        id: `service-${medium}-${sight.id}${part.suffix === '' ? '' : `-${part.suffix.replace(' ', '-')}`}`,
        title: `${name}: ${sight.title}${half}`,
        alt: `${name}, ${sight.title}${half}: runs and nodes with their ids over the pale outline of the structure; ${shown.length} nodes.`,
        ...layout,
        room: { ...layout.room, y0: layout.room.y0 + LEGEND_MM },
        front: view.front,
        units: a.model.shop.units,
        marks: [...clipMarks(background.marks, clip), ...run.marks, ...node.marks],
        legend: legendMarks([medium], kinds, [2, 3], sheet.widthMm - 4),
        wishes: [...background.wishes.filter(({ anchor }) => holds(clip, anchor)), ...run.wishes, ...node.wishes],
        notes: [
          view === VIEWS.plan ? wordsFor(a.model)('drawn.kerb.up') : '',
          view === VIEWS.plan
            ? 'Dashed: access panels; those that face left are in the view from the left. Runs that lie over each other are drawn side by side.'
            : 'Dashed: access panels that face left; all others are on the plan. Runs that lie over each other are drawn side by side.',
          notDrawn(nodes),
        ].filter(Boolean),
        rest: 'in the schedules',
      },
      options,
    ),
  ];
}

/** What has no place yet stands in no drawing, and the drawing says so. */
function notDrawn(nodes: readonly ServiceNode[]): string {
  const count = nodes.length - placedNodes(nodes).length;
  return count === 0
    ? ''
    : `Not drawn, as their place is not recorded: ${count === 1 ? '1 node and its runs' : `${count} nodes and their runs`}.`;
}

/** The shell, widened to whatever hangs below or beside it. */
function serviceExtent(shell: Extent, nodes: readonly ServiceNode[]): Extent {
  const axis = (k: 0 | 1 | 2): readonly [number, number] => {
    const values = placedNodes(nodes).map((node) => node.at[k]);
    return [Math.min(shell.low[k], ...values), Math.max(shell.high[k], ...values)];
  };
  const [x, y, z] = [axis(0), axis(1), axis(2)];
  return { low: [x[0], y[0], z[0]], high: [x[1], y[1], z[1]] };
}

/** Each access panel in one view: where it is seen straight on from the left, there; else on the plan, upright ones on edge. */
export function serviceBackground(
  a: Assessment,
  port: Port,
  view: View,
): { marks: readonly Mark[]; wishes: readonly LabelWish[] } {
  const { model } = a;
  const panels = model.shell.panels.filter((panel) => {
    const fromLeft = viewOfSurface(surfaceOf(panel, model)) === VIEWS.left;
    return panel.panelKind === 'access' && fromLeft === (view === VIEWS.left);
  });
  return {
    marks: [
      ...memberContext(model.shell.members, model.library, port),
      ...panels.map((panel) => panelMark(panel, port, 'access-context', true, 'hidden')),
    ],
    wishes: listedByPlace(
      panels.map((panel) => ({ ...accessWish(panel, port), also: panelPlaces(panel, port), style: 'id', priority: 35 })),
    ),
  };
}

/** Panels that lie behind one another on the sheet, as one of the ceiling over one of the belly, share one label of two lines. */
function listedByPlace(wishes: readonly LabelWish[]): readonly LabelWish[] {
  const places = new Map<string, LabelWish[]>();
  for (const wish of wishes) {
    const key = wish.anchor.map(Math.round).join(' ');
    places.set(key, [...(places.get(key) ?? []), wish]);
  }
  return [...places.values()].map((same): LabelWish => {
    const [first] = same as [LabelWish, ...LabelWish[]];
    if (same.length === 1) return first;
    return { ...first, lines: same.map(({ text, id }) => ({ text, ...(id === undefined ? {} : { id }) })) };
  });
}

/** For chapters that walk through all media. */
export const mediaUsed = (a: Assessment): readonly Medium[] =>
  MEDIA.filter(
    (medium) =>
      a.model.shell.runs.some((run) => run.medium === medium) || a.model.shell.nodes.some((node) => node.medium === medium),
  );
