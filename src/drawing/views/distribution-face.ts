import type { Assessment } from '../../assess.js';
import { amps } from '../../quantity/format.js';
import type { Circuit, ServiceNode } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Mark, type Rect, rectangle, textMark } from '../scene.js';
import type { SheetSize } from '../sheet.js';
import { shorten } from '../text-width.js';
import { wordsFor } from '../wording.js';

/** One place for a fuse or breaker. */
interface Space {
  readonly row: number;
  readonly number: number;
  /** Absent: spare. */
  readonly node?: ServiceNode;
  readonly circuit?: Circuit;
}

const ROW_MM = 9.5;
const NUMBER_MM = 9;
const TOP_MM = 4;

/** Panels of fuses and breakers that have recorded positions. */
export const distributionPanels = ({ model: { shell } }: Assessment): readonly ServiceNode[] =>
  shell.nodes.filter((node) => node.nodeKind === 'panel' && spacesOf(shell, node).length > 0);

/** A panel of fuses or breakers as one stands before it: rows from the top, positions from the left, with what each feeds. */
export function distributionFace(a: Assessment, panel: ServiceNode, sheet: SheetSize, options: DrawingOptions = {}): Drawing {
  const { shell, shop } = a.model;
  const w = wordsFor(a.model);
  const spaces = spacesOf(shell, panel);
  const rows = [...new Set(spaces.map(({ row }) => row))].sort((x, y) => x - y);
  const most = Math.max(...rows.map((row) => spaces.filter((one) => one.row === row).length));
  const wide = (sheet.widthMm - 4) / most;
  const marks: Mark[] = rows.flatMap((row, i) =>
    spaces
      .filter((one) => one.row === row)
      .sort((x, y) => x.number - y.number)
      .flatMap((space, k) => {
        const [x0, y0] = [2 + k * wide, TOP_MM + i * ROW_MM];
        return spaceMarks(space, { x0, y0, x1: x0 + wide, y1: y0 + ROW_MM }, w('drawn.face.spare'));
      }),
  );
  const heightMm = TOP_MM + rows.length * ROW_MM + 3;
  const case_: Rect = { x0: 0.8, y0: TOP_MM - 2, x1: sheet.widthMm - 0.8, y1: heightMm - 1 };
  return compose(
    {
      id: `face-${panel.id}`,
      title: panel.name ? w('drawn.face', { id: panel.id, name: panel.name }) : w('drawn.face.plain', { id: panel.id }),
      alt: w('drawn.face.alt', {
        id: panel.id,
        count: spaces.length,
        rows: rows.length,
        list: spaces.map((one) => `${one.number} ${one.circuit?.name ?? one.node?.name ?? w('drawn.face.spare')}`).join(', '),
      }),
      widthMm: sheet.widthMm,
      heightMm,
      units: shop.units,
      room: case_,
      marks: [rectangle('background', 'edge', case_, panel.id), ...marks],
      wishes: [],
      furniture: false,
    },
    options,
  );
}

function spaceMarks({ number, node, circuit }: Space, rect: Rect, spare: string): readonly Mark[] {
  const middle = (rect.y0 + rect.y1) / 2;
  const typed = node?.rating?.dimension === 'current' ? node.rating.value : undefined;
  const rating = circuit?.protection?.ratingA ?? typed;
  const words = node === undefined ? spare : (circuit?.name ?? node.name ?? node.id);
  const from = rect.x0 + NUMBER_MM;
  const first = [rating === undefined ? undefined : amps(rating), circuit?.id ?? node?.id].filter(Boolean).join('  ');
  return [
    rectangle('panels', node === undefined ? 'slot-spare' : 'equipment', rect),
    textMark('labels', 'numeral', [rect.x0 + NUMBER_MM / 2, middle], String(number), { anchor: 'middle' }),
    ...(node === undefined
      ? [textMark('labels', 'name', [from, middle], words)]
      : [
          textMark('labels', 'name-strong', [from, middle - 2.1], shorten(first, 'name-strong', rect.x1 - from - 1), {
            id: circuit?.id ?? node.id,
          }),
          textMark('labels', 'name', [from, middle + 2], shorten(words, 'name', rect.x1 - from - 1)),
        ]),
  ];
}

/** Positions of what is wired to the panel, and its spare ones. */
function spacesOf({ nodes, runs, circuits }: Assessment['model']['shell'], panel: ServiceNode): readonly Space[] {
  const wired = new Set(runs.flatMap(({ from, to }) => (from === panel.id ? [to] : to === panel.id ? [from] : [])));
  const used = nodes.flatMap((node): readonly Space[] => {
    if (node.slot?.number === undefined || !wired.has(node.id)) return [];
    const circuit = circuits.find((one) => one.protection?.at === node.id);
    return [{ row: node.slot.row ?? 1, number: node.slot.number, node, ...(circuit ? { circuit } : {}) }];
  });
  const spare = (panel.spaces ?? [])
    .filter((one) => one.spare && one.number !== undefined)
    .map((one): Space => ({ row: one.row ?? 1, number: one.number as number }));
  return [...used, ...spare.filter((one) => !used.some(({ number }) => number === one.number))];
}
