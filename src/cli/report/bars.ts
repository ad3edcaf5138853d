/**
 * A load against its limit as a bar of `width` columns: the limit stands at three quarters, marked `|`. A load over its limit is seen
 * past the mark however little it is over, and one under it never fills the last column before it.
 */
export function bar(load: number, limit: number, uncertainty: number, width = 24): string {
  const mark = Math.round(width * 0.75);
  const columns = (value: number): number => {
    const exact = (value / limit) * mark;
    return Math.max(0, Math.min(width, value > limit ? Math.max(mark + 1, Math.round(exact)) : Math.floor(exact)));
  };
  const full = columns(load);
  // What the load may be as well, for all that is known.
  const perhaps = columns(load + uncertainty);
  const cells: string[] = Array.from({ length: width }, (_, i) => (i < full ? '█' : i < perhaps ? '▒' : ' '));
  cells.splice(mark, 0, '|');
  return cells.join('');
}
