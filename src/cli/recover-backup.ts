import { open, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { BackupManifest } from '../store/backup/manifest.js';
import type { NewFile } from '../store/lay-down.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { shownPath } from './shown-path.js';

/** True where a file is packed as `backup` writes it; whether it is one is for the reader of it to say. */
export async function isBackup(file: string, context: Context): Promise<boolean> {
  const handle = await open(path.resolve(context.io.cwd, file), 'r').catch(() => undefined);
  if (!handle) return false;
  try {
    if (!(await handle.stat()).isFile()) return false;
    const { isPacked } = await import('../store/backup/read.js');
    const { buffer } = await handle.read(Buffer.alloc(2), 0, 2, 0);
    return isPacked(buffer);
  } finally {
    await handle.close();
  }
}

/** Lays a backup down as a store with its history. All or nothing; status 1 where a shell has another fingerprint than was written. */
export async function recoverBackup(file: string, dir: string, context: Context): Promise<Status> {
  const [{ readBackup }, { HISTORY_NAME }, { layDown }, { unpackBundle }] = await Promise.all([
    import('../store/backup/read.js'),
    import('../store/backup/manifest.js'),
    import('../store/lay-down.js'),
    import('../store/git/bundle.js'),
  ]);
  const source = path.resolve(context.io.cwd, file);
  const target = path.resolve(context.io.cwd, dir);
  const backup = readBackup(source, shownPath(source, context));
  let history: Uint8Array | undefined;
  async function* files(): AsyncGenerator<NewFile> {
    for await (const one of backup.files) {
      if (one.path === HISTORY_NAME) history = one.bytes;
      else yield { ...one, path: backup.manifest().prefix + one.path };
    }
  }
  const laid = await layDown(target, files(), async (fresh) => {
    const { head } = backup.manifest();
    if (!history || !head) return;
    const bundle = path.join(fresh, '.history.bundle');
    await writeFile(bundle, history, { flag: 'wx' });
    await unpackBundle(fresh, bundle, head);
    const { rm } = await import('node:fs/promises');
    await rm(bundle);
  });
  const manifest = backup.manifest();
  const root = path.join(target, manifest.prefix);
  if (manifest.head) await (await import('./merge-driver.js')).installed(root);
  return report(manifest, await differing(root, manifest), { laid, where: shownPath(root, context) }, context);
}

/** Shells that are not, taken back, what they were. */
async function differing(root: string, { shells }: BackupManifest): Promise<readonly string[]> {
  const [{ readStoreText }, { loadStore }, { fingerprintIn }] = await Promise.all([
    import('../store/read.js'),
    import('../model/load.js'),
    import('./fingerprint-of.js'),
  ]);
  const text = await readStoreText(root);
  const { shells: loaded } = loadStore(text);
  const wrong: string[] = [];
  for (const { shell, fingerprint } of shells) {
    const model = loaded.get(shell)?.model;
    if (!model || (await fingerprintIn(text, model)).fingerprint !== fingerprint) wrong.push(shell);
  }
  return wrong;
}

async function report(
  manifest: BackupManifest,
  wrong: readonly string[],
  { laid, where }: { readonly laid: number; readonly where: string },
  context: Context,
): Promise<Status> {
  if (context.settings.json) {
    const { envelope } = await import('./report/json.js');
    context.print(
      envelope('recover', null, manifest.head?.commit ?? null, {
        edition: null,
        fingerprint: null,
        folder: where,
        files: laid,
        withheld: [],
        damaged: wrong,
        shells: manifest.shells,
      }),
    );
  } else {
    context.print(`Laid ${laid} files down in ${where}${manifest.head ? ', with their history' : ''}.`);
    context.print(
      manifest.shells
        .map(({ shell, fingerprint }) => `  ${shell}  ${fingerprint}${wrong.includes(shell) ? '  DIFFERS now' : ''}`)
        .join('\n'),
    );
    if (wrong.length > 0)
      context.tell(
        `${wrong.join(', ')}: this program reads another fingerprint than was written into the backup, by ${manifest.program}.`,
      );
    if (manifest.prefix !== '') context.tell('The other files of that repository are in its history: git checkout -- .');
    context.tell(`Look at it: shellbook check --store ${where}`);
  }
  return wrong.length > 0 ? 1 : 0;
}
