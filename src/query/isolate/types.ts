import type { Medium, RecordKind } from '../../records/index.js';
import type { Unknown } from './graph/facts.js';

export type { Unknown } from './graph/facts.js';

/** Loads off, sources off, what is stored let out, proof: the order of 29 CFR 1910.147(d). */
export type IsolationStep = 'load' | 'source' | 'stored' | 'proof';

/** One thing to do before work. */
export interface IsolationAction {
  /** Where the hand goes. */
  readonly id: string;
  /** fuse, breaker, valve, switch, shore cord, drain, meter … */
  readonly kind: string;
  readonly action: 'open' | 'shut' | 'disconnect' | 'drain';
  /** What to do, as one sentence. Ids, no names. */
  readonly say: string;
  readonly step: IsolationStep;
  /** Of a source: the runs that come off it. */
  readonly lines?: readonly string[];
  /** The circuit whose fuse or breaker it is. */
  readonly circuit?: string;
  /** Where it is, in words, where that is recorded. */
  readonly place?: string;
  /** Panels that reach it, best first; empty where it stands in the open or nothing reaches it. */
  readonly panels: readonly string[];
}

export interface Isolation {
  readonly id: string;
  readonly kind: RecordKind;
  /** Of what is worked on. */
  readonly media: readonly Medium[];
  /** In the order to do them. */
  readonly actions: readonly IsolationAction[];
  /** Every source that feeds it as recorded. */
  readonly sources: readonly string[];
  /** Sources that still feed it after the actions: found by a search of its own. Empty, or it is not safe. */
  readonly sourcesLeft: readonly string[];
  /** Sources are on record, and nothing that the answer hangs on is missing. */
  readonly verified: boolean;
  /** What the record does not say, and what to record or measure. */
  readonly unknown: readonly Unknown[];
  /** What the answer rests on, and the usual cautions. Sentences. */
  readonly notes: readonly string[];
}
