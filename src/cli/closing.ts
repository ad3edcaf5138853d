import { blocking, type OpenItem, openItems } from '../closeout/items.js';
import type { Held } from '../store/lock.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { type OpenShell, openShell, openStore } from './open.js';
import { type CheckedShell, checkedShell } from './report/checked.js';

type Env = Readonly<Record<string, string>>;

/** What came of an attempt to close a shell. */
export type Closed = { readonly opened: OpenShell; readonly checked: CheckedShell; readonly items: readonly OpenItem[] } & (
  | { readonly outcome: 'missing' }
  | {
      readonly outcome: 'closed' | 'closed already';
      readonly tag: string;
      readonly revision: string;
      readonly commit: string;
      readonly committed: readonly string[];
    }
);

/**
 * Closes a shell, under the store’s lock from the first look to the tag: judges it, and where nothing is missing commits what of its
 * record is not committed, and tags it. `env` is added to Git’s environment. Throws {@link UserError} where Git cannot take it.
 */
export async function closeShell(shell: string, context: Context, env: Env = {}): Promise<Closed> {
  const [{ findStore }, { underLock }, { readyToClose }] = await Promise.all([
    import('../store/find.js'),
    import('../store/lock.js'),
    import('../store/closings.js'),
  ]);
  if (context.settings.book !== undefined)
    throw new UserError('A printed book is closed for good: leave out --book, and close in a store');
  const root = findStore(context.io.cwd, context.settings.store);
  return underLock(root, async (held) => {
    await readyToClose(root, env);
    const store = await openStore(context);
    const { lookAround } = await import('./look-around.js');
    const opened = await openShell(store, shell, context, undefined, await lookAround(store, shell, context));
    const checked = checkedShell(opened);
    const items = openItems({ model: opened.assessment.model, findings: checked.findings });
    if (blocking(items).length > 0 || opened.store.loaded.findings.length > 0)
      return { outcome: 'missing', opened, checked, items };
    return { opened, checked, items, ...(await commitAndTag(opened, env, held)) };
  });
}

async function commitAndTag(opened: OpenShell, env: Env, held: Held) {
  const { root } = opened.store;
  const { shell } = opened.assessment.model;
  const { toCommit, refuseUnlessCommitted } = await import('../store/to-commit.js');
  const { closingTagName, closingTags, commitFiles, headCommit, revisionLetter, shellTree, tagCommit } = await import(
    '../store/closings.js'
  );
  const committed = await toCommit(root, shell.id);
  const before = (await closingTags(root)).get(shell.id) ?? [];
  const last = before.at(-1);
  const head = await headCommit(root);
  if (
    last &&
    head &&
    committed.length === 0 &&
    (await shellTree(root, last.commit, shell.id)) === (await shellTree(root, head, shell.id))
  )
    return { outcome: 'closed already', tag: last.name, revision: last.revision, commit: last.commit, committed } as const;
  const revision = nextRevision(
    before.map((tag) => tag.revision),
    revisionLetter,
  );
  held.still();
  if (committed.length > 0) await commitFiles(root, committed, `${shell.id}: closed, revision ${revision}`, env);
  const commit = await headCommit(root);
  if (commit === undefined) throw new UserError(`The store at ${root} has no commit to close. Commit it: git add and git commit`);
  await refuseUnlessCommitted(root, shell.id, commit);
  const tag = closingTagName(shell.id, revision);
  const { fingerprintOf } = await import('./fingerprint-of.js');
  held.still();
  await tagCommit(root, tag, commit, messageOf(opened, revision, (await fingerprintOf(opened)).fingerprint), env);
  return { outcome: 'closed', tag, revision, commit, committed } as const;
}

function nextRevision(taken: readonly string[], letter: (count: number) => string): string {
  let count = taken.length + 1;
  while (taken.includes(letter(count))) count++;
  return letter(count);
}

function messageOf({ assessment: { model } }: OpenShell, revision: string, fingerprint: string): string {
  const { shell } = model;
  const lines = [`${shell.id} closed, revision ${revision}`, '', `Fingerprint: ${fingerprint}`];
  if (shell.amendments.length > 0) lines.push(`Amendments: ${shell.amendments.map(({ id }) => id).join(', ')}`);
  return lines.join('\n');
}
