import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { KIND_NAMES, kindOf } from '../../src/records/kinds.js';
import { HEAD_LISTS, SERVICE_LISTS } from '../../src/records/lists.js';
import { eachField } from '../../src/records/references.js';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

/** `\`heat: H-1\`` in a message tells a shop what to type: a key that was renamed would send it astray. */
it('tells no shop to type a key that no record has', () => {
  // Parts of shell.yaml; the kind in import.yaml; and `renew:` before one of the shop's own words.
  const known = new Set<string>([
    ...HEAD_LISTS,
    ...SERVICE_LISTS,
    'id',
    'units',
    'axles',
    'chassis',
    'datum',
    'bare',
    'shape',
    'member',
    'renew',
  ]);
  for (const kind of KIND_NAMES) {
    const { fields, variants } = kindOf(kind);
    for (const one of [fields, ...Object.values(variants?.forms ?? {})]) eachField(one, (_field, _path, key) => known.add(key));
  }
  const told = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .filter((file) => /^(?:rules|closeout|query|entry|records)\/.*\.ts$/u.test(file))
    .flatMap((file) =>
      [...readFileSync(path.join(SRC, file), 'utf8').matchAll(/\\?`([a-z]+(?:_[a-z]+)*):(?: [^\n`]*)?\\?`/gu)].map(
        (match) => `${file} ${match[1]}`,
      ),
    );
  expect(told.length).toBeGreaterThan(30);
  expect(told.filter((one) => !known.has(one.split(' ')[1] as string))).toEqual([]);
});
