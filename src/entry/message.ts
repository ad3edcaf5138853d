import type { EntryKind } from './homes.js';
import { type Data, isData } from './yaml-text.js';

/** What a commit says of one new record, in the words of the trade: `Record weld W-0112 of QF-007: SF-L to CB-04, 1/4 in fillet, K7`. */
export function entryMessage(kind: EntryKind, id: string, shell: string | undefined, data: Data): string {
  const where = shell === undefined ? 'in the library' : `of ${shell}`;
  const what = wordsOf(kind, data);
  return `Record ${kind} ${id} ${where}${what === '' ? '' : `: ${what}`}`;
}

function wordsOf(kind: EntryKind, data: Data): string {
  const word = (key: string): string => (data[key] === undefined || isData(data[key]) ? '' : String(data[key]));
  const list = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');
  switch (kind) {
    case 'weld':
      return list(joinsText(data.joins), `${word('size')} ${word('type')}`.trim(), word('welder'));
    case 'member':
      return list(word('part'), word('section'));
    case 'run':
      return list(`${word('from')} to ${word('to')}`, word('circuit'));
    case 'ticket':
      return list(word('stage'), word('date'));
    case 'test':
      return list(word('kind'), [data.of ?? []].flat().join(' '));
    case 'finding':
      return word('description');
    case 'photo':
      return list(word('file'), word('caption'));
    default:
      return list(word('name') || word('kind'), word('reason'));
  }
}

function joinsText(joins: unknown): string {
  if (!Array.isArray(joins)) return '';
  const [first] = joins as readonly unknown[];
  const pair = Array.isArray(first) ? first : joins;
  return `${pair.map(String).join(' to ')}${Array.isArray(first) && joins.length > 1 ? ` and ${joins.length - 1} like it` : ''}`;
}
