/**
 * Writes records as a shop types them: one record a line where it fits, continued below where it does not, comments above.
 * A record’s own key `#` holds the comment that stands above it; `block: true` lays it out one field a line.
 */

export type Rec = { readonly [key: string]: unknown };

const WIDTH = 128;
/** What needs no quotes within `{…}`. */
const PLAIN = /^[A-Za-z0-9À-ž.][A-Za-z0-9À-ž _./+*()'’%°×–-]*$/u;
const NEGATIVE = /^-\d[\d /.-]* ?[a-z]*$/u;
const WORDS = new Set(['true', 'false', 'null', 'True', 'False', 'Null', 'TRUE', 'FALSE', 'NULL']);

export function scalar(value: unknown): string {
  if (typeof value === 'number' || typeof value === 'boolean')
    return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
  const text = String(value);
  if ((PLAIN.test(text) || NEGATIVE.test(text)) && !WORDS.has(text) && text === text.trim()) return text;
  return `"${text.replace(/\\/gu, '\\\\').replace(/"/gu, '\\"')}"`;
}

const entries = (record: Rec): readonly (readonly [string, unknown])[] =>
  Object.entries(record).filter(([key, value]) => key !== '#' && key !== 'block' && value !== undefined);

export function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${entries(value as Rec)
      .map(([key, one]) => `${key}: ${flow(one)}`)
      .join(', ')}}`;
  return scalar(value);
}

function comment(record: Rec, indent: string): string {
  const text = record['#'];
  if (text === undefined) return '';
  const lines = Array.isArray(text) ? (text as string[]) : [String(text)];
  return lines.map((line) => (line === '' ? '\n' : `${indent}# ${line}\n`)).join('');
}

/** `- {…}`, broken between fields where a line would be too long. */
export function item(record: Rec, indent = ''): string {
  if (record.block === true) return comment(record, indent) + block(record, indent);
  const lines: string[] = [];
  let line = `${indent}- {`;
  const parts = entries(record).map(([key, one]) => `${key}: ${flow(one)}`);
  parts.forEach((part, i) => {
    const end = i === parts.length - 1 ? '}' : ',';
    const fits = line.length + part.length + end.length + 1 <= WIDTH;
    if (!fits && !line.endsWith('{')) {
      lines.push(line);
      line = `${indent}   `;
    }
    line += `${line.endsWith('{') || /^\s*$/u.test(line) ? '' : ' '}${part}${end}`;
  });
  lines.push(line);
  return `${comment(record, indent)}${lines.join('\n')}\n`;
}

function block(record: Rec, indent: string): string {
  return entries(record)
    .map(([key, value], i) => {
      const lead = `${indent}${i === 0 ? '- ' : '  '}${key}:`;
      const long = Array.isArray(value) && value.every((one) => typeof one === 'object' && !Array.isArray(one));
      if (long) return `${lead}\n${(value as Rec[]).map((one) => item(one, `${indent}    `)).join('')}`;
      return `${lead} ${typeof value === 'string' && value.length > 0 ? plainLine(value) : flow(value)}\n`;
    })
    .join('');
}

/** Outside `{…}` a comma needs no quotes. */
const plainLine = (text: string): string =>
  /^[A-Za-z0-9][^#:[\]{}"]*$/u.test(text) && !WORDS.has(text) ? text.trim() : scalar(text);

export function list(head: readonly string[], records: readonly Rec[]): string {
  return `${head.map((line) => (line === '' ? '\n' : `# ${line}\n`)).join('')}${records.map((one) => item(one)).join('')}`;
}

/** A file that opens with units for its bare numbers, its list under its own name. */
export function listWithUnits(head: readonly string[], units: string, name: string, records: readonly Rec[]): string {
  return `${head.map((line) => `# ${line}\n`).join('')}units: ${units}\n${name}:\n${records.map((one) => item(one, '  ')).join('')}`;
}
