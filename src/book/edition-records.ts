import { Document, isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, visit } from 'yaml';
import { filesOfShell } from '../archive/carry.js';
import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import type { Model } from '../model/shell.js';
import { roleOf } from '../store/layout.js';
import { EDITION_POLICY } from './edition-policy.js';
import type { Edition } from './input.js';
import { cleanedOf } from './redact/cleaned-of.js';
import { fieldKeys } from './redact/field-keys.js';
import { type Hidden, hiddenFrom } from './redact/hidden.js';
import { cleanText } from './redact/text.js';
import { cleanValue, isHiddenPerson, isHiddenRecord, isLeftOut, SOMEONE_ID } from './redact/value.js';

/**
 * The record files as one edition may carry them. The shop's edition has them byte for byte; in the others comments and the shop's own
 * keys are left out, because anything may stand in them, and what the table of {@link EDITION_POLICY} hides. A file that cannot be read
 * as YAML is left out whole.
 */
export function cleanFiles(
  files: ReadonlyMap<string, string>,
  hidden: Hidden,
  edition: Edition,
  kept: KeptText = (_of, make) => make(),
): { readonly files: ReadonlyMap<string, string>; readonly unread: readonly string[] } {
  if (edition === 'shop') return { files, unread: [] };
  const [clean, unread] = [new Map<string, string>(), [] as string[]];
  for (const [place, [path, text]] of [...files].entries()) {
    const of = cleanedOf(path, text, hidden, edition);
    const one =
      of === undefined ? cleanFile(path, text, hidden, edition) : kept(of, () => cleanFile(path, text, hidden, edition));
    if (one === undefined) unread.push(path);
    else clean.set(fileName(path, place, hidden), one);
  }
  return { files: clean, unread };
}

/** The text that was kept under all that it is made of, or else `make`'s. */
export type KeptText = (of: string, make: () => string | undefined) => string | undefined;

/** A record file's path, its own name made anew where something is hidden in it: `welds-orla.yaml` → `welds-7.yaml`. */
function fileName(path: string, place: number, hidden: Hidden): string {
  const at = path.lastIndexOf('/') + 1;
  const name = path.slice(at);
  if (cleanText(name, hidden) === name) return path;
  const role = roleOf(path);
  const stem = 'list' in role ? role.list : role.holds === 'service' ? 'service' : 'file';
  return `${path.slice(0, at)}${stem}-${place + 1}.yaml`;
}

/** What an edition's record files lack, in words for the reader. */
export function withheldFrom(edition: Edition): readonly string[] {
  const policy = EDITION_POLICY[edition];
  if (edition === 'shop') return [];
  return [
    ...(policy.customer ? [] : ['who ordered the shell']),
    ...(policy.staff ? [] : ['names and stamps of welders']),
    ...(policy.nonconformances === 'all' ? [] : ['findings that are not for the owner, and their photos']),
    'comments and keys of the shop’s own in the record files',
    'the original photo files',
  ];
}

/** A shell's record as one edition carries it. */
export interface Carried {
  /** Record files by their path. */
  readonly files: ReadonlyMap<string, string>;
  /** Files of the store that could not be cleared, and are left out. */
  readonly unread: readonly string[];
  /** What whoever reads those files gets. */
  readonly model: Model;
  readonly photos: readonly {
    readonly path: string;
    readonly id: string | null;
    readonly bytes: number;
    readonly sha256: string;
  }[];
  /** Hashes of its photos by the paths that it names. */
  readonly photoHashes: ReadonlyMap<string, string>;
}

/** `photoHashes`: path in the store → SHA-256, hex, of the shell's photo files. */
export function carriedIn(
  text: StoreText,
  model: Model,
  photoHashes: ReadonlyMap<string, string>,
  edition: Edition,
  kept?: KeptText,
): Carried {
  const { id } = model.shell;
  const whole = new Map(filesOfShell(text.files.keys(), id).map((path) => [path, text.files.get(path) as string]));
  const hidden = hiddenFrom(model, edition);
  const { files, unread } = cleanFiles(whole, hidden, edition, kept);
  const folder = `shells/${id}/photos/`;
  const photos = [...photoHashes].flatMap(([path, sha256]) => {
    const photo = model.shell.photos.find(({ file }) => path === `${folder}${file}`);
    const bytes = text.photos.get(path) ?? 0;
    if (edition === 'shop') return [{ path, id: photo?.id ?? null, bytes, sha256 }];
    // A picture that no record speaks of may be of anything.
    if (!photo || hidden.records.has(photo.id)) return [];
    return [{ path: `${folder}${photoName(photo.file, photo.id, hidden)}`, id: photo.id, bytes, sha256 }];
  });
  const sizes = new Map(photos.map(({ path, bytes }) => [path, bytes]));
  const read = edition === 'shop' ? model : loadStore({ root: text.root, files, photos: sizes }).shells.get(id)?.model;
  return { files, unread, photos, model: read ?? model, photoHashes: new Map(photos.map(({ path, sha256 }) => [path, sha256])) };
}

/** A photo's file name where nothing is hidden in it, else one made of its id. */
function photoName(file: string, id: string, hidden: Hidden): string {
  if (cleanText(file, hidden) === file) return file;
  return `${id.replace(/[^\p{L}\p{N}_-]+/gu, '-')}${/\.[a-z]{3,4}$/iu.exec(file)?.[0].toLowerCase() ?? ''}`;
}

/** Any other text about a shell as an edition may have it, by the same table. */
export function textForEdition(model: Model, edition: Edition): (text: string) => string {
  const hidden = hiddenFrom(model, edition);
  return (text) => cleanText(text, hidden);
}

function cleanFile(path: string, text: string, hidden: Hidden, edition: Edition): string | undefined {
  // As the reader does: every value is text, and stays as it was typed.
  const document = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' });
  if (document.errors.length > 0) return undefined;
  // Comments only, which are left out: nothing stays, and YAML has no text for nothing here.
  if (document.contents === null) return '';
  takeOut(document, path, hidden, edition);
  cleanNode(document.contents, '', hidden);
  bare(document);
  try {
    // A new one has no comments, directives or tags of the old.
    return new Document(document.contents, { schema: 'failsafe' }).toString({ lineWidth: 0, flowCollectionPadding: false });
  } catch {
    // What was taken out was named elsewhere by an alias.
    return undefined;
  }
}

/** Comments, tags and the names of anchors: anything may stand in them. */
function bare(document: Document.Parsed): void {
  const anchors = new Map<string, string>();
  const shortOf = (name: string): string => {
    const short = anchors.get(name) ?? `a${anchors.size + 1}`;
    anchors.set(name, short);
    return short;
  };
  visit(document, {
    Node(_key, node) {
      node.comment = undefined;
      node.commentBefore = undefined;
      if (isAlias(node)) {
        node.source = shortOf(node.source);
        return;
      }
      if (node.anchor !== undefined) node.anchor = shortOf(node.anchor);
      node.tag = undefined;
    },
  });
}

/** Cleans in place what stands in a node; `key` is the key that it or its list stands under. */
function cleanNode(node: Node | null | undefined, key: string, hidden: Hidden): void {
  if (isScalar(node)) {
    if (typeof node.value === 'string') node.value = cleanScalar(node.value, key, hidden);
  } else if (isSeq(node)) {
    node.items = node.items.filter((one) => !isScalar(one) || !isHiddenRecord(one.value, hidden));
    for (const one of node.items) cleanNode(one as Node, key, hidden);
  } else if (isMap(node)) {
    node.items = node.items.filter(({ key: name, value }) => {
      const word = wordOf(name);
      return word === undefined || (!isLeftOut(word, hidden) && !(isScalar(value) && isHiddenRecord(value.value, hidden)));
    });
    const photo = photoIdOf(node.items as readonly Pair[]);
    for (const { key: name, value } of node.items) {
      const word = wordOf(name) ?? '';
      if (photo !== undefined && word === 'file' && isScalar(value)) value.value = photoName(String(value.value), photo, hidden);
      else cleanNode(value as Node, word, hidden);
      // A key of no field is free text like any other.
      if (isScalar(name) && typeof name.value === 'string' && !hidden.ids.has(name.value))
        name.value = cleanText(name.value, hidden);
      else if (!isScalar(name)) cleanNode(name as Node, '', hidden);
    }
  }
}

const wordOf = (key: unknown): string | undefined => (isScalar(key) ? String(key.value) : undefined);

/** The id of a record that has a file: a photo. */
function photoIdOf(pairs: readonly Pair[]): string | undefined {
  const typedAt = (word: string): unknown => {
    const value = pairs.find(({ key }) => wordOf(key) === word)?.value;
    return isScalar(value) ? value.value : undefined;
  };
  const [id, file] = [typedAt('id'), typedAt('file')];
  return typeof id === 'string' && typeof file === 'string' ? id : undefined;
}

function cleanScalar(value: string, key: string, hidden: Hidden): string {
  if (fieldKeys().personById.has(key) && isHiddenPerson(value, hidden)) return SOMEONE_ID;
  return cleanValue(value, hidden, key);
}

const isYes = (value: unknown): boolean => value === true || /^(?:yes|true)$/iu.test(String(value));

/** Whole records and fields that are not for this edition. */
function takeOut(document: Document.Parsed, path: string, hidden: Hidden, edition: Edition): void {
  const role = roleOf(path);
  const policy = EDITION_POLICY[edition];
  const whole = document.contents;
  if (role.holds === 'shell' && !policy.customer && isMap(whole)) whole.delete('customer');
  // A file that opens with `units:` has its list under its name.
  const root = isMap(whole) && 'list' in role ? whole.get(role.list) : whole;
  if (!isSeq(root)) return;
  const keep = (stays: (record: { get(key: string): unknown }) => boolean): void => {
    root.items = root.items.filter((item) => !isMap(item) || stays(item));
  };
  if (role.holds === 'library' && role.list === 'people') {
    // Of one whose record is not whole nobody knows whether they weld.
    keep((item) => hidden.ids.has(String(item.get('id'))));
    // Whoever is hidden is one and the same, so that a record that names them by id is still whole.
    if (hidden.people.size > 0)
      root.items.push(document.createNode({ id: SOMEONE_ID, name: 'the shop', role: 'of the shop' }) as never);
  }
  if (role.holds !== 'list') return;
  if (role.list === 'findings' || role.list === 'photos') keep((item) => !hidden.records.has(String(item.get('id'))));
  if (role.list === 'findings' && policy.nonconformances === 'told') keep((item) => isYes(item.get('tell_owner')));
  if (role.list === 'welds' && !policy.staff) for (const item of root.items) if (isMap(item)) item.delete('welder');
}
