import type { Medium } from '../records/index.js';
import { MEDIUM_STYLES } from './media.js';

import type { Pen } from './pen.js';

export { LINE_WIDTHS_MM, type LineWidthMm, type Pen } from './pen.js';

const INK = '#1c2126';
const GREY = '#7b848b';
const PALE = '#b9c0c4';
const PAPER = '#ffffff';

const PLAIN_PENS = {
  member: { widthMm: 0.25, colour: INK, fill: PAPER },
  'member-cut': { widthMm: 0.5, colour: INK, fill: '#c4cacd' },
  plate: { widthMm: 0.25, colour: INK, fill: '#e6e9ea' },
  hidden: { widthMm: 0.18, colour: GREY, dash: [1.6, 0.8] },
  context: { widthMm: 0.13, colour: PALE, fill: PAPER },
  chassis: { widthMm: 0.25, colour: GREY, fill: '#f1f3f3' },
  tyre: { widthMm: 0.25, colour: GREY, dash: [2, 1] },
  ground: { widthMm: 0.35, colour: GREY },
  centre: { widthMm: 0.13, colour: GREY, dash: [6, 0.8, 0.6, 0.8] },
  skin: { widthMm: 0.35, colour: INK, fill: '#f7f8f7' },
  'skin-line': { widthMm: 0.35, colour: INK },
  interior: { widthMm: 0.25, colour: INK, fill: '#f7f8f7' },
  access: { widthMm: 0.5, colour: INK, fill: '#dfe6e4' },
  'access-context': { widthMm: 0.25, colour: GREY, dash: [1.6, 0.8] },
  subject: { widthMm: 0.7, colour: INK, fill: '#9fb3ac' },
  opening: { widthMm: 0.35, colour: INK, fill: PAPER },
  edge: { widthMm: 0.7, colour: INK },
  'edge-thin': { widthMm: 0.13, colour: INK },
  equipment: { widthMm: 0.25, colour: INK, fill: '#eef1f0' },
  'equipment-strong': { widthMm: 0.5, colour: INK, fill: '#dfe6e4' },
  mark: { widthMm: 0.25, colour: INK, fill: PAPER },
  'mark-filled': { widthMm: 0.25, colour: INK, fill: INK },
  dimension: { widthMm: 0.18, colour: INK },
  arrow: { widthMm: 0.13, colour: INK, fill: INK },
  leader: { widthMm: 0.13, colour: '#4b545a' },
  'badge-leader': { widthMm: 0.25, colour: INK },
  'leader-dot': { widthMm: 0.13, colour: '#4b545a', fill: '#4b545a' },
  'weld-symbol': { widthMm: 0.25, colour: INK },
  'weld-symbol-dashed': { widthMm: 0.25, colour: INK, dash: [1.4, 0.7] },
  'weld-backing': { widthMm: 0.13, colour: PAPER, fill: PAPER },
  'weld-band': { widthMm: 0.13, colour: GREY, fill: '#d3d9dc' },
  'weld-frame': { widthMm: 0.18, colour: GREY },
  'weld-ring': { widthMm: 0.25, colour: INK },
  'weld-place': { widthMm: 0.13, colour: INK, fill: INK },
  'weld-member': { widthMm: 0.18, colour: GREY, fill: PAPER },
  'weld-plate': { widthMm: 0.18, colour: GREY, fill: '#f4f6f6' },
  'weld-joined': { widthMm: 0.13, colour: PALE, fill: PAPER },
  // Over a photo: a pale casing under each line keeps it apart from any ground.
  casing: { widthMm: 0.7, colour: PAPER },
  'seen-member': { widthMm: 0.25, colour: INK },
  'seen-member-behind': { widthMm: 0.18, colour: INK, dash: [1.6, 0.8] },
  'seen-panel': { widthMm: 0.5, colour: INK },
  'seen-panel-behind': { widthMm: 0.35, colour: INK, dash: [1.6, 0.8] },
  // Dots along a panel's edge: it is held by screws there. Where each sits is not on record.
  'screw-row': { widthMm: 0.7, colour: INK, dash: [0.7, 2.4] },
  'seen-opening': { widthMm: 0.5, colour: INK, dash: [6, 0.8, 0.6, 0.8] },
  'known-point': { widthMm: 0.35, colour: INK, fill: PAPER },
  glyph: { widthMm: 0.13, colour: INK, fill: INK, bare: true },
  measured: { widthMm: 0.5, colour: INK },
  nominal: { widthMm: 0.18, colour: GREY, dash: [2, 1] },
  furniture: { widthMm: 0.18, colour: INK },
  'furniture-filled': { widthMm: 0.18, colour: INK, fill: INK },
  grid: { widthMm: 0.13, colour: PALE },
  axis: { widthMm: 0.25, colour: INK },
  bar: { widthMm: 0.25, colour: INK, fill: '#b7c6c0' },
  'bar-over': { widthMm: 0.5, colour: INK, fill: '#5d6b66' },
  limit: { widthMm: 0.7, colour: INK },
  whisker: { widthMm: 0.25, colour: INK },
  'series-1': { widthMm: 0.5, colour: INK },
  'series-2': { widthMm: 0.5, colour: '#1c5a85', dash: [3, 0.8] },
  'series-3': { widthMm: 0.5, colour: '#9a4a12', dash: [4, 0.8, 0.6, 0.8] },
  'series-4': { widthMm: 0.5, colour: '#5b2f74', dash: [0.6, 0.8] },
  'gauge-ready': { widthMm: 0.18, colour: INK, fill: '#5d6b66' },
  'gauge-most': { widthMm: 0.25, colour: INK, fill: '#d5dedb' },
  'bay-right': { widthMm: 0.35, colour: INK, dash: [1.6, 0.8] },
  // Told apart by the figure in each: the tone only helps.
  'area-none': { widthMm: 0.25, colour: INK, fill: '#b9c0c4' },
  'area-short': { widthMm: 0.18, colour: GREY, fill: '#e6e9ea' },
  'area-free': { widthMm: 0.18, colour: GREY, fill: PAPER },
  'slot-spare': { widthMm: 0.25, colour: GREY, fill: PAPER, dash: [1.6, 0.8] },
  'cover-shell': { widthMm: 0.18, colour: '#8d979c', fill: '#eef2ef' },
  'cover-dark': { widthMm: 0.35, colour: INK, fill: '#c9d3cf' },
  'cover-tyre': { widthMm: 0.5, colour: INK, fill: '#5b646a' },
  'cover-hub': { widthMm: 0.35, colour: INK, fill: '#dfe6e4' },
  // Four tones, and a line along the middle that tells them apart without any: none, white, dark, grey.
  'depth-1': { widthMm: 0.5, colour: '#7a1f12' },
  'depth-2': { widthMm: 0.5, colour: '#c0622a', core: { colour: PAPER, widthMm: 0.35 } },
  'depth-3': { widthMm: 0.5, colour: '#dfa35f', core: { colour: INK, widthMm: 0.25 } },
  'depth-4': { widthMm: 0.5, colour: '#f0d7b3', core: { colour: GREY, widthMm: 0.13 } },
  // What must not be cut into: a pale band under the line, and numbers in pale shapes with a heavy edge.
  'danger-gas': { widthMm: 0.7, colour: '#fbe7b4' },
  'danger-ac': { widthMm: 0.7, colour: '#eed9f5' },
  'danger-box': { widthMm: 0.7, colour: INK, fill: '#d5d9db' },
  'badge-gas': { widthMm: 0.7, colour: '#8a5e00', fill: '#ffe08a' },
  'badge-fuel': { widthMm: 0.7, colour: INK, fill: '#dfe3e4' },
  'badge-mains': { widthMm: 0.7, colour: '#7d2a9c', fill: '#f1dff8' },
  'badge-battery': { widthMm: 0.7, colour: '#9a1f08', fill: '#fcdcd5' },
  'weld-soft': { widthMm: 0.18, colour: INK, dash: [0.8, 0.8] },
} satisfies Record<string, Pen>;

export type PenName =
  | keyof typeof PLAIN_PENS
  | `run-${Medium}`
  | `run-behind-${Medium}`
  | `node-${Medium}`
  | `node-filled-${Medium}`;

/** Every line that a drawing may use: width, colour and pattern together. */
export const PENS: Readonly<Record<PenName, Pen>> = {
  ...PLAIN_PENS,
  ...(Object.fromEntries(
    Object.entries(MEDIUM_STYLES).flatMap(([medium, style]) => [
      [`run-${medium}`, style.pen],
      // Behind something a run is thinner and paler by its gaps: its own pattern would read as another medium’s.
      [`run-behind-${medium}`, { widthMm: 0.18, colour: style.colour, dash: [0.6, 1.2] }],
      [`node-${medium}`, { widthMm: 0.25, colour: style.colour, fill: PAPER }],
      [`node-filled-${medium}`, { widthMm: 0.25, colour: style.colour, fill: style.colour }],
    ]),
  ) as Record<`run-${Medium}` | `run-behind-${Medium}` | `node-${Medium}` | `node-filled-${Medium}`, Pen>),
};

/** Dash and gap of what is planned, mm: gaps as wide as the dashes, which no medium and no hidden line has. */
export const PLANNED_DASH: readonly number[] = [2.4, 2.4];

/** Pens of words, symbols and measures, whose pattern says something of its own. */
export const isOutlinePen = (pen: PenName): boolean =>
  !/^(?:weld-(?:symbol|backing|frame|ring)|leader|badge|dimension|arrow|glyph|casing|furniture|grid|axis)/u.test(pen);

/**
 * Whether words never lie on a line of this pen: outlines, hatches and areas of hazard, runs and symbols. They may break what only
 * says where things are: the pale structure, the grid of a chart, a centre line, a leader, a dimension line.
 */
export const keepsLabelsOff = (pen: PenName): boolean =>
  !/^(?:context|hidden|chassis|tyre|ground|centre|nominal|weld|leader|badge|dimension|arrow|glyph|casing|furniture|grid|axis|area|slot|gauge|bar|limit|whisker|series|cover)/u.test(
    pen,
  ) || pen === 'weld-soft';

/** What is painted first lies undermost. */
export const LAYERS = [
  'ground',
  'background',
  'chassis',
  'structure',
  'panels',
  'hidden',
  'outlines',
  'equipment',
  'runs',
  'nodes',
  'dimensions',
  'leaders',
  'labels',
  'furniture',
] as const;
export type Layer = (typeof LAYERS)[number];

export interface TextStyle {
  readonly sizeMm: number;
  readonly bold: boolean;
  readonly colour: string;
}

/** Height of the capitals of both typefaces as a share of the size of the font; a test holds it to the fonts. */
export const CAPITAL_SHARE = 0.668;

/** Heights of lettering of ISO 3098-1 (from memory), mm: that of the capitals, as printed. */
export const LETTER_HEIGHTS_MM = { least: 1.8, underCoach: 2.5 } as const;

/** Size of the font, mm, whose capitals are no lower than this. */
const sizeFor = (heightMm: number): number => Math.ceil((heightMm / CAPITAL_SHARE) * 100) / 100;
const SMALL = sizeFor(LETTER_HEIGHTS_MM.least);
const LARGE = sizeFor(LETTER_HEIGHTS_MM.underCoach);

/** Capitals are 1.8 mm high and more, and 2.5 mm and more where something is looked for by its id with a torch in the hand. */
export const TEXT_STYLES = {
  id: { sizeMm: SMALL, bold: false, colour: INK },
  /** Ids of panels, nodes and runs on what is read under a coach. */
  'id-large': { sizeMm: LARGE, bold: false, colour: INK },
  'id-strong': { sizeMm: LARGE, bold: true, colour: INK },
  name: { sizeMm: SMALL, bold: false, colour: INK },
  /** Numbers that are read across a room's width, each in a ring. */
  numeral: { sizeMm: 3.8, bold: true, colour: INK },
  /** In the shapes of the emergency plan. */
  badge: { sizeMm: 4.4, bold: true, colour: INK },
  'name-strong': { sizeMm: SMALL, bold: true, colour: INK },
  dimension: { sizeMm: SMALL, bold: false, colour: INK },
  note: { sizeMm: SMALL, bold: false, colour: '#4b545a' },
  letter: { sizeMm: SMALL, bold: true, colour: INK },
} as const satisfies Record<string, TextStyle>;
export type TextStyleName = keyof typeof TEXT_STYLES;
