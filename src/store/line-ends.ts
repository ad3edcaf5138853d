/** Text of a file with `\n` alone, and how it was written. */
export interface NormalizedText {
  readonly text: string;
  readonly mark: boolean;
  /** Each line's own end, in order; empty for a last line without one. */
  readonly ends: readonly string[];
}

const MARK = '\ufeff';

/** Takes the byte order mark and carriage returns off, and remembers them. */
export function normalizeEol(written: string): NormalizedText {
  const mark = written.startsWith(MARK);
  const lines = (mark ? written.slice(1) : written).split(/(?<=\n)/u);
  const ends = lines.map((line) => /\r?\n$/u.exec(line)?.[0] ?? '');
  return { text: lines.map(withoutEnd).join(''), mark, ends };
}

const withoutEnd = (line: string): string => (line.endsWith('\r\n') ? `${line.slice(0, -2)}\n` : line);

/** Puts them back: lines before and after the change end as they did, what is new ends as most of the file does. */
export function restoreEol(text: string, old: NormalizedText): string {
  const [was, now] = [linesOf(old.text), linesOf(text)];
  let head = 0;
  while (head < was.length && head < now.length && was[head] === now[head]) head++;
  let tail = 0;
  while (tail < Math.min(was.length, now.length) - head && was.at(-1 - tail) === now.at(-1 - tail)) tail++;
  const crlf = old.ends.filter((end) => end === '\r\n').length * 2 > old.ends.filter((end) => end !== '').length;
  const ended = now.map((line, i) => {
    if (!line.endsWith('\n')) return line;
    const kept = i < head ? old.ends[i] : i >= now.length - tail ? old.ends[was.length - (now.length - i)] : undefined;
    return line.slice(0, -1) + (kept || (crlf ? '\r\n' : '\n'));
  });
  return (old.mark ? MARK : '') + ended.join('');
}

const linesOf = (text: string): readonly string[] => text.split(/(?<=\n)/u);
