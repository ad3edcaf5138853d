import type { Model } from '../../model/shell.js';
import type { Axle } from '../../records/index.js';
import type { AxleModel } from './axle-reactions.js';
import { type BuiltItem, builtBy, stageOrder } from './built.js';
import { adjustCorrelated, type CorrelatedAdjustment } from './least-squares.js';
import { NO_LOAD } from './load.js';
import type { Items, Survey, Unladen } from './normalise.js';
import { hasEnds, nameOfCause, type ReadingNow, readingsNow } from './readings-now.js';
import { completeSides, type SidePrior } from './sides.js';
import { rectangular, type UncertaintySource } from './uncertainty.js';
import { nothingWeighed, type SharedAs, sideShares, solveAxleLoads, totalOf, turnsOf, type Weighed } from './vehicle-load.js';

/** The unladen vehicle as all its scale tickets together have it. */
export interface Estimate {
  readonly unladen: Unladen;
  /** Tickets that the axle loads come from, and those whose ends are kept. */
  readonly tickets: readonly string[];
  readonly endTickets: readonly string[];
  /** Tickets of this state that the newest one contradicts beyond what their scales can do. */
  readonly contradicted: readonly string[];
}

/** Errors that no cause on record explains, kg, so that equal readings can be told apart. */
const LEAST_U_KG = 0.1;

/**
 * Reconciles every verified ticket of the newest state by least squares with the errors that they share (one scale's tolerance, one tank's
 * level): the unknowns are the load of each axle, and of each axle whose ends were ever weighed what the right end has more than the left.
 * A ticket without ends corrects totals and leaves the sides as they were weighed; ends of an older state come along with what was
 * put on since. What the tickets differ by, and what the records do not explain of them, is part of the uncertainty.
 */
export function estimate(
  model: Model,
  surveys: readonly Survey[],
  newest: Survey,
  items: Items,
  axleModel: AxleModel | undefined,
): Estimate | undefined {
  const { axles } = model.shell.chassis;
  if (!newest.unladen || !axleModel) return undefined;
  const first = solveAxleLoads(newest.unladen.vehicleLoad, axles, axleModel);
  const sharedAs: SharedAs = { axlesKg: first.axlesKg, load: first.total };
  const built = builtBy(model, newest.ticket);
  const since = (one: Survey): readonly BuiltItem[] => {
    const then = builtBy(model, one.ticket);
    return [...items.values()].filter((item) => built(item) && !then(item));
  };
  const usable = surveys.filter((one) => one.reason === undefined && one.unladen);
  const isPeer = (one: Survey): boolean => one === newest || sameState(model, one, newest, since(one));
  const rowsOf = (one: Survey, sidesOnly: boolean) => readingsNow(one, since(one), axles, axleModel, sharedAs, sidesOnly);
  const together = usable.map((one) => ({ one, peer: isPeer(one), rows: rowsOf(one, !isPeer(one)) }));
  const solved = solve(
    together.flatMap(({ rows }) => rows),
    axles,
  );
  if (!solved) return undefined;
  const peers = together.filter(({ peer }) => peer).map(({ one }) => one);
  const agree = peers.length === 1 || doAgree(solved);
  const kept = agree
    ? solved
    : solve(
        together.flatMap(({ one, rows }) => (one === newest ? rows : rowsOf(one, true))),
        axles,
      );
  if (!kept) return undefined;
  const apart = peers.map((one) => deviation(one, since(one), axles, axleModel, sharedAs, kept.axlesKg));
  const prior = sidePrior(newest, axles, axleModel, sharedAs);
  const sides = completeSides(kept.sidesKg, axles, sharedAs, prior);
  const weighed: Weighed = { axlesKg: kept.axlesKg, turnKgMm: sides.turnKgMm };
  const sources = [
    ...kept.causes.map(({ name, axlesKg, sidesKg }) => source(name, axlesKg, sides.turnsFrom(sidesKg))),
    ...sides.sources,
    ...apartSources(apart, axles, agree ? 'tickets that differ' : 'tickets that contradict each other'),
    ...unexplained(newest, kept.axlesKg, axles, axleModel),
  ];
  const heightKgMm = totalOf(newest.unladen.vehicleLoad, axles).zKgMm;
  return {
    unladen: { vehicleLoad: { weighed, placed: NO_LOAD, heightKgMm }, sources },
    tickets: agree ? peers.map(({ ticket }) => ticket.id) : [newest.ticket.id],
    endTickets: usable
      .filter((one) => axles.some((axle) => hasEnds(one.ticket.readings[axle.id], axle)))
      .map(({ ticket }) => ticket.id),
    contradicted: agree ? [] : peers.filter((one) => one !== newest).map(({ ticket }) => ticket.id),
  };
}

/** Of the same stage; where no stage is given, with nothing recorded between. */
function sameState(model: Model, one: Survey, newest: Survey, since: readonly BuiltItem[]): boolean {
  const [a, b] = [stageOrder(model, one.ticket.stage), stageOrder(model, newest.ticket.stage)];
  return a === undefined || b === undefined ? since.length === 0 : a === b;
}

interface Solved {
  readonly axlesKg: readonly number[];
  /** Half of what the right end has more; nothing for an axle whose ends were never weighed. */
  readonly sidesKg: readonly (number | undefined)[];
  readonly causes: readonly { readonly name: string; readonly axlesKg: readonly number[]; readonly sidesKg: readonly number[] }[];
  readonly chiSquare: number;
  readonly redundancy: number;
}

function solve(rows: readonly ReadingNow[], axles: readonly Axle[]): Solved | undefined {
  const withEnds = axles.map((_, i) => i).filter((i) => rows.some((row) => row.sides[i] !== 0));
  const design = rows.map((row) => [...row.axles, ...withEnds.map((i) => row.sides[i] as number)]);
  const keys = [...new Set(rows.flatMap((row) => [...row.causes.keys()]))];
  const effect = (row: ReadingNow, key: string): number => row.causes.get(key) ?? 0;
  const covariance = rows.map((a, i) =>
    rows.map((b, j) => keys.reduce((sum, key) => sum + effect(a, key) * effect(b, key), i === j ? LEAST_U_KG ** 2 : 0)),
  );
  const fitted = adjustCorrelated(
    design,
    rows.map((row) => row.kg),
    covariance,
  );
  if (!fitted) return undefined;
  const spread = (values: readonly number[]) => ({
    axlesKg: axles.map((_, i) => values[i] as number),
    sidesKg: axles.map((_, i) => (withEnds.includes(i) ? (values[axles.length + withEnds.indexOf(i)] as number) : 0)),
  });
  const { axlesKg, sidesKg } = spread(fitted.solution);
  return {
    axlesKg,
    sidesKg: sidesKg.map((kg, i) => (withEnds.includes(i) ? kg : undefined)),
    causes: keys.map((key) => ({ name: nameOfCause(key), ...spread(throughGain(fitted, rows, key)) })),
    chiSquare: fitted.chiSquare,
    redundancy: rows.length - axles.length - withEnds.length,
  };
}

/** What one cause does to each unknown: G c (JCGM 100:2008 5.2.2, correlated inputs as one common cause). */
const throughGain = ({ gain }: CorrelatedAdjustment, rows: readonly ReadingNow[], key: string): readonly number[] =>
  gain.map((row) => row.reduce((sum, value, k) => sum + value * (rows[k]?.causes.get(key) ?? 0), 0));

/** Beyond this many standard deviations of chi-square readings contradict each other: one good set in a hundred goes so far. */
const SLIP = 3.29;

const doAgree = ({ chiSquare, redundancy }: Solved): boolean =>
  redundancy <= 0 || chiSquare <= redundancy + SLIP * Math.sqrt(2 * redundancy);

/** A ticket's own axle loads, as they would be now, less those of the estimate. */
function deviation(
  { unladen }: Survey,
  since: readonly BuiltItem[],
  axles: readonly Axle[],
  axleModel: AxleModel,
  sharedAs: SharedAs,
  axlesKg: readonly number[],
): readonly number[] {
  if (!unladen) return axles.map(() => 0);
  const placed = since.reduce((sum, item) => addItem(sum, item), unladen.vehicleLoad.placed);
  const own = solveAxleLoads({ ...unladen.vehicleLoad, placed, sharedAs }, axles, axleModel).axlesKg;
  return own.map((kg, i) => kg - (axlesKg[i] as number));
}

const addItem = (sum: typeof NO_LOAD, { massKg, centroid }: BuiltItem): typeof NO_LOAD => ({
  massKg: sum.massKg + massKg,
  xKgMm: sum.xKgMm + massKg * centroid[0],
  yKgMm: sum.yKgMm + massKg * centroid[1],
  zKgMm: sum.zKgMm + massKg * centroid[2],
});

const source = (name: string, axlesKg: readonly number[], turnKgMm: readonly number[]): UncertaintySource => ({
  name,
  what: { weighed: { axlesKg, turnKgMm }, placed: NO_LOAD, heightKgMm: 0 },
});

/** The furthest that any ticket is from the estimate, axle by axle, as the half-width of a rectangle. */
function apartSources(apart: readonly (readonly number[])[], axles: readonly Axle[], name: string): readonly UncertaintySource[] {
  const none = nothingWeighed(axles);
  return axles.flatMap((_, at): UncertaintySource[] => {
    const furthest = Math.max(0, ...apart.map((row) => Math.abs(row[at] as number)));
    if (furthest < 1e-6) return [];
    return [
      source(
        name,
        axles.map((_unused, i) => (i === at ? rectangular(furthest) : 0)),
        none.turnKgMm,
      ),
    ];
  });
}

/** What the scale found and the records do not explain: as likely a wrong condition as a missing record, so it counts in full. */
function unexplained(
  { predicted }: Survey,
  axlesKg: readonly number[],
  axles: readonly Axle[],
  axleModel: AxleModel,
): readonly UncertaintySource[] {
  if (!predicted) return [];
  const expected = solveAxleLoads(predicted.vehicleLoad, axles, axleModel).axlesKg;
  const kg = axlesKg.map((each, i) => rectangular(each - (expected[i] as number)));
  return [source('weighed but not explained by the records', kg, nothingWeighed(axles).turnKgMm)];
}

/** The moment to a side on each axle as the records have it, for axles whose ends were never weighed. */
function sidePrior(
  { predicted }: Survey,
  axles: readonly Axle[],
  axleModel: AxleModel,
  sharedAs: SharedAs,
): SidePrior | undefined {
  if (!predicted) return undefined;
  const turnKgMm = turnsOf(predicted.vehicleLoad, axles, axleModel, sideShares(sharedAs, axleModel));
  const causes = predicted.sources.map(({ name, what }) => ({
    name,
    kgMm: 'massSquares' in what ? Math.sqrt(what.sideSquares) : totalOf(what, axles).yKgMm,
  }));
  return { turnKgMm, causes };
}
