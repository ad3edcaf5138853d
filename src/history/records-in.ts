import { isMap, isSeq, type Node, type Pair } from 'yaml';
import { calledOf, identityOf } from '../records/identity.js';
import { HEAD, KIND_NAMES, kindOf } from '../records/kinds.js';
import { KIND_IN } from '../records/lists.js';
import type { KindName } from '../records/names.js';
import { readDocument, type SourceDocument } from '../source/document.js';
import { NodeSource } from '../source/source.js';
import { roleOf, stemOf } from '../store/layout.js';

/** A record as somebody typed it, whether its form is right or not. */
export interface RecordThen {
  /** `weld`, `library section`, `shell` …; `file` for one that cannot be read. */
  readonly kind: string;
  readonly id: string;
  /** What tells it from others of its kind. */
  readonly identity: string;
  readonly data: unknown;
  readonly file: string;
  /** Line of a field in the file, from 1; of its nearest known parent where it was not typed. */
  lineOf(path: readonly (string | number)[]): number;
}

/** Lists within a file that is itself one record: list → kind. Those deeper within are part of that record. */
const PARTS: Readonly<Record<string, string>> = Object.fromEntries(
  KIND_NAMES.flatMap((kind) => {
    const { home } = kindOf(kind);
    if (home.in === 'service') return [[home.list, kind]];
    return home.in === 'head' && home.path.length === 1 && Object.hasOwn(HEAD, kind) ? [[home.path[0], kind]] : [];
  }),
);

/** Every record of a file of the store, by `kind id`. Two of one id in one file count as the later. */
export function recordsIn(file: string, text: string): readonly RecordThen[] {
  const role = roleOf(file);
  const document = readDocument(file, text);
  if (document.broken || role.holds === 'unknown')
    return [{ kind: 'file', id: file, identity: file, data: text, file, lineOf: () => 1 }];
  if (role.holds === 'shop') return [whole(document, 'shop', 'shop')];
  if (role.holds === 'shell') return withParts(document, 'shell', role.shell, PARTS);
  if (role.holds === 'service') return withParts(document, 'service', stemOf(file.split('/').at(-1) as string) ?? file, PARTS);
  if (role.holds !== 'library' && role.holds !== 'list') return [whole(document, 'file', file)];
  const listedKind = KIND_IN[role.list] as string;
  const kind = role.holds === 'library' ? `library ${listedKind}` : listedKind;
  return listed(document, () => document.root, document.data, role.list, kind);
}

function listed(
  document: SourceDocument,
  root: () => Node | null,
  data: unknown,
  name: string,
  kind: string,
): readonly RecordThen[] {
  if (Array.isArray(data)) return items(document, root, data, kind);
  const inside = (data as Readonly<Record<string, unknown>> | null)?.[name];
  return Array.isArray(inside) ? items(document, () => under(root(), name), inside, kind) : [];
}

function items(
  document: SourceDocument,
  listOf: () => Node | null,
  data: readonly unknown[],
  kind: string,
): readonly RecordThen[] {
  let made: { readonly list: Node | null } | undefined;
  return data.flatMap((one, i) => {
    if (typeof one !== 'object' || one === null) return [];
    const node = (): Node | null => {
      made ??= { list: listOf() };
      return isSeq(made.list) ? ((made.list.items[i] ?? null) as Node | null) : null;
    };
    return [record(document, node, kind, namesOf(kind, one as Typed), one)];
  });
}

type Typed = Readonly<Record<string, unknown>>;

/** `library section` is told as a section is. */
function namesOf(kind: string, data: Typed): Pick<RecordThen, 'id' | 'identity'> {
  const name = kind.replace(/^library /u, '') as KindName;
  const id = calledOf(name, data);
  return { id, identity: identityOf(name, data) ?? id };
}

function withParts(
  document: SourceDocument,
  kind: string,
  id: string,
  parts: Readonly<Record<string, string>>,
): readonly RecordThen[] {
  const data = document.data as Readonly<Record<string, unknown>> | null;
  if (typeof data !== 'object' || data === null) return [];
  const own = Object.fromEntries(Object.entries(data).filter(([key]) => parts[key] === undefined));
  return [
    record(document, () => document.root, kind, { id, identity: id }, own),
    ...Object.entries(parts).flatMap(([key, partKind]) =>
      listed(document, () => document.root, { [key]: data[key] }, key, partKind),
    ),
  ];
}

const whole = (document: SourceDocument, kind: string, id: string): RecordThen =>
  record(document, () => document.root, kind, { id, identity: id }, document.data);

function record(
  document: SourceDocument,
  node: Node | null | (() => Node | null),
  kind: string,
  names: Pick<RecordThen, 'id' | 'identity'>,
  data: unknown,
): RecordThen {
  const source = new NodeSource(document, node);
  return { kind, ...names, data, file: document.file, lineOf: (path) => source.place(...path).line };
}

function under(node: Node | null, key: string): Node | null {
  if (!isMap(node)) return null;
  const pair = (node.items as Pair<Node, Node | null>[]).find((one) => (one.key as { readonly value?: unknown }).value === key);
  return pair?.value ?? null;
}
