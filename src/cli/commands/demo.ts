import path from 'node:path';
import type { Assessment } from '../../assess.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openShell, openStoreFor } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly dir: string;
}

export function declareDemo(registry: Registry): void {
  registry
    .add('demo [dir]', 'creates a made-up sample store with its history and runs the whole job on it', [
      'shellbook demo',
      'shellbook demo out/demo',
    ])
    .action(registry.run(([dir]) => ({ dir: (dir as string | undefined) ?? 'shellbook-demo' }), demo));
}

async function demo(options: Options, context: Context): Promise<Status> {
  const dir = path.resolve(context.io.cwd, options.dir);
  const shown = shownPath(dir, context);
  const [{ clearDemo }, { layDemo }] = await Promise.all([import('../demo/place.js'), import('../demo/lay.js')]);
  await clearDemo(dir);
  context.tell(`1. Laying the made-up store down in ${shown}, with its Git history`);
  await layDemo(dir, context);
  // Typed through npm, the program is not on the path.
  const program = context.io.env.npm_execpath === undefined ? 'shellbook' : 'npx shellbook';
  const inside: Context = {
    ...context,
    settings: { ...context.settings, store: dir },
  };
  const store = await openStoreFor(inside);
  const shells = [...store.loaded.shells.keys()];
  context.tell(`2. Checking ${shells.join(' and ')}`);
  const { checkedShell } = await import('../report/checked.js');
  const { demoSummary, demoEnd } = await import('../report/demo-text.js');
  const [first, ...others] = await inOrder(shells, async (shell) => openShell(store, shell, inside));
  for (const opened of first ? [first, ...others] : []) context.tell(demoSummary(checkedShell(opened), opened === first));
  if (!first) return 0;
  const { id } = first.assessment.model.shell;
  context.tell(`3. Printing the three editions of ${id}'s book`);
  const { printBooks } = await import('../print-books.js');
  const printed = await printBooks(
    first,
    ['owner', 'service', 'shop'],
    (edition) => path.join(dir, 'books', `${id}-${edition}.pdf`),
    inside,
  );
  for (const one of printed) for (const misfit of one.misfits) context.tell(`${one.edition} edition: ${misfit}`);
  const books = printed.map((one) => ({
    ...one,
    file: shownPath(one.file, context),
  }));
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const answer = books.map((one) => ({
      edition: one.edition,
      file: one.file,
      pages: one.pageCount,
    }));
    context.print(
      envelope('demo', id, first.standing?.last?.commit ?? null, {
        store: shown,
        shells,
        books: answer,
      }),
    );
  } else
    context.print(
      demoEnd({
        program,
        dir: shown,
        shell: id,
        other: shells[1] ?? id,
        sought: concealedSplice(first.assessment) ?? id,
        books,
      }),
    );
  return 0;
}

/** A splice that only a panel opens onto: what a service shop would ask for first. */
function concealedSplice({ model, figures }: Assessment): string | undefined {
  const reached = new Set(figures.access.nodes.filter((node) => node.inReach && !node.open).map((node) => node.id));
  return model.shell.nodes.find((node) => node.nodeKind === 'splice' && reached.has(node.id))?.id;
}

async function inOrder<A, B>(list: readonly A[], act: (one: A) => Promise<B>): Promise<readonly B[]> {
  const done: B[] = [];
  for (const one of list) done.push(await act(one));
  return done;
}
