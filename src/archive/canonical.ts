import canonicalize from 'canonicalize';
import type { Certificate } from '../model/library.js';
import type { Model, Shell } from '../model/shell.js';
import type { RecordBase } from '../model/source.js';
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
  const used = <T>(all: ReadonlyMap<string, T>, ids: Iterable<string | undefined>): readonly T[] =>
    [...new Set(ids)].flatMap((id) => (id === undefined ? [] : (all.get(id) ?? [])));
  const procedures = used(
    library.procedures,
    shell.welds.map((weld) => weld.procedure),
  );
  const certificates = certificatesOf(model);
  const wires = [...shell.circuits, ...shell.runs].map((one) => one.conductor?.type);
  return {
    'library section': used(
      library.sections,
      shell.members.map(({ shape }) => (shape.kind === 'line' ? shape.section : undefined)),
    ),
    'library material': used(library.materials, [
      ...shell.members.map((member) => member.alloy),
      ...shell.panels.map((panel) => panel.alloy),
      ...procedures.flatMap((procedure) => procedure.base),
      ...certificates.map((certificate) => certificate.alloy),
    ]),
    'library certificate': certificates,
    'library conductor': used(library.conductors, wires),
    'library procedure': procedures,
    'library person': used(library.people, peopleOf(shell)),
    'library instrument': used(library.instruments, [
      ...shell.tickets.map((ticket) => ticket.scale),
      ...shell.tests.map((test) => test.instrument),
    ]),
    'library stage': library.stages,
    'library rule': library.rules,
  };
}

function certificatesOf({ shell, library }: Model): readonly Certificate[] {
  const heats = new Set(shell.members.map(({ heat }) => heat));
  return [...library.certificates.values()].filter((certificate) => certificate.heats.some((heat) => heats.has(heat)));
}

function peopleOf(shell: Shell): readonly (string | undefined)[] {
  return [
    ...Object.values(recordsOf(shell)).flatMap((records) => records.map((record) => record.by)),
    ...shell.welds.flatMap((weld) => [weld.welder, ...weld.inspections.map((one) => one.by)]),
    ...shell.tests.map((test) => test.witness),
    ...shell.findings.map((finding) => finding.approvedBy),
  ];
}
