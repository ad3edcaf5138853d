/**
 * Sample stores with the expectation in the YAML. A file's first line says where it belongs (`# at shells/T-1/welds.yaml`, and what
 * must be found in that line itself: `# at shells/T-1/weld.yaml error 1-2 format.file-name`);
 * a comment above a line says what must be found in it: `# error 14-19 format.unit-missing` (columns from–to, counted from 1; `to` is
 * the column after the last sign). Every finding must be expected and every expectation found. A folder is a store of several files.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { loadOne } from '../support/store.js';

const SAMPLES = new URL('./samples/', import.meta.url);
const EXPECTATION = /^\s*# (at \S+ )?(error|warning|note) (\d+)-(\d+) ([a-z]+\.[a-z-]+)\s*$/u;

function filesOf(name: string): Record<string, string> {
  const place = new URL(name, SAMPLES);
  const paths = statSync(place).isDirectory() ? readdirSync(place).map((file) => new URL(`${name}/${file}`, SAMPLES)) : [place];
  return Object.fromEntries(
    paths.map((path) => {
      const text = readFileSync(path, 'utf8');
      const at = /^# at (\S+)/u.exec(text)?.[1];
      if (at === undefined) throw new Error(`${name}: the first line must say where the file belongs`);
      return [at, text];
    }),
  );
}

/** `file:line:from-to severity rule` of every comment that expects something in the next line that expects nothing. */
function expectedIn(files: Record<string, string>): string[] {
  return Object.entries(files).flatMap(([file, text]) => {
    const found: string[] = [];
    let waiting: string[][] = [];
    text.split('\n').forEach((line, i) => {
      const match = EXPECTATION.exec(line);
      if (match) waiting.push(match.slice(2));
      if (match?.[1] === undefined && match) return;
      for (const [severity, from, to, rule] of waiting) found.push(`${file}:${i + 1}:${from}-${to} ${severity} ${rule}`);
      waiting = [];
    });
    return found;
  });
}

describe('sample stores', () => {
  test.each(readdirSync(SAMPLES))('%s', (name) => {
    const files = filesOf(name);
    const loaded = loadOne(files);
    const found = [...loaded.store.findings, ...loaded.findings].map(
      ({ place, severity, rule }) => `${place.file}:${place.line}:${place.column}-${place.endColumn} ${severity} ${rule}`,
    );
    expect(found.sort()).toEqual(expectedIn(files).sort());
  });

  test('no message has a line break, a stack or a word of the machinery', () => {
    for (const name of readdirSync(SAMPLES)) {
      const loaded = loadOne(filesOf(name));
      for (const { message } of [...loaded.store.findings, ...loaded.findings]) {
        expect(message).not.toMatch(/\n|zod|invalid_|undefined|\[object|NaN/iu);
        expect(message.length).toBeLessThan(420);
      }
    }
  });
});
