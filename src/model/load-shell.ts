import type { Finding } from '../finding.js';
import type { ListedKind, RecordKind, Shell, ShellLists, Shop, Source } from '../records/index.js';
import { LISTED, type RecordNamed } from '../records/kinds.js';
import { inModel, partInModel } from '../records/read-model.js';
import { listName } from '../records/shell.js';
import { type FileRole, roleOf } from '../store/layout.js';
import type { Vehicle } from './conditions.js';
import { indexById } from './index-by-id.js';
import { link, reportMissingFiles } from './link.js';
import { type LinkedLibrary, Links } from './links.js';
import { conditionsOf, type LoadedHead, readHead } from './load-head.js';
import { readServices, type ServiceParts } from './load-services.js';
import type { LoadedShell } from './load-types.js';
import { checkWhole, type OpenFile, RecordReader } from './records.js';
import { Register } from './register.js';
import { putInPlace } from './tape.js';

/** What one shell is read from. */
export interface ShellText {
  readonly id: string;
  /** Path in the store → text, of this shell's files only. */
  readonly files: ReadonlyMap<string, string>;
  /** Path in the store of every photo file. */
  readonly photos: ReadonlySet<string>;
}

/** Reads, maps and links one shell. Pure; every fault is a finding and what is whole is in the model. */
export function loadShell(text: ShellText, shop: Shop, linked: LinkedLibrary): LoadedShell {
  const findings: Finding[] = [];
  const say = (finding: Finding): void => void findings.push(finding);
  const reader = new RecordReader(say);
  const register = new Register<RecordKind>();
  const headFile = openHead(text, reader, register);
  const head = headFile ? readHead(headFile, text.id, reader, register) : () => NO_HEAD;
  const lists = readLists(text, reader, register);
  const services = readServices(
    filesOf(text, (role) => role.holds === 'service'),
    reader,
    register,
  );
  const { lost, taped } = putInPlace(reader.forms, linked.library, shop.limits.tapeMm, say);
  reader.lost = lost;
  const known = head();
  if (known.form && known.form.shell !== text.id && headFile) reportOtherFolder(known.form.shell, text.id, headFile, reader);
  const vehicle: Vehicle = { tanks: known.tanks, register, say };
  const whole = assemble(text.id, known, lists(vehicle), services(), headFile);
  const shell: Shell = taped.size === 0 ? whole : { ...whole, taped };
  register.claim(text.id, 'shell', shell.source, () => {});
  link(
    [{ kind: 'shell', id: text.id, data: shell.typed, source: shell.source }, ...reader.seen],
    new Links(register, linked.registers, say),
  );
  reportMissingFiles(text.id, shell.photos, text.photos, say);
  findings.sort(byPlace);
  return { model: { shop, library: linked.library, shell }, findings };
}

const NO_HEAD: LoadedHead = {
  form: undefined,
  chassis: { frame: {}, axles: [] },
  tanks: [],
  seats: [],
  bays: [],
  conditions: [],
};

function openHead(text: ShellText, reader: RecordReader, register: Register<RecordKind>): OpenFile | undefined {
  const path = `shells/${text.id}/shell.yaml`;
  const yaml = text.files.get(path);
  if (yaml !== undefined) return reader.open(path, yaml, register);
  const message = `There is no shell.yaml in shells/${text.id}/, expected one to say what the shell is`;
  reader.tell('format.missing-file', message, noSource(path).place(), [text.id]);
  return undefined;
}

function reportOtherFolder(typed: string, folder: string, file: OpenFile, reader: RecordReader): void {
  const message = `Found the shell number \`${typed}\` in the folder ${folder}, expected \`${folder}\`: correct it, or rename the folder`;
  reader.tell('format.wrong-value', message, file.source.place('shell'), [folder]);
}

type Lists = Omit<ShellLists, 'circuits' | 'nodes' | 'runs'>;

/** Every list of a shell but those of its services, once every place is known that hangs on something. */
function readLists(text: ShellText, reader: RecordReader, register: Register<RecordKind>): (vehicle: Vehicle) => Lists {
  const read = <K extends ListedKind>(kind: K, list: string): ((vehicle: Vehicle) => readonly RecordNamed<K>[]) => {
    const files = filesOf(text, (role) => role.holds === 'list' && role.list === list);
    const records = files.flatMap(([path, yaml]) => {
      const file = reader.open(path, yaml, register);
      return file ? reader.list(file, list, kind, register) : [];
    });
    for (const record of records) checkWhole(kind, record, reader);
    return (vehicle) =>
      records.flatMap((record) => {
        if (reader.lost.has(record.form as object)) return [];
        return inModel(kind, record, { condition: conditionsOf(record.id, record.source, vehicle) }) ?? [];
      });
  };
  const kinds = Object.keys(LISTED) as readonly ListedKind[];
  const lists = kinds.flatMap((kind) => {
    const { home } = LISTED[kind];
    return home.in === 'shell' ? [[listName(kind), read(kind, home.list)] as const] : [];
  });
  return (vehicle) => Object.fromEntries(lists.map(([name, known]) => [name, known(vehicle)])) as unknown as Lists;
}

function filesOf(text: ShellText, wanted: (role: FileRole) => boolean): readonly (readonly [string, string])[] {
  return [...text.files].filter(([path]) => {
    const role = roleOf(path);
    return role.holds !== 'unknown' && wanted(role);
  });
}

function assemble(id: string, head: LoadedHead, lists: Lists, services: ServiceParts, file: OpenFile | undefined): Shell {
  const { form } = head;
  const data = file?.document.data;
  const { shell: _, photos: __, ...own } = partInModel('shell', form ?? {}, { id, path: [] });
  const shell = {
    ...own,
    id,
    source: file?.source ?? noSource(`shells/${id}/shell.yaml`),
    typed: typeof data === 'object' && data !== null && !Array.isArray(data) ? (data as Record<string, unknown>) : {},
    title: form?.title ?? id,
    chassis: head.chassis,
    tanks: head.tanks,
    seats: head.seats,
    bays: head.bays,
    conditions: head.conditions,
    ...lists,
    ...services,
  };
  const byId: Map<string, Shell['byId'] extends ReadonlyMap<string, infer E> ? E : never> = new Map();
  const whole: Shell = { ...shell, byId };
  indexById(whole, byId);
  return whole;
}

function noSource(file: string): Source {
  return { file, place: () => ({ file, line: 1, column: 1, endLine: 1, endColumn: 2 }) };
}

export const byPlace = (a: Finding, b: Finding): number =>
  (a.place.file < b.place.file ? -1 : a.place.file > b.place.file ? 1 : 0) ||
  a.place.line - b.place.line ||
  a.place.column - b.place.column;
