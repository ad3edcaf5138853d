import type { Axle, AxleReading } from '../../records/index.js';
import type { AxleModel } from './axle-reactions.js';
import { type BuiltItem, itemSources, loadOfItem } from './built.js';
import { sumOf } from './load.js';
import { loadShareSources } from './load-share.js';
import type { Survey } from './normalise.js';
import { asVehicleLoad, type ScaleUncertainty } from './scale.js';
import { COVERAGE, combine, ofResolution, rectangular, type UncertaintySource } from './uncertainty.js';
import { carrying, nothingWeighed, type SharedAs, solveAxleLoads } from './vehicle-load.js';

/** A reading of a scale, brought to the newest state of the vehicle, as a sum of the unknowns. */
export interface ReadingNow {
  readonly ticket: string;
  /** What it reads: each axle's load, and half of what the right end has more than the left, in the order of the axles. */
  readonly axles: readonly number[];
  readonly sides: readonly number[];
  readonly kg: number;
  /** Standard uncertainty by cause, kg with its sign. A cause that two readings share is one error in both. */
  readonly causes: ReadonlyMap<string, number>;
}

/** One cause with what it would add to every axle, to the total, and to each end. */
interface Cause {
  readonly key: string;
  readonly effect: Effect;
}
interface Effect {
  readonly axles: readonly number[];
  readonly total: number;
  readonly sides: readonly number[];
}

/** A cause and the reading: `tolerance of scale SC-1` is one error of all its readings, a step falls anew at each. */
const APART = ' \u0000';
export const nameOfCause = (key: string): string => key.split(APART)[0] as string;

/**
 * The readings of a ticket as they would be now: what was in it taken off, what was put on since added by its place. `sidesOnly`: of an older
 * state, of which what each end has more than the other is kept and the totals are not.
 */
export function readingsNow(
  one: Survey,
  since: readonly BuiltItem[],
  axles: readonly Axle[],
  axleModel: AxleModel,
  sharedAs: SharedAs,
  sidesOnly: boolean,
): readonly ReadingNow[] {
  const { ticket, unladen, lifted } = one;
  if (!unladen) return [];
  const now = solveAxleLoads({ ...carrying(unladen.vehicleLoad, sumOf(since.map(loadOfItem))), sharedAs }, axles, axleModel);
  const sidesKg = axles.map((_, i) => ((now.rightKg[i] ?? 0) - (now.leftKg[i] ?? 0)) / 2);
  const causes = causesOf(one, since, axles, axleModel, sharedAs, now.axlesKg);
  const reading = (
    w: readonly number[],
    d: readonly number[],
    kg: number,
    of: (effect: Effect) => number,
    more: Cause[] = [],
  ) => ({
    ticket: ticket.id,
    axles: w,
    sides: d,
    kg,
    causes: new Map(
      [...causes.filter(({ key }) => more.length === 0 || !isScale(key)), ...more].map(({ key, effect }) => [key, of(effect)]),
    ),
  });
  const only = (at: number, value: number): readonly number[] => axles.map((_, i) => (i === at ? value : 0));
  const none = axles.map(() => 0);
  const rows = axles.flatMap((axle, i): ReadingNow[] => {
    if (hasEnds(ticket.readings[axle.id], axle) && !lifted.has(axle.id) && lifted.size === 0) {
      const side = sidesKg[i] as number;
      const kg = now.axlesKg[i] as number;
      if (sidesOnly) return [reading(none, only(i, 1), side, (effect) => effect.sides[i] as number)];
      return [-1, 1].map((way) =>
        reading(
          only(i, 0.5),
          only(i, way),
          kg / 2 + way * side,
          (effect) => (effect.axles[i] as number) / 2 + way * (effect.sides[i] as number),
        ),
      );
    }
    return sidesOnly ? [] : [reading(only(i, 1), none, now.axlesKg[i] as number, (effect) => effect.axles[i] as number)];
  });
  if (sidesOnly || ticket.grossKg === undefined || lifted.size > 0) return rows;
  const readKg = axles.reduce((sum, axle) => sum + (ticket.readings[axle.id]?.totalKg ?? 0), 0);
  const gross = axles.map(() => 1);
  const total = (totalKg: number): Effect => ({ axles: none, total: totalKg, sides: none });
  const own = [
    { key: toleranceKey(one), effect: total(toleranceOf(ticket.grossKg, one.scale)) },
    { key: `steps of scale ${scaleName(one)}${APART}${ticket.id} gross`, effect: total(ofResolution(one.scale.resolutionKg)) },
  ];
  return [...rows, reading(gross, none, now.total.massKg + ticket.grossKg - readKg, (effect) => effect.total, own)];
}

const isScale = (key: string): boolean => key.startsWith('tolerance of scale ') || key.startsWith('steps of scale ');
const scaleName = ({ ticket }: Survey): string => ticket.scale ?? `of ${ticket.id}`;
const toleranceKey = (one: Survey): string => `tolerance of scale ${scaleName(one)}`;
const toleranceOf = (kg: number, { absoluteKg, relative }: ScaleUncertainty): number =>
  rectangular(absoluteKg + relative * Math.abs(kg));

export const hasEnds = (reading: AxleReading | undefined, axle: Axle): boolean =>
  reading?.leftKg !== undefined && reading.rightKg !== undefined && axle.trackMm !== undefined && axle.trackMm > 0;

/** Everything that is not known of a ticket's readings as they are now. */
function causesOf(
  one: Survey,
  since: readonly BuiltItem[],
  axles: readonly Axle[],
  axleModel: AxleModel,
  sharedAs: SharedAs,
  axlesKg: readonly number[],
): readonly Cause[] {
  const effectOf = effects(axles, axleModel, sharedAs);
  const named = (sources: readonly UncertaintySource[], apart = ''): readonly Cause[] =>
    sources.flatMap((source, i) =>
      effectOf(source).map((effect, part) => ({ key: `${source.name}${APART}${apart}${i} ${part}`, effect })),
    );
  const shared = one.aboard.map((source) => ({ key: source.name, effect: effectOf(source)[0] as Effect }));
  return [
    ...scaleCauses(one, axles, effectOf),
    ...shared,
    ...named(itemSources(since), `since ${one.ticket.id}`),
    ...(one.lifted.size > 0 ? named(loadShareSources(axles, axlesKg), one.ticket.id) : []),
  ];
}

type EffectOf = (source: UncertaintySource) => readonly Effect[];

/** A load is one effect with its signs. A spread is many small ones: each axle and side is known as badly by itself. */
function effects(axles: readonly Axle[], axleModel: AxleModel, sharedAs: SharedAs): EffectOf {
  const none = axles.map(() => 0);
  return (source) => {
    if ('massSquares' in source.what) {
      const { axlesKg, totalKg, leftKg, rightKg } = combine([source], axles, axleModel, sharedAs);
      const sides = axles.map((_, i) => Math.hypot(leftKg[i] ?? 0, rightKg[i] ?? 0) / (2 * COVERAGE));
      const single = (list: readonly number[], at: number): readonly number[] => list.map((kg, i) => (i === at ? kg : 0));
      return [
        { axles: none, total: totalKg / COVERAGE, sides: none },
        ...axles.map((_, i) => ({ axles: single(axlesKg, i).map((kg) => kg / COVERAGE), total: 0, sides: single(sides, i) })),
      ];
    }
    const { axlesKg, leftKg, rightKg, total } = solveAxleLoads({ ...source.what, sharedAs }, axles, axleModel);
    return [{ axles: axlesKg, total: total.massKg, sides: axles.map((_, i) => ((rightKg[i] ?? 0) - (leftKg[i] ?? 0)) / 2) }];
  };
}

function scaleCauses(one: Survey, axles: readonly Axle[], effectOf: EffectOf): readonly Cause[] {
  const { ticket, scale, lifted } = one;
  const on = (kg: (axle: Axle, i: number) => readonly [left: number, right: number]): Effect => {
    const each = axles.map(kg);
    const weighed = {
      ...nothingWeighed(axles),
      axlesKg: each.map(([left, right]) => left + right),
      turnKgMm: each.map(([left, right], i) => ((right - left) * (axles[i]?.trackMm ?? 0)) / 2),
    };
    return effectOf({ name: 'scale', what: asVehicleLoad(weighed, axles, lifted) })[0] as Effect;
  };
  const endsKg = (axle: Axle): readonly [number, number] => {
    const reading = ticket.readings[axle.id];
    const half = (reading?.totalKg ?? 0) / 2;
    return hasEnds(reading, axle) ? [reading?.leftKg as number, reading?.rightKg as number] : [half, half];
  };
  const tolerance = on((axle) => {
    const [left, right] = endsKg(axle);
    const read = ticket.readings[axle.id] ? 1 : 0;
    const each = (kg: number): number => rectangular((scale.absoluteKg * read) / 2 + scale.relative * kg);
    return [each(left), each(right)];
  });
  const step = ofResolution(scale.resolutionKg);
  const steps = axles.flatMap((axle, at): Cause[] => {
    const reading = ticket.readings[axle.id];
    if (!reading || step === 0) return [];
    const key = `steps of scale ${scaleName(one)}${APART}${ticket.id} ${axle.id}`;
    const at0 = (left: number, right: number): Effect => on((_, i) => (i === at ? [left, right] : [0, 0]));
    if (!hasEnds(reading, axle)) return [{ key, effect: at0(step / 2, step / 2) }];
    return [
      { key: `${key} left`, effect: at0(step, 0) },
      { key: `${key} right`, effect: at0(0, step) },
    ];
  });
  return [{ key: toleranceKey(one), effect: tolerance }, ...steps];
}
