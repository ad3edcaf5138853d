/** What a recall may ask for → the keys of a record that hold it. */
export const TRACE_KEYS = {
  heat: ['heat'],
  lot: ['lot'],
  welder: ['welder'],
  procedure: ['procedure'],
  instrument: ['instrument', 'scale'],
  part: ['part', 'section', 'type', 'name', 'serial'],
  certificate: ['certificate', 'document'],
} as const satisfies Record<string, readonly string[]>;

export type TraceKey = keyof typeof TRACE_KEYS;

/** What is sought: any of some values under any of some keys. */
export interface TraceQuery {
  readonly keys: ReadonlySet<string>;
  /** Lower case. */
  readonly values: ReadonlySet<string>;
  /** Kinds of record that are looked at; all where absent. */
  readonly kinds?: ReadonlySet<string>;
}

/** A part is a thing; the name of a circuit, a panel or a test is none. */
const PART_KINDS: ReadonlySet<string> = new Set(['member', 'component', 'run', 'circuit', 'clamp', 'node']);

/** `heats`: of a certificate, the heats that the library says it is of. */
export function soughtFor(key: TraceKey, value: string, heats: readonly string[] = []): readonly TraceQuery[] {
  const one: TraceQuery = {
    keys: new Set<string>(TRACE_KEYS[key]),
    values: new Set([plain(value)]),
    ...(key === 'part' ? { kinds: PART_KINDS } : {}),
  };
  return heats.length === 0 ? [one] : [one, { keys: new Set(['heat', 'lot']), values: new Set(heats.map(plain)) }];
}

/** As values are compared: without case, and whatever the white space. */
export const plain = (value: unknown): string => String(value).trim().replace(/\s+/gu, ' ').toLowerCase();

/** Words of which one must stand in a file for it to have a hit; a value of several words may be broken over lines, so its longest. */
export const wordsOf = (sought: readonly TraceQuery[]): readonly string[] =>
  sought.flatMap(({ values }) => [...values].map((value) => value.split(' ').reduce((a, b) => (b.length > a.length ? b : a))));
