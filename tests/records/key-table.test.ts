import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { keyTable } from '../support/key-table.js';

const PAGE = fileURLToPath(new URL('../../src/records/RECORD.md', import.meta.url));
const HEAD = '## Every key\n';

it('has every key of every kind of record on the page of the record', () => {
  const page = readFileSync(PAGE, 'utf8');
  const wanted = `${page.slice(0, page.indexOf(HEAD))}${HEAD}${keyTable()}`;
  if (process.env.UPDATE_RECORD) writeFileSync(PAGE, wanted);
  expect(wanted, 'UPDATE_RECORD=1 writes it anew').toBe(process.env.UPDATE_RECORD ? wanted : page);
  expect(wanted).toContain('| **joins** | The two parts that it joins, or several pairs for like joints |');
});
