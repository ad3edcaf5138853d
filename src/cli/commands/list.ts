import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openShell, openStore } from '../open.js';
import type { Registry } from '../registry.js';

export function declareList(registry: Registry): void {
  registry
    .add('list', 'every shell in the store with its state', ['shellbook list', 'shellbook list --store demo-data'])
    .action(registry.run(() => ({}), list));
}

async function list(_options: object, context: Context): Promise<Status> {
  const store = await openStore(context);
  const [{ stateOf }, { checkedShell }, { envelope }, { table }, { countsText }] = await Promise.all([
    import('../report/state.js'),
    import('../report/checked.js'),
    import('../report/json.js'),
    import('../report/tables.js'),
    import('../report/findings.js'),
  ]);
  const shells = [];
  for (const id of store.loaded.shells.keys()) {
    const { shell, assessment, counts } = checkedShell(await openShell(store, id, context));
    shells.push({
      shell,
      title: assessment.model.shell.title,
      ...stateOf(assessment.model),
      counts: { ...counts },
    });
  }
  if (context.settings.json) {
    const revision = (await store.history?.standing())?.last?.commit ?? null;
    context.print(envelope('list', null, revision, { shells }));
  } else if (shells.length === 0) {
    context.print('No shells in this store yet. Start one: shellbook new-shell ID');
  } else {
    const heads = [{ head: 'shell' }, { head: 'title', wrap: true }, { head: 'state' }, { head: 'stage' }, { head: 'check' }];
    context.print(
      table(
        heads,
        shells.map((one) => [one.shell, one.title, one.state, one.stage ?? '-', countsText(one.counts)]),
      ),
    );
  }
  return 0;
}
