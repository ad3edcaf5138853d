/** A directed network with capacities, for maximum flow and the minimum cut that equals it (Ford and Fulkerson 1956). */
export class FlowNetwork {
  private readonly to: number[] = [];
  private readonly left: number[] = [];
  private readonly out: number[][];

  constructor(size: number) {
    this.out = Array.from({ length: size }, () => []);
  }

  /** Adds an edge of some capacity, and its reverse without any. */
  join(from: number, to: number, capacity: number): void {
    this.out[from]?.push(this.to.length);
    this.to.push(to);
    this.left.push(capacity);
    this.out[to]?.push(this.to.length);
    this.to.push(from);
    this.left.push(0);
  }

  /** The most that flows from `source` to `sink`; exact for whole capacities. Dinic's algorithm (1970). */
  maxFlow(source: number, sink: number): number {
    let total = 0;
    for (;;) {
      const level = this.levels(source);
      if (level[sink] === -1) return total;
      const next = this.out.map(() => 0);
      for (let pushed = this.push(source, sink, level, next); pushed > 0; pushed = this.push(source, sink, level, next)) {
        total += pushed;
      }
    }
  }

  /** After the flow: which vertices can still send to `sink`. Edges into this set from outside are the cut nearest to the sink. */
  reaching(sink: number): readonly boolean[] {
    const reaches = this.out.map(() => false);
    reaches[sink] = true;
    const queue = [sink];
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      for (const edge of this.out[at] as number[]) {
        const from = this.to[edge] as number;
        // The paired edge runs from there to here.
        if (!reaches[from] && (this.left[edge ^ 1] as number) > 0) {
          reaches[from] = true;
          queue.push(from);
        }
      }
    }
    return reaches;
  }

  private levels(source: number): number[] {
    const level = this.out.map(() => -1);
    level[source] = 0;
    let front = [source];
    while (front.length > 0) {
      const following: number[] = [];
      for (const at of front) {
        for (const edge of this.out[at] as number[]) {
          const to = this.to[edge] as number;
          if ((this.left[edge] as number) > 0 && level[to] === -1) {
            level[to] = (level[at] as number) + 1;
            following.push(to);
          }
        }
      }
      front = following;
    }
    return level;
  }

  /** One augmenting path along rising levels, walked without recursion so that a long line of nodes cannot fill the stack. */
  private push(source: number, sink: number, level: readonly number[], next: number[]): number {
    const way: number[] = [];
    let at = source;
    while (at !== sink) {
      const edge = (this.out[at] as number[])[next[at] as number];
      if (edge === undefined) {
        const back = way.pop();
        if (back === undefined) return 0;
        at = this.to[back ^ 1] as number;
        next[at] = (next[at] as number) + 1;
        continue;
      }
      const to = this.to[edge] as number;
      if ((this.left[edge] as number) > 0 && level[to] === (level[at] as number) + 1) {
        way.push(edge);
        at = to;
      } else next[at] = (next[at] as number) + 1;
    }
    const amount = Math.min(...way.map((edge) => this.left[edge] as number));
    for (const edge of way) {
      this.left[edge] = (this.left[edge] as number) - amount;
      this.left[edge ^ 1] = (this.left[edge ^ 1] as number) + amount;
    }
    return amount;
  }
}
