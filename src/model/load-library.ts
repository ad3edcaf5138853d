import type { Finding } from '../finding.js';
import { KIND_IN } from '../schema/kind-in.js';
import type { Kind } from '../schema/kinds.js';
import { LIBRARY_LISTS, type LibraryList, roleOf, stemOf } from '../store/layout.js';
import type { Library, PackedRule, Shop } from './library.js';
import { type LibraryKind, type LibraryRegisters, type LinkedLibrary, Links } from './links.js';
import {
  mapCertificate,
  mapConductor,
  mapInstrument,
  mapMaterial,
  mapPackedRule,
  mapPerson,
  mapProcedure,
  mapSection,
  mapShop,
  mapStage,
} from './map-library.js';
import { type Checked, RecordReader } from './records.js';
import { Register } from './register.js';
import { reportRoughSection } from './rough-section.js';
import type { RecordKind } from './shell.js';
import type { Source } from './source.js';

/** Reads library/: its records, and which ids it knows. */
export function loadLibrary(files: ReadonlyMap<string, string>, say: (finding: Finding) => void): LinkedLibrary {
  const reader = new RecordReader(say);
  const registers = Object.fromEntries(
    [...LIBRARY_LISTS, 'rules'].map((list) => [KIND_IN[list], new Register()]),
  ) as unknown as LibraryRegisters;
  const read = <K extends Kind & LibraryKind>(list: LibraryList, kind: K): readonly Checked<K>[] =>
    filesOf(files, list).flatMap(([path, text]) => {
      const file = reader.open(path, text, registers[kind]);
      return file ? reader.list(file, list, kind, registers[kind]) : [];
    });
  const materials = byId(read('materials', 'material').map(mapMaterial));
  const certificates = read('certificates', 'certificate').map(mapCertificate);
  const sections = read('sections', 'section').map(mapSection);
  const links = new Links(new Register<RecordKind>(), registers, say);
  for (const one of certificates) links.toLibrary(one, 'material', one.alloy, ['alloy']);
  for (const one of sections) reportRoughSection(one, say);
  const library: Library = {
    materials,
    certificates: byId(certificates),
    sections: byId(sections),
    conductors: byId(read('conductors', 'conductor').map(mapConductor)),
    procedures: byId(read('procedures', 'procedure').map(mapProcedure)),
    people: byId(read('people', 'person').map(mapPerson)),
    instruments: byId(read('instruments', 'instrument').map(mapInstrument)),
    stages: read('stages', 'stage').map(mapStage),
    rules: read('rules', 'rule').map((record): PackedRule => mapPackedRule(record, packOf(record.source.file))),
  };
  return { library, registers };
}

const byId = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> =>
  new Map(records.map((record) => [record.id, record]));

const packOf = (file: string): string => stemOf(file.slice(file.lastIndexOf('/') + 1)) ?? file;

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
    reader.tell('format.missing-file', 'There is no shop.yaml in this store, expected it to say whose store it is', none.place());
    return mapShop({ id: 'shop', source: none, typed: {} }, undefined);
  }
  const file = reader.open('shop.yaml', text, undefined, false);
  if (!file) return mapShop({ id: 'shop', source: none, typed: {} }, undefined);
  const { source } = file;
  const data = file.document.data ?? {};
  const form = reader.form(file, 'shop', { data, source });
  const typed = typeof data === 'object' && !Array.isArray(data) ? (data as Record<string, unknown>) : {};
  return mapShop({ id: 'shop', source, typed, note: form?.note, by: form?.by, date: form?.date, stage: form?.stage }, form);
}
