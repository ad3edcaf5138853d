import type { Model } from '../../model/shell.js';
import type { Clamp } from '../../model/structure.js';

/** Clamps and dampers of a shell: what is on record, and what is still to be checked. */
export interface ClampFigures {
  readonly count: number;
  /** Clamps with a torque on record. */
  readonly torqued: number;
  readonly isolated: number;
  /** Dampers named, each once. */
  readonly dampers: readonly string[];
  readonly clamps: readonly ClampFigure[];
}

export interface ClampFigure {
  readonly id: string;
  readonly torqueNm?: number;
  /** `not set`: no check is asked for; `due`: asked for and not on record; `done`: on record. */
  readonly check: 'not set' | 'due' | 'done';
  /** When it is to be checked, as typed: `after 500 mi`. */
  readonly checkAgain?: string;
  /** Day of the last check. */
  readonly checked?: string;
}

export function clampFigures({ shell }: Model): ClampFigures {
  const { clamps } = shell;
  return {
    count: clamps.length,
    torqued: clamps.filter(({ torqueNm }) => torqueNm !== undefined).length,
    isolated: clamps.filter(({ isolator }) => isolator === true).length,
    dampers: [...new Set(clamps.flatMap(({ damper }) => damper ?? []))],
    clamps: clamps.map(figureOf),
  };
}

function figureOf({ id, torqueNm, checkAgain, checks = [] }: Clamp): ClampFigure {
  const checked = checks
    .map(({ date }) => date)
    .sort()
    .at(-1);
  return { id, torqueNm, check: checked ? 'done' : checkAgain === undefined ? 'not set' : 'due', checkAgain, checked };
}
