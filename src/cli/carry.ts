import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { type Carry, filesOfShell } from '../archive/carry.js';
import type { ManifestHead } from '../archive/manifest.js';
import type { Edition } from '../book/input.js';
import type { StoreText } from '../model/load-types.js';
import { decode } from '../store/taken.js';
import { UserError } from '../user-error.js';
import type { KeptParts } from './kept-parts.js';
import type { OpenShell } from './open.js';
import { programBuild } from './program-build.js';

/** Whether the shop's edition carries the photo files themselves, or their hashes alone. */
export type CarryPhotos = 'originals' | 'hashes';

/** Above this the photos stay outside: a file that no mail and few readers take. */
const MOST_PHOTO_BYTES = 512 * 1024 * 1024;

/** What each edition of a shell's book takes along. Files are read once for all of them. */
export interface CarryMaker {
  of(edition: Edition): Promise<Carry>;
  /** Of the record as the edition carries it. */
  fingerprint(edition: Edition): Promise<string>;
  /** What does not travel, although it was to. Sentences. */
  readonly warnings: readonly string[];
}

export async function openCarry(
  opened: OpenShell,
  photoHashes: ReadonlyMap<string, string>,
  wanted: CarryPhotos,
  parts: KeptParts,
): Promise<CarryMaker> {
  const [{ carriedIn, textForEdition, withheldFrom }, { fingerprint, sha256 }] = await Promise.all([
    import('../book/edition-records.js'),
    import('../archive/fingerprint.js'),
  ]);
  const { model } = opened.assessment;
  const { text } = opened.store;
  const paths = filesOfShell(text.files.keys(), model.shell.id);
  const totalBytes = [...photoHashes.keys()].reduce((sum, file) => sum + (text.photos.get(file) ?? 0), 0);
  const tooMany = totalBytes > MOST_PHOTO_BYTES;
  const made = new Map<Edition, ReturnType<typeof carriedIn>>();
  const carriedBy = (edition: Edition) => {
    const carried =
      made.get(edition) ?? carriedIn(text, model, photoHashes, edition, (of, make) => parts.once('cleaned', of, make));
    made.set(edition, carried);
    return carried;
  };
  const head = (edition: Edition, records: ReadonlyMap<string, Uint8Array>): ManifestHead => {
    const carried = edition === 'shop' && wanted === 'originals' && !tooMany;
    const left = edition === 'shop' && !carried ? ['the original photo files'] : [];
    const shown = textForEdition(model, edition);
    const { last, uncommitted = [] } = opened.standing ?? {};
    const seen = carriedBy(edition);
    return {
      program: programBuild(),
      shell: model.shell.id,
      title: shown(model.shell.title),
      edition,
      shop: model.shop.name,
      revision: last?.commit ?? null,
      revision_date: last?.date ?? null,
      tag: last?.tags[0] === undefined ? null : shown(last.tags[0]),
      uncommitted: uncommitted.map(shown),
      fingerprint: fingerprint(seen.model, seen.photoHashes),
      records: [...records].map(([file, bytes]) => ({ path: file, bytes: bytes.length, sha256: sha256(bytes) })),
      withheld: [...withheldFrom(edition), ...left, ...unread(seen.unread.map(shown))],
      photos: seen.photos.map(({ path: file, id, bytes, sha256: hash }) => ({ path: file, id, bytes, sha256: hash, carried })),
    };
  };
  return {
    warnings: tooMany
      ? [`The photos have ${Math.ceil(totalBytes / 1e6)} MB together: the book carries their hashes, not the files. Keep them.`]
      : [],
    async fingerprint(edition) {
      const seen = carriedBy(edition);
      return fingerprint(seen.model, seen.photoHashes);
    },
    async of(edition) {
      const records =
        edition === 'shop'
          ? await bytesOf(text, paths)
          : new Map([...carriedBy(edition).files].map(([file, clean]) => [file, Buffer.from(clean)]));
      return {
        head: head(edition, records),
        records,
        async photo(file) {
          const bytes = await readFile(path.join(text.root, file)).catch(() => undefined);
          if (bytes && sha256(bytes) === photoHashes.get(file)) return bytes;
          throw new UserError(changed(file));
        },
      };
    },
  };
}

const unread = (files: readonly string[]): readonly string[] => files.map((file) => `${file}, which cannot be cleared of them`);

/** Exactly as they lie there, line ends and all. */
async function bytesOf({ root, files }: StoreText, paths: readonly string[]): Promise<ReadonlyMap<string, Uint8Array>> {
  const found = new Map<string, Uint8Array>();
  for (const file of paths) {
    const bytes = await readFile(path.join(root, file)).catch(() => undefined);
    const read = bytes && decode(bytes);
    if (read?.refused !== undefined || read?.text !== files.get(file)) throw new UserError(changed(file));
    found.set(file, bytes as Uint8Array);
  }
  return found;
}

const changed = (file: string): string => `${file} changed while the book was being printed: no book was written. Print again.`;
