/** What the judgement says: one finding is one thing to act on, with the place in the YAML that it blames. */

/**
 * error: blocks sign-off and close-out. warning: blocks close-out unless a finding record decides it.
 * note: told, never blocks.
 */
export type Severity = 'error' | 'warning' | 'note';

/** A place in a store file. Lines and columns count from 1; `endColumn` is the column after the last character. */
export interface Place {
  /** Path relative to the store, with forward slashes. */
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** Another place that a finding speaks of, as the first use of a duplicate id. */
export interface RelatedPlace {
  readonly message: string;
  readonly place: Place;
}

/** A value that would settle a finding, if it is true of the coach: a person looks, then `mend` writes it. */
export interface Proposal {
  /** Kind and id of the record that lacks it. */
  readonly kind: string;
  readonly id: string;
  readonly path: readonly string[];
  /** As it would be typed. */
  readonly value: string;
  /** One more of a list, which keeps what it has. */
  readonly adds?: true;
}

export interface Finding {
  /** `area.what`, the same on screen, in JSON and as the rule's file name. */
  readonly rule: string;
  readonly severity: Severity;
  /** What was found, what was expected, both with units, then what to type. One sentence or two, no line breaks. */
  readonly message: string;
  /** The records concerned, the blamed one first. */
  readonly ids: readonly string[];
  readonly place: Place;
  readonly related?: readonly RelatedPlace[];
  /** What to write so that it is settled, where that is one value. */
  readonly proposes?: readonly Proposal[];
}
