import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import { type PlacedNode, placedNodes } from '../../model/placed.js';
import { MEDIA, type Medium, type ServiceNode } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import { fitsOn, HALF_SHEET_STRIPS, halfSheet } from '../half-sheet.js';
import type { LabelWish } from '../labels.js';
import { legendMarks } from '../legend.js';
import { layerPanels, layerStructure } from '../marks/layer-ground.js';
import { type LayerRun, layerRunMarks } from '../marks/layer-runs.js';
import { nodeWish } from '../marks/services.js';
import { shellBox } from '../marks/shell-box.js';
import { MEDIUM_STYLES } from '../media.js';
import { crowdsOf, nameOfCrowd } from '../node-crowds.js';
import { withinRows } from '../node-rows.js';
import { VIEWS, type View } from '../projection.js';
import type { Mark, Rect } from '../scene.js';
import { LAYERS_OF_SERVICES, type LayerPlanes, layerOf, layerPieces, layerPlanes, type ServiceLayer } from '../service-layers.js';
import { layOut, type Margins, type Port, type SheetSize, scaleText } from '../sheet.js';
import { nodeMarks, symbolsOf } from '../symbols.js';
import { wordsFor } from '../wording.js';

const LEGEND_MM = 7;
const WHOLE_SHEET_STRIPS: Margins = { sideMm: 8, aboveMm: 10 + LEGEND_MM, belowMm: 10, mostMm: 40 };

interface Sight {
  readonly view: View;
  readonly title: string;
  /** Sentence of the catalogue that says how it lies. */
  readonly note: 'drawn.seen.below' | 'drawn.seen.above' | 'drawn.seen.outside' | 'drawn.seen.ceiling';
}

/** How each layer is looked at: from where one works on it. */
const SIGHT_OF_LAYER: Readonly<Record<ServiceLayer, Sight>> = {
  belly: { view: VIEWS.underside, title: 'in the belly, under the floor', note: 'drawn.seen.below' },
  floor: { view: VIEWS.plan, title: 'on the floor and in cabinets', note: 'drawn.seen.above' },
  left: { view: VIEWS.left, title: 'in the left wall', note: 'drawn.seen.outside' },
  right: { view: VIEWS.right, title: 'in the right wall', note: 'drawn.seen.outside' },
  front: { view: VIEWS.front, title: 'in the front wall', note: 'drawn.seen.outside' },
  rear: { view: VIEWS.rear, title: 'in the rear wall', note: 'drawn.seen.outside' },
  ceiling: {
    view: VIEWS.ceiling,
    title: 'over the ceiling',
    note: 'drawn.seen.ceiling',
  },
};

/** Everything in one medium, a drawing a layer: belly, floor, walls, ceiling; two share a sheet where every label finds room so. */
export function serviceDrawings(a: Assessment, medium: Medium, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  const { shell } = a.model;
  const runs = shell.runs.filter((run) => run.medium === medium);
  const nodes = shell.nodes.filter((node) => node.medium === medium);
  const planes = layerPlanes(a.model);
  const placed = placedNodes(nodes);
  const crowded = new Map(crowdsOf(placed).flatMap((crowd) => crowd.map((node) => [node.id, nameOfCrowd(crowd)] as const)));
  const pieces = runs.flatMap((run) => layerPieces(run.path, planes).map((piece): LayerRun => ({ run, ...piece })));
  const half = halfSheet(sheet);
  return LAYERS_OF_SERVICES.flatMap((layer): readonly Drawing[] => {
    const shown = placed.filter((node) => layerOf(node.at, planes) === layer);
    const here = pieces.filter((piece) => piece.layer === layer);
    if (shown.length === 0 && here.length === 0) return [];
    const of: LayerView = { a, medium, layer, planes, nodes: shown, crowded, pieces: here, absent: nodes.length - placed.length };
    const small = layerDrawing(of, half, options, HALF_SHEET_STRIPS, false);
    if (fitsOn(half, small) && small.scale === largestScale(of, sheet)) return [small];
    return [layerDrawing(of, sheet, options, WHOLE_SHEET_STRIPS, true)];
  });
}

interface LayerView {
  readonly a: Assessment;
  readonly medium: Medium;
  readonly layer: ServiceLayer;
  readonly planes: LayerPlanes;
  readonly nodes: readonly PlacedNode[];
  /** Nodes that stand too close for this scale, by id, with the one that their detail is named by. */
  readonly crowded: ReadonlyMap<string, ServiceNode>;
  readonly pieces: readonly LayerRun[];
  /** How many nodes of the medium have no place. */
  readonly absent: number;
}

function layerDrawing(of: LayerView, sheet: SheetSize, options: DrawingOptions, strips: Margins, lists: boolean): Drawing {
  const { a, medium, layer, nodes, pieces } = of;
  const { view, title, note } = SIGHT_OF_LAYER[layer];
  const shell = shellExtent(a.model);
  const layout = layOut([{ view, bounds: boundsOf(of) }], sheet, strips);
  const port = layout.ports[0] as Port;
  const lines = layerRunMarks(
    pieces,
    port,
    nodes.map(({ at }) => port.place(at)),
  );
  const panels = layerPanels(a.model, layer, port);
  const { name } = MEDIUM_STYLES[medium];
  const words = `${name}: ${title}`;
  return compose(
    {
      id: `service-${medium}-${layer}`,
      title: words,
      alt: `${words}. ${pieces.length} stretches of runs, ${nodes.length} nodes: ${nodes
        .slice(0, 12)
        .map(({ id }) => id)
        .join(', ')}${nodes.length > 12 ? ' and more' : ''}; dashed, the access panels of this layer.`,
      ...layout,
      room: { ...layout.room, y0: layout.room.y0 + LEGEND_MM },
      front: view.front,
      units: a.model.shop.units,
      marks: [
        shellBox(shell, port, 'grid'),
        ...layerStructure(a.model, shell, layer, port),
        ...panels.marks,
        ...lines.marks,
        ...nodes.flatMap((node): readonly Mark[] => nodeMarks(node, port.place(node.at))),
      ],
      legend: legendMarks([medium], symbolsOf(nodes), [2, 3], sheet.widthMm - 4),
      wishes: [...panels.wishes, ...nodeWishes(of, port), ...lines.wishes],
      notes: [
        wordsFor(a.model)(note),
        'Dashed: access panels. Ids stand at ends; an arrow says where a run goes on; between the ends of a row the numbers follow.',
        of.planes.floorTaken ? 'The height of the floor is not recorded: it is taken.' : '',
        of.absent === 0
          ? ''
          : `Not drawn, as their place is not recorded: ${of.absent === 1 ? '1 node and its runs' : `${of.absent} nodes and their runs`}.`,
      ].filter(Boolean),
      rest: 'in the schedules',
      lists,
    },
    options,
  );
}

/** What a layer takes in its view, mm of the vehicle. */
function boundsOf({ a, layer, nodes, pieces }: LayerView): Rect {
  const places = [...nodes.map(({ at }) => at), ...pieces.flatMap(({ points }) => points)];
  return viewBounds(SIGHT_OF_LAYER[layer].view, extentCorners(widened(shellExtent(a.model), places)));
}

/** The scale that a layer has where it has a sheet to itself. */
const largestScale = (of: LayerView, sheet: SheetSize): string =>
  scaleText(layOut([{ view: SIGHT_OF_LAYER[of.layer].view, bounds: boundsOf(of) }], sheet, WHOLE_SHEET_STRIPS).reduction);

/** A name for each node that stands alone, for the ends of a row, and one for each crowd, which has a detail of its own. */
function nodeWishes({ nodes, crowded }: LayerView, port: Port): readonly LabelWish[] {
  const named = new Set<string>();
  const within = withinRows(nodes, (node) => port.place(node.at));
  return nodes.flatMap((node): readonly LabelWish[] => {
    if (within.has(node.id)) return [];
    const crowd = crowded.get(node.id);
    if (!crowd) return [nodeWish(node, port.place(node.at))];
    if (named.has(crowd.id)) return [];
    named.add(crowd.id);
    return [{ ...nodeWish(node, port.place(node.at)), text: `${crowd.id}: detail`, id: crowd.id, priority: 90 }];
  });
}

/** The shell, widened to whatever hangs below or beside it. */
function widened(shell: Extent, places: readonly Vec3[]): Extent {
  const axis = (k: 0 | 1 | 2): readonly [number, number] => [
    places.reduce((low, at) => Math.min(low, at[k]), shell.low[k]),
    places.reduce((high, at) => Math.max(high, at[k]), shell.high[k]),
  ];
  const [x, y, z] = [axis(0), axis(1), axis(2)];
  return { low: [x[0], y[0], z[0]], high: [x[1], y[1], z[1]] };
}

/** For chapters that walk through all media. */
export const mediaUsed = (a: Assessment): readonly Medium[] =>
  MEDIA.filter(
    (medium) =>
      a.model.shell.runs.some((run) => run.medium === medium) || a.model.shell.nodes.some((node) => node.medium === medium),
  );
