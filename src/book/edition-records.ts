import { type Document, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, visit } from 'yaml';
import { filesOfShell } from '../archive/carry.js';
import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import type { Model } from '../model/shell.js';
import { roleOf } from '../store/layout.js';
import { EDITION_POLICY, type Hidden, hiddenFrom, redact } from './editions.js';
import type { Edition } from './input.js';

/**
 * The record files as one edition may carry them. The shop's edition has them byte for byte; in the others comments are left out,
 * because anything may stand in them, and what the table of {@link EDITION_POLICY} hides. A file that cannot be read as YAML is left out whole.
 */
export function recordsForEdition(
  files: ReadonlyMap<string, string>,
  model: Model,
  edition: Edition,
): ReadonlyMap<string, string> {
  if (edition === 'shop') return files;
  const hidden = hiddenFrom(model, edition);
  return new Map(
    [...files].flatMap(([path, text]) => {
      const clean = cleanText(path, text, hidden, edition);
      return clean === undefined ? [] : [[path, clean] as const];
    }),
  );
}

/** What an edition's record files lack, in words for the reader. */
export function withheldFrom(edition: Edition): readonly string[] {
  const sight = EDITION_POLICY[edition];
  if (edition === 'shop') return [];
  return [
    ...(sight.customer ? [] : ['who ordered the shell']),
    ...(sight.staff ? [] : ['names and stamps of welders']),
    ...(sight.nonconformances === 'all' ? [] : ['findings that are not for the owner']),
    'comments in the record files',
    'the original photo files',
  ];
}

function cleanText(path: string, text: string, hidden: Hidden, edition: Edition): string | undefined {
  // As the reader does: every value is text, and stays as it was typed.
  const document = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' });
  if (document.errors.length > 0) return undefined;
  // Comments only, which are left out: nothing stays, and YAML has no text for nothing here.
  if (document.contents === null) return '';
  takeOut(document, path, hidden, edition);
  const quiet = (node: Node): void => {
    node.comment = undefined;
    node.commentBefore = undefined;
  };
  visit(document, {
    Alias: (_key, node) => quiet(node),
    Collection: (_key, node) => quiet(node),
    Scalar(_key, node, ancestors) {
      quiet(node);
      if (typeof node.value === 'string') node.value = redact(node.value, hidden, keyAbove(node, ancestors));
    },
  });
  document.comment = null;
  document.commentBefore = null;
  try {
    return document.toString({ lineWidth: 0, flowCollectionPadding: false });
  } catch {
    // What was taken out was named elsewhere by an alias.
    return undefined;
  }
}

/** A shell's record as one edition carries it. */
export interface Carried {
  /** Record files by their path. */
  readonly files: ReadonlyMap<string, string>;
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
export function carriedIn(text: StoreText, model: Model, photoHashes: ReadonlyMap<string, string>, edition: Edition): Carried {
  const { id } = model.shell;
  const whole = new Map(filesOfShell(text.files.keys(), id).map((path) => [path, text.files.get(path) as string]));
  const files = recordsForEdition(whole, model, edition);
  const shown = textForEdition(model, edition);
  const photos = [...photoHashes].map(([path, sha256]) => ({
    path: shown(path),
    id: model.shell.photos.find((photo) => path.endsWith(`/photos/${photo.file}`))?.id ?? null,
    bytes: text.photos.get(path) ?? 0,
    sha256,
  }));
  const sizes = new Map(photos.map(({ path, bytes }) => [path, bytes]));
  const read = edition === 'shop' ? model : loadStore({ root: text.root, files, photos: sizes }).shells.get(id)?.model;
  return { files, photos, model: read ?? model, photoHashes: new Map(photos.map(({ path, sha256 }) => [path, sha256])) };
}

/** Any other text about a shell as an edition may have it, by the same table. */
export function textForEdition(model: Model, edition: Edition): (text: string) => string {
  const hidden = hiddenFrom(model, edition);
  return (text) => redact(text, hidden, 'title') as string;
}

/** The key that a text stands under, of itself or of its list. Empty for a key itself. */
function keyAbove(node: Node, ancestors: readonly unknown[]): string {
  const pair = ancestors.findLast((one): one is Pair => typeof one === 'object' && one !== null && 'key' in one);
  return pair === undefined || pair.key === node || !isScalar(pair.key) ? '' : String(pair.key.value);
}

/** Whole records and fields that are not for this edition. */
function takeOut(document: Document, path: string, hidden: Hidden, edition: Edition): void {
  const role = roleOf(path);
  const sight = EDITION_POLICY[edition];
  const whole = document.contents;
  if (role.holds === 'shell' && !sight.customer && isMap(whole)) whole.delete('customer');
  // A file that opens with `units:` has its list under its name.
  const root = isMap(whole) && 'list' in role ? whole.get(role.list) : whole;
  if (!isSeq(root)) return;
  const keep = (stays: (record: { get(key: string): unknown }) => boolean): void => {
    root.items = root.items.filter((item) => !isMap(item) || stays(item));
  };
  if (role.holds === 'library' && role.list === 'people') keep((person) => !hidden.ids.has(String(person.get('id'))));
  if (role.holds !== 'list') return;
  if (role.list === 'findings' && sight.nonconformances === 'told') keep((finding) => isYes(finding.get('tell_owner')));
  if (role.list === 'welds' && !sight.staff) for (const item of root.items) if (isMap(item)) item.delete('welder');
}

const isYes = (value: unknown): boolean => value === true || /^(?:yes|true)$/iu.test(String(value));
