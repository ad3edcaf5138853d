import type { Model } from '../model/shell.js';
import { dayOf } from '../quantity/day.js';
import type { Signoff } from '../records/index.js';
import type { DigestForm } from '../records/substance.js';
import { type Coverage, coverageOf, digestOf, wayOf } from './coverage.js';

/** A sign-off and whether it still stands. */
export interface Signed {
  readonly signoff: Signoff;
  /**
   * holds: nothing that it covers has changed. lapsed: something has. not verified: it has no digest, or one made in a way that this
   * program does not know.
   */
  readonly standing: 'holds' | 'lapsed' | 'not verified';
}

const known = new WeakMap<Model, readonly Signed[]>();

/** The latest sign-off of each stage by each role, in the order of the records: a later one takes an earlier one's place. */
export function signedStages(model: Model): readonly Signed[] {
  const found = known.get(model) ?? judge(model);
  known.set(model, found);
  return found;
}

function judge(model: Model): readonly Signed[] {
  const digests = new Map<string, string>();
  const now = ({ stage, date }: Signoff, way: DigestForm): string => {
    const key = `${way} ${stage} ${date}`;
    const digest = digests.get(key) ?? digestOf(coverageOf(model, stage, dayOf(date), way), way);
    digests.set(key, digest);
    return digest;
  };
  return latestOf(model.shell.signoffs).map((signoff) => {
    const { digest } = signoff;
    const way = digest === undefined ? undefined : wayOf(digest);
    if (way === undefined) return { signoff, standing: 'not verified' };
    return { signoff, standing: now(signoff, way) === digest ? 'holds' : 'lapsed' };
  });
}

/** Of sign-offs of one stage by one role on one day, the one further down was given later. */
function latestOf(signoffs: readonly Signoff[]): readonly Signoff[] {
  const latest = new Map<string, Signoff>();
  for (const one of signoffs) {
    const key = `${one.stage} ${one.role}`;
    const before = latest.get(key);
    if (before === undefined || one.date >= before.date) latest.set(key, one);
  }
  return signoffs.filter((one) => latest.get(`${one.stage} ${one.role}`) === one);
}

/** Records that differ between what was signed and what stands there now, `kind id`, in order. */
export function changedSinceSigned(then: Coverage, now: Coverage): readonly string[] {
  return [...new Set([...then.keys(), ...now.keys()])].filter((name) => then.get(name) !== now.get(name)).sort();
}

/** What lapsed sign-offs covered and has changed since, by id of the sign-off: what the rules say as the reason. */
export type Reasons = ReadonlyMap<string, readonly string[]>;
