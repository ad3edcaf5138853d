import type { Finding } from '../finding.js';
import { ID_PATTERN } from '../records/form/plain-fields.js';
import { idsInPlace } from '../records/form/tape.js';
import type { KindName, Photo, RecordKind } from '../records/index.js';
import { type Reference, referencesOf, type Target } from '../records/references.js';
import { didYouMean } from '../source/nearest.js';
import type { From, Links } from './links.js';

/** A record as typed, whether its form is right or not: what it names is checked all the same, so that one run tells everything. */
export interface RawRecordRef extends From {
  readonly kind: RecordKind;
  readonly data: unknown;
}

/** Checks every reference of the records of a shell. */
export function link(seen: readonly RawRecordRef[], links: Links): void {
  for (const from of seen) eachNamed(from.kind, from.data, (named) => check(from, named, links));
}

/** An id that a record names, and where in it. */
export interface Named {
  readonly id: string;
  readonly target: Target;
  readonly path: readonly (string | number)[];
  /** A place hangs on it. */
  readonly place?: true;
}

/** Every record that a record of this kind names, from what was typed. */
export function eachNamed(
  kind: KindName,
  typed: unknown,
  visit: (named: Named) => void,
  references: readonly Reference[] = referencesOf(kind),
): void {
  for (const reference of references) follow(reference, typed, 0, [], visit);
}

function follow(
  reference: Reference,
  data: unknown,
  depth: number,
  path: (string | number)[],
  visit: (named: Named) => void,
): void {
  if (data === null || data === undefined) return;
  const step = reference.path[depth];
  const { target } = reference;
  if (step === undefined && reference.place) {
    for (const { id, path: way } of idsInPlace(data)) visit({ id, target, path: [...path, ...way], place: true });
  } else if (step === undefined) {
    if (typeof data === 'string' || typeof data === 'number') visit({ id: String(data), target, path });
  } else if (step === '*') {
    if (!Array.isArray(data)) {
      // A single id may stand for a list of one.
      if (typeof path.at(-1) === 'string' && typeof data !== 'object') follow(reference, data, depth + 1, path, visit);
    } else if (!reference.place || typeof data[0] === 'object' || typeof data[0] === 'string')
      for (let i = 0; i < data.length; i++) follow(reference, data[i], depth + 1, [...path, i], visit);
  } else if (typeof data !== 'object' || Array.isArray(data)) return;
  else if (step === '{}') {
    for (const key of Object.keys(data)) visit({ id: key, target, path: [...path, key] });
  } else if (Object.hasOwn(data, step)) {
    follow(reference, (data as Record<string, unknown>)[step], depth + 1, [...path, step], visit);
  }
}

function check(from: RawRecordRef, { id, target, path }: Named, links: Links): void {
  // What is no id at all was told with the record's form.
  if (!ID_PATTERN.test(id)) return;
  if ('kinds' in target) links.to(from, target.kinds, id, path);
  else if ('library' in target) links.toLibrary(from, target.library, id, path);
  else links.toAny(from, id, path);
}

/** Tells photos whose file is not there. `files`: path in the store of every photo file. */
export function reportMissingFiles(
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
