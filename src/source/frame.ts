import type { Place } from '../finding.js';

const LINES_BEFORE = 2;
const WIDTH = 100;

/**
 * The place in its text: two lines before, the line itself and a caret under the words. Long lines are cut around the words.
 * Empty where the text has no such line. Ready for a terminal of `width` columns; no colours, no line break at the end.
 */
export function frame(text: string, place: Place, width = WIDTH): string {
  const lines = linesBetween(text, place.line - LINES_BEFORE, place.line);
  const last = lines.at(-1);
  if (last === undefined || last.number !== place.line) return '';
  const margin = String(place.line).length;
  const room = Math.max(20, width - margin - 3);
  const end = place.endLine === place.line ? place.endColumn : last.text.length + 1;
  const cut = window(last.text.length, place.column - 1, Math.max(end - 1, place.column), room);
  const shown = lines.map(({ number, text: line }) => `${String(number).padStart(margin)} | ${slice(line, cut)}`);
  const under = Math.max(1, Math.min(end - 1, cut.to) - (place.column - 1));
  const before = slice(last.text, cut).slice(0, place.column - 1 - cut.from + (cut.from > 0 ? 1 : 0));
  const pad = before.replace(/[^\t]/gu, ' ');
  return [...shown.map((line) => line.trimEnd()), `${' '.repeat(margin)} | ${pad}${'^'.repeat(under)}`].join('\n');
}

interface Window {
  readonly from: number;
  readonly to: number;
}

/** The part of a line of `length` signs to show, so that `start` to `end` is in it, with some room on its left. */
function window(length: number, start: number, end: number, room: number): Window {
  if (length <= room) return { from: 0, to: room };
  const before = Math.max(10, Math.floor((room - (end - start)) / 2));
  const from = Math.max(0, Math.min(start - before, length - room));
  return { from, to: from + room - 2 };
}

function slice(line: string, { from, to }: Window): string {
  const printable = line.replace(/(?!\t)\p{Cc}/gu, '\uFFFD');
  return `${from > 0 ? '…' : ''}${printable.slice(from, to)}${to < printable.length ? '…' : ''}`;
}

function linesBetween(text: string, first: number, last: number): readonly { readonly number: number; readonly text: string }[] {
  const lines: { number: number; text: string }[] = [];
  let start = text.startsWith('\uFEFF') ? 1 : 0;
  for (let number = 1; number <= last && start <= text.length; number++) {
    const end = text.indexOf('\n', start);
    const stop = end === -1 ? text.length : end;
    if (number >= first) lines.push({ number, text: text.slice(start, stop).replace(/\r$/u, '') });
    if (end === -1) break;
    start = end + 1;
  }
  return lines;
}
