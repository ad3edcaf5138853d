/** A record, or a part of one, as plain data that is to be typed. */
export type Data = Readonly<Record<string, unknown>>;

/** As wide as a typed line may get before its fields go on below. */
export const YAML_WIDTH = 120;
/** A record between braces, or a field a line. */
export type Style = 'flow' | 'block';

/** What means itself between braces, whatever stands beside it. */
const PLAIN = /^[\p{L}\p{N}.(][\p{L}\p{N} _./+*()'’%°×–-]*(?<! )$/u;
/** `-17 in`, `-5-1/4 in`: no sign of a list, since a digit follows. */
const NEGATIVE = /^-\d[\d /.-]* ?[A-Za-z0-9]*$/u;
/** `2026-04-07T14:30:05` */
const TIME = /^\d{4}-\d{2}-\d{2}T[\d:.]*\d$/u;
const NOTHING = /^(?:null|Null|NULL|~|)$/u;

/** A value on one line, with quotes only where YAML needs them. */
export function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
  if (isData(value)) return `{${pairs(value).join(', ')}}`;
  return scalar(value);
}

/** A record as an item of a list, indented, its line end included. Like its neighbours: between braces, or a field a line. */
export function item(record: Data, style: Style, indent = ''): string {
  return style === 'flow' ? `${wrapped(record, indent)}\n` : block(record, indent);
}

/** `{id: …,` and what follows, broken between fields where a line would be too long. */
function wrapped(record: Data, indent: string): string {
  const parts = pairs(record);
  const lines: string[] = [];
  let line = `${indent}- {`;
  parts.forEach((part, i) => {
    const text = i === parts.length - 1 ? `${part}}` : `${part},`;
    const opens = line.endsWith('{');
    if (!opens && line.length + 1 + text.length > YAML_WIDTH) {
      lines.push(line);
      line = `${indent}   ${text}`;
    } else line += opens ? text : ` ${text}`;
  });
  return [...lines, line].join('\n');
}

function block(record: Data, indent: string): string {
  return Object.entries(record)
    .map(([key, value], i) => `${indent}${i === 0 ? '- ' : '  '}${field(key, value, `${indent}    `)}\n`)
    .join('');
}

/** A key and its value as a line of a block; a list of blocks stands below its key. */
export function field(key: string, value: unknown, indent: string): string {
  const below = Array.isArray(value) && value.length > 0 && value.every(isData);
  if (below) return `${flow(key)}:\n${(value as Data[]).map((one) => wrapped(one, indent)).join('\n')}`;
  return `${flow(key)}: ${flow(value)}`;
}

const pairs = (record: Data): readonly string[] => Object.entries(record).map(([key, value]) => `${flow(key)}: ${flow(value)}`);

function scalar(value: unknown): string {
  const text = typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value ?? '');
  if ([PLAIN, NEGATIVE, TIME].some((form) => form.test(text)) && !NOTHING.test(text)) return text;
  return quoted(text);
}

/** JSON is YAML; what no screen shows is written by its number. */
const quoted = (text: string): string =>
  JSON.stringify(text).replace(/\p{Cc}/gu, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);

export const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value);
