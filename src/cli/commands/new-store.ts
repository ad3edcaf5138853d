import path from 'node:path';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly dir: string;
  readonly ci: boolean;
}

export function declareNewStore(registry: Registry): void {
  registry
    .add('new-store <dir>', 'starts a store: a shop file and a library to fill in', [
      'shellbook new-store records',
      'shellbook new-store records --ci',
    ])
    .option('--ci', 'add a script that checks the records on a build server')
    .action(registry.run(([dir], { ci }) => ({ dir: dir as string, ci: ci === true }), newStore));
}

async function newStore(options: Options, context: Context): Promise<Status> {
  const dir = path.resolve(context.io.cwd, options.dir);
  const { layCiJob, layStore } = await import('../../store/starter.js');
  const { installed } = await import('../merge-driver.js');
  const laid = await layStore(dir, installed);
  const job = options.ci ? [await layCiJob(dir)] : [];
  const shown = shownPath(dir, context);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('new-store', null, null, {
        store: shown,
        files: [...laid.files, ...job],
        git_started: laid.gitStarted,
      }),
    );
    return 0;
  }
  context.print(`Started a store in ${shown}${laid.gitStarted ? ', with a Git history of its own' : ''}.`);
  context.tell(
    [
      'Next:',
      `  1. Say who the shop is in ${path.join(shown, 'shop.yaml')}; look through ${path.join(shown, 'library')}.`,
      `  2. shellbook new-shell QF-001 --store ${shown}`,
      `  3. git add ${shown} && git commit -m "Start the record"`,
      ...(laid.gitStarted ? [] : ['  Several people? Once in each copy, once it lies in Git: shellbook merge --install']),
      ...job.map(
        (file) => `  4. Have ${path.join(shown, file)} run at every push; the variables it reads are listed at its top.`,
      ),
    ].join('\n'),
  );
  return 0;
}
