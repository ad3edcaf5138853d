import path from 'node:path';
import type { BackupManifest } from '../../store/backup/manifest.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

export function declareBackup(registry: Registry): void {
  registry
    .add('backup <file>', 'writes the whole store into one file (records, pictures, history) and reads it back to be sure', [
      'shellbook backup ~/shop-2026-11.tar.gz',
      'shellbook recover ~/shop-2026-11.tar.gz shop     makes the store again, with the same fingerprints',
    ])
    .action(registry.run(([file]) => ({ file: file as string }), backup));
}

async function backup({ file }: { readonly file: string }, context: Context): Promise<Status> {
  const [{ findStore }, { underLock }, { refuseTarget, writeBackup }] = await Promise.all([
    import('../../store/find.js'),
    import('../../store/lock.js'),
    import('../../store/backup/write.js'),
  ]);
  const root = findStore(context.io.cwd, context.settings.store);
  const target = path.resolve(context.io.cwd, file);
  await refuseTarget(target);
  const made = await underLock(root, () =>
    withHistory(root, context, async (history) => {
      const manifest = await describe(root, history, context);
      context.progress('Writing and reading back');
      return { manifest, bytes: await writeBackup(target, root, manifest, history) };
    }),
  );
  const { manifest, bytes } = made;
  const shown = shownPath(target, context);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const { shells, uncommitted, files, head } = manifest;
    context.print(
      envelope('backup', null, head?.commit ?? null, {
        file: shown,
        size_mb: bytes / 1e6,
        files: files.length,
        history: manifest.history !== null,
        uncommitted,
        shells,
      }),
    );
    return 0;
  }
  context.print(
    `Wrote ${shown}, and read it back: ${manifest.files.length} files${manifest.history ? ', and the whole history' : ', no history: the store has no commit yet'}.`,
  );
  context.print(manifest.shells.map(({ shell, fingerprint }) => `  ${shell}  ${fingerprint}`).join('\n'));
  if (manifest.uncommitted.length > 0)
    context.tell(`${manifest.uncommitted.length} files are in it as they lie there, not committed yet.`);
  context.tell(`Keep it away from this machine. To take it back: shellbook recover ${path.basename(shown)} FOLDER`);
  return 0;
}

/** The history as a file of this process, gone when it is done. */
async function withHistory<T>(root: string, context: Context, act: (history: string | undefined) => Promise<T>): Promise<T> {
  const [{ mkdtemp, rm }, { tmpdir }, { repositoryOf }, { writeBundle }] = await Promise.all([
    import('node:fs/promises'),
    import('node:os'),
    import('../../store/git/repository.js'),
    import('../../store/git/bundle.js'),
  ]);
  if (!repositoryOf(root)) return act(undefined);
  const folder = await mkdtemp(path.join(tmpdir(), 'shellbook-backup-'));
  try {
    context.progress('Packing the history');
    const bundle = path.join(folder, 'history.bundle');
    return await act((await writeBundle(root, bundle)) ? bundle : undefined);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function describe(root: string, history: string | undefined, context: Context): Promise<BackupManifest> {
  const [{ readStoreText }, { isBackedUp }, { sizeAndDigest }, { programBuild }, { access }] = await Promise.all([
    import('../../store/read.js'),
    import('../../store/backup/manifest.js'),
    import('../../store/backup/write.js'),
    import('../program-build.js'),
    import('node:fs/promises'),
  ]);
  const text = await readStoreText(root);
  const beside: string[] = [];
  for (const name of ['.gitattributes', '.gitignore'])
    if (
      await access(path.join(root, name)).then(
        () => true,
        () => false,
      )
    )
      beside.push(name);
  const names = [...text.files.keys(), ...text.photos.keys(), ...(text.sounds ?? []), ...beside].sort();
  const odd = names.find((name) => !isBackedUp(name));
  if (odd !== undefined) throw new UserError(`${odd} has a name that a backup cannot carry: rename it`);
  const files: BackupManifest['files'] = [];
  for (const name of names) {
    context.progress(`Reading ${files.length + 1} of ${names.length}`);
    files.push({ path: name, ...(await sizeAndDigest(path.join(root, name))) });
  }
  return {
    shellbook_backup: 1,
    program: programBuild().program,
    ...(await standing(root, history)),
    shells: await fingerprints(text),
    history: history === undefined ? null : await sizeAndDigest(history),
    files,
  };
}

async function standing(
  root: string,
  history: string | undefined,
): Promise<Pick<BackupManifest, 'prefix' | 'head' | 'uncommitted'>> {
  const [{ headOf, repositoryOf }, { askGit }, { beside }] = await Promise.all([
    import('../../store/git/repository.js'),
    import('../../store/git/look.js'),
    import('../../store/uncommitted.js'),
  ]);
  const repository = repositoryOf(root);
  if (!repository) return { prefix: '', head: null, uncommitted: [] };
  const { prefix } = repository;
  const commit =
    history === undefined ? null : await askGit(root, ['rev-parse', '--verify', '--quiet', 'HEAD^{commit}']).catch(() => null);
  const found = headOf(repository);
  const branch = 'ref' in found && found.ref.startsWith('refs/heads/') ? found.ref.slice('refs/heads/'.length) : null;
  const { different } = await beside(repository, root, commit);
  return { prefix, head: commit === null ? null : { branch, commit }, uncommitted: [...different] };
}

/** Of every shell that can be read. */
async function fingerprints(
  text: Parameters<typeof import('../../model/load.js')['loadStore']>[0],
): Promise<BackupManifest['shells']> {
  const [{ loadStore }, { fingerprintIn }] = await Promise.all([import('../../model/load.js'), import('../fingerprint-of.js')]);
  const found: BackupManifest['shells'] = [];
  for (const [shell, { model }] of loadStore(text).shells)
    found.push({ shell, fingerprint: (await fingerprintIn(text, model)).fingerprint });
  return found;
}
