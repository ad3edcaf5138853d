/** At most `most` names close to what was typed, closest first: one slip in four letters, letter case and signs between aside. */
export function nearest(typed: string, names: Iterable<string>, most = 3): readonly string[] {
  const wanted = plain(typed);
  const allowed = Math.max(1, Math.floor(wanted.length / 4));
  const close: { name: string; slips: number }[] = [];
  for (const name of names) {
    const other = plain(name);
    const slips = wanted !== '' && other.startsWith(wanted) ? 0.5 : slipsBetween(wanted, other);
    if (slips <= allowed) close.push({ name, slips });
  }
  return close
    .sort((a, b) => a.slips - b.slips)
    .slice(0, most)
    .map(({ name }) => name);
}

const plain = (text: string): string => text.toLowerCase().replace(/[\s\-./_]/gu, '');

/** Letters put in, left out, changed or exchanged with their neighbour (Damerau-Levenshtein, optimal string alignment). */
function slipsBetween(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 6) return Number.POSITIVE_INFINITY;
  const rows = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(at(rows, i - 1, j) + 1, (row[j - 1] as number) + 1, at(rows, i - 1, j - 1) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, at(rows, i - 2, j - 2) + 1);
      row.push(least);
    }
    rows.push(row);
  }
  return at(rows, a.length, b.length);
}

const at = (rows: readonly (readonly number[])[], i: number, j: number): number => (rows[i] as number[])[j] as number;
