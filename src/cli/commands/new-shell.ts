import path from 'node:path';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  /** The shell whose structure it starts from. */
  readonly from: string | undefined;
}

export function declareNewShell(registry: Registry): void {
  registry
    .add('new-shell <id>', 'starts a shell: files to fill in, with the format explained in each', [
      'shellbook new-shell QF-008',
      'shellbook new-shell QF-008 --from QF-007     only the structure',
    ])
    .option(
      '--from <shell>',
      'copy the structure of another shell, without heats, dates, readings, photos, ratings, VIN or customer',
    )
    .action(
      registry.run(
        ([shell], { from }) => ({ shell: shell as string, from: typeof from === 'string' ? from : undefined }),
        newShell,
      ),
    );
}

async function newShell(options: Options, context: Context): Promise<Status> {
  const [{ findStore }, { layShell }] = await Promise.all([import('../../store/find.js'), import('../../store/starter.js')]);
  const root = findStore(context.io.cwd, context.settings.store);
  const laid = await layShell(root, options.shell, await structureOf(root, options));
  const shown = shownPath(laid.dir, context);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('new-shell', options.shell, null, {
        folder: shown,
        files: laid.files,
      }),
    );
    return 0;
  }
  context.print(`Started shell ${options.shell} in ${shown}.`);
  context.tell(
    [
      'Next:',
      `  1. shellbook add chassis --shell ${options.shell} asks for ratings, axles and bare weights; they go into ${path.join(shown, 'shell.yaml')}.`,
      options.from === undefined
        ? '  2. Put in what was built: by hand (take the # from the examples), with shellbook add, or from sheets with shellbook import.'
        : `  2. Take out what this coach does not have of ${options.from}, and put in heats, dates and lengths as they come.`,
      `  3. shellbook check ${options.shell}`,
    ].join('\n'),
  );
  return 0;
}

async function structureOf(root: string, { shell, from }: Options): Promise<ReadonlyMap<string, string> | undefined> {
  if (from === undefined) return undefined;
  const [{ readEntry }, { templateTexts }] = await Promise.all([import('../open-entry.js'), import('../../entry/template.js')]);
  return templateTexts((await readEntry(root, from)).known, shell);
}
