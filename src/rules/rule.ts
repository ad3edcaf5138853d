import type { Figures } from '../compute/figures.js';
import type { Finding, Severity } from '../finding.js';
import type { Model } from '../model/shell.js';
import type { PictureFacts } from '../records/picture-facts.js';
import type { PhotoFacts } from '../store/photo-facts.js';

/** What only the world outside the records can say. The caller looks it up; absent where it could not. */
export interface Outside {
  /** Files of the shell's record that differ from the last commit, relative to the store; absent outside Git. */
  readonly uncommitted?: readonly string[];
  /** Date (ISO 8601) of the last commit that touched the shell's record; absent outside Git, or where nobody asked. */
  readonly lastCommit?: string;
  /** Id of a record → date (ISO 8601) of the first commit that has it; absent outside Git, or where nobody asked. */
  readonly entered?: ReadonlyMap<string, string>;
  /** Path in the store of a picture → what its file says by itself; absent where nobody looked. */
  readonly photos?: ReadonlyMap<string, PhotoFacts>;
  /** Path in the store of a picture with marked points → its size and lens, where its facts are not asked for. */
  readonly pictures?: ReadonlyMap<string, PictureFacts>;
  /** Id of a lapsed sign-off → `kind id` of the records that it covered and that have changed since; absent where nobody knows. */
  readonly lapsedBy?: ReadonlyMap<string, readonly string[]>;
  /** Who entered the sign-offs, and since when that is held to; absent outside Git, or where nobody asked. */
  readonly signings?: Signings;
}

/** How sign-offs came into the history. */
export interface Signings {
  /** Digest of a sign-off → the first commit that has it: its date (ISO 8601) and its author's address. */
  readonly entries: ReadonlyMap<string, SigningEntry>;
  /** Date of the first commit in which somebody in library/people.yaml `signs`; absent where nobody does. */
  readonly since?: string;
  /** Id of a person → date of the first commit that has their key. */
  readonly keysSince?: ReadonlyMap<string, string>;
}

export interface SigningEntry {
  readonly commit: string;
  /** ISO 8601. */
  readonly date: string;
  readonly email: string;
  /** Absent while nobody in the library has a key. */
  readonly signature?: CommitSignature;
}

/** none: not signed; known: with the key of the person `by`; unknown: with a key of nobody's in the library; bad: it does not hold. */
export interface CommitSignature {
  readonly is: 'none' | 'known' | 'unknown' | 'bad';
  readonly by?: string;
}

/** The areas that rules are named by; their folders. */
export type RuleArea =
  | 'shell'
  | 'weight'
  | 'member'
  | 'panel'
  | 'weld'
  | 'opening'
  | 'service'
  | 'access'
  | 'order'
  | 'test'
  | 'finding'
  | 'signoff'
  | 'record';

/** What a rule may look at. */
export interface Case {
  readonly model: Model;
  readonly figures: Figures;
  readonly outside?: Outside;
}

/** What a rule says: the runner adds its name, and its severity where the rule does not say a lesser or a graver one. */
export interface RuleFinding extends Omit<Finding, 'rule' | 'severity'> {
  readonly severity?: Severity;
}

/** One thing the trade looks for. A rule gives findings and goes on: it never prints, throws, fixes or exits. */
export interface Rule {
  /** `area.what`; the file is `rules/<area>/<what>.ts`. */
  readonly name: string;
  readonly severity: Severity;
  /** missing: work that is not done or not on record. defect: what is there is not acceptable. */
  readonly asks: 'missing' | 'defect';
  /** Who puts it right: whoever keeps the papers, whoever inspects, or the person or trade that did the work. */
  readonly duty: Duty;
  /** What it finds, for the shop. One sentence. */
  readonly finds: string;
  /** Why it matters. */
  readonly why: string;
  /** The clause or figure behind it; `common practice, no source` where it is the trade's own. */
  readonly source: string;
  readonly examples: Examples;
  check(given: Case): readonly RuleFinding[];
}

/**
 * Records that give the finding and records that do not, as YAML after a line `# welds.yaml` for each file. `given` stands before both.
 * They are run as tests and printed in RULES.md.
 */
export interface Examples {
  readonly given?: string;
  readonly fails: string;
  readonly passes: string;
}

export type Duty = 'administrator' | 'inspector' | 'trade';

/** What one rule finds, under its name. */
export const runRule = (rule: Rule, given: Case): readonly Finding[] =>
  rule.check(given).map((found) => ({ ...found, rule: rule.name, severity: found.severity ?? rule.severity }));
