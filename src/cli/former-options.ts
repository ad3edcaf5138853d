import { Option } from 'commander';

/** Options that had another name in version 0.1 → the attribute and flag that they have now. They read on for one version. */
const NOW: Readonly<Record<string, { readonly name: string; readonly was: string; readonly is: string }>> = {
  changedSince: { name: 'since', was: '--changed-since', is: '--since' },
  shard: { name: 'share', was: '--shard', is: '--share' },
  ahead: { name: 'allowMissing', was: '--ahead', is: '--allow-missing' },
  heads: { name: 'headerRow', was: '--heads', is: '--header-row' },
};

type Given = Readonly<Record<string, unknown>>;

/** The option under its former name: read, and not in the help. */
export const formerOption = (flags: string): Option => new Option(flags).hideHelp();

/** What was given under the names of today, and a note for each that was not. */
export function withoutFormer(given: Given): { readonly given: Given; readonly notes: readonly string[] } {
  const former = Object.keys(given).flatMap((key) =>
    Object.hasOwn(NOW, key) ? [{ key, ...(NOW[key] as (typeof NOW)[string]) }] : [],
  );
  if (former.length === 0) return { given, notes: [] };
  const now = { ...given };
  for (const { key, name } of former) {
    now[name] ??= given[key];
    delete now[key];
  }
  return { given: now, notes: former.map(({ was, is }) => `${was} is now ${is}: the old name goes with the next version`) };
}
