import { behaviourOf, isElectric } from '../query/isolate/graph/behaviour.js';
import type { Medium, ServiceNode } from '../records/index.js';
import { circle, line, type Mark, type Point, rectArea, textMark } from './scene.js';
import type { PenName } from './styles.js';

/**
 * Symbols of plans and line diagrams, by what a node does. Electrical ones after IEC 60617, those of pipes after ISO 14617 (both from memory);
 * where neither has one for so broad a meaning, a frame with a letter, told in the legend. One meaning each.
 */
export type NodeSymbol = keyof typeof PAINTERS;

/** Half width of every symbol, mm. */
export const NODE_SYMBOL_MM = 1.6;
const H = NODE_SYMBOL_MM;

/** Pens of a medium: an outline filled with white, which is also a stroke, and a solid. */
interface Pens {
  readonly open: PenName;
  readonly filled: PenName;
}

type Painter = (at: Point, pens: Pens) => readonly Mark[];
const stroke = ({ open }: Pens, ...points: readonly Point[]): Mark => line('nodes', open, points);
const area = ({ open }: Pens, ...points: readonly Point[]): Mark => rectArea('nodes', open, points);
const solid = ({ filled }: Pens, ...points: readonly Point[]): Mark => rectArea('nodes', filled, points);
const dot = ({ filled }: Pens, at: Point, radiusMm: number): Mark => circle('nodes', filled, at, radiusMm);
const ringAt = ({ open }: Pens, at: Point, radiusMm: number): Mark => circle('nodes', open, at, radiusMm);
const corners = ([x, y]: Point, w: number, h: number): readonly Point[] => [
  [x - w, y - h],
  [x + w, y - h],
  [x + w, y + h],
  [x - w, y + h],
];
const frame = (pens: Pens, at: Point, w = H, h = H): Mark => area(pens, ...corners(at, w, h));
/** The line that the symbol stands in is broken here. */
const gap = (at: Point, w: number, h: number): Mark => rectArea('nodes', 'weld-backing', corners(at, w, h));
const lettered =
  (letters: string, round: boolean): Painter =>
  (at, pens) => [round ? ringAt(pens, at, H) : frame(pens, at), textMark('nodes', 'letter', at, letters, { anchor: 'middle' })];
const bowtie: Painter = ([x, y], pens) => [
  area(pens, [x - H, y - 1.1], [x, y], [x - H, y + 1.1]),
  area(pens, [x + H, y - 1.1], [x, y], [x + H, y + 1.1]),
];
/** Contact that opens: a gap in the line and a blade over it. */
const contact: Painter = ([x, y], pens) => [
  gap([x, y], H, 0.4),
  dot(pens, [x - H, y], 0.3),
  dot(pens, [x + H, y], 0.3),
  stroke(pens, [x - H, y], [x + H * 0.8, y - 1.5]),
];

const PAINTERS = {
  battery: ([x, y], p) => [
    gap([x, y], 0.5, 1),
    stroke(p, [x - 0.5, y - H], [x - 0.5, y + H]),
    solid(p, [x + 0.4, y - 0.9], [x + 0.8, y - 0.9], [x + 0.8, y + 0.9], [x + 0.4, y + 0.9]),
  ],
  generator: lettered('G', true),
  inlet: (at, p) => [ringAt(p, at, H), dot(p, at, 0.7)],
  solar: ([x, y], p) => [frame(p, [x, y]), stroke(p, [x - H, y], [x, y - H]), stroke(p, [x - H, y + H], [x + H, y - H])],
  converter: ([x, y], p) => [frame(p, [x, y]), stroke(p, [x - H, y + H], [x + H, y - H])],
  fuse: ([x, y], p) => [frame(p, [x, y], H, 0.7), stroke(p, [x - H, y], [x + H, y])],
  breaker: ([x, y], p) => [
    ...contact([x, y], p),
    stroke(p, [x + H - 0.6, y - 0.6], [x + H + 0.6, y + 0.6]),
    stroke(p, [x + H - 0.6, y + 0.6], [x + H + 0.6, y - 0.6]),
  ],
  switch: contact,
  changeover: ([x, y], p) => [...contact([x, y], p), dot(p, [x + H, y - 1.5], 0.3)],
  bar: (at, p) => [solid(p, ...corners(at, 0.5, H))],
  joint: (at, p) => [dot(p, at, 0.7)],
  terminal: (at, p) => [ringAt(p, at, 0.8)],
  plug: ([x, y], p) => [area(p, [x - H, y], [x, y - 1.2], [x + H, y], [x, y + 1.2])],
  lamp: ([x, y], p) => {
    const d = H * Math.SQRT1_2;
    return [ringAt(p, [x, y], H), stroke(p, [x - d, y - d], [x + d, y + d]), stroke(p, [x - d, y + d], [x + d, y - d])];
  },
  load: (at, p) => [frame(p, at, H, 0.9)],
  outlet: ([x, y], p) => [area(p, ...halfRound([x, y])), stroke(p, [x - H, y], [x, y])],
  tank: ([x, y], p) => [frame(p, [x, y], H, 1.3), stroke(p, [x - H, y - 0.5], [x + H, y - 0.5])],
  cylinder: ([x, y], p) => [
    area(p, [x - 0.8, y + H], [x - 0.8, y - 0.8], [x - 0.4, y - H], [x + 0.4, y - H], [x + 0.8, y - 0.8], [x + 0.8, y + H]),
  ],
  pump: ([x, y], p) => [ringAt(p, [x, y], H), solid(p, [x - 0.6, y - 1], [x + H * 0.95, y], [x - 0.6, y + 1])],
  compressor: ([x, y], p) => [
    ringAt(p, [x, y], H),
    stroke(p, [x - 1.1, y - 1.1], [x + 1.45, y - 0.6]),
    stroke(p, [x - 1.1, y + 1.1], [x + 1.45, y + 0.6]),
  ],
  valve: bowtie,
  regulator: ([x, y], p) => [...bowtie([x, y], p), stroke(p, [x, y], [x, y - 0.9]), frame(p, [x, y - 1.15], 0.7, 0.3)],
  'check valve': ([x, y], p) => [
    area(p, [x - H, y - 1.1], [x, y], [x - H, y + 1.1]),
    solid(p, [x + H, y - 1.1], [x, y], [x + H, y + 1.1]),
  ],
  heater: lettered('H', false),
  accumulator: ([x, y], p) => [ringAt(p, [x, y], H), stroke(p, [x - H, y], [x + H, y])],
  tap: ([x, y], p) => [
    stroke(p, [x - H, y], [x, y]),
    stroke(p, [x, y - 1.2], [x, y + 1.2]),
    area(p, [x, y - 0.7], [x + H, y], [x, y + 0.7]),
  ],
  drain: ([x, y], p) => [area(p, [x - H, y - 1], [x + H, y - 1], [x, y + H])],
  'test point': lettered('T', true),
  device: lettered('?', false),
} as const satisfies Record<string, Painter>;

/** The round half of a disc, to the left of a straight edge. */
function halfRound([x, y]: Point): readonly Point[] {
  return Array.from({ length: 13 }, (_, k): Point => {
    const angle = Math.PI / 2 + (Math.PI * k) / 12;
    return [x + H / 2 + H * Math.cos(angle), y + H * Math.sin(angle)];
  });
}

/** As the legend names them. */
export const SYMBOL_WORDS: Readonly<Record<NodeSymbol, string>> = {
  battery: 'battery',
  generator: 'generator, alternator',
  inlet: 'inlet',
  solar: 'solar panel',
  converter: 'charger, converter, inverter',
  fuse: 'fuse',
  breaker: 'circuit breaker',
  switch: 'switch',
  changeover: 'transfer switch',
  bar: 'bus bar, distribution panel',
  joint: 'splice, junction, fitting',
  terminal: 'terminal',
  plug: 'plug, connector',
  lamp: 'lamp',
  load: 'appliance',
  outlet: 'outlet',
  tank: 'tank, reservoir',
  cylinder: 'cylinder',
  pump: 'pump',
  compressor: 'compressor',
  valve: 'valve',
  regulator: 'regulator',
  'check valve': 'check valve',
  heater: 'heater',
  accumulator: 'accumulator, capacitor',
  tap: 'tap, fixture',
  drain: 'drain',
  'test point': 'test point',
  device: 'what it does is not recorded',
};

const BY_ROLE: Partial<Record<NonNullable<ServiceNode['role']>, NodeSymbol>> = {
  ...{ battery: 'battery', generator: 'generator', alternator: 'generator', 'shore inlet': 'inlet', 'city inlet': 'inlet' },
  ...{ 'solar panel': 'solar', charger: 'converter', converter: 'converter', inverter: 'converter' },
  ...{ 'inverter charger': 'converter', 'solar regulator': 'converter', fuse: 'fuse', breaker: 'breaker', switch: 'switch' },
  ...{ 'shut-off': 'valve', changeover: 'changeover', busbar: 'bar', junction: 'joint', splice: 'joint', terminal: 'terminal' },
  ...{ plug: 'plug', lamp: 'lamp', appliance: 'load', outlet: 'outlet', tank: 'tank', reservoir: 'tank', cylinder: 'cylinder' },
  ...{ pump: 'pump', compressor: 'compressor', 'gas regulator': 'regulator', 'check valve': 'check valve', heater: 'heater' },
  ...{ accumulator: 'accumulator', capacitor: 'accumulator', tap: 'tap', fixture: 'tap', 'drain cock': 'drain' },
};

const BY_KIND: Readonly<Record<ServiceNode['nodeKind'], NodeSymbol>> = {
  ...{ source: 'inlet', panel: 'bar', terminal: 'terminal', splice: 'joint', connector: 'plug', junction: 'joint' },
  ...{ valve: 'valve', fitting: 'joint', drain: 'drain', device: 'device', load: 'load', 'test-point': 'test point' },
};

/** By its role, else by its kind: a valve of an electrical service is a switch. */
function symbolOf(node: ServiceNode): NodeSymbol {
  const found = (node.role && BY_ROLE[node.role]) ?? BY_KIND[node.nodeKind];
  return found === 'valve' && isElectric(node.medium) && behaviourOf(node).way === 'parts' ? 'switch' : found;
}

export const symbolMarks = (symbol: NodeSymbol, medium: Medium, at: Point, id?: string): readonly Mark[] =>
  PAINTERS[symbol](at, { open: `node-${medium}`, filled: `node-filled-${medium}` }).map((mark) =>
    id === undefined || mark.kind === 'text' ? mark : { ...mark, id },
  );

export const nodeMarks = (node: ServiceNode, at: Point): readonly Mark[] => symbolMarks(symbolOf(node), node.medium, at, node.id);

/** The symbols of some nodes, each once, in the order of the legend. */
export const symbolsOf = (nodes: readonly ServiceNode[]): readonly NodeSymbol[] => {
  const used = new Set(nodes.map(symbolOf));
  return (Object.keys(SYMBOL_WORDS) as NodeSymbol[]).filter((symbol) => used.has(symbol));
};
