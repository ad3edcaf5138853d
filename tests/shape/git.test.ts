import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));
const FILES = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((file) => file.split(path.sep).join('/'))
  .filter((file) => file.endsWith('.ts'));
const holding = (pattern: RegExp): readonly string[] =>
  FILES.filter((file) => pattern.test(readFileSync(path.join(SRC, file), 'utf8'))).sort();

describe('programs are started', () => {
  it('in one room only where they are Git’s: to look, to act for the user, to begin, and with the settings of nobody', () => {
    expect(holding(/(?:spawn|exec\w*)\(\s*['"`]git|from 'simple-git'/u)).toEqual([
      'store/git/act.ts',
      'store/git/alone.ts',
      'store/git/look.ts',
      'store/git/new.ts',
    ]);
  });

  it('by nothing else but the browser', () => {
    const others = holding(/(?:from |import\()'node:child_process'/u).filter((file) => !file.startsWith('store/git/'));
    expect(others.every((file) => file.startsWith('book/print/'))).toBe(true);
  });
});
