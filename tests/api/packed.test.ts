/** What `npm pack` would carry, and what installing it does. `.ci/packed` installs it for real. */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { apiOf, apiPage, introductionOf } from '../../.tools/api-reference.js';
import * as api from '../../src/index.js';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const DIST = path.join(ROOT, 'dist');

describe('what is packed', () => {
  const said = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
    shell: process.platform === 'win32',
  });
  const [packed] = JSON.parse(said) as [{ readonly files: readonly { readonly path: string }[] }];
  const names = packed.files.map((file) => file.path);

  it('has the program, its templates, the demo and the licence', () => {
    for (const name of [
      'dist/main.js',
      'dist/shellbook.cjs',
      'dist/index.d.ts',
      'dist/preinstall.js',
      'templates/book.css',
      'demo-data/shop.yaml',
    ])
      expect(names).toContain(name);
    for (const name of ['LICENSE', 'README.md', 'package.json']) expect(names).toContain(name);
  });
  it('has no sources but the pages that the README links, no tests, tools or settings of ours', () => {
    const known =
      /^(?:dist\/.*\.(?:js|cjs|d\.ts)|dist\/program\/(?:LICENSES\.txt|package\.json)|templates\/.*|demo-data\/.*\.(?:yaml|jpg|jpeg|png)|src\/.*\.md|[A-Z]+(?:\.md)?|package\.json)$/u;
    expect(names.filter((name) => !known.test(name))).toEqual([]);
  });
});

describe('the script that npm runs before the browser package’s own', () => {
  let top: string;
  beforeEach(() => {
    top = mkdtempSync(path.join(os.tmpdir(), 'shellbook-packed-'));
  });
  afterEach(() => rmSync(top, { recursive: true, force: true }));

  const install = (browserFolder: string): string => {
    const own = path.join(top, 'node_modules', 'shellbook', 'dist');
    const browser = path.join(top, browserFolder, 'puppeteer');
    mkdirSync(own, { recursive: true });
    mkdirSync(browser, { recursive: true });
    writeFileSync(path.join(browser, 'package.json'), '{}');
    cpSync(path.join(DIST, 'preinstall.js'), path.join(own, 'preinstall.mjs'));
    execFileSync(process.execPath, [path.join(own, 'preinstall.mjs')]);
    return path.join(browser, '.puppeteerrc.json');
  };

  it.each(['node_modules', 'node_modules/shellbook/node_modules'])('says in %s that nothing is to be downloaded', (folder) => {
    expect(JSON.parse(readFileSync(install(folder), 'utf8'))).toEqual({ skipDownload: true });
    expect(existsSync(path.join(top, '.puppeteerrc.json'))).toBe(false);
  });
  it('leaves settings alone that are there', () => {
    const settings = install('node_modules');
    writeFileSync(settings, '{"skipDownload": false}');
    expect(readFileSync(install('node_modules'), 'utf8')).toBe('{"skipDownload": false}');
  });
});

describe('the reference of the library', () => {
  const entries = apiOf(DIST);
  it('has every value that can be imported, and the types of a record', () => {
    const names = entries.map(({ name }) => name);
    for (const name of [...Object.keys(api), 'Member', 'Weld', 'Panel', 'Run', 'Ticket', 'Assessment', 'AxleLoad'])
      expect(names).toContain(name);
    expect(new Set(names).size).toBe(names.length);
  });
  it('says of each function what it does', () => {
    const functions = entries.filter(({ text }) => /^(?:const|function|class) /u.test(text));
    expect(functions.length).toBeGreaterThan(8);
    expect(functions.filter(({ doc }) => doc.length < 20).map(({ name }) => name)).toEqual([]);
  });
  it('stands on a page with the docstring above each type', () => {
    const page = apiPage(entries, introductionOf(DIST));
    expect(page).toContain('### openStore\n\nReads every YAML file below a folder.');
    expect(page).not.toMatch(/^\*/mu);
  });
});

describe('the list of changes', () => {
  const { version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { readonly version: string };
  const readme = readFileSync(path.join(ROOT, 'README.md'), 'utf8');
  const heads = [...(readme.split('\n## Changes\n')[1]?.split('\n## ')[0] ?? '').matchAll(/^### (.+)$/gmu)].map(
    ([, head]) => head as string,
  );

  it('has each version with its day, newest first, and above them what is not released', () => {
    expect(heads.length).toBeGreaterThan(0);
    const released = heads.filter((head, i) => i > 0 || head !== 'Unreleased');
    for (const head of released) expect(head).toMatch(/^\d+\.\d+\.\d+ \(\d{4}-\d{2}-\d{2}\)$/u);
    const [last] = released;
    expect(last?.split(' ')[0]).toBe(version);
  });
});
