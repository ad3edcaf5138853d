/** Each package that is carried is named in DEVELOPERS.md with what it is for, and none is named that is not carried. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const read = (name: string): string => readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
const { dependencies, optionalDependencies, devDependencies } = JSON.parse(read('package.json')) as Record<
  string,
  Record<string, string>
>;
const text = read('DEVELOPERS.md');
const about = text.slice(text.indexOf('## Packages'), text.indexOf('## ', text.indexOf('## Packages') + 3));
const [table = '', tests = ''] = about.split('In tests only:');

/** `and -mono` after a package is its sister. */
const named = (name: string, where: string): boolean =>
  where.includes(name) || (name.endsWith('-mono') && where.includes(name.replace('-mono', '')) && where.includes('-mono'));

describe('the list of packages', () => {
  it.each(Object.keys({ ...dependencies, ...optionalDependencies }))('says what %s is for', (name) => {
    expect(named(name, table)).toBe(true);
  });

  it.each(Object.keys(devDependencies ?? {}).filter((name) => !name.startsWith('@types/')))(
    'names %s among those of the tests',
    (name) => {
      expect(named(name.replace(/^@biomejs\/|^@stryker-mutator\/(?=vitest)/u, ''), tests) || named(name, tests)).toBe(true);
    },
  );

  it('says a reason for each row', () => {
    const rows = table.split('\n').filter((line) => /^\| [a-z@]/u.test(line) && !line.startsWith('| package'));
    expect(rows.length).toBeGreaterThan(8);
    for (const row of rows) expect(row.split('|')[2]?.trim().length).toBeGreaterThan(5);
  });
});

const lock = JSON.parse(read('package-lock.json')) as {
  readonly packages: Readonly<
    Record<string, { version?: string; license?: string; dev?: boolean; devOptional?: boolean; optional?: boolean }>
  >;
};
const carried = Object.entries(lock.packages).filter(
  ([name, { dev, devOptional, optional }]) => name !== '' && !dev && !(devOptional && !optional),
);

describe('what is carried', () => {
  it('is under licences that DEVELOPERS.md names', () => {
    const licences = new Set(carried.flatMap(([, { license }]) => (license ?? 'none said').split(/ (?:AND|OR) /u)));
    expect([...licences].filter((one) => !text.includes(one.replace(/[()]/gu, '')))).toEqual([]);
    expect(text).toMatch(/LGPL-3\.0-or-later[\s\S]*libvips/u);
  });

  it('is in the bill of materials, each with its version and licence', () => {
    const top = fileURLToPath(new URL('../../', import.meta.url));
    const into = mkdtempSync(path.join(tmpdir(), 'shellbook-bom-'));
    execFileSync(process.execPath, ['--import', import.meta.resolve('tsx'), path.join(top, '.tools/bom.ts')], { cwd: into });
    const bill = JSON.parse(readFileSync(path.join(into, 'out/bom.json'), 'utf8')) as {
      bomFormat: string;
      components: {
        name: string;
        version: string;
        purl: string;
        licenses: { license?: { id: string }; expression?: string }[];
      }[];
    };
    rmSync(into, { recursive: true });
    expect(bill.bomFormat).toBe('CycloneDX');
    const listed = bill.components.map(({ name, version }) => `${name}@${version}`);
    for (const name of Object.keys(dependencies ?? {}))
      expect(
        listed.some((one) => one.startsWith(`${name}@`)),
        name,
      ).toBe(true);
    expect(new Set(listed).size).toBe(
      new Set(carried.map(([name, { version }]) => `${name.replace(/^.*node_modules\//u, '')}@${version}`)).size,
    );
    expect(bill.components.filter(({ licenses }) => licenses.some(({ license }) => license?.id === 'NOASSERTION'))).toEqual([]);
  });

  it('fetches nothing when it is installed', () => {
    expect(JSON.parse(read('.puppeteerrc.json'))).toEqual({ skipDownload: true });
  });
});
