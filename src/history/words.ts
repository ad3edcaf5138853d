import type { FieldChange, RecordChange } from './differences.js';

/** `size 3/16 in → 1/4 in`, `heat H-4471 added`, `inspection 2 (VT, J2, 2026-02-12, accept) added`. */
export function fieldText({ path, from, to }: FieldChange): string {
  const name = pathText(path);
  if (from === undefined) return `${name} ${wholeText(to)} added`.trim();
  if (to === undefined) return `${name} ${wholeText(from)} taken out`.trim();
  if (Array.isArray(from) && Array.isArray(to) && from.every(isScalar) && to.every(isScalar) && !isPlace(from, to))
    return listText(name, from, to);
  return `${name} ${valueText(from)} → ${valueText(to)}`.trim();
}

/** `cut_length` → cut length; an item of a list is counted from 1. */
function pathText(path: FieldChange['path']): string {
  return path
    .map((step, i) =>
      typeof step === 'number' ? String(step + 1) : typeof path[i + 1] === 'number' ? singular(words(step)) : words(step),
    )
    .join(' ');
}

const words = (key: string): string => key.replace(/_/gu, ' ');
const singular = (name: string): string => name.replace(/(?<=\w\w)s$/u, '');
const isScalar = (value: unknown): boolean => typeof value !== 'object' || value === null;

/** A list that only grew or shrank says what came and went. */
function listText(name: string, from: readonly unknown[], to: readonly unknown[]): string {
  const came = to.filter((one) => !from.includes(one)).map(String);
  const went = from.filter((one) => !to.includes(one)).map(String);
  if (came.length + went.length === 0) return `${name} ${from.map(String).join(', ')} → ${to.map(String).join(', ')}`;
  return [name, came.length > 0 ? `${came.join(', ')} added` : '', went.length > 0 ? `${went.join(', ')} taken out` : '']
    .filter((part) => part !== '')
    .join(' ');
}

/** A place or a pair of figures moves as a whole. */
const isPlace = (from: readonly unknown[], to: readonly unknown[]): boolean =>
  from.length === to.length && [...from, ...to].every((one) => /^-?[\d.]/u.test(String(one)));

/** A list that came or went as a whole needs no brackets; a place or an outline does. */
const wholeText = (value: unknown): string =>
  Array.isArray(value) && value.length > 0 && !value.some((one) => Array.isArray(one)) && !isPlace(value, value)
    ? value.map(valueText).join(', ')
    : valueText(value);

function valueText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(valueText).join(', ')}]`;
  if (typeof value === 'object' && value !== null) return `(${Object.values(value).map(valueText).join(', ')})`;
  return value === null ? 'nothing' : String(value);
}

/** `W-0112: size 3/16 in → 1/4 in; position 2F → 3F`. */
export function changeText({ id, kind, change, fields }: RecordChange): string {
  if (kind === 'file') return `${id} changed, which cannot be read as records`;
  const name = kind.startsWith('library ') || kind === 'shop' || kind === 'service' ? `${kind} ${id}` : id;
  if (change === 'added') return `${name}: ${kind.replace(/^library /u, '')} recorded`;
  if (kind === 'picture' && change === 'changed') return `${id}: picture replaced by another`;
  if (change === 'removed') return `${name}: ${kind.replace(/^library /u, '')} taken out`;
  return `${name}: ${fields.map(fieldText).join('; ')}`;
}
