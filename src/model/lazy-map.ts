/** A read-only map whose values are made when first asked for: one shell of fifty costs one. */
export class LazyMap<T> implements ReadonlyMap<string, T> {
  private readonly made = new Map<string, T>();
  private readonly names: ReadonlySet<string>;

  constructor(
    names: Iterable<string>,
    private readonly make: (name: string) => T,
  ) {
    this.names = new Set(names);
  }

  get size(): number {
    return this.names.size;
  }

  has(name: string): boolean {
    return this.names.has(name);
  }

  get(name: string): T | undefined {
    if (!this.names.has(name)) return undefined;
    if (!this.made.has(name)) this.made.set(name, this.make(name));
    return this.made.get(name);
  }

  keys(): MapIterator<string> {
    return this.names.values() as MapIterator<string>;
  }

  values(): MapIterator<T> {
    return this.whole().values();
  }

  entries(): MapIterator<[string, T]> {
    return this.whole().entries();
  }

  [Symbol.iterator](): MapIterator<[string, T]> {
    return this.entries();
  }

  forEach(visit: (value: T, name: string, map: ReadonlyMap<string, T>) => void): void {
    for (const [name, value] of this.whole()) visit(value, name, this);
  }

  private whole(): Map<string, T> {
    return new Map([...this.names].map((name) => [name, this.get(name) as T]));
  }
}
