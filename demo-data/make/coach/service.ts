import { at, feet, lengthOf, type P } from '../inches.js';
import { item, type Rec, scalar } from '../yaml.js';

export interface RunMore {
  readonly via?: readonly P[];
  readonly zones?: readonly string[];
  readonly grommets?: readonly (string | P)[];
  readonly extra?: Rec;
  readonly comment?: string;
  /** Installed length in inches, where it was not simply the way and a little slack. */
  readonly installed?: number;
}

/** How the shop's electricians fix and mark a wire. */
export const WIRED = {
  supports: '15 in',
  end_supports: '5 in',
  tags: 'both ends',
  tolerance: '10 mm',
  stage: 'services',
};

/** One services/*.yaml, kept as records until it is written. */
export class Service {
  readonly circuits: Rec[] = [];
  readonly nodes: Rec[] = [];
  readonly runs: Rec[] = [];
  private readonly places = new Map<string, P>();
  private readonly ways = new Map<string, readonly P[]>();

  constructor(
    readonly file: string,
    readonly name: string,
    readonly medium: string,
    /** What every run of it carries: date, supports, tolerance. */
    private readonly every: Rec,
    private readonly head: readonly string[],
    /** Nodes of other services that runs may end at. */
    private readonly shared: Service | undefined = undefined,
    /** Takes a lane apart into the cavities of it that a way comes through. */
    private readonly cavities: (zone: string, path: readonly P[]) => readonly string[] = (zone) => [zone],
  ) {}

  circuit(record: Rec): void {
    this.circuits.push(record);
  }

  node(id: string, kind: string, place: P, more: Rec = {}): string {
    this.places.set(id, place);
    this.nodes.push({ ...(more['#'] ? { '#': more['#'] } : {}), id, kind, ...without(more, '#'), at: at(place) });
    return id;
  }

  placeOf(id: string): P {
    const place = this.places.get(id) ?? this.shared?.placeOf(id);
    if (!place) throw new Error(`${this.file}: no node ${id}`);
    return place;
  }

  run(id: string, circuit: string | undefined, from: string, to: string, more: RunMore = {}): string {
    const path = [this.placeOf(from), ...(more.via ?? []), this.placeOf(to)];
    this.ways.set(id, path);
    const length = lengthOf(path);
    // A little slack at the ends, as it is cut.
    const installed = more.installed ?? Math.round((length * 1.012 + Math.min(2, length * 0.01)) * 2) / 2;
    this.runs.push({
      ...(more.comment ? { '#': more.comment } : {}),
      id,
      ...(circuit ? { circuit } : {}),
      from,
      to,
      ...(more.via && more.via.length > 0 ? { via: more.via.map(at) } : {}),
      ...(more.zones ? { zones: more.zones.flatMap((zone) => this.cavities(zone, path)) } : {}),
      ...(length > 12 ? { installed_length: feet(installed, 2) } : {}),
      ...(more.grommets ? { grommets: more.grommets.map((one) => (typeof one === 'string' ? one : at(one))) } : {}),
      ...this.every,
      ...more.extra,
    });
    return id;
  }

  wayOf(run: string): readonly P[] {
    return this.ways.get(run) ?? [];
  }

  text(): string {
    const part = (name: string, records: readonly Rec[]): string =>
      records.length === 0 ? '' : `\n${name}:\n${records.map((one) => item(one, '  ')).join('')}`;
    const head = this.head.map((line) => `# ${line}\n`).join('');
    return `${head}service: ${scalar(this.name)}\nmedium: ${this.medium}\n${part('circuits', this.circuits)}${part('nodes', this.nodes)}${part('runs', this.runs)}`;
  }
}

export const without = (record: Rec, ...keys: readonly string[]): Rec =>
  Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)));
