const DAY_MS = 86_400_000;

/** Working days only: a date that falls on a weekend moves to the Monday after it. */
export function day(from: string, plus = 0): string {
  const moved = new Date(Date.parse(`${from}T00:00:00Z`) + plus * DAY_MS);
  const weekday = moved.getUTCDay();
  const skip = weekday === 6 ? 2 : weekday === 0 ? 1 : 0;
  return new Date(moved.getTime() + skip * DAY_MS).toISOString().slice(0, 10);
}

/** Day number `index` of `count` spread evenly over a stage. */
export function spread(from: string, to: string, index: number, count: number): string {
  const span = (Date.parse(to) - Date.parse(from)) / DAY_MS;
  const found = day(from, Math.floor((span * index) / Math.max(1, count)));
  return found > to ? to : found;
}
