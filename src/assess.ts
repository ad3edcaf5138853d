import type { Computed, Figures } from './compute/figures.js';
import { figuresOf, type PictureOf } from './compute/figures-of.js';
import { lazyFields } from './compute/lazy.js';
import type { Finding } from './finding.js';
import type { Model } from './model/shell.js';
import { judge } from './rules/index.js';
import type { Outside, RuleArea } from './rules/rule.js';

export type { Figures };

export interface Assessment extends Computed {
  /** Those of reading and linking first, then of the rules; by file, line, column within each. */
  readonly findings: readonly Finding[];
}

/** What was read from a picture's file. */
export const pictureAt = ({ photos, pictures }: Outside, file: string): ReturnType<PictureOf> =>
  photos?.get(file)?.picture ?? pictures?.get(file);

/**
 * The run on one page:
 *
 *     read (source) → check form (schema) → link (model)  — done by the reader, its findings come in as `found`
 *       → compute (figures) → judge (rules) → Assessment
 *
 * Each figure is computed when it is first asked for, once; so are the findings. A command that answers from the weights
 * costs the weights. With `areas`, only the rules of these areas judge: for commands that tell no findings but those that touch
 * their answer.
 */
export function assess(
  model: Model,
  found: readonly Finding[],
  outside: Outside = {},
  areas?: readonly RuleArea[],
  figures: Figures = figuresOf(model, (file) => pictureAt(outside, file)),
): Assessment {
  return lazyFields<Assessment>({
    model: () => model,
    figures: () => figures,
    findings: () => [...found, ...judge(model, figures, outside, areas)],
  });
}
