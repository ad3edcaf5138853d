import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const OWN = fileURLToPath(import.meta.url);

/**
 * Files that look otherwise after every change of the program: answers that were kept by another are not believed. A build writes all
 * of its files anew, so one stands for all; run from its sources, the program changes file by file.
 */
export function programFiles(): readonly string[] {
  const package_ = path.join(path.dirname(OWN), '..', '..');
  // What npm writes anew when it changes a package: of this package's own folder, and of the one that this package lies in.
  const packages = ['package.json', 'node_modules/.package-lock.json', '../.package-lock.json'];
  return [...(OWN.endsWith('.ts') ? sources() : [OWN]), ...packages.map((file) => path.join(package_, file))];
}

function sources(): readonly string[] {
  const folder = path.join(path.dirname(OWN), '..');
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  return names.sort().map((name) => path.join(folder, name));
}
