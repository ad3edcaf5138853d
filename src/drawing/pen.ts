/** Line widths of ISO 128-2, mm: each √2 times the one before. DRW-01. No line of a drawing has any other. */
export const LINE_WIDTHS_MM = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7] as const;
export type LineWidthMm = (typeof LINE_WIDTHS_MM)[number];

export interface Pen {
  readonly widthMm: LineWidthMm;
  readonly colour: string;
  /** Colour inside closed shapes; absent: nothing. */
  readonly fill?: string;
  /** Dash and gap lengths in turn, mm. */
  readonly dash?: readonly number[];
  /** A line of this colour and width along the middle: makes a double line. */
  readonly core?: { readonly colour: string; readonly widthMm: LineWidthMm };
  /** True: no line at all, only the fill. */
  readonly bare?: boolean;
}
