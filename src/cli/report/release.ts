import type { Progress } from '../../closeout/state.js';
import type { Weights } from '../../compute/weights/types.js';
import type { Model } from '../../model/shell.js';
import { derived } from '../../query/derived.js';
import {
  CAUTIONS,
  type Face,
  type KeepClean,
  keepClean,
  leftOfGvwr,
  type OpenInZone,
  openByZone,
  type Station,
  stations,
} from '../../query/release/index.js';
import type { DecidedFinding } from '../../rules/decide.js';
import type { ClosedAs } from '../../store/closed-as.js';
import type { CheckedShell } from './checked.js';

/** What the next trade must know, in one piece: for the terminal and for JSON. */
export interface HandOver {
  readonly model: Model;
  readonly progress: Progress;
  readonly closed?: ClosedAs;
  readonly weights: Weights;
  /** Least GVWR margin of the standard conditions. */
  readonly leftOfGvwrKg?: number;
  readonly stations: readonly Station[];
  readonly faces: readonly Face[];
  readonly keepClean: readonly KeepClean[];
  /** Errors, and warnings that nobody has decided. */
  readonly open: readonly OpenInZone<DecidedFinding>[];
  readonly cautions: readonly string[];
}

export function handOver({ assessment, findings }: CheckedShell, closed?: ClosedAs): HandOver {
  const { model, figures } = assessment;
  const open = findings.filter((one) => one.severity !== 'note' && one.decidedBy === undefined);
  const whole = leftOfGvwr(figures.weights);
  return {
    model,
    ...(closed ? { closed } : {}),
    weights: figures.weights,
    ...(whole === undefined ? {} : { leftOfGvwrKg: whole }),
    stations: stations(figures.weights, model.shell.chassis.axles),
    faces: derived(assessment, 'faces'),
    progress: derived(assessment, 'progress'),
    keepClean: keepClean(model),
    open: openByZone(model, open),
    cautions: CAUTIONS,
  };
}
