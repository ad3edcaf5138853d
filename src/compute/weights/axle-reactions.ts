import type { Axle } from '../../records/index.js';
import { type AxleGroup, axleGroups, type SupportShares } from './axle-groups.js';
import type { Load } from './load.js';
import { springReactions } from './spring-reactions.js';

/**
 * How a chassis hands a load down to the road: each axle's load is `perKg · m + perKgMm · (m · x)`, because every support
 * that is used here is linear. Arrays run with `axles`; a lifted axle has zeros.
 */
export interface AxleModel {
  readonly axles: readonly Axle[];
  readonly lifted: ReadonlySet<string>;
  readonly perKg: readonly number[];
  readonly perKgMm: readonly number[];
}

export type AxleModelOrProblem = { readonly axleModel: AxleModel } | { readonly problem: string };

/** Two supports closer than this cannot be told apart by statics. */
const LEAST_BASE_MM = 100;

/**
 * Axle reactions by statics: sum of forces and sum of moments about the front support.
 *
 *     R₂ = m (x − X₁) / (X₂ − X₁)        R₁ = m − R₂
 *
 * X₁, X₂: positions of the two groups. Inside a group each axle takes its share. Three or more groups are solved as a rigid body
 * on springs, and only where each has its `spring_rate`. A lifted axle stands on nothing: its own mass hangs on the frame at its
 * place and is carried by the others. A load behind the rear group lightens the front one, to below zero if need be.
 *
 * Worked: 10,000 kg at 3 m on a 5 m wheelbase gives 4000 and 6000 kg.
 */
export function axleModelOf(axles: readonly Axle[], lifted: ReadonlySet<string> = new Set()): AxleModelOrProblem {
  const grouped = axleGroups(axles.filter((axle) => !lifted.has(axle.id)));
  if ('problem' in grouped) return grouped;
  const { groups } = grouped;
  if (groups.length < 2) {
    return {
      problem: `${groups.length === 0 ? 'No axle' : 'Only one support'} on the road, expected a front and a rear one: record \`chassis: axles:\``,
    };
  }
  for (let i = 1; i < groups.length; i++) {
    const [ahead, behind] = [groups[i - 1] as AxleGroup, groups[i] as AxleGroup];
    if (behind.xMm - ahead.xMm < LEAST_BASE_MM)
      return { problem: `Axles ${names(ahead)} and ${names(behind)} are at the same place: give their \`x\`` };
  }
  const supports = groups.length === 2 ? twoSupports(groups as [AxleGroup, AxleGroup]) : springReactions(groups);
  if ('problem' in supports) return supports;
  const perKg = axles.map(() => 0);
  const perKgMm = axles.map(() => 0);
  groups.forEach((group, g) => {
    for (const { axle, share } of group.axles) {
      const at = axles.indexOf(axle);
      perKg[at] = (supports.perKg[g] as number) * share;
      perKgMm[at] = (supports.perKgMm[g] as number) * share;
    }
  });
  return { axleModel: { axles, lifted, perKg, perKgMm } };
}

/** What each axle takes of a load, kg, in the order of the model’s axles. */
export const reactions = ({ perKg, perKgMm }: AxleModel, load: Pick<Load, 'massKg' | 'xKgMm'>): readonly number[] =>
  perKg.map((each, i) => each * load.massKg + (perKgMm[i] as number) * load.xKgMm);

/** What each axle takes of one kilogram at a station. */
export const influenceAt = (axleModel: AxleModel, xMm: number): readonly number[] =>
  reactions(axleModel, { massKg: 1, xKgMm: xMm });

function twoSupports([front, rear]: readonly [AxleGroup, AxleGroup]): SupportShares {
  const base = rear.xMm - front.xMm;
  return { perKg: [rear.xMm / base, -front.xMm / base], perKgMm: [-1 / base, 1 / base] };
}

const names = (group: AxleGroup): string => group.axles.map(({ axle }) => axle.id).join('+');
