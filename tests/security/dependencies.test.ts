/** Each package that is carried is named in DEVELOPERS.md with what it is for, and none is named that is not carried. */
import { readFileSync } from 'node:fs';
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
