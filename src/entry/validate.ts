import type { Finding } from '../finding.js';
import { readCondition } from '../model/conditions.js';
import { link } from '../model/link.js';
import { type From, Links } from '../model/links.js';
import { withoutBlanks } from '../model/records.js';
import { checkForm, type FieldSource } from '../records/form/form.js';
import type { LibraryKind, RecordKind, Source, Tank } from '../records/index.js';
import { type Form, kindOf } from '../records/kinds.js';
import type { Schemas } from '../records/schema.js';
import { shown } from '../source/shown.js';
import type { Path } from '../source/source.js';
import { type EntryKind, homeOf } from './homes.js';
import type { RecordIndex } from './record-index.js';
import type { Data } from './yaml-text.js';

/** Where a record was typed that is in no file yet; the messages name the keys. */
export const NO_PLACE: FieldSource & { readonly file: string } = {
  file: '',
  place: () => ({ file: '', line: 1, column: 1, endLine: 1, endColumn: 2 }),
  placeOfKey: () => ({ file: '', line: 1, column: 1, endLine: 1, endColumn: 2 }),
};

export interface Candidate {
  readonly kind: EntryKind;
  readonly data: Data;
  readonly known: RecordIndex;
  /** With the units of the file that it goes to. */
  readonly schemas: Schemas;
  readonly source: FieldSource & { readonly file: string };
}

type Say = (finding: Finding) => void;

/**
 * Checks a record by the very form and links that `check` holds it to. Gives its fields in SI, or undefined with every fault told.
 * With `ahead`, a name that is nowhere in the records is told there and is no fault: it may come with the next sheet.
 */
export function validate({ kind, data, known, schemas, source }: Candidate, say: Say, ahead?: Say): Form<EntryKind> | undefined {
  let faults = 0;
  const tell: Say = (finding) => {
    faults++;
    say(finding);
  };
  const id = data.id === undefined ? undefined : String(data.id);
  const form = checkForm(schemas, kind, { ...(id === undefined ? {} : { id }), data: withoutBlanks(data), source }, tell);
  if (form !== undefined) reportHalf(kind, { id: id ?? '', form, source } as never, tell);
  if (form !== undefined) reportCondition(form, { id: id ?? '', source }, known, ahead ?? tell);
  if (homeOf(kind).in !== 'library') {
    const links = ahead ? new LinksAhead(known, tell, ahead) : new Links(known.register, known.linked.registers, tell);
    link([{ kind: kind as RecordKind, ...(id === undefined ? {} : { id }), data, source }], links);
  }
  return faults === 0 ? form : undefined;
}

/** A tube without an end, a swept cavity without its inside: forms that are right by halves. */
function reportHalf(kind: EntryKind, record: never, say: Say): void {
  kindOf(kind).more.check?.(record, (rule, message, place, ids) => say({ rule, severity: 'error', message, ids, place }));
}

/** What was aboard is named by a tank, what is in it, or an axle of this shell. */
function reportCondition(form: object, { id, source }: { id: string; source: Source }, known: RecordIndex, say: Say): void {
  if (!('condition' in form) || form.condition === undefined) return;
  const tanks = known
    .ofKind('tank')
    .map(({ data }) => ({ id: String(data.id), contents: String(data.contents), use: data.use }) as Tank);
  readCondition(form.condition as never, { id, source, path: ['condition'] }, { tanks, register: known.register, say });
}

/** Lets a record name what is not there yet, and tells it. Near names are not looked for: by the thousand that would take minutes. */
class LinksAhead extends Links {
  constructor(
    private readonly known: RecordIndex,
    say: Say,
    private readonly ahead: Say,
  ) {
    super(known.register, known.linked.registers, say);
  }

  override to(from: From, kinds: readonly RecordKind[], id: string, path: Path): void {
    if (this.known.register.kindOf(id) === undefined) this.tell(from, id, path);
    else super.to(from, kinds, id, path);
  }

  override toAny(from: From, id: string, path: Path): void {
    if (this.known.register.kindOf(id) === undefined) this.tell(from, id, path);
  }

  override toLibrary(from: From, kind: LibraryKind, id: string, path: Path): void {
    if (this.known.linked.registers[kind].kindOf(id) === undefined) this.tell(from, id, path);
  }

  private tell(from: From, id: string, path: Path): void {
    const message = `\`${shown(id)}\` for \`${path.join('.')}\``;
    this.ahead({ rule: 'format.unknown-reference', severity: 'error', message, ids: [], place: from.source.place(...path) });
  }
}
