/**
 * At most `most` names close to what was typed, closest first. Close means: one slip in four letters, never more than three;
 * letter case and the signs between words do not count.
 */
export function nearest(typed: string, names: Iterable<string>, most = 3): readonly string[] {
  const wanted = plain(typed);
  const allowed = Math.min(3, Math.max(1, Math.floor(wanted.length / 4)));
  const close: { name: string; slips: number }[] = [];
  for (const name of names) {
    const other = plain(name);
    if (Math.abs(other.length - wanted.length) > allowed) continue;
    const slips = slipsBetween(wanted, other);
    if (slips <= allowed && slips < wanted.length) close.push({ name, slips });
  }
  return close
    .sort((a, b) => a.slips - b.slips)
    .slice(0, most)
    .map(({ name }) => name);
}

const plain = (text: string): string => text.toLowerCase().replace(/[\s\-./_]/gu, '');

/** Letters put in, left out, changed or exchanged with their neighbour (Damerau-Levenshtein, optimal string alignment). */
export function slipsBetween(a: string, b: string): number {
  let before: readonly number[] = [];
  let last: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((last[j] as number) + 1, (row[j - 1] as number) + 1, (last[j - 1] as number) + change);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (before[j - 2] as number) + 1);
      row.push(least);
    }
    before = last;
    last = row;
  }
  return last[b.length] as number;
}

/** ` Did you mean \`A\` or \`B\`?`, or nothing where no name is close. */
export function didYouMean(typed: string, names: Iterable<string>): string {
  const close = nearest(typed, names, 2);
  return close.length === 0 ? '' : `. Did you mean ${close.map((name) => `\`${name}\``).join(' or ')}?`;
}
