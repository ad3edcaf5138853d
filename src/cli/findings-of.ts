import type { DecidedFinding } from '../rules/decide.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';

/** What `check` finds by one rule in a shell as it stands now, decided ones too. Throws {@link UserError} where no rule has that name. */
export async function findingsOf(shell: string, rule: string, context: Context): Promise<readonly DecidedFinding[]> {
  const [{ RULES }, { didYouMean }, { openShell, openStoreFor }, { lookAround }, { checkedShell }] = await Promise.all([
    import('../rules/index.js'),
    import('../source/nearest.js'),
    import('./open.js'),
    import('./look-around.js'),
    import('./report/checked.js'),
  ]);
  if (!RULES.some(({ name }) => name === rule)) {
    const close = didYouMean(
      rule,
      RULES.map(({ name }) => name),
    );
    throw new UserError(`No rule ${rule}${close === '' ? ', expected a name that check shows, as service.no-grommet' : close}`);
  }
  const store = await openStoreFor(context);
  const opened = await openShell(store, shell, context, undefined, await lookAround(store, shell, context));
  return checkedShell(opened).findings.filter((finding) => finding.rule === rule);
}
