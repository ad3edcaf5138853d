import type { Assessment } from '../../assess.js';
import { type PlacedNode, placedNodes } from '../../model/placed.js';
import type { Medium } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { legendMarks } from '../legend.js';
import { nodeMarksAndWishes, runMarks } from '../marks/services.js';
import { MEDIUM_STYLES } from '../media.js';
import { crowdsOf, nameOfCrowd } from '../node-crowds.js';
import { project, VIEWS, type View } from '../projection.js';
import { growRect, holds, type Rect } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { symbolsOf } from '../symbols.js';

/** Shown around a crowd, mm of the vehicle. */
const AROUND_MM = 90;
const LEGEND_MM = 7;

const SIGHTS: readonly (readonly [view: View, words: string])[] = [
  [VIEWS.rear, 'looking forward'],
  [VIEWS.left, 'seen from the left'],
  [VIEWS.plan, 'seen from above'],
];

/** Details at a larger scale of the places where a medium's nodes stand too close for the drawings of its layers, as a fuse panel. */
export function serviceDetails(
  a: Assessment,
  medium: Medium,
  sheet: SheetSize,
  options: DrawingOptions = {},
): readonly Drawing[] {
  const nodes = placedNodes(a.model.shell.nodes).filter((node) => node.medium === medium);
  return crowdsOf(nodes).map((crowd, index) => detail(a, medium, crowd, index, sheet, options));
}

/** Where a crowd lies in a view, with a strip around it, mm of the vehicle. */
function boundsIn(view: View, crowd: readonly PlacedNode[]): Rect {
  const places = crowd.map(({ at }) => project(view, at));
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return growRect({ x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) }, AROUND_MM);
}

const areaOf = ({ x0, y0, x1, y1 }: Rect): number => (x1 - x0) * (y1 - y0);

function detail(
  a: Assessment,
  medium: Medium,
  crowd: readonly PlacedNode[],
  index: number,
  sheet: SheetSize,
  options: DrawingOptions,
): Drawing {
  const { shell } = a.model;
  // The view in which they stand farthest apart.
  const [[view, words]] = [...SIGHTS].sort(([p], [q]) => areaOf(boundsIn(q, crowd)) - areaOf(boundsIn(p, crowd))) as [
    (typeof SIGHTS)[number],
  ];
  const layout = layOut([{ view, bounds: boundsIn(view, crowd) }], sheet, {
    sideMm: 30,
    aboveMm: 6 + LEGEND_MM,
    belowMm: 6,
    mostMm: 20,
  });
  const port = layout.ports[0] as Port;
  const clip = port.frame;
  const ids = new Set(crowd.map((node) => node.id));
  const shown = placedNodes(shell.nodes).filter((node) => ids.has(node.id) && holds(clip, port.place(node.at)));
  const runs = runMarks(
    shell.runs.filter((run) => run.medium === medium && (ids.has(run.from) || ids.has(run.to))),
    port,
    { clip, labelled: false, symbols: shown.map(({ at }) => port.place(at)) },
  );
  const drawn = nodeMarksAndWishes(shown, port);
  const name = nameOfCrowd(crowd);
  const title = `${MEDIUM_STYLES[medium].name}: detail at ${name.name ?? name.id}, ${words}`;
  return compose(
    {
      id: `service-${medium}-detail-${index + 1}`,
      title,
      alt: `${title}: ${shown.length} nodes with their ids, and their runs as far as they lie here.`,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + LEGEND_MM },
      front: view.front,
      units: a.model.shop.units,
      marks: [...runs.marks, ...drawn.marks],
      legend: legendMarks([medium], symbolsOf(shown), [2, 3], sheet.widthMm - 4),
      wishes: drawn.wishes,
      notes: [view === VIEWS.rear ? 'Left side of the vehicle at the left.' : '', 'Runs go on beyond the edge.'].filter(Boolean),
      rest: 'in the schedules',
    },
    options,
  );
}
