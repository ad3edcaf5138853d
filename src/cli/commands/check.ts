import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { type OpenStore, openShell, openStore } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  /** Empty: all of them. */
  readonly shells: readonly string[];
  readonly all: boolean;
}

export function declareCheck(registry: Registry): void {
  registry
    .add('check [shells...]', 'reads, validates and judges records; findings with file, line and column', [
      'shellbook check              every shell of the store',
      'shellbook check QF-007 --all one shell, like findings not shortened',
    ])
    .option('--all', 'show every finding, also the forty alike')
    .action(
      registry.run(
        ([shells], { all }) => ({
          shells: (shells ?? []) as readonly string[],
          all: all === true,
        }),
        check,
      ),
    );
}

async function check(options: Options, context: Context): Promise<Status> {
  const store = await openStore(context);
  if (store.book && store.book.withheld.length > 0) {
    const { edition, withheld } = store.book;
    context.tell(`The ${edition} edition carries the record without ${withheld.join('; ')}: findings may come of that alone.`);
  }
  const wanted = options.shells.length > 0 ? [...new Set(options.shells)] : [...store.loaded.shells.keys()];
  const [{ checkedShell, checkedStore }, { lookAround }] = await Promise.all([
    import('../report/checked.js'),
    import('../look-around.js'),
  ]);
  const shells = [];
  for (const shell of wanted) {
    const more = await lookAround(store, shell, context);
    shells.push(checkedShell(await openShell(store, shell, context, undefined, more)));
  }
  const library = checkedStore(store, await storeRevision(store));
  if (context.settings.json) {
    const { checkJson } = await import('../report/check-json.js');
    context.print(checkJson(library, shells));
  } else {
    const { checkText } = await import('../report/check-text.js');
    context.print(checkText(library, shells, store.text, context.paint, options.all));
  }
  return [library, ...shells].some((one) => one.blocks) ? 1 : 0;
}

const storeRevision = async (store: OpenStore): Promise<string | null> =>
  (await store.history?.standing())?.last?.commit ?? store.book?.revision ?? null;
