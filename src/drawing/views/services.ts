import type { Assessment } from '../../assess.js';
import { MEDIA, type Medium, NODE_KINDS, type ServiceNode } from '../../model/services.js';
import type { Facing } from '../../model/structure.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { legendMarks } from '../legend.js';
import { faceOf, panelMark } from '../marks/panels.js';
import { nodeMarksAndWishes, runMarks } from '../marks/services.js';
import { memberContext } from '../marks/structure.js';
import { MEDIUM_STYLES } from '../media.js';
import { VIEWS } from '../projection.js';
import type { Mark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { accessWish } from './general.js';

const LEGEND_MM = 7;

/** Plan over left elevation of everything in one medium; the structure is pale, access panels are dashed. */
export function serviceDrawings(a: Assessment, medium: Medium, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  const { shell } = a.model;
  const runs = shell.runs.filter((run) => run.medium === medium);
  const nodes = shell.nodes.filter((node) => node.medium === medium);
  if (runs.length === 0 && nodes.length === 0) return [];
  const extent = serviceExtent(shellExtent(a.model), nodes);
  const style = MEDIUM_STYLES[medium];
  return [
    { view: VIEWS.plan, id: 'plan', title: 'plan', faces: ['up', 'down'] as const },
    { view: VIEWS.left, id: 'side', title: 'seen from the left', faces: ['left', 'right'] as const },
  ].map(({ view, id, title, faces }) => {
    const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(extent)) }], sheet, {
      sideMm: 8,
      aboveMm: 10 + LEGEND_MM,
      belowMm: 10,
      mostMm: 44,
    });
    const port = layout.ports[0] as Port;
    const run = runMarks(runs, port);
    const node = nodeMarksAndWishes(nodes, port);
    const background = serviceBackground(a, port, faces);
    const legend = legendMarks(
      [medium],
      NODE_KINDS.filter((kind) => nodes.some((one) => one.nodeKind === kind)),
      [2, 4],
      sheet.widthMm - 4,
    );
    return compose(
      {
        id: `service-${medium}-${id}`,
        title: `${style.name}: ${title}`,
        alt: `${style.name}, ${title}: ${runs.length} runs and ${nodes.length} nodes over the pale outline of the structure. Runs and nodes carry their ids.`,
        ...layout,
        room: { ...layout.room, y0: layout.room.y0 + LEGEND_MM },
        front: view.front,
        units: a.model.shop.units,
        marks: [...background.marks, ...run.marks, ...node.marks, ...legend],
        wishes: [...background.wishes, ...run.wishes, ...node.wishes],
        notes: [
          view === VIEWS.plan ? 'Right (kerb) side up.' : '',
          'Dashed: access panels. Runs that lie over each other are drawn side by side.',
        ].filter(Boolean),
        rest: 'in the schedules',
      },
      options,
    );
  });
}

/** The shell, widened to whatever hangs below or beside it. */
function serviceExtent(shell: Extent, nodes: readonly ServiceNode[]): Extent {
  const axis = (k: 0 | 1 | 2): readonly [number, number] => {
    const values = nodes.map((node) => node.at[k]);
    return [Math.min(shell.low[k], ...values), Math.max(shell.high[k], ...values)];
  };
  const [x, y, z] = [axis(0), axis(1), axis(2)];
  return { low: [x[0], y[0], z[0]], high: [x[1], y[1], z[1]] };
}

export function serviceBackground(
  a: Assessment,
  port: Port,
  faces: readonly Facing[],
): { marks: readonly Mark[]; wishes: readonly LabelWish[] } {
  const { model } = a;
  const shell = shellExtent(model);
  const panels = model.shell.panels.filter((panel) => {
    const face = faceOf(panel, shell);
    return panel.panelKind === 'access' && face !== undefined && faces.includes(face);
  });
  return {
    marks: [
      ...memberContext(model.shell.members, model.library, port),
      ...panels.map((panel) => panelMark(panel, port, 'access-context', true, 'hidden')),
    ],
    wishes: panels.map((panel) => ({ ...accessWish(panel, port), style: 'id', priority: 35 })),
  };
}

/** For chapters that walk through all media. */
export const mediaUsed = (a: Assessment): readonly Medium[] =>
  MEDIA.filter(
    (medium) =>
      a.model.shell.runs.some((run) => run.medium === medium) || a.model.shell.nodes.some((node) => node.medium === medium),
  );
