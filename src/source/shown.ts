/** Typed text as a message may quote it: on one line, no longer than `most` signs. */
export function shown(value: unknown, most = 40): string {
  const text = typeof value === 'string' ? value : value === null || value === undefined ? 'nothing' : String(value);
  const line = text.replace(/\s+/gu, ' ').replace(/`/gu, "'");
  return line.length > most ? `${line.slice(0, most - 1)}…` : line;
}

/** What stands there, for `Found …`. */
export function found(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a block of keys';
  if (value === '') return 'an empty text';
  return `\`${shown(value)}\``;
}
