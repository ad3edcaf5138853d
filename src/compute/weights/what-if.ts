import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { LoadLine, Verdict, Weights } from './types.js';
import { verdictOf } from './uncertainty.js';

/** A load that somebody thinks of putting on. */
export interface Thought {
  readonly massKg: number;
  readonly at: Vec3;
  /** The bay that it goes into, where it goes into one. */
  readonly bay?: string;
}

/** One thing that a load may be too much for. */
export interface WhatIfRow {
  readonly kind: 'gross' | 'axle' | 'end' | 'tyre' | 'bay';
  readonly name: string;
  /** How the vehicle stands in the worst of its ways: `tag up`; empty with all axles down and slide-outs in. */
  readonly standing: string;
  readonly loadKg: number;
  readonly uncertaintyKg: number;
  readonly limitKg?: number;
  readonly marginKg?: number;
  readonly verdict: Verdict;
}

/**
 * The vehicle with these loads on it and nothing else in its bays, any tank at any level, any seat taken or not: every axle, end, tyre and
 * bay, and the whole, each in the way of standing that is worst for it.
 */
export function whatIf(model: Model, weights: Weights, thoughts: readonly Thought[]): readonly WhatIfRow[] {
  const addedKg = thoughts.reduce((sum, one) => sum + one.massKg, 0);
  const { gvwrKg } = model.shell.chassis;
  const gross =
    weights.fullWithoutBaysKg === undefined
      ? []
      : [row('gross', 'whole vehicle', '', weights.fullWithoutBaysKg + addedKg, unladenUncertainty(weights), gvwrKg)];
  const axles = worst(
    weights.loadLines.filter((line) => line.end === undefined),
    thoughts,
  );
  const ends = worst(
    weights.loadLines.filter((line) => line.end !== undefined),
    thoughts,
  );
  const tyres = (ends.length > 0 ? ends : axles).flatMap(({ line, kg }) =>
    line.tyres === undefined || line.tyreKg === undefined
      ? []
      : [row('tyre', tyreName(line), line.standing, kg / line.tyres, line.uncertaintyKg / line.tyres, line.tyreKg)],
  );
  const lines = (kind: 'axle' | 'end', list: typeof axles) =>
    list.map(({ line, kg }) => row(kind, line.name, line.standing, kg, line.uncertaintyKg, line.limitKg));
  const bays = model.shell.bays.flatMap((bay) => {
    const inIt = thoughts.filter((one) => one.bay === bay.id).reduce((sum, one) => sum + one.massKg, 0);
    return inIt === 0 ? [] : [row('bay', bay.id, '', inIt, 0, bay.limitKg)];
  });
  return [...gross, ...lines('axle', axles), ...lines('end', ends), ...tyres, ...bays];
}

const tyreName = ({ axle, end }: LoadLine): string => (end ? `each tire, ${end} end of ${axle}` : `each tire of ${axle}`);

const unladenUncertainty = ({ conditions }: Weights): number =>
  conditions.find((one) => one.name === 'unladen' && one.kind === 'standard')?.uncertaintyKg ?? 0;

/** Each gauge in the way of standing that leaves it least. */
function worst(
  lines: readonly LoadLine[],
  thoughts: readonly Thought[],
): readonly { readonly line: LoadLine; readonly kg: number }[] {
  const names = [...new Set(lines.map((line) => line.name))];
  return names.map((name) =>
    lines
      .filter((line) => line.name === name)
      .map((line) => ({ line, kg: loadOn(line, thoughts) }))
      .reduce((most, one) => (one.kg > most.kg ? one : most)),
  );
}

const loadOn = ({ baseKg, perKg, perKgMmX, perKgMmY }: LoadLine, thoughts: readonly Thought[]): number =>
  thoughts.reduce((sum, { massKg, at }) => sum + massKg * (perKg + perKgMmX * at[0] + perKgMmY * at[1]), baseKg);

function row(
  kind: WhatIfRow['kind'],
  name: string,
  standing: string,
  loadKg: number,
  uncertaintyKg: number,
  limitKg: number | undefined,
): WhatIfRow {
  const marginKg = limitKg === undefined ? undefined : limitKg - loadKg;
  const known = limitKg === undefined ? {} : { limitKg, marginKg: limitKg - loadKg };
  return { kind, name, standing, loadKg, uncertaintyKg, ...known, verdict: verdictOf(marginKg, uncertaintyKg) };
}
