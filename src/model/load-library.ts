import type { Finding } from '../finding.js';
import type { Library, LibraryKind, RecordBase, RecordKind, Section, Shop, Source } from '../records/index.js';
import { LIBRARY, type RecordNamed } from '../records/kinds.js';
import { kindIn, LIBRARY_LISTS, type LibraryList } from '../records/lists.js';
import { inModel } from '../records/read-model.js';
import { shopOf } from '../records/shop-of.js';
import { roleOf } from '../store/layout.js';
import { type LibraryRegisters, type LinkedLibrary, Links } from './links.js';
import { RecordReader } from './records.js';
import { Register } from './register.js';
import { reportRoughSection } from './rough-section.js';

/** Reads library/: its records, and which ids it knows. */
export function loadLibrary(files: ReadonlyMap<string, string>, say: (finding: Finding) => void): LinkedLibrary {
  const reader = new RecordReader(say);
  const kinds = Object.keys(LIBRARY) as readonly LibraryKind[];
  const registers = Object.fromEntries(kinds.map((kind) => [kind, new Register()])) as unknown as LibraryRegisters;
  const read = <K extends LibraryKind>(kind: K): readonly RecordNamed<K>[] => {
    const { list } = LIBRARY[kind].home;
    return filesOf(files, list).flatMap(([path, text]) => {
      const file = reader.open(path, text, registers[kind]);
      const records = file ? reader.list(file, list, kind, registers[kind]) : [];
      return records.flatMap((record) => inModel(kind, record) ?? []);
    });
  };
  const lists = new Map(
    ([...LIBRARY_LISTS, 'rules'] as const).map((list) => [list, read(kindIn(list) as LibraryKind) as readonly RecordBase[]]),
  );
  const held = [...lists].map(([list, records]) => [list, IN_ORDER.has(list) ? records : byId(records)]);
  const library = Object.fromEntries(held) as Library;
  const links = new Links(new Register<RecordKind>(), registers, say);
  for (const one of lists.get('certificates') as readonly RecordNamed<'certificate'>[])
    links.toLibrary(one, 'material', one.alloy, ['alloy']);
  for (const one of lists.get('sections') as readonly Section[]) reportRoughSection(one, say);
  return { library, registers };
}

/** Lists whose order says something. */
const IN_ORDER: ReadonlySet<string> = new Set<LibraryList>(['stages', 'rules']);

const byId = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> =>
  new Map(records.map((record) => [record.id, record]));

function filesOf(files: ReadonlyMap<string, string>, list: LibraryList): readonly (readonly [string, string])[] {
  return [...files].filter(([path]) => {
    const role = roleOf(path);
    return role.holds === 'library' && role.list === list;
  });
}

/** Reads shop.yaml. A store without one, or with a broken one, still has a shop with the default limits. */
export function loadShop(text: string | undefined, say: (finding: Finding) => void): Shop {
  const reader = new RecordReader(say);
  const none: Source = { file: 'shop.yaml', place: () => ({ file: 'shop.yaml', line: 1, column: 1, endLine: 1, endColumn: 2 }) };
  if (text === undefined) {
    reader.tell('format.missing-file', 'This store has no shop.yaml, expected one to say whose store it is', none.place());
    return shopOf({ id: 'shop', source: none, typed: {} }, undefined);
  }
  const file = reader.open('shop.yaml', text, undefined, false);
  if (!file) return shopOf({ id: 'shop', source: none, typed: {} }, undefined);
  const { source } = file;
  const data = file.document.data ?? {};
  const form = reader.form(file, 'shop', { data, source });
  const typed = typeof data === 'object' && !Array.isArray(data) ? (data as Record<string, unknown>) : {};
  return shopOf({ id: 'shop', source, typed }, form);
}
