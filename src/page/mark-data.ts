/** What the page for picking points knows. */
export interface MarkPageData {
  readonly photo: string;
  /** Of the photo itself as it is shown upright; the picture in the page may be smaller. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Points that may be named, the likeliest first, each with what stands for it in a line of `seen`. */
  readonly points: readonly { readonly label: string; readonly as: string }[];
  /** Already marked. */
  readonly picked: readonly { readonly as: string; readonly px: readonly [number, number] }[];
}
