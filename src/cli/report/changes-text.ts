import { changeText, fieldText } from '../../history/words.js';
import type { Person } from '../../records/index.js';
import type { Author } from '../../store/changes.js';
import { personText, type SignedChange } from '../changes.js';
import { dayText } from './day.js';
import type { Json } from './json.js';
import { counted, paragraph } from './wrap.js';

type People = ReadonlyMap<string, Person>;

/** `, by K7, 12 Feb 2026`. */
const signed = (by: Author | undefined, people: People): string =>
  by === undefined ? '' : `, by ${personText(by.author, people)}, ${dayText(by.date)}`;

/** Who is meant by the ids: `K7 is Corvina Thessel, welder.` Undefined where nobody of the library did any of it. */
export function whoText(changes: readonly SignedChange[], people: People): string | undefined {
  const authors = changes.flatMap(({ by, fieldsBy }) => [by, ...fieldsBy]).map((one) => one?.author);
  const named = [...people.values()].filter(({ name }) => authors.includes(name));
  if (named.length === 0) return undefined;
  return named.map(({ id, name, role }) => `${id} is ${name}, ${role}.`).join('\n');
}

/** One line a record that changed; records that came or went together are one line. */
export function changesText(changes: readonly SignedChange[], people: People): readonly string[] {
  const alike = new Map<string, string[]>();
  for (const change of changes.filter((one) => one.change === 'changed' || one.kind === 'file')) {
    const [name, what] = changedText(change, people);
    alike.set(what, [...(alike.get(what) ?? []), name]);
  }
  const lines = [...alike].map(([what, names]) => `${listed(names)}${what}`);
  return [...lines, ...together(changes, people)].map((line) => paragraph(line, '- '));
}

/** The record's name, and what became of it: many records may have had the same done to them. */
function changedText(change: SignedChange, people: People): readonly [string, string] {
  const text = changeText(change);
  const at = change.kind === 'file' ? text.length : text.indexOf(': ');
  const name = text.slice(0, at);
  const same = change.fieldsBy.every((by) => by?.commit === change.by?.commit);
  if (same) return [name, `${text.slice(at)}${signed(change.by, people)}`];
  const fields = change.fields.map((field, i) => `${fieldText(field)}${signed(change.fieldsBy[i], people)}`);
  return [name, `: ${fields.join('; ')}`];
}

/** The first of many, and the last. */
const listed = (names: readonly string[]): string =>
  names.length <= LISTED ? names.join(', ') : `${names.slice(0, LISTED - 2).join(', ')} … ${names.at(-1)}`;

const LISTED = 8;

function together(changes: readonly SignedChange[], people: People): readonly string[] {
  const groups = new Map<string, SignedChange[]>();
  for (const one of changes) {
    if (one.change === 'changed' || one.kind === 'file') continue;
    const key = [one.change, one.kind, one.by?.commit].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map((group) => {
    const [first] = group as [SignedChange];
    const ids = group.map(({ id }) => id);
    const done = first.change === 'added' ? 'recorded' : 'taken out';
    return `${group.length === 1 ? first.kind : counted(group.length, first.kind, pluralOf(first.kind))} ${done}: ${listed(ids)}${signed(first.by, people)}`;
  });
}

const pluralOf = (kind: string): string =>
  kind.endsWith('person')
    ? kind.replace(/person$/u, 'people')
    : kind.endsWith('y')
      ? `${kind.slice(0, -1)}ies`
      : kind === 'declared'
        ? 'declared values'
        : `${kind}s`;

const by = (author: Author | undefined, people: People): { readonly [key: string]: Json } => ({
  by: author === undefined ? null : personText(author.author, people),
  date: author?.date ?? null,
  commit: author?.commit ?? null,
});

export const changeJson = (change: SignedChange, people: People): Json => ({
  kind: change.kind,
  id: change.id,
  change: change.change,
  text: changeText(change),
  ...by(change.by, people),
  fields: change.fields.map((field, i) => ({
    field: field.path.join('.'),
    from: (field.from ?? null) as Json,
    to: (field.to ?? null) as Json,
    ...by(change.fieldsBy[i], people),
  })),
});
