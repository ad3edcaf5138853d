import { isInPolygon } from '../../geometry/facet.js';
import type { Point } from '../../geometry/planar.js';
import type { Vec3 } from '../../geometry/vector.js';
import { isPlaced, type PlacedNode, placedNodes } from '../../model/placed.js';
import type { Panel, ServiceNode } from '../../records/index.js';
import type { Book } from '../book.js';
import { outsidePassages, SEALED_WORD } from '../passages.js';
import { table } from '../table.js';
import { PLACE_NOT_RECORDED, placeColumn, wayToNode } from '../where.js';

const WET = ['water', 'drain', 'hydraulic'];

/** Belly panel that a drop from a joint falls on: the highest one beneath it. */
function bellyBeneath(panels: readonly Panel[], node: Pick<PlacedNode, 'at'>): Panel | undefined {
  const [x, y, z] = node.at;
  const heightOf = (panel: Panel): number => Math.max(...panel.outline.map((corner) => corner[2]));
  return panels
    .filter((panel) => panel.panelKind === 'belly' && heightOf(panel) <= z)
    .filter((panel) =>
      isInPolygon(
        [x, y],
        panel.outline.map(([cx, cy]): Point => [cx, cy]),
      ),
    )
    .sort((a, b) => heightOf(b) - heightOf(a))[0];
}

const showsAt = ({ panel, lost }: { readonly panel: Panel | undefined; readonly lost?: boolean }): string =>
  lost ? PLACE_NOT_RECORDED : panel ? (panel.name ?? 'belly panel') : 'no belly panel beneath: on the floor, or at the joint';

/** Where a leak comes to light: each belly panel with the joints above it. */
export function leaksAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const all = shell.nodes.filter((node) => WET.includes(node.medium) && !['load', 'device'].includes(node.nodeKind));
  const joints = placedNodes(all);
  const above = new Map<string, { panel: Panel | undefined; nodes: ServiceNode[]; lost?: boolean }>();
  for (const node of joints) {
    const panel = bellyBeneath(shell.panels, node);
    const key = panel?.id ?? '';
    const entry = above.get(key) ?? { panel, nodes: [] };
    entry.nodes.push(node);
    above.set(key, entry);
  }
  const at = (one: { panel: Panel | undefined }) => (one.panel ? shell.panels.indexOf(one.panel) : shell.panels.length);
  const lost = all.filter((node) => !isPlaced(node));
  return table(book.show, {
    rows: [
      ...[...above.values()].sort((a, b) => at(a) - at(b)),
      ...(lost.length > 0 ? [{ panel: undefined, nodes: lost, lost: true }] : []),
    ],
    columns: (c) => [
      c.refs(
        'Shows at',
        (one) => [one.panel?.id],
        (one) => showsAt(one),
      ),
      c.refs('Joints above it', (one) => one.nodes.map((node) => node.id)),
      c.refs('Panels onto them', (one) => [...new Set(one.nodes.flatMap((node) => wayToNode(book, node.id).panels))].sort()),
    ],
    empty: 'No joint of water, waste or hydraulics is recorded.',
  });
}

/** Where runs pass the belly: spray comes in there too, and the sealing is renewed with the run. */
export function outsideHoles(book: Book) {
  const { runs, panels } = book.assessment.model.shell;
  const belly = new Set(panels.filter(({ panelKind }) => panelKind === 'belly').map(({ id }) => id));
  return table(book.show, {
    rows: runs.flatMap((run) => outsidePassages(book, run.id)).filter(({ through }) => belly.has(through)),
    columns: (c) => [
      c.refs('Run', (one) => [one.run]),
      c.refs('Passes', (one) => [one.through]),
      placeColumn(book, 'Where', (one) => one.at),
      c.text('Sealing', (one) => (one.sealed ? SEALED_WORD : 'not verified')),
      c.page((one) => one.run),
    ],
    empty: 'No run is recorded to pass a belly panel.',
  });
}

/** Holes that a wet cavity drips from, a cavity a row. */
export function drainHoles(book: Book) {
  const [first, second] = book.show.ways.length;
  const aft = (holes: readonly Vec3[], write = first?.write): string => holes.map(([x]) => write?.(x)).join(' · ');
  return table(book.show, {
    look: 'dense tight',
    rows: book.assessment.model.shell.zones.filter(({ drains = [] }) => drains.length > 0),
    columns: (c) => [
      c.refs(
        'Cavity',
        (zone) => [zone.id],
        (zone) => zone.name,
      ),
      c.text(
        'Drain holes, each so far aft',
        ({ drains = [] }) => aft(drains),
        ({ drains = [] }) => (second ? `${aft(drains, second.write)} ${second.unit}` : undefined),
      ),
      c.text('From the center line', ({ drains = [] }) => [...new Set(drains.map(([, y]) => acrossWords(book, y)))].join('; ')),
      c.page((zone) => zone.id),
    ],
    empty: 'No drain hole of a cavity is recorded: look at the lowest edge of each belly panel.',
  });
}

const acrossWords = ({ show }: Book, yMm: number): string =>
  Math.abs(yMm) < 1 ? 'on it' : `${show.length(Math.abs(yMm))} ${yMm < 0 ? 'left' : 'right'}`;
