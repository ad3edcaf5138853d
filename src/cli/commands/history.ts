import { dayOf } from '../../quantity/day.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { type OpenStore, openStoreFor, requireShell } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  /** Only what became of this record. */
  readonly id?: string;
}

export function declareHistory(registry: Registry): void {
  registry
    .add('history <shell> [id]', 'who recorded what and when, newest first; for one record, field by field', [
      'shellbook history QF-007',
      'shellbook history QF-007 W-0112',
    ])
    .action(
      registry.run(([shell, id]) => ({ shell: shell as string, ...(id === undefined ? {} : { id: id as string }) }), history),
    );
}

async function history(options: Options, context: Context): Promise<Status> {
  const store = await openStoreFor(context);
  await requireShell(store, options.shell, context);
  if (!store.history) {
    throw new UserError(`${shownPath(store.root, context)} is not in a Git work tree, so it has no history. Start one: git init`);
  }
  if (store.history.missing !== undefined) context.tell(store.history.missing);
  if (options.id !== undefined) return recordHistory(store, options.shell, options.id, context);
  const [commits, { uncommitted }] = await Promise.all([
    store.history.commits(options.shell),
    store.history.standing(options.shell),
  ]);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const answer = { commits: commits.map((one) => ({ ...one })), uncommitted };
    context.print(envelope('history', options.shell, commits[0]?.commit ?? null, answer));
  } else {
    const { textTable } = await import('../report/tables.js');
    const rows = commits.map((one) => [
      one.commit.slice(0, 8),
      dayOf(one.date),
      one.author,
      one.subject + one.tags.map((tag) => ` [${tag}]`).join(''),
    ]);
    const heads = [{ head: 'commit' }, { head: 'date' }, { head: 'by' }, { head: 'what', wrap: true }];
    context.print(rows.length > 0 ? textTable(heads, rows) : 'Nothing committed yet.');
    const others = [...store.loaded.shells.keys()].filter((other) => other !== options.shell);
    if (commits.some(({ subject }) => !subject.includes(options.shell) && others.some((other) => subject.includes(other))))
      context.tell(`Commits for other shells are listed if they changed the library, which ${options.shell} also uses.`);
    if (uncommitted.length > 0) context.tell(`Not committed: ${uncommitted.join(', ')}`);
  }
  return 0;
}

async function recordHistory(store: OpenStore, shell: string, id: string, context: Context): Promise<Status> {
  const { historyOf } = await import('../record-history.js');
  const steps = await historyOf(store.root, shell, id);
  if (steps.length === 0) {
    const { didYouMean } = await import('../../source/nearest.js');
    const known = [...(store.loaded.shells.get(shell)?.model.shell.byId.keys() ?? [])];
    if (known.includes(id))
      throw new UserError(
        `${id} of ${shell} is not committed yet, so it has no history. Commit it: git add shells/${shell} && git commit`,
      );
    throw new UserError(`No record ${id} in the history of ${shell}${didYouMean(id, known)}`);
  }
  const { changeJson, changesText, whoText } = await import('../report/changes-text.js');
  const { people } = store.loaded.library;
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('history', shell, steps[0]?.by?.commit ?? null, { id, changes: steps.map((step) => changeJson(step, people)) }),
    );
  } else {
    for (const step of steps) context.print(changesText([step], people).join('\n'));
    const who = whoText(steps, people);
    if (who !== undefined) context.tell(who);
  }
  return 0;
}
