import { performance } from 'node:perf_hooks';

export interface Measured {
  readonly name: string;
  readonly medianMs: number;
  readonly lowMs: number;
  readonly highMs: number;
}

/** Runs each in turn, round after round, so that a busy machine troubles all alike; the first round is not counted. */
export function measure(works: Readonly<Record<string, () => unknown>>, rounds: number): readonly Measured[] {
  const times = new Times(works);
  for (let round = 0; round <= rounds; round++) {
    for (const [name, work] of Object.entries(works)) {
      const start = performance.now();
      work();
      if (round > 0) times.add(name, performance.now() - start);
    }
  }
  return times.measured();
}

/** As {@link measure}, for works that wait for others. */
export async function measureWaiting(
  works: Readonly<Record<string, () => unknown>>,
  rounds: number,
): Promise<readonly Measured[]> {
  const times = new Times(works);
  for (let round = 0; round <= rounds; round++) {
    for (const [name, work] of Object.entries(works)) {
      const start = performance.now();
      await work();
      if (round > 0) times.add(name, performance.now() - start);
    }
  }
  return times.measured();
}

class Times {
  private readonly times: ReadonlyMap<string, number[]>;

  constructor(works: object) {
    this.times = new Map(Object.keys(works).map((name) => [name, [] as number[]] as const));
  }

  add(name: string, ms: number): void {
    this.times.get(name)?.push(ms);
  }

  measured(): readonly Measured[] {
    return [...this.times].map(([name, list]) => {
      list.sort((a, b) => a - b);
      return {
        name,
        medianMs: list[Math.floor(list.length / 2)] as number,
        lowMs: list[0] as number,
        highMs: list.at(-1) as number,
      };
    });
  }
}

export const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;
