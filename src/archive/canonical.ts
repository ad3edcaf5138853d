import canonicalize from 'canonicalize';
import { eachNamed } from '../model/link.js';
import type { Model } from '../model/shell.js';
import type { Certificate, KindName, LibraryKind, RecordBase } from '../records/index.js';
import { LIBRARY } from '../records/kinds.js';
import { recordIn } from '../records/library.js';
import { leansOn } from '../records/references.js';
import { recordsOf } from '../records/shell-lists.js';

/** One record as plain data in the form that is hashed. */
export interface CanonicalRecord {
  readonly kind: string;
  readonly id: string;
  /** `{"data":…,"id":…,"kind":…}` by RFC 8785. */
  readonly text: string;
}

/** JSON text of plain data by RFC 8785: keys in order of their UTF-16 units, numbers as ECMAScript prints them, no spaces. */
export function canonical(data: unknown): string {
  const text = canonicalize(data);
  if (text === undefined) throw new TypeError('Only plain data has a canonical form');
  return text;
}

/**
 * Every record that a shell's book stands on, sorted by kind, then id: the shell's own, and of shop and library what it uses.
 * `photoHashes`: path in the store (`shells/QF-007/photos/P-1.jpg`) → SHA-256 of the file, hex; a file without one counts as absent.
 */
export function canonicalRecords(model: Model, photoHashes: ReadonlyMap<string, string>): readonly CanonicalRecord[] {
  const records: CanonicalRecord[] = [];
  const put = (kind: string, id: string, data: unknown): void =>
    void records.push({ kind, id, text: canonical({ kind, id, data }) });
  for (const [kind, list] of Object.entries({ ...recordsOf(model.shell), ...ofLibrary(model) })) {
    for (const record of list) put(kind, record.id, record.typed);
  }
  put('shell', model.shell.id, model.shell.typed);
  put('shop', 'shop', model.shop.typed);
  for (const { id, name, medium, typed } of model.shell.services) put('service', id, { name, medium, ...typed });
  for (const { id, file } of model.shell.photos) {
    put('picture', id, photoHashes.get(`shells/${model.shell.id}/photos/${file}`)?.toLowerCase() ?? null);
  }
  return records.sort((a, b) => order(a.kind, b.kind) || order(a.id, b.id) || order(a.text, b.text));
}

/** By UTF-16 units, the same on every machine whatever its language. */
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

type Records = Readonly<Record<string, readonly RecordBase[]>>;

/** What of the library the shell uses, directly or through another library record. Stages and packed rules count whole: they judge it. */
function ofLibrary(model: Model): Records {
  const { shell, library } = model;
  const used = new Map<LibraryKind, Set<string>>();
  const use = (kind: KindName, typed: unknown): void =>
    eachNamed(
      kind,
      typed,
      ({ id, target }) => {
        if (!('library' in target) || used.get(target.library)?.has(id)) return;
        used.set(target.library, (used.get(target.library) ?? new Set()).add(id));
        const record = recordIn(library, target.library, id);
        if (record) use(target.library, record.typed);
      },
      leansOn(kind),
    );
  for (const [kind, records] of Object.entries(recordsOf(shell)))
    for (const record of records) use(kind as KindName, record.typed);
  const certificates = certificatesOf(model);
  for (const one of certificates) {
    use('certificate', one.typed);
    used.set('certificate', (used.get('certificate') ?? new Set()).add(one.id));
  }
  const kinds = Object.keys(LIBRARY) as readonly LibraryKind[];
  return Object.fromEntries(
    kinds.map((kind) => {
      const held = library[LIBRARY[kind].home.list];
      if (Array.isArray(held)) return [`library ${kind}`, held as readonly RecordBase[]];
      return [`library ${kind}`, [...(used.get(kind) ?? [])].flatMap((id) => recordIn(library, kind, id) ?? [])];
    }),
  );
}

function certificatesOf({ shell, library }: Model): readonly Certificate[] {
  const heats = new Set(shell.members.map(({ heat }) => heat));
  return [...library.certificates.values()].filter((certificate) => certificate.heats.some((heat) => heats.has(heat)));
}
