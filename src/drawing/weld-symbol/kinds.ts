import type { Weld } from '../../records/index.js';

/** Welds that one and the same symbol stands for. */
export interface SymbolKind {
  /** A, B … Z, AA …: in the order of the weld records. */
  readonly key: string;
  /** One of them. */
  readonly weld: Weld;
  readonly welds: readonly Weld[];
}

/** The symbols that a shell's welds need, each once. */
export function symbolKinds(welds: readonly Weld[]): readonly SymbolKind[] {
  const found = new Map<string, Weld[]>();
  for (const weld of welds) {
    const { type, sizeMm, lengthMm, sides, allRound, site, process, procedure, filler } = weld;
    const size = [sizeMm, lengthMm].map((mm) => mm.toFixed(2));
    const same = JSON.stringify([type, ...size, sides, allRound, site ?? false, process, procedure, filler]);
    const alike = found.get(same);
    if (alike) alike.push(weld);
    else found.set(same, [weld]);
  }
  return [...found.values()].map((alike, index) => ({ key: letterFor(index), weld: alike[0] as Weld, welds: alike }));
}

/** The kind of each weld. */
export type SymbolKinds = ReadonlyMap<Weld, SymbolKind>;

export const kindsByWeld = (welds: readonly Weld[]): SymbolKinds =>
  new Map(symbolKinds(welds).flatMap((kind) => kind.welds.map((weld) => [weld, kind] as const)));

/** 0 → A, 25 → Z, 26 → AA. */
export function letterFor(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letterFor(Math.floor(index / 26) - 1)}${last}`;
}
