import type { JournalEntry } from '../../store/journal.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { committed, storeOf } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly dryRun: boolean;
  readonly commit: boolean;
}

export function declareUndo(registry: Registry): void {
  registry
    .add('undo', 'takes back the last entry you made with this program; nobody else’s work changes', [
      'shellbook undo --dry-run     which one that is',
      'shellbook undo',
    ])
    .option('--dry-run', 'say what would be taken back, and write nothing')
    .option('--commit', 'commit it')
    .action(registry.run((_none, { dryRun, commit }) => ({ dryRun: dryRun === true, commit: commit === true }), undo));
}

async function undo({ dryRun, commit }: Options, context: Context): Promise<Status> {
  const root = await storeOf(context);
  const [{ Journal, sha256Of }, { writing }] = await Promise.all([
    import('../../store/journal.js'),
    import('../../store/write.js'),
  ]);
  const journal = await Journal.of(root);
  const entry = await writing(root, async (writer): Promise<JournalEntry> => {
    const last = await journal.last();
    if (!last)
      throw new UserError(
        'There is nothing of yours to take back: this program has no entry by you on this machine that is not already taken back',
      );
    const { files, what } = last.entry;
    const { readFile } = await import('node:fs/promises');
    const { placeOf } = await import('../../store/place.js');
    const standing: JournalEntry['files'][number][] = [];
    for (const one of files) {
      const { file, before, after } = one;
      const now = await readFile(await placeOf(root, file)).catch(() => null);
      // Broken off before, it may have put back some of them.
      if ((now === null ? null : now.toString('base64')) === before) continue;
      standing.push(one);
      if (now === null || sha256Of(now) !== after)
        throw new UserError(
          `${file} has changed since \`${what}\`${now === null ? ': it is gone' : ''}, so that entry is not taken back: nothing was written. Correct it by hand, or look at what changed: git diff`,
        );
    }
    if (dryRun) return last.entry;
    // In the order against that in which they were written; each must still be what was written.
    for (const { file, before, after } of standing.reverse()) {
      const bytes = before === null ? null : Buffer.from(before, 'base64');
      await writer.restore(file, bytes, (now) => now !== null && sha256Of(now) === after);
    }
    await last.drop();
    return last.entry;
  });
  const { what, time, files } = entry;
  const names = files.map(({ file }) => file);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(envelope('undo', null, null, { entry: what, time, files: names, dry_run: dryRun }));
  } else
    context.print(
      `${dryRun ? 'Would take' : 'Took'} back: ${what} (${time.slice(0, 16).replace('T', ' ')} UTC), in ${names.join(', ')}.`,
    );
  if (commit && !dryRun) context.tell(await committed(root, names, `Take back: ${what}`));
  return 0;
}
