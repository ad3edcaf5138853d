/** A load against its limit as a bar of `width` columns: the limit stands at three quarters, marked `|`. */
export function bar(load: number, limit: number, uncertainty: number, width = 24): string {
  const mark = Math.round(width * 0.75);
  const columns = (value: number): number => Math.max(0, Math.min(width, Math.round((value / limit) * mark)));
  const full = columns(load);
  // What the load may be as well, for all that is known.
  const perhaps = Math.max(full, columns(load + uncertainty));
  const cells: string[] = Array.from({ length: width }, (_, i) => (i < full ? '█' : i < perhaps ? '▒' : ' '));
  // The limit never hides behind a load: past it the bar goes on.
  cells.splice(mark, 0, '|');
  return cells.join('');
}
