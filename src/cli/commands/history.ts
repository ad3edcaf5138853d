import { CannotDo } from '../../cannot.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openStore, requireShell, shownPath } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
}

export function declareHistory(registry: Registry): void {
  registry
    .add('history <shell>', 'what was recorded when and by whom, newest first', ['shellbook history QF-007'])
    .action(registry.run(([shell]) => ({ shell: shell as string }), history));
}

async function history(options: Options, context: Context): Promise<Status> {
  const store = await openStore(context);
  await requireShell(store, options.shell, context);
  if (!store.history) {
    throw new CannotDo(`${shownPath(store.root, context)} is not in a Git work tree, so it has no history. Start one: git init`);
  }
  const [commits, { uncommitted }] = await Promise.all([
    store.history.commits(options.shell),
    store.history.standing(options.shell),
  ]);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const answer = { commits: commits.map((one) => ({ ...one })), uncommitted };
    context.print(envelope('history', options.shell, commits[0]?.commit ?? null, answer));
  } else {
    const { table } = await import('../report/tables.js');
    const rows = commits.map((one) => [
      one.commit.slice(0, 8),
      one.date.slice(0, 10),
      one.author,
      one.subject + one.tags.map((tag) => ` [${tag}]`).join(''),
    ]);
    const heads = [{ head: 'commit' }, { head: 'date' }, { head: 'by' }, { head: 'what', wrap: true }];
    context.print(rows.length > 0 ? table(heads, rows) : 'Nothing committed yet.');
    if (uncommitted.length > 0) context.tell(`Not committed: ${uncommitted.join(', ')}`);
  }
  return 0;
}
