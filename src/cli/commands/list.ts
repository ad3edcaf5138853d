import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

export function declareList(registry: Registry): void {
  registry
    .add('list', 'every shell in the store and its state; or trends over all of them', [
      'shellbook list',
      'shellbook list --trends   rework, scale residuals and days to record, over the shells',
    ])
    .option('--trends', 'rework by stage and cause, findings a shell, scale residuals, days between work and record')
    .action(registry.run((_args, { trends }) => ({ trends: trends === true }), list));
}

/** Asking every picture and every commit of a thousand shells takes minutes: only `check` does. */
const NOT_COUNTED: readonly string[] = ['what pictures say by themselves', 'when records were entered'];

async function list({ trends }: { readonly trends: boolean }, context: Context): Promise<Status> {
  if (context.settings.book !== undefined) {
    const { UserError } = await import('../../user-error.js');
    throw new UserError('A printed book covers one shell: leave out --book, or use check');
  }
  if (trends) return listTrends(context);
  const [{ findStore }, { fileIds }, { History }, { summaries }, { closedAs }, { stateName }] = await Promise.all([
    import('../../store/find.js'),
    import('../../store/file-ids.js'),
    import('../../store/history.js'),
    import('../summaries.js'),
    import('../../store/closed-as.js'),
    import('../../closeout/state.js'),
  ]);
  const root = findStore(context.io.cwd, context.settings.store);
  const files = await fileIds(root);
  const missing = History.open(root)?.missing;
  if (missing !== undefined) context.tell(missing);
  const [found, closed] = await Promise.all([summaries(root, files, context), closedAs(root, files.uncommitted)]);
  const shells = [...found].map(([shell, { title, progress, built, counts }]) => {
    const tag = closed.get(shell);
    return { shell, title, state: stateName(progress, tag), progress, built, counts, tag };
  });
  if (context.settings.json) {
    const [{ envelope }, { headCommit }] = await Promise.all([import('../report/json.js'), import('../../store/closings.js')]);
    const answer = shells.map(({ shell, title, state, progress, built, counts, tag }) => ({
      shell,
      title,
      state,
      stage: progress.stage,
      lapsed: progress.lapsed,
      closed: tag ? { tag: tag.tag, revision_letter: tag.revision } : null,
      built: { planned: built.planned, done: built.done },
      counts: { ...counts },
    }));
    context.print(envelope('list', null, (await headCommit(root)) ?? null, { shells: answer, not_counted: NOT_COUNTED }));
  } else if (shells.length === 0) {
    context.print('No shells in this store yet. Start one: shellbook new-shell ID');
  } else {
    const [{ textTable }, { countsText }] = await Promise.all([import('../report/tables.js'), import('../report/findings.js')]);
    const heads = [{ head: 'shell' }, { head: 'title', wrap: true }, { head: 'state' }, { head: 'stage' }, { head: 'check' }];
    const rows = shells.map(({ shell, title, state, progress, built, counts, tag }) => [
      shell,
      title,
      state + (tag ? ` ${tag.revision}` : '') + (progress.lapsed.length > 0 ? `, ${progress.lapsed.join(', ')} lapsed` : ''),
      (progress.stage ?? '-') + (built.planned > 0 ? `, ${built.done} of ${built.done + built.planned} built` : ''),
      countsText(counts),
    ]);
    context.print(textTable(heads, rows));
    context.tell(`Counted from the records alone, without ${NOT_COUNTED.join(' and ')}. For those: shellbook check SHELL`);
  }
  return 0;
}

async function listTrends(context: Context): Promise<Status> {
  const [{ storeTrends }, { trendsJson, trendsText }] = await Promise.all([
    import('../trends.js'),
    import('../report/trends-text.js'),
  ]);
  const found = await storeTrends(context);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(envelope('list', null, null, { shells: [], trends: trendsJson(found) }));
  } else context.print(trendsText(found, context.paint));
  return 0;
}
