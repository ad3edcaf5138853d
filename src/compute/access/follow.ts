/** One panel that could be opened, the pieces of the run that it lays open (by number along the run), and what opening it costs. */
export interface Cover {
  readonly panel: string;
  readonly pieces: ReadonlySet<number>;
  readonly cost: number;
}

/**
 * The panels to open so that every piece that any panel lays open can be followed, at the least cost: greedy set cover by cost for
 * each new piece (Chvátal 1979), then panels that the others make needless are dropped, then single and paired swaps for one
 * cheaper panel are tried until none helps. In order along the run. Pieces that no panel lays open are left out.
 */
export function follow(covers: readonly Cover[]): readonly string[] {
  let chosen = improve(dropNeedless(greedy(covers)), covers);
  chosen = dropNeedless(chosen);
  return [...chosen].sort((a, b) => first(a) - first(b) || (a.panel < b.panel ? -1 : 1)).map((cover) => cover.panel);
}

function greedy(covers: readonly Cover[]): readonly Cover[] {
  const open = allPieces(covers);
  const chosen: Cover[] = [];
  while (open.size > 0) {
    let best: Cover | undefined;
    let least = Infinity;
    for (const cover of covers) {
      let fresh = 0;
      for (const piece of cover.pieces) if (open.has(piece)) fresh += 1;
      if (fresh > 0 && cover.cost / fresh < least) {
        least = cover.cost / fresh;
        best = cover;
      }
    }
    if (!best) break;
    chosen.push(best);
    for (const piece of best.pieces) open.delete(piece);
  }
  return chosen;
}

function dropNeedless(chosen: readonly Cover[]): readonly Cover[] {
  let kept = [...chosen].sort((a, b) => b.cost - a.cost);
  const all = allPieces(chosen);
  for (const cover of [...kept]) {
    const rest = kept.filter((other) => other !== cover);
    if (coversAll(rest, all)) kept = rest;
  }
  return kept;
}

/** Takes one or two chosen panels out for one cheaper panel, while that keeps every piece open. */
function improve(chosen: readonly Cover[], covers: readonly Cover[]): readonly Cover[] {
  const all = allPieces(covers);
  let current = chosen;
  for (let again = true; again; ) {
    again = false;
    for (const [a, b] of pairs(current)) {
      const rest = current.filter((cover) => cover !== a && cover !== b);
      const better = covers.find((cover) => cover.cost < costOf([a, b]) - 1e-9 && coversAll([...rest, cover], all));
      if (!better) continue;
      current = [...rest, better];
      again = true;
      break;
    }
  }
  return current;
}

/** Every chosen panel with itself and with each later one. */
const pairs = (chosen: readonly Cover[]): readonly (readonly [Cover, Cover])[] =>
  chosen.flatMap((a, i) => chosen.slice(i).map((b) => [a, b] as const));

const costOf = (some: readonly Cover[]): number => [...new Set(some)].reduce((sum, cover) => sum + cover.cost, 0);

const allPieces = (covers: readonly Cover[]): Set<number> => new Set(covers.flatMap((cover) => [...cover.pieces]));

function coversAll(chosen: readonly Cover[], pieces: ReadonlySet<number>): boolean {
  for (const piece of pieces) if (!chosen.some((cover) => cover.pieces.has(piece))) return false;
  return true;
}

const first = (cover: Cover): number => Math.min(...cover.pieces);
