/** Writes the fictional store beside this folder. Run: npx tsx demo-data/make/main.ts [folder] */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { libraryFiles } from './library-files.js';
import { filesOf021 } from './ov021/files.js';

const out = process.argv[2] ?? fileURLToPath(new URL('..', import.meta.url));

function write(name: string, text: string | Buffer): void {
  const file = path.join(out, name);
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, text);
}

for (const [name, text] of libraryFiles()) write(name, text);
for (const [name, text] of filesOf021()) write(`shells/OV-021/${name}`, text);
