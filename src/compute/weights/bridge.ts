import { KG_PER_LB, MM_PER_IN } from '../../quantity/units.js';
import type { Axle } from '../../records/index.js';
import type { RoadLimit } from './types.js';

/*
 * Road limits of the United States Interstate system, as information only: states and provinces differ, and a road limit is not
 * a rating. 23 USC 127(a), 23 CFR 658.5 and 658.17. Pounds and feet inside this file, as the law has them.
 */
const SINGLE_LB = 20_000;
const TANDEM_LB = 34_000;
const GROSS_LB = 80_000;
/** Axles not more than 40 in apart count as one; not more than 96 in apart are a tandem. */
const ONE_AXLE_IN = 40;
const TANDEM_IN = 96;
/** Two consecutive tandems may carry 34,000 lb each where their outer axles are 36 ft apart or more. */
const TWO_TANDEMS_FT = 36;

/**
 * W = 500 (L N / (N − 1) + 12 N + 36), lb, L in whole feet between the outer of N axles; to the nearest 500 lb, an exact half
 * down, and not above 80,000 lb. Worked: 3 axles over 25 ft: 54,500 lb.
 */
export function bridgeFormulaLb(axles: number, lengthFt: number): number {
  const exact = 500 * ((lengthFt * axles) / (axles - 1) + 12 * axles + 36);
  return Math.min(GROSS_LB, Math.ceil(exact / 500 - 0.5) * 500);
}

interface Point {
  readonly ids: readonly string[];
  readonly firstIn: number;
  readonly lastIn: number;
  readonly lb: number;
}

/** Every single axle, tandem and group of consecutive axles against its road limit, and the gross. */
export function roadLimits(axles: readonly Axle[], axlesKg: readonly number[]): readonly RoadLimit[] {
  if (axlesKg.length === 0) return [];
  const points = pointsOf(axles, axlesKg);
  const limits = points.map((point) => limitOf('single', [point], SINGLE_LB));
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) limits.push(groupLimit(points.slice(i, j + 1)));
  }
  limits.push(limitOf('gross', points, GROSS_LB));
  return limits;
}

function groupLimit(group: readonly Point[]): RoadLimit {
  const lengthIn = spreadIn(group);
  if (lengthIn <= TANDEM_IN) return limitOf('tandem', group, TANDEM_LB);
  const formula = bridgeFormulaLb(group.length, Math.round(lengthIn / 12));
  return limitOf('bridge', group, areTwoTandems(group) ? Math.max(formula, 2 * TANDEM_LB) : formula);
}

const areTwoTandems = (group: readonly Point[]): boolean =>
  group.length === 4 &&
  spreadIn(group) >= TWO_TANDEMS_FT * 12 &&
  spreadIn(group.slice(0, 2)) <= TANDEM_IN &&
  spreadIn(group.slice(2)) <= TANDEM_IN;

const spreadIn = (group: readonly Point[]): number => (group.at(-1)?.lastIn ?? 0) - (group[0]?.firstIn ?? 0);

/** Axles that count as one by the law, front to rear; an axle that is up is not on the road. */
function pointsOf(axles: readonly Axle[], axlesKg: readonly number[]): readonly Point[] {
  const points: Point[] = [];
  const order = axles.map((axle, i) => ({ axle, kg: axlesKg[i] as number })).sort((a, b) => a.axle.xMm - b.axle.xMm);
  for (const { axle, kg } of order) {
    if (kg === 0) continue;
    const atIn = axle.xMm / MM_PER_IN;
    const last = points.at(-1);
    if (last && atIn - last.firstIn <= ONE_AXLE_IN) {
      points[points.length - 1] = {
        ids: [...last.ids, axle.id],
        firstIn: last.firstIn,
        lastIn: atIn,
        lb: last.lb + kg / KG_PER_LB,
      };
    } else {
      points.push({ ids: [axle.id], firstIn: atIn, lastIn: atIn, lb: kg / KG_PER_LB });
    }
  }
  return points;
}

function limitOf(kind: RoadLimit['kind'], group: readonly Point[], limitLb: number): RoadLimit {
  const loadKg = group.reduce((sum, point) => sum + point.lb, 0) * KG_PER_LB;
  const limitKg = limitLb * KG_PER_LB;
  return {
    kind,
    axles: group.flatMap((point) => point.ids),
    spreadMm: spreadIn(group) * MM_PER_IN,
    loadKg,
    limitKg,
    marginKg: limitKg - loadKg,
  };
}
