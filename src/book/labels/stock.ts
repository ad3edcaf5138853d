import { type Reader, say } from '../../words/index.js';

/** A sheet of ready-cut labels, mm: the size of one, where the first one's corner lies, and how far it is from one to the next. */
export interface LabelStock {
  /** Width and height as the packet has them. */
  readonly size: readonly [width: string, height: string];
  readonly widthMm: number;
  readonly heightMm: number;
  readonly across: number;
  readonly down: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly stepXMm: number;
  readonly stepYMm: number;
}

export type Paper = 'letter' | 'a4';
export type LabelUse = 'panel' | 'marker';

/** Ready-cut sheets that any stationer has, ten for panels and many small ones for wires and pipes. Common practice, no source. */
export const STOCK: Readonly<Record<Paper, Readonly<Record<LabelUse, LabelStock>>>> = {
  letter: {
    panel: stock(['4 in', '2 in'], 101.6, 50.8, 2, 5, 3.97, 12.7, 106.36),
    marker: stock(['1-3/4 in', '1/2 in'], 44.45, 12.7, 4, 20, 7.14, 12.7, 52.39),
  },
  a4: {
    panel: stock(['99.1 mm', '57 mm'], 99.1, 57, 2, 5, 4.65, 6, 101.6),
    marker: stock(['45.7 mm', '16.9 mm'], 45.7, 16.9, 4, 16, 9.75, 13.3, 48.26),
  },
};

function stock(
  size: LabelStock['size'],
  widthMm: number,
  heightMm: number,
  across: number,
  down: number,
  leftMm: number,
  topMm: number,
  stepXMm: number,
): LabelStock {
  return { size, widthMm, heightMm, across, down, leftMm, topMm, stepXMm, stepYMm: heightMm };
}

/** `4 in × 2 in, 2 across and 5 down`. */
export const sheetWords = ({ size: [width, height], across, down }: LabelStock, reader: Reader): string =>
  say(reader, 'labels.sheet', { width, height, across, down });

export const perSheet = ({ across, down }: LabelStock): number => across * down;

/** Upper left corner of label `index` (0 first, row by row) on its sheet, mm. */
export function cornerOf({ across, leftMm, topMm, stepXMm, stepYMm }: LabelStock, index: number): readonly [number, number] {
  return [leftMm + (index % across) * stepXMm, topMm + Math.floor(index / across) * stepYMm];
}
