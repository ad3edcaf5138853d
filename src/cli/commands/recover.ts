import path from 'node:path';
import type { Manifest } from '../../archive/manifest.js';
import type { CarriedBook, CarriedFile } from '../../archive/open-book.js';
import type { NewFile } from '../../store/lay-down.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly file: string;
  readonly dir: string;
  readonly proved: boolean;
}

export function declareRecover(registry: Registry): void {
  registry
    .add('recover <file> <dir>', 'makes a store again from a backup, or from the records inside a book', [
      'shellbook recover shop-2026-11.tar.gz shop    a backup: records, pictures and history',
      'shellbook recover QF-007-shop.pdf records    every file back, byte for byte',
    ])
    .option('--proved', 'exit 1 unless the book is signed with a known key')
    .action(
      registry.run(([file, dir], { proved }) => ({ file: file as string, dir: dir as string, proved: proved === true }), recover),
    );
}

async function recover({ file, dir, proved }: Options, given: Context): Promise<Status> {
  const { isBackup, recoverBackup } = await import('../recover-backup.js');
  if (await isBackup(file, given)) return recoverBackup(file, dir, given);
  const context = { ...given, settings: { ...given.settings, proved } };
  const [{ lookAtSeal, readBook, requireManifest, sound }, { layDown }] = await Promise.all([
    import('../read-book.js'),
    import('../../store/lay-down.js'),
  ]);
  const opened = await readBook(file, context);
  const manifest = requireManifest(opened);
  const { broken, warning } = await lookAtSeal(opened, context);
  if (broken !== undefined) {
    context.tell(
      `${broken} What is written may not be what the shop recorded. See what differs: shellbook verify ${opened.shown}`,
    );
    context.endAtLeast(1);
  } else if (warning !== undefined) context.tell(warning);
  const { carriedPhoto, carriedRecords } = await import('../../archive/open-book.js');
  const lost: string[] = [];
  const target = path.resolve(context.io.cwd, dir);
  const files = sound(opened.shown, () => carriedRecords(opened.book, manifest));
  const photos = photosOf(opened.book, manifest, carriedPhoto);
  const laid = await layDown(target, whole(files, photos, lost));
  const where = shownPath(target, context);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const { shell, revision, edition, fingerprint, withheld } = manifest;
    context.print(
      envelope('recover', shell, revision, { edition, fingerprint, folder: where, files: laid, withheld, damaged: lost }),
    );
  } else {
    const { recoverText } = await import('../report/recover-text.js');
    context.print(recoverText(where, laid, manifest, lost, context.paint));
  }
  return lost.length === 0 ? 0 : 1;
}

/** One at a time: all of them may not fit into memory beside the book. */
function* photosOf(
  book: CarriedBook,
  { photos }: Manifest,
  read: (book: CarriedBook, photo: Manifest['photos'][number]) => CarriedFile,
): Iterable<CarriedFile> {
  for (const photo of photos) if (photo.carried) yield read(book, photo);
}

/** The files that are as they were printed; what is wrong with the others goes to `lost`. */
function* whole(files: Iterable<CarriedFile>, photos: Iterable<CarriedFile>, lost: string[]): Iterable<NewFile> {
  for (const list of [files, photos]) {
    for (const { path: name, bytes, fault } of list) {
      if (bytes) yield { path: name, bytes };
      else lost.push(`${name} ${fault}`);
    }
  }
}
