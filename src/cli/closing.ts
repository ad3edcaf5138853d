import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { signers } from '../closeout/bound.js';
import { blocking, type OpenItem, openItems } from '../closeout/items.js';
import type { Model } from '../model/shell.js';
import { readPersonKey } from '../signing/person-key.js';
import type { Held } from '../store/lock.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { type OpenShell, openShell, openStoreFor } from './open.js';
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
 * record is not committed, and tags it. `sign`: the tag is signed with the shop’s key, or with the user’s own where the shop has none. `env` is added to Git’s environment. Throws {@link UserError} where Git cannot take it.
 */
export async function closeShell(shell: string, context: Context, env: Env = {}, sign = false): Promise<Closed> {
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
    const publicKey = sign ? await publicKeyFile(context, root) : undefined;
    const store = await openStoreFor(context);
    const { lookAround } = await import('./look-around.js');
    const opened = await openShell(store, shell, context, undefined, await lookAround(store, shell, context));
    const checked = checkedShell(opened);
    const { model } = opened.assessment;
    const items = [...(await mayNotClose(root, model, env, publicKey)), ...openItems({ model, findings: checked.findings })];
    if (blocking(items).length > 0 || opened.store.loaded.findings.length > 0)
      return { outcome: 'missing', opened, checked, items };
    return { opened, checked, items, ...(await commitAndTag(opened, env, held, publicKey)) };
  });
}

/** The file with the public half of the key that signs the close-out: the shop’s own, else the one that this user’s Git signs with. */
async function publicKeyFile(context: Context, root: string): Promise<string> {
  const { shopKey } = await import('./shop-key.js');
  const key = await shopKey(context, root);
  const file = key ? `${key.file}.pub` : await gitSigningKey(root);
  if (file === undefined)
    throw new UserError(
      'There is no key to sign the close-out with. Make one: shellbook key --new "Name of the shop"; or set up your own for Git (gpg.format ssh, user.signingKey); or close without --sign',
    );
  const { access } = await import('node:fs/promises');
  await access(file).catch(() => {
    throw new UserError(
      `${file} is missing: Git signs with the key whose public half lies there. Make both: shellbook key --new "Name of the shop"`,
    );
  });
  return file;
}

/** The user’s own key, where their Git signs by SSH with one in a file. */
async function gitSigningKey(root: string): Promise<string | undefined> {
  const { userSetting } = await import('../store/git/act.js');
  const [format, file] = await Promise.all([userSetting(root, 'gpg.format'), userSetting(root, 'user.signingKey')]);
  if (format !== 'ssh' || file === undefined || !path.isAbsolute(file)) return undefined;
  return file.endsWith('.pub') ? file : `${file}.pub`;
}

/** Whoever closes must be one of those who may, by the key that signs or the identity that they commit under, once the shop has said who. */
async function mayNotClose(root: string, model: Model, env: Env, publicKey?: string): Promise<readonly OpenItem[]> {
  const may = signers(model).filter((one) => one.signs?.includes('close'));
  if (signers(model).length === 0) return [];
  const [{ userSetting }, { keysOfPeople }] = await Promise.all([import('../store/git/act.js'), import('./signings.js')]);
  const key = publicKey === undefined ? undefined : readPersonKey(await readFile(publicKey, 'utf8'));
  if (key !== undefined && keysOfPeople(may).some((one) => one.key === key)) return [];
  const email = env.GIT_AUTHOR_EMAIL ?? process.env.GIT_AUTHOR_EMAIL ?? (await userSetting(root, 'user.email'));
  if (may.some(({ git }) => git?.some((one) => one.toLowerCase() === email?.toLowerCase()))) return [];
  const who = may.map(({ id }) => id).join(' or ') || 'somebody whose `signs` has close';
  return [
    {
      list: 'completion',
      grade: 'A',
      message: `Git would close under an identity that may not close, says library/people.yaml; expected that of ${who}`,
      ids: may.map(({ id }) => id),
      who: 'administrator',
      where: 'papers',
      because: 'signoff',
    },
  ];
}

async function commitAndTag(opened: OpenShell, env: Env, held: Held, publicKey: string | undefined) {
  const { root } = opened.store;
  const { shell } = opened.assessment.model;
  const { toCommit, refuseUnlessCommitted } = await import('../store/to-commit.js');
  const { closingTagName, closingTags, commitClosing, headCommit, revisionLetter, shellTree, tagCommit } = await import(
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
  if (committed.length > 0) await commitClosing(root, committed, `${shell.id}: closed, revision ${revision}`, env);
  const commit = await headCommit(root);
  if (commit === undefined) throw new UserError(`The store at ${root} has no commit to close. Commit it: git add and git commit`);
  await refuseUnlessCommitted(root, shell.id, commit);
  const tag = closingTagName(shell.id, revision);
  const { fingerprintOf } = await import('./fingerprint-of.js');
  held.still();
  await tagCommit(root, tag, commit, messageOf(opened, revision, (await fingerprintOf(opened)).fingerprint), env, publicKey);
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
