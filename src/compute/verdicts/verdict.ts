import type { Model } from '../../model/shell.js';
import { isListed, type TestKind } from '../../records/closed-lists.js';
import type { Instrument, Medium, Test } from '../../records/index.js';
import { calibrationLapse } from './calibration.js';
import { gasDrop } from './gas-drop.js';

/** What a test's values say. Nobody types it. */
export interface TestVerdict {
  readonly id: string;
  readonly verdict: 'passed' | 'failed' | 'not verified';
  /** Why it does not pass; absent where it does. A clause, without a full stop. */
  readonly reason?: string;
  /** The reason is the instrument's calibration and nothing else. */
  readonly lapsed?: boolean;
  /** What was compared with the limit, in the limit's SI unit: the value measured, or start less end. */
  readonly value?: number;
  readonly limit?: number;
  readonly dimension?: string;
  /** True where the value must reach the limit, false where it must not pass it. */
  readonly atLeast: boolean;
}

/** Tests whose value must reach the limit; in the others of the list it must not pass it. */
const AT_LEAST: readonly TestKind[] = ['insulation', 'dielectric withstand', 'coupon pull', 'torque', 'flow'];
/** With one value, the pressure that was held; with `start` and `end` they are judged by what was lost. */
const HELD: readonly TestKind[] = ['pressure', 'pressure hold'];

/**
 * Whether the value must reach the limit; undefined for a single value of a kind that is not in the list, for nobody can tell: unless it
 * is the limit itself, or the limit is 0, which as a least would say nothing.
 */
function mustReach({ testKind, measured, limit }: Test): boolean | undefined {
  const kind = testKind as TestKind;
  if (AT_LEAST.includes(kind)) return true;
  if (HELD.includes(kind)) return measured?.dimension === 'pressure';
  const either = limit === undefined || limit.value === 0 || limit.value === measured?.value;
  return measured && !either && !isListed('test', testKind) ? undefined : false;
}
/** What nobody sees without an instrument. */
const NEEDS_INSTRUMENT = new Set(['pressure', 'resistance', 'voltage', 'current', 'torque', 'force']);
/** A gas line whose temperature moved by more than this, K, has not settled. Common practice, no source. */
const SETTLED_K = 5;
/** Where no loss at all is allowed, a gauge must show this share of the test pressure (0.1 psi of 3 psi will do). Common practice, no source. */
const FINE_ENOUGH = 0.05;

/** Share by which the arithmetic itself, units and temperatures in and out, may miss. */
const ROUNDING = 1e-9;

/** Judges a test by its values. Evidence that is missing or too weak gives "not verified", never a pass. */
export function judgeTest(test: Test, model: Model): TestVerdict {
  const reaches = mustReach(test);
  const atLeast = reaches === true;
  const base = { id: test.id, atLeast };
  const weak = (reason: string): TestVerdict => ({ ...base, verdict: 'not verified', reason });
  if (test.of.length === 0) return weak('its `of` names nothing');
  const read = reading(test, mediaOf(test, model));
  if ('reason' in read) return weak(read.reason);
  const { value, dimension } = read;
  const { limit } = test;
  if (!limit) return weak('it has no `limit` to be judged by');
  if (reaches === undefined)
    return weak(
      `its kind \`${test.testKind}\` is not in the list, so whether its limit is the least or the most is not known: type \`kind\` from the list`,
    );
  // A bare 0 has no dimension of its own.
  if (limit.dimension !== dimension && limit.value !== 0) {
    return weak(`its limit \`${limit.text}\` is a ${limit.dimension}, its value a ${dimension}`);
  }
  const figure = { ...base, value, limit: limit.value, dimension };
  const instrument = test.instrument === undefined ? undefined : model.library.instruments.get(test.instrument);
  const step = instrument?.resolution?.dimension === dimension ? instrument.resolution.value : 0;
  // A difference of two readings may be one step of the gauge; a single reading above no loss at all is a loss.
  const allowed = limit.value === 0 && !atLeast && !test.measured ? step : limit.value;
  const noise = ROUNDING * Math.max(Math.abs(value), Math.abs(limit.value), Math.abs(test.start?.value ?? 0));
  // Failed is said first: a poor gauge does not excuse a reading that is plainly out.
  if (atLeast ? value < limit.value - noise : value > allowed + noise)
    return { ...figure, verdict: 'failed', reason: 'its value is past the limit' };
  const doubt = uncertaintyOf(test, instrument, dimension, step);
  return doubt ? { ...figure, verdict: 'not verified', ...doubt } : { ...figure, verdict: 'passed' };
}

type Reading = { readonly value: number; readonly dimension: string } | { readonly reason: string };

function reading(test: Test, media: ReadonlySet<Medium>): Reading {
  const { measured, start, end, startTemperatureK, endTemperatureK } = test;
  if (measured) return { value: measured.value, dimension: measured.dimension };
  if (!start || !end) return { reason: 'it has no `measured` value, nor `start` and `end`' };
  if (start.dimension !== end.dimension)
    return { reason: `\`${start.text}\` and \`${end.text}\` are not the same kind of value` };
  const gas = start.dimension === 'pressure' && (media.has('gas') || media.has('air'));
  if (!gas) return { value: start.value - end.value, dimension: start.dimension };
  if (startTemperatureK === undefined || endTemperatureK === undefined) {
    return { reason: 'a gas-filled line needs its temperature at start and end' };
  }
  if (Math.abs(endTemperatureK - startTemperatureK) > SETTLED_K) {
    return {
      reason: `the temperature moved by ${Math.abs(endTemperatureK - startTemperatureK).toFixed(1)} K: it had not settled`,
    };
  }
  return { value: gasDrop(start.value, end.value, startTemperatureK, endTemperatureK), dimension: start.dimension };
}

function uncertaintyOf(
  test: Test,
  instrument: Instrument | undefined,
  dimension: string,
  step: number,
): { readonly reason: string; readonly lapsed?: boolean } | undefined {
  if (!instrument) return NEEDS_INSTRUMENT.has(dimension) ? { reason: 'it names no instrument of the library' } : undefined;
  const fine = test.limit?.value === 0 ? FINE_ENOUGH * (test.start?.value ?? Number.POSITIVE_INFINITY) : (test.limit?.value ?? 0);
  if (step > fine) return { reason: `${instrument.id} shows steps of ${instrument.resolution?.text}, too coarse for this limit` };
  if (test.date === undefined) return { reason: `it has no date to set against the calibration of ${instrument.id}` };
  const lapse = calibrationLapse(instrument, test.date);
  return lapse ? { reason: lapse, lapsed: true } : undefined;
}

/** The media of what a test is of: circuits, runs and nodes know theirs. */
function mediaOf(test: Test, { shell }: Model): ReadonlySet<Medium> {
  const ids = new Set(test.of);
  const tested = [...shell.circuits, ...shell.runs, ...shell.nodes].filter((record) => ids.has(record.id));
  return new Set(tested.map((record) => record.medium));
}
