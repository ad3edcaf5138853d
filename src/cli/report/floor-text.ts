import { countOf, type EntryKind } from '../../entry/homes.js';
import { type FloorPlan, lineOf } from '../../floor/merge.js';
import { envelope } from './json.js';

export interface FloorSaid {
  readonly plan: FloorPlan;
  readonly written: boolean;
  readonly shell: string;
  /** As given at the prompt. */
  readonly files: readonly string[];
}

/** What came in, entry by entry with who made it; what did not, and why. */
export function floorText({ plan, written }: FloorSaid): string {
  const { taken, already, clashes, faults, pictures, sounds } = plan;
  const counts = new Map<EntryKind, number>();
  for (const { kind, does } of taken) if (does === 'add') counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const changed = taken.filter(({ does }) => does !== 'add').length;
  const what = [...counts].map(([kind, count]) => countOf(count, kind));
  if (changed > 0) what.push(`${changed} ${changed === 1 ? 'change' : 'changes'} to records`);
  if (pictures.size > 0) what.push(`${pictures.size} ${pictures.size === 1 ? 'picture' : 'pictures'}`);
  if (sounds.size > 0) what.push(`${sounds.size} ${sounds.size === 1 ? 'voice note' : 'voice notes'}`);
  return [
    ...taken.map(({ person, kind, id, does, data }) => `${person}  ${does === 'add' ? '+' : '~'} ${kind} ${id}  ${lineOf(data)}`),
    ...clashes.map(
      ({ person, kind, id, field, record, phone }) =>
        `?  ${kind} ${id}${field === '' ? '' : `, ${field}`}: the record says ${record}, ${person} entered ${phone}. It stays as it is until somebody decides: run this at a terminal.`,
    ),
    ...faults.map(({ person, id, message }) => `!  ${id}${person === '' ? '' : ` (${person})`}: ${message}`),
    what.length > 0 ? `${written ? 'Took in' : 'Would take in'} ${what.join(', ')}.` : 'Nothing new.',
    ...(already > 0 ? [`${already} ${already === 1 ? 'entry was' : 'entries were'} in the record already.`] : []),
    ...(faults.length > 0 && !written
      ? ['Nothing was written: put these right on the phone and hand over again, or leave them out with --yes.']
      : []),
  ].join('\n');
}

/** In the shape of every `import`: the row of an entry is its number among those that come in. */
export function floorJson({ plan, written, shell, files }: FloorSaid): string {
  const { taken, already, clashes, faults, pictures, sounds, texts } = plan;
  const rows = taken.map(({ person, kind, id, does, data }, i) => ({
    person,
    kind,
    id,
    does,
    row: i + 1,
    keys: Object.keys(data),
  }));
  return envelope('import', shell, null, {
    sheet: files.join(', '),
    dry_run: !written,
    columns: [],
    added: rows.filter(({ does }) => does === 'add').map(({ kind, id, person, row }) => ({ kind, id, file: '', person, row })),
    changed: rows
      .filter(({ does }) => does !== 'add')
      .map(({ kind, id, person, row, keys }) => ({ kind, id, file: '', person, row, keys })),
    unchanged: already,
    ahead: [],
    faults: faults.map(({ id, person, message }) => ({ row: 0, column: null, message: `${id}: ${message}`, person })),
    gone: [],
    files: [
      ...texts.keys(),
      ...[...pictures.values()].map((name) => `shells/${shell}/photos/${name}`),
      ...[...sounds.values()].map((name) => `shells/${shell}/${name}`),
    ],
    clashes: clashes.map(({ kind, id, field, record, phone, person }) => ({ kind, id, field, record, phone, person })),
  });
}
