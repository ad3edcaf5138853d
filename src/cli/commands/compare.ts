import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openStoreFor } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly from: string;
  readonly to: string;
}

export function declareCompare(registry: Registry): void {
  registry
    .add('compare <shell> <a> [b]', 'what differs between two revisions, tags or dates, by record and field', [
      'shellbook compare QF-007 QF-007-closed QF-007-closed-B',
      'shellbook compare QF-007 2026-02-01 2026-03-01',
      'shellbook compare QF-007 QF-007-closed   since then, up to now',
    ])
    .action(
      registry.run(
        ([shell, a, b]) => ({ shell: shell as string, from: a as string, to: (b as string | undefined) ?? 'HEAD' }),
        compare,
      ),
    );
}

async function compare({ shell, from, to }: Options, context: Context): Promise<Status> {
  const [{ changesBetween }, { resolveRevision }, { requireShellAt }] = await Promise.all([
    import('../changes.js'),
    import('../../store/revision.js'),
    import('../shell-at.js'),
  ]);
  const store = await openStoreFor(context);
  const { library } = store.loaded;
  const [a, b] = [await resolveRevision(store.root, from), await resolveRevision(store.root, to)];
  await requireShellAt(store, shell, [a, b], context);
  const changes = await changesBetween(store.root, a, b, shell);
  const { changesText, changeJson, whoText } = await import('../report/changes-text.js');
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('compare', shell, b, { from: a, to: b, changes: changes.map((one) => changeJson(one, library.people)) }),
    );
  } else if (changes.length === 0) context.print(`Nothing of ${shell} differs between ${from} and ${to}.`);
  else {
    context.print(`${shell}, ${from} (${a.slice(0, 8)}) to ${to} (${b.slice(0, 8)}):`);
    context.print(changesText(changes, library.people).join('\n'));
    const who = whoText(changes, library.people);
    if (who !== undefined) context.tell(who);
  }
  return 0;
}
