import path from 'node:path';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { shownPath } from '../open.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
}

export function declareNewShell(registry: Registry): void {
  registry
    .add('new-shell <id>', 'starts a shell: files ready to fill in, with the format explained in them', [
      'shellbook new-shell QF-008',
    ])
    .action(registry.run(([shell]) => ({ shell: shell as string }), newShell));
}

async function newShell(options: Options, context: Context): Promise<Status> {
  const [{ findStore }, { layShell }] = await Promise.all([import('../../store/find.js'), import('../../store/starter.js')]);
  const root = findStore(context.io.cwd, context.settings.store);
  const laid = await layShell(root, options.shell);
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
      `  1. Copy the ratings from the chassis papers into ${path.join(shown, 'shell.yaml')}.`,
      '  2. Take the # from the examples in the other files and put in what was built.',
      `  3. shellbook check ${options.shell}`,
    ].join('\n'),
  );
  return 0;
}
