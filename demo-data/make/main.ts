/**
 * Writes the fictional store beside this folder. Run: npx tsx demo-data/make/main.ts [folder]
 * Pictures that are there already are kept: delete one to have it made again.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { plantedYaml } from './ov024/files.js';
import { storeFiles } from './store-files.js';

const home = fileURLToPath(new URL('..', import.meta.url));
const out = process.argv[2] ?? home;

for (const [name, text] of await storeFiles(home)) {
  const file = path.join(out, name);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, text);
}
if (out === home) writeFileSync(path.join(home, '../tests/demo/planted.yaml'), plantedYaml());
