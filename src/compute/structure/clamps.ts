import { dot, subtract, unit } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Clamp, Shell } from '../../records/index.js';

/** Clamps and dampers of a shell: what is on record, and what is still to be checked. */
export interface ClampFigures {
  readonly count: number;
  /** Clamps with a torque on record. */
  readonly torqued: number;
  readonly isolated: number;
  /** Dampers named, each once. */
  readonly dampers: readonly string[];
  readonly clamps: readonly ClampFigure[];
  /** Along each member that two clamps or more hold. For information: the chassis maker's manual has the rule. */
  readonly spacing: readonly ClampSpacing[];
}

export interface ClampSpacing {
  readonly member: string;
  readonly clamps: number;
  readonly widestMm: number;
  readonly between: readonly [string, string];
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
    isolated: clamps.filter(({ insulator }) => insulator === true).length,
    dampers: [...new Set(clamps.flatMap(({ damper }) => damper ?? []))],
    clamps: clamps.map(figureOf),
    spacing: spacingOf(shell),
  };
}

function figureOf({ id, torqueNm, checkAgain, checks = [] }: Clamp): ClampFigure {
  const checked = checks
    .map(({ date }) => date)
    .sort()
    .at(-1);
  return { id, torqueNm, check: checked ? 'done' : checkAgain === undefined ? 'not set' : 'due', checkAgain, checked };
}

/** Clamps in order along each member on a line, and the widest distance between two of them. */
function spacingOf({ members, clamps }: Shell): readonly ClampSpacing[] {
  return members.flatMap(({ id, shape }): readonly ClampSpacing[] => {
    if (shape.kind !== 'line') return [];
    const along = unit(subtract(shape.to, shape.from));
    const held = clamps
      .filter(({ joins }) => joins.includes(id))
      .map((clamp) => ({ id: clamp.id, place: dot(subtract(clamp.at, shape.from), along) }))
      .sort((a, b) => a.place - b.place);
    const gaps = held.slice(1).map((next, i) => {
      const before = held[i] as (typeof held)[number];
      return { member: id, clamps: held.length, widestMm: next.place - before.place, between: [before.id, next.id] as const };
    });
    const [first, ...others] = gaps;
    return first ? [others.reduce((a, b) => (b.widestMm > a.widestMm ? b : a), first)] : [];
  });
}
