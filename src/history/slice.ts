import { readDocument } from '../source/document.js';

/**
 * One record of a file as typed, found without reading the rest of the file: for looking through thousands of versions. Undefined
 * where no list of the file has a record of that id.
 */
export function recordSlice(text: string, id: string): string | undefined {
  for (let at = text.indexOf(id); at >= 0; at = text.indexOf(id, at + 1)) {
    const before = KEY.exec(text.slice(Math.max(0, at - 20), at));
    const after = text.slice(at + id.length, at + id.length + 20);
    if (before === null || !END.test(after)) continue;
    const from = itemStart(text, at - (before[1] as string).length);
    if (from !== undefined) return text.slice(from, itemEnd(text, from));
  }
  return undefined;
}

const KEY = /(?:^|[\s{,])(id:[ \t]*["']?)$/u;
const END = /^["']?[ \t]*(?:[,}\r\n#]|$)/u;

/** Where the line begins whose `- ` opens the item that the key stands in. */
function itemStart(text: string, key: number): number | undefined {
  let line = text.lastIndexOf('\n', key - 1) + 1;
  let indent = key - line;
  for (;;) {
    const dash = /^( *)- /u.exec(text.slice(line, text.indexOf('\n', line) < 0 ? undefined : text.indexOf('\n', line)));
    if (dash && (dash[1] as string).length < Math.max(indent, 1)) return line;
    if (line === 0) return undefined;
    indent = Math.max(indent, 1);
    line = text.lastIndexOf('\n', line - 2) + 1;
  }
}

/** Where the next line begins that is indented no further than the item’s `- `. */
function itemEnd(text: string, from: number): number {
  const indent = (/^ */u.exec(text.slice(from, from + 80)) as RegExpExecArray)[0].length;
  const next = new RegExp(`\\n(?=[ ]{0,${indent}}[^\\s#])`, 'gu');
  next.lastIndex = from;
  return (next.exec(text)?.index ?? text.length - 1) + 1;
}

/** The record of a slice as plain data; undefined where it cannot be read by itself. */
export function sliceData(slice: string): unknown {
  const { broken, data } = readDocument('', slice);
  return broken || !Array.isArray(data) ? undefined : data[0];
}
