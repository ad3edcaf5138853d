/** The last change of substance of a record: its place, route, size or what it joins. */
export interface Change {
  /** ISO 8601. */
  readonly day: string;
  /** Commit that brought it; absent where it is not committed. */
  readonly commit?: string;
}

/** Id of a record → its last change of substance after it was first recorded; one that never changed is not in it. */
export type Changes = ReadonlyMap<string, Change>;

/** Id of a record → when it came into the history (ISO 8601), and under whose name. */
export type EnteredBy = ReadonlyMap<string, { readonly date: string; readonly who: string }>;
