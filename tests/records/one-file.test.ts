import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

describe('a field that is added to weld.ts', () => {
  let copy = '';
  beforeAll(() => {
    copy = copyOf('shellbook-field-');
    cpSync(path.join(ROOT, 'tests/records/one-file/driver.ts'), path.join(copy, 'driver.ts'));
    const field = "    preheat: prose('How it was warmed before').called('preheating'),\n";
    edit(path.join(copy, 'src/records/weld.ts'), (text) =>
      text.replace("    at: position('Where it is')", `${field}$&`).replace('asked: [', "$&\n      'preheat',"),
    );
  });
  afterAll(() => rmSync(copy, { recursive: true, force: true }));

  it('is read, checked, modelled, described, asked, imported, redacted, fingerprinted and signed for, with no other file changed', () => {
    const tsx = path.join(ROOT, 'node_modules/tsx/dist/cli.mjs');
    const said = execFileSync(process.execPath, [tsx, 'driver.ts', path.join(copy, 'src'), 'preheat'], {
      cwd: copy,
      encoding: 'utf8',
    });
    expect(JSON.parse(said)).toEqual({
      model: 'by K7 to 110 C',
      faults: [
        'Found a block of keys for `preheat`, expected a word or a line of text',
        'Found the key `prehea` in a weld, expected `preheat`',
      ],
      help: 'How it was warmed before',
      heads: ['preheat', 'preheat'],
      sheets: ['preheating'],
      asked: true,
      redacted: 'by the shop to 110 C',
      fingerprinted: true,
      signed: true,
    });
  });
});

/** Names that are words of their own and not the key: what a recall asks for, what a figure of the metal is called. */
const OTHER_WORDS = new Set([
  'compute/structure/materials.ts',
  'records/field.ts',
  'history/trace-query.ts',
  'cli/report/check-json.ts',
  'cli/answers/check.ts',
  'query/lookup/synonyms.ts',
  'rules/member/alloy-swapped.ts',
]);

describe('a key that is renamed', () => {
  it('is a fault of types in every file that used it', () => {
    const copy = copyOf('shellbook-renamed-');
    try {
      edit(path.join(copy, 'src/records/member.ts'), (text) => text.replace('    heat: text(', '    heat_no: text('));
      cpSync(path.join(ROOT, 'tsconfig.json'), path.join(copy, 'tsconfig.json'));
      const tsc = path.join(ROOT, 'node_modules/typescript/bin/tsc');
      const run = spawnSync(process.execPath, [tsc, '-p', '.', '--noEmit', '--pretty', 'false'], { cwd: copy, encoding: 'utf8' });
      const faulty = new Set([...run.stdout.matchAll(/^src\/(\S+?)\(\d+,\d+\): error TS/gmu)].map(([, file]) => file as string));
      const files = readdirSync(path.join(copy, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) =>
        file.endsWith('.ts'),
      );
      const using = files.filter((file) => uses(readFileSync(path.join(copy, 'src', file), 'utf8'), 'heat'));
      expect(using.filter((file) => !faulty.has(file) && !OTHER_WORDS.has(file))).toEqual([]);
      for (const file of ['records/member.ts', 'rules/member/heat-missing.ts', 'rules/member/certificate-missing.ts'])
        expect(faulty).toContain(file);
      expect(faulty).toContain('archive/canonical.ts');
    } finally {
      rmSync(copy, { recursive: true, force: true });
    }
  });
});

/** As a property, a name within braces or a whole text; comments and sentences do not count. */
function uses(text: string, word: string): boolean {
  const code = text.replace(/\/\*.*?\*\/|^\s*\/\/.*$/gmsu, '');
  return new RegExp(`\\.${word}\\b|'${word}'|\\{[^{}'\`]*\\b${word}\\b[^{}'\`]*\\}`, 'u').test(code);
}

/** Sources in a folder of their own. */
function copyOf(name: string): string {
  const copy = mkdtempSync(path.join(tmpdir(), name));
  cpSync(path.join(ROOT, 'src'), path.join(copy, 'src'), { recursive: true });
  cpSync(path.join(ROOT, 'package.json'), path.join(copy, 'package.json'));
  symlinkSync(path.join(ROOT, 'node_modules'), path.join(copy, 'node_modules'));
  return copy;
}

function edit(file: string, change: (text: string) => string): void {
  const text = readFileSync(file, 'utf8');
  const changed = change(text);
  expect(changed).not.toBe(text);
  writeFileSync(file, changed);
}
