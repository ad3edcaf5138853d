import type { Computed } from '../../compute/figures.js';
import type { PlainKey } from '../../words/index.js';

/** A figure or word beside a name. Numbers in SI by `in`: mm, N·m, litres, amperes, fraction. */
export interface Fact {
  readonly head: string;
  readonly value: string | number | readonly string[];
  readonly in?: 'mm' | 'nm' | 'l' | 'a' | 'fraction';
}

export interface TopicRow {
  /** The record that it is about, where it is one. */
  readonly id?: string;
  /** What it is, in words. */
  readonly what: string;
  readonly facts: readonly Fact[];
}

/** The answer to a question about the whole shell. */
export interface TopicAnswer {
  readonly topic: string;
  readonly question: string;
  readonly rows: readonly TopicRow[];
  /** What it rests on, and what to do. Sentences. */
  readonly notes: readonly string[];
}

/** A question that a service shop asks of the whole shell, known by any of its words. */
export interface Topic {
  readonly name: string;
  /** The question as the book's contents ask it. */
  readonly ask: PlainKey;
  readonly words: readonly string[];
  /** Words that may stand beside one of those, and ask for nothing alone: `water` beside `shut-off`. */
  readonly beside?: readonly string[];
  answer(assessment: Computed): Pick<TopicAnswer, 'rows' | 'notes'>;
}

/** Facts that are on record: those without a value are left out. */
export function facts(
  ...given: readonly (readonly [head: string, value: Fact['value'] | undefined, unit?: Fact['in']])[]
): readonly Fact[] {
  return given.flatMap(([head, value, unit]) =>
    value === undefined || value === '' || (Array.isArray(value) && value.length === 0)
      ? []
      : [{ head, value, ...(unit ? { in: unit } : {}) }],
  );
}
