import type { Finding } from '../finding.js';
import { ID } from '../schema/plain-fields.js';
import { didYouMean } from '../source/nearest.js';
import type { From, Links } from './links.js';
import { type Reference, referencesOf } from './references.js';
import type { Photo, RecordKind } from './shell.js';

/** A record as typed, whether its form is right or not: what it names is checked all the same, so that one run tells everything. */
export interface Seen extends From {
  readonly kind: RecordKind;
  readonly data: unknown;
}

/** Checks every reference of the records of a shell. */
export function link(seen: readonly Seen[], links: Links): void {
  for (const record of seen) {
    for (const reference of referencesOf(record.kind)) follow(record, reference, record.data, 0, [], links);
  }
}

function follow(from: Seen, reference: Reference, data: unknown, depth: number, path: (string | number)[], links: Links): void {
  if (data === null || data === undefined) return;
  const step = reference.path[depth];
  if (step === undefined) {
    if (typeof data === 'string' || typeof data === 'number') check(from, reference, String(data), path, links);
  } else if (step === '*') {
    if (!Array.isArray(data)) {
      // A single id may stand for a list of one.
      if (typeof path.at(-1) === 'string' && typeof data !== 'object') follow(from, reference, data, depth + 1, path, links);
    } else for (let i = 0; i < data.length; i++) follow(from, reference, data[i], depth + 1, [...path, i], links);
  } else if (typeof data !== 'object' || Array.isArray(data)) return;
  else if (step === '{}') {
    for (const key of Object.keys(data)) check(from, reference, key, [...path, key], links);
  } else if (Object.hasOwn(data, step)) {
    follow(from, reference, (data as Record<string, unknown>)[step], depth + 1, [...path, step], links);
  }
}

function check(from: Seen, { target }: Reference, id: string, path: readonly (string | number)[], links: Links): void {
  // What is no id at all was told with the record's form.
  if (!ID.test(id)) return;
  if ('kinds' in target) links.to(from, target.kinds, id, path);
  else if ('library' in target) links.toLibrary(from, target.library, id, path);
  else links.toAny(from, id, path);
}

/** Tells photos whose file is not there. `files`: path in the store of every photo file. */
export function tellMissingFiles(
  shell: string,
  photos: readonly Photo[],
  files: ReadonlySet<string>,
  say: (finding: Finding) => void,
): void {
  const folder = `shells/${shell}/photos/`;
  for (const photo of photos) {
    if (files.has(folder + photo.file)) continue;
    const names = [...files].filter((one) => one.startsWith(folder)).map((one) => one.slice(folder.length));
    say({
      rule: 'format.missing-file',
      severity: 'warning',
      message: `There is no file ${photo.file} in ${folder}, expected the picture there${didYouMean(photo.file, names)}`,
      ids: [photo.id],
      place: photo.source.place('file'),
    });
  }
}
