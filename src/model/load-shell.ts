import type { Finding } from '../finding.js';
import type { Kind } from '../schema/kinds.js';
import { type FileRole, roleOf, type ShellList } from '../store/layout.js';
import { indexById } from './index-by-id.js';
import type { Shop } from './library.js';
import { link, reportMissingFiles } from './link.js';
import { type LinkedLibrary, Links } from './links.js';
import { type Head, loadHead } from './load-head.js';
import { loadServices, type ServiceParts } from './load-services.js';
import type { LoadedShell } from './load-types.js';
import type { Vehicle } from './map-condition.js';
import { mapAmendment, mapComponent, mapDeclared, mapNonconformance, mapPhoto, mapSignoff, mapTest } from './map-records.js';
import { mapZone } from './map-services.js';
import { mapTicket } from './map-shell.js';
import { mapClamp, mapMember, mapOpening, mapPanel, mapWeld } from './map-structure.js';
import { type Checked, type OpenFile, RecordReader } from './records.js';
import { Register } from './register.js';
import { reportRoughMembers, reportRoughZones } from './rough.js';
import type { RecordKind, Shell } from './shell.js';
import type { Source } from './source.js';

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
  const head = headFile ? loadHead(headFile, text.id, reader, register) : NO_HEAD;
  if (head.form && head.form.shell !== text.id && headFile) reportOtherFolder(head.form.shell, text.id, headFile, reader);
  const lists = loadLists(text, head, reader, register);
  const services = loadServices(
    filesOf(text, (role) => role.holds === 'service'),
    reader,
    register,
  );
  const shell = assemble(text.id, head, lists, services, headFile);
  register.claim(text.id, 'shell', shell.source, () => {});
  link(
    [{ kind: 'shell', id: text.id, data: shell.typed, source: shell.source }, ...reader.seen],
    new Links(register, linked.registers, say),
  );
  reportMissingFiles(text.id, shell.photos, text.photos, say);
  findings.sort(byPlace);
  return { model: { shop, library: linked.library, shell }, findings };
}

const NO_HEAD: Head = { form: undefined, chassis: { frame: {}, axles: [] }, tanks: [], seats: [], bays: [], conditions: [] };

function openHead(text: ShellText, reader: RecordReader, register: Register<RecordKind>): OpenFile | undefined {
  const path = `shells/${text.id}/shell.yaml`;
  const yaml = text.files.get(path);
  if (yaml !== undefined) return reader.open(path, yaml, register);
  const message = `There is no shell.yaml in shells/${text.id}/, expected it to say what the shell is`;
  reader.tell('format.missing-file', message, noSource(path).place(), [text.id]);
  return undefined;
}

function reportOtherFolder(typed: string, folder: string, file: OpenFile, reader: RecordReader): void {
  const message = `Unexpected shell number \`${typed}\` in the folder ${folder}, expected \`${folder}\`: correct it, or rename the folder`;
  reader.tell('format.wrong-value', message, file.source.place('shell'), [folder]);
}

type Lists = Pick<
  Shell,
  | 'zones'
  | 'members'
  | 'welds'
  | 'panels'
  | 'openings'
  | 'components'
  | 'tickets'
  | 'tests'
  | 'findings'
  | 'signoffs'
  | 'amendments'
  | 'photos'
  | 'declared'
  | 'clamps'
>;

function loadLists(text: ShellText, head: Head, reader: RecordReader, register: Register<RecordKind>): Lists {
  const read = <K extends Kind & RecordKind>(list: ShellList, kind: K): readonly Checked<K>[] =>
    filesOf(text, (role) => role.holds === 'list' && role.list === list).flatMap(([path, yaml]) => {
      const file = reader.open(path, yaml, register);
      return file ? reader.list(file, list, kind, register) : [];
    });
  const vehicle: Vehicle = { tanks: head.tanks, register, say: reader.say };
  const zones = read('zones', 'zone');
  const members = read('members', 'member');
  reportRoughZones(zones, reader);
  reportRoughMembers(members, reader);
  return {
    zones: zones.map(mapZone),
    members: members.flatMap((record) => mapMember(record) ?? []),
    welds: read('welds', 'weld').map(mapWeld),
    panels: read('panels', 'panel').map(mapPanel),
    openings: read('openings', 'opening').map(mapOpening),
    components: read('components', 'component').map(mapComponent),
    tickets: read('weights', 'ticket').map((record) => mapTicket(record, vehicle)),
    tests: read('tests', 'test').map(mapTest),
    findings: read('findings', 'finding').map(mapNonconformance),
    signoffs: read('signoffs', 'signoff').map(mapSignoff),
    amendments: read('amendments', 'amendment').map(mapAmendment),
    photos: read('photos', 'photo').map(mapPhoto),
    declared: read('declared', 'declared').map(mapDeclared),
    clamps: read('clamps', 'clamp').map(mapClamp),
  };
}

function filesOf(text: ShellText, wanted: (role: FileRole) => boolean): readonly (readonly [string, string])[] {
  return [...text.files].filter(([path]) => {
    const role = roleOf(path);
    return role.holds !== 'unknown' && wanted(role);
  });
}

function assemble(id: string, head: Head, lists: Lists, services: ServiceParts, file: OpenFile | undefined): Shell {
  const { form } = head;
  const data = file?.document.data;
  const shell = {
    id,
    source: file?.source ?? noSource(`shells/${id}/shell.yaml`),
    typed: typeof data === 'object' && data !== null && !Array.isArray(data) ? (data as Record<string, unknown>) : {},
    note: form?.note,
    by: form?.by,
    date: form?.date,
    stage: form?.stage,
    title: form?.title ?? id,
    vin: form?.vin,
    customer: form?.customer,
    envelope: form?.envelope && {
      lengthMm: form.envelope.length,
      widthMm: form.envelope.width,
      heightMm: form.envelope.height,
    },
    care: form?.care?.map(({ done, ...one }) => ({ ...one, done: done ?? [] })),
    paint: form?.paint,
    parts: form?.parts?.map(({ maker_number, ...one }) => ({ ...one, makerNumber: maker_number })),
    warranty: form?.warranty,
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
