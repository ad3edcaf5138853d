import { fileURLToPath } from 'node:url';
import { UserError } from '../../user-error.js';
import { closeShell } from '../closing.js';
import type { Context } from '../context.js';
import { PACKAGE_FOLDER } from '../package-folder.js';
import { layDemoHistory } from './history.js';

/** The fictional store, which lies beside src/ and dist/ alike. */
const DEMO_DATA = fileURLToPath(new URL('demo-data/', PACKAGE_FOLDER));

/** Lays the demo store down in an empty folder with its history; its finished shell is closed there as any shell is. */
export async function layDemo(dir: string, context: Context): Promise<void> {
  const progress = (text: string): void => context.progress(text);
  await layDemoHistory(
    DEMO_DATA,
    dir,
    async (root, shell, env) => {
      const closed = await closeShell(shell, { ...context, settings: { ...context.settings, store: root } }, env);
      if (closed.outcome === 'missing')
        throw new UserError(`The demo cannot close ${shell}: ${closed.items.map(({ message }) => message).join(' ')}`);
    },
    progress,
  );
}
