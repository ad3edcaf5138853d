import type { Assessment } from '../../assess.js';
import { behaviourOf } from '../../query/isolate/graph/behaviour.js';
import type { Medium, Run, ServiceNode, Shell } from '../../records/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { usedBounds } from '../crop.js';
import { legendMarks } from '../legend.js';
import { blocksOf, type DiagramBlock } from '../line-diagram/blocks.js';
import { type BackBranch, type DiagramPage, diagramPages, type Placed } from '../line-diagram/rows.js';
import { type JoinedAt, type Leg, serviceTrees } from '../line-diagram/tree.js';
import { colourWords, legId, ratingWords, wireSizeWords } from '../line-diagram/words.js';
import { line, type Mark, type Point, textMark } from '../scene.js';
import type { SheetSize } from '../sheet.js';
import type { TextStyleName } from '../styles.js';
import { NODE_SYMBOL_MM, nodeMarks, symbolsOf } from '../symbols.js';
import { shorten, textWidthMm } from '../text-width.js';

/** Between the symbols of two columns, and from the sheet's edge to the first, mm. */
const COLUMN_MM = 27;
const EDGE_MM = 7;
/** One row: the id over its line, the run under it. */
const ROW_MM = 9.8;
/** The middle of an id over its line, and of a run's words under it, mm. */
const ID_UP_MM = 3.9;
const RUN_DOWN_MM = 2.2;
/** The middle of what is said over a run, mm. */
const NOTE_UP_MM = 1.7;
/** Notes at the foot of a sheet, mm. */
const FOOT_MM = 12;
const AIR_MM = 1;

interface Diagram {
  readonly shell: Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'services'>;
  readonly sheet: SheetSize;
  /** Where the first row begins, mm. */
  readonly topMm: number;
  /** Circuits that bond metal to ground: they feed nothing. */
  readonly bonds: ReadonlySet<string>;
}

/** Each service as a line diagram, from its sources at the left to what it feeds at the right; as many sheets as it takes. */
export function lineDiagrams(a: Assessment, medium: Medium, sheet: SheetSize, options: DrawingOptions = {}): readonly Drawing[] {
  const { shell } = a.model;
  return shell.services
    .filter((service) => service.medium === medium)
    .flatMap((service) => {
      const runs = shell.runs.filter((run) => run.service === service.id && !run.abandoned);
      const bonds = bondsOf(shell);
      const nodes = nodesOf(shell, service.id, runs);
      const legend = legendMarks([service.medium], symbolsOf(nodes), [2, 3], sheet.widthMm - 4);
      const topMm = (usedBounds(legend)?.y1 ?? 4) + 3;
      const mostRows = Math.max(4, Math.floor((sheet.heightMm - topMm - FOOT_MM) / ROW_MM));
      // The lowest first: in a book it has room below a table.
      const pages = [...diagramPages(blocksOf(treesOf(nodes, runs, bonds)), mostRows)].sort(
        (one, other) => one.rows - other.rows,
      );
      const diagram: Diagram = { shell, sheet, topMm, bonds };
      const sized = runs.every((run) => wireSizeWords(shell, run));
      return pages.map((page, at) => {
        const part = pages.length > 1 ? `, ${at + 1} of ${pages.length}` : '';
        const title = `${service.name}: line diagram${part}`;
        return compose(
          {
            id: `line-${service.id}${pages.length > 1 ? `-${at + 1}` : ''}`,
            title,
            alt: `${title}. ${described(page)}`,
            widthMm: sheet.widthMm,
            heightMm: topMm + page.rows * ROW_MM + FOOT_MM,
            units: a.model.shop.units,
            room: { x0: 1, y0: topMm, x1: sheet.widthMm - 1, y1: topMm + page.rows * ROW_MM },
            marks: page.placed.flatMap((one) => marksOf(diagram, one)),
            legend,
            wishes: [],
            notes: [
              'Not to scale. From left to right: away from the source. Over a line: what stands in it, and its rating; under it: the run and its size.',
              sized
                ? 'Sizes that find no room here stand in the list of runs.'
                : 'A run without a size: see the list of runs; for some none is recorded.',
            ].filter(Boolean),
          },
          options,
        );
      });
    });
}

/** Nodes of a service, and those of another that its runs end on. */
function nodesOf(shell: Pick<Shell, 'nodes'>, service: string, runs: readonly Run[]): readonly ServiceNode[] {
  const ends = new Set(runs.flatMap(({ from, to }) => [from, to]));
  return shell.nodes.filter((node) => node.service === service || ends.has(node.id));
}

const bondsOf = ({ circuits }: Pick<Shell, 'circuits'>): ReadonlySet<string> =>
  new Set(circuits.filter(({ bonding }) => bonding).map(({ id }) => id));

const isBond = ({ circuit }: Run, bonds: ReadonlySet<string>): boolean => circuit !== undefined && bonds.has(circuit);

/** What feeds first, then the ground bonds by themselves: a bond is no branch of what is fed. */
function treesOf(nodes: readonly ServiceNode[], runs: readonly Run[], bonds: ReadonlySet<string>): readonly Leg[] {
  const bonding = runs.filter((run) => isBond(run, bonds));
  const feeding = runs.filter((run) => !isBond(run, bonds));
  const endsOf = (some: readonly Run[]): ReadonlySet<string> => new Set(some.flatMap(({ from, to }) => [from, to]));
  const [bonded, fed] = [endsOf(bonding), endsOf(feeding)];
  return [
    ...serviceTrees(
      nodes.filter(({ id }) => fed.has(id) || !bonded.has(id)),
      feeding,
    ),
    ...serviceTrees(
      nodes.filter(({ id }) => bonded.has(id)),
      bonding,
    ),
  ];
}

/** What a reader who cannot see it is told: how each block branches. */
function described({ placed }: DiagramPage): string {
  return placed
    .flatMap((one) => {
      if (one.kind !== 'title') return [];
      const fed = one.block.strips.map(({ to, back }) => (to ? legId(to) : back)).slice(0, 8);
      const more = one.block.strips.length > fed.length ? ' and more' : '';
      return [`From ${legId(one.block.root)} to ${fed.length > 0 ? `${fed.join(', ')}${more}` : 'nothing'}.`];
    })
    .join(' ');
}

const xOf = (column: number): number => EDGE_MM + column * COLUMN_MM;

function marksOf(diagram: Diagram, one: Placed): readonly Mark[] {
  const y = diagram.topMm + (one.row + 0.5) * ROW_MM + 1;
  switch (one.kind) {
    case 'title':
      return titleMarks(diagram, one.block, one.continued, y);
    case 'root':
      return rootMarks(one.leg, y, diagram.topMm + (one.lastRow + 0.5) * ROW_MM + 1);
    case 'leg':
      return legMarks(diagram, one, [xOf(one.column), y]);
    case 'back':
      return backMarks(one.branch, [xOf(one.column), y]);
    case 'run':
      return runLineMarks(diagram, one, y, diagram.topMm + (one.fromRow + 0.5) * ROW_MM + 1);
  }
}

/** The id of a block's root over it, with its name. */
function titleMarks({ shell, sheet, bonds }: Diagram, block: DiagramBlock, continued: boolean, y: number): readonly Mark[] {
  const { root, from, strips } = block;
  const node = root.nodes[0] as ServiceNode;
  const id = legId(root);
  const rating = ratingWords(shell, root.nodes.at(-1) as ServiceNode);
  const words = [
    node.name,
    rating,
    from === undefined ? undefined : `from ${from}`,
    strips.length > 0 && strips.every(({ run }) => isBond(run, bonds)) ? 'ground bonds' : undefined,
    strips.length === 0 && root.within.length === 0 ? unjoinedWords(shell, node) : undefined,
    continued ? 'continued' : undefined,
  ]
    .filter(Boolean)
    .join(', ');
  const x = EDGE_MM - NODE_SYMBOL_MM;
  const wide = textWidthMm(id, 'id-strong') + 2;
  return [
    textMark('labels', 'id-strong', [x, y + 1], id, { id: node.id }),
    textMark('labels', 'name', [x + wide, y + 1.2], shorten(words, 'name', sheet.widthMm - x - wide - 2)),
  ];
}

/** Why nothing hangs on it. */
const unjoinedWords = ({ runs }: Pick<Shell, 'runs'>, { id }: ServiceNode): string =>
  runs.some(({ from, to }) => from === id || to === id) ? 'its run is abandoned' : 'no run of this service recorded';

/** Where what hangs on a node branches off: at its far edge, so that all of it is seen to lie behind a switch; on a bar, on the bar. */
const stemMm = (node: ServiceNode): number => (behaviourOf(node).way === 'joins' ? 0 : NODE_SYMBOL_MM);

/** A source by its symbol; with several branches on a bar. */
function rootMarks(leg: Leg, y: number, lastY: number): readonly Mark[] {
  const node = leg.nodes.at(-1) as ServiceNode;
  const at: Point = [xOf(0), y];
  if (lastY - y < 1) return nodeMarks(node, at);
  const x = at[0] + stemMm(node);
  const top: Point = [x, y];
  return [{ ...line('runs', `run-${node.medium}`, [top, [x, lastY + 1.5]], node.id), widthMm: 0.7 }, ...nodeMarks(node, at)];
}

function runLineMarks(
  diagram: Diagram,
  { run, column, note, leg, over }: Extract<Placed, { readonly kind: 'run' }>,
  y: number,
  fromY: number,
): readonly Mark[] {
  const [x0, x1] = [xOf(column - 1), xOf(column)];
  const stem = x0 + stemMm(leg.nodes.at(-1) as ServiceNode);
  const way: readonly Point[] =
    fromY === y
      ? [
          [x0, y],
          [x1, y],
        ]
      : [
          [stem, fromY],
          [stem, y],
          [x1, y],
        ];
  const x = x0 + NODE_SYMBOL_MM + 0.5;
  const room = COLUMN_MM - 2 * NODE_SYMBOL_MM - 1;
  const wide = textWidthMm(run.id, 'name') + 1;
  const words = sizeThatFits(wireSizeWords(diagram.shell, run), room - wide);
  return [
    line('runs', `run-${run.medium}`, way, run.id),
    textMark('labels', 'name', [x, y + RUN_DOWN_MM], shorten(run.id, 'name', room), { id: run.id }),
    ...(words ? [textMark('labels', 'name', [x + wide, y + RUN_DOWN_MM], words)] : []),
    ...(note
      ? [
          textMark(
            'labels',
            'name',
            [x, y - NOTE_UP_MM],
            noteWords(note, over ? room - overLine(diagram, over).beforeMm : room),
            { id: note.id },
          ),
        ]
      : []),
  ];
}

/** Where it is joined, in words as short as the room wants. */
function noteWords({ id, side }: JoinedAt, roomMm: number): string {
  const words =
    side === undefined
      ? [`side of ${id} not recorded`, `side not recorded`]
      : [`on ${id}, ${side} side`, `on ${id} ${side}`, `${id} ${side}`, id];
  return words.find((one) => textWidthMm(one, 'name') <= roomMm) ?? shorten(words.at(-1) as string, 'name', roomMm);
}

/** A size whole, else without its material, else none: half a size is a wrong one. */
function sizeThatFits(size: string | undefined, roomMm: number): string | undefined {
  const measure = /^\S+ (?:in|mm|AWG|mm²)(?= )/u.exec(size ?? '')?.[0];
  return [size, measure].find((words) => words !== undefined && textWidthMm(words, 'name') <= roomMm);
}

type PlacedLeg = Extract<Placed, { readonly kind: 'leg' }>;

function legMarks(diagram: Diagram, placed: PlacedLeg, at: Point): readonly Mark[] {
  const { leg, elsewhere } = placed;
  const node = leg.nodes[0] as ServiceNode;
  const last = leg.nodes.at(-1) as ServiceNode;
  const symbol = nodeMarks(last, at);
  if (leg.branches.length === 0 || elsewhere) return [...symbol, ...endWords(diagram, placed, at)];
  const { id, style, wide, rating, beforeMm } = overLine(diagram, leg);
  const x = at[0] - beforeMm;
  return [
    ...symbol,
    textMark('labels', style, [x, at[1] - ID_UP_MM], shorten(id, style, OVER_ROOM_MM), { id: node.id }),
    ...(rating ? [textMark('labels', 'name', [x + wide + 1, at[1] - ID_UP_MM + 0.2], rating)] : []),
  ];
}

const OVER_ROOM_MM = COLUMN_MM - 1;

/** The id of a leg over its line, with its rating where there is room for both; `beforeMm`: how far it reaches before the symbol. */
function overLine({ shell }: Diagram, leg: Leg) {
  const id = legId(leg);
  const style: TextStyleName = textWidthMm(id, 'id-large') <= OVER_ROOM_MM ? 'id-large' : 'name';
  const wide = textWidthMm(id, style);
  const rated = ratingWords(shell, leg.nodes.at(-1) as ServiceNode);
  const withRating = rated === undefined ? wide : wide + 1 + textWidthMm(rated, 'name');
  const rating = withRating <= OVER_ROOM_MM + 6 ? rated : undefined;
  return { id, style, wide, rating, beforeMm: Math.min((rating ? withRating : wide) / 2, COLUMN_MM / 2 - 0.5) };
}

/** What stands at the end of a line, to its right: id, name, rating, the wire's colour. */
function endWords({ shell, sheet }: Diagram, { leg, elsewhere, run }: PlacedLeg, [x, y]: Point): readonly Mark[] {
  const node = leg.nodes[0] as ServiceNode;
  const last = leg.nodes.at(-1) as ServiceNode;
  const id = legId(leg);
  const from = x + NODE_SYMBOL_MM + AIR_MM;
  const wide = textWidthMm(id, 'id-large') + 1.5;
  const words = [
    elsewhere ? 'goes on below' : undefined,
    node.name,
    ratingWords(shell, last),
    elsewhere ? undefined : colourWords(shell, run),
  ]
    .filter(Boolean)
    .join(', ');
  const room = sheet.widthMm - from - wide - 1;
  return [
    textMark('labels', 'id-large', [from, y], id, { id: node.id }),
    ...(room > 8 && words ? [textMark('labels', 'name', [from + wide, y + 0.2], shorten(words, 'name', room))] : []),
  ];
}

/** The node at the other end of a run, which stands elsewhere in the diagram. */
function backMarks({ back, flow, side }: BackBranch, [x, y]: Point): readonly Mark[] {
  const words = `${flow} ${back}`;
  const at = x + AIR_MM;
  return [
    textMark('labels', 'id-large', [at, y], words, { id: back }),
    ...(side ? [textMark('labels', 'name', [at + textWidthMm(words, 'id-large') + 1.5, y + 0.2], `its ${side} side`)] : []),
  ];
}
