import type { Medium, NodeKind, ServiceNode } from '../records/index.js';
import { circle, line, type Mark, type Point, rectArea } from './scene.js';
import type { PenName } from './styles.js';

/**
 * Symbols of the node kinds. The valve (two triangles point to point) and the drain funnel follow ISO 14617, the lamp-like load
 * and the source follow IEC 60617, both (unverified citation); the rest are plain shapes explained in each drawing's legend.
 */
export const NODE_SYMBOL_MM = 1.2;

const H = NODE_SYMBOL_MM;

type Painter = (at: Point, open: PenName, filled: PenName) => readonly Mark[];

const box =
  (halfX: number, halfY: number, solid: boolean): Painter =>
  ([x, y], open, filled) => [
    rectArea('nodes', solid ? filled : open, [
      [x - halfX, y - halfY],
      [x + halfX, y - halfY],
      [x + halfX, y + halfY],
      [x - halfX, y + halfY],
    ]),
  ];

const SYMBOLS: Readonly<Record<NodeKind, Painter>> = {
  source: (at, open, filled) => [circle('nodes', open, at, H), circle('nodes', filled, at, H * 0.5)],
  panel: (at, open, filled) => [
    ...box(H * 1.2, H * 0.9, false)(at, open, filled),
    ...box(H * 1.2, H * 0.3, true)(at, open, filled),
  ],
  terminal: (at, open) => [circle('nodes', open, at, H * 0.6)],
  splice: (at, _open, filled) => [circle('nodes', filled, at, H * 0.6)],
  connector: ([x, y], open) => [
    rectArea('nodes', open, [
      [x - H, y],
      [x, y - H * 0.8],
      [x + H, y],
      [x, y + H * 0.8],
    ]),
  ],
  junction: box(H * 0.7, H * 0.7, true),
  valve: ([x, y], open) => [
    rectArea('nodes', open, [
      [x - H * 1.1, y - H * 0.8],
      [x, y],
      [x - H * 1.1, y + H * 0.8],
    ]),
    rectArea('nodes', open, [
      [x + H * 1.1, y - H * 0.8],
      [x, y],
      [x + H * 1.1, y + H * 0.8],
    ]),
  ],
  fitting: ([x, y], open) => [
    line('nodes', open, [
      [x - H * 0.5, y - H * 0.5],
      [x + H * 0.5, y + H * 0.5],
    ]),
    line('nodes', open, [
      [x - H * 0.5, y + H * 0.5],
      [x + H * 0.5, y - H * 0.5],
    ]),
  ],
  drain: ([x, y], open) => [
    rectArea('nodes', open, [
      [x - H, y - H * 0.7],
      [x + H, y - H * 0.7],
      [x, y + H],
    ]),
  ],
  device: box(H * 0.8, H * 0.8, false),
  load: (at, open) => {
    const d = H * Math.SQRT1_2;
    const [x, y] = at;
    return [
      circle('nodes', open, at, H),
      line('nodes', open, [
        [x - d, y - d],
        [x + d, y + d],
      ]),
      line('nodes', open, [
        [x - d, y + d],
        [x + d, y - d],
      ]),
    ];
  },
  'test-point': (at, open, filled) => [circle('nodes', open, at, H * 0.8), circle('nodes', filled, at, H * 0.25)],
};

export function nodeSymbol(kind: NodeKind, medium: Medium, at: Point, id?: string): readonly Mark[] {
  const marks = SYMBOLS[kind](at, `node-${medium}`, `node-filled-${medium}`);
  return id === undefined ? marks : marks.map((mark) => ({ ...mark, id }));
}

export const nodeMarks = (node: ServiceNode, at: Point): readonly Mark[] => nodeSymbol(node.nodeKind, node.medium, at, node.id);

/** As the legend names them. */
export const NODE_WORDS: Readonly<Record<NodeKind, string>> = {
  source: 'source',
  panel: 'distribution panel',
  terminal: 'terminal',
  splice: 'splice',
  connector: 'connector',
  junction: 'junction',
  valve: 'valve',
  fitting: 'fitting',
  drain: 'drain',
  device: 'device',
  load: 'load',
  'test-point': 'test point',
};
