import { coverageOf, digestOf, wayOf } from '../closeout/coverage.js';
import { changedSinceSigned, type Reasons, signedStages } from '../closeout/signed.js';
import { loadStore } from '../model/load.js';
import type { Model } from '../model/shell.js';
import { dayOf } from '../quantity/day.js';
import type { Signoff } from '../records/index.js';
import { readStoreTextAt } from '../store/at-revision.js';
import { askGit, inTop } from '../store/git/look.js';

/**
 * Why each lapsed sign-off of a shell has lapsed: what it covered in the commit that it came in with, beside what stands there now.
 * One that is not committed yet is compared with the last commit. Says nothing of one whose commit was not what was signed.
 */
export async function lapsedBy(root: string, model: Model): Promise<Reasons> {
  const reasons = new Map<string, readonly string[]>();
  for (const { signoff, standing } of signedStages(model)) {
    if (standing !== 'lapsed') continue;
    const changed = await changedIn(root, model, signoff);
    if (changed !== undefined) reasons.set(signoff.id, changed);
  }
  return reasons;
}

async function changedIn(root: string, model: Model, signoff: Signoff): Promise<readonly string[] | undefined> {
  const { stage, digest = '', source } = signoff;
  const day = dayOf(signoff.date);
  try {
    const commits = await askGit(root, ['log', '--format=%H', `-S${digest}`, 'HEAD', '--', ...inTop(root, [source.file])]);
    const entered = commits.split('\n').at(-1);
    // Signed, and changed before anything was committed: what differs from the last commit is what can be told.
    if (!entered) return sinceHead(root, model, stage, day);
    const then = loadStore(await readStoreTextAt(root, entered, model.shell.id)).shells.get(model.shell.id);
    const way = wayOf(digest);
    const covered = way && then && coverageOf(then.model, stage, day, way);
    return covered && digestOf(covered, way) === digest
      ? changedSinceSigned(covered, coverageOf(model, stage, day, way))
      : undefined;
  } catch {
    return undefined;
  }
}

async function sinceHead(root: string, model: Model, stage: string, day: string): Promise<readonly string[] | undefined> {
  const then = loadStore(await readStoreTextAt(root, 'HEAD', model.shell.id)).shells.get(model.shell.id);
  if (!then) return undefined;
  const changed = changedSinceSigned(coverageOf(then.model, stage, day), coverageOf(model, stage, day));
  return changed.length > 0 ? changed : undefined;
}
