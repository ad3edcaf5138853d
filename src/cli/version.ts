import { readFileSync } from 'node:fs';
import { PACKAGE_FOLDER } from './package-folder.js';

/** From package.json, which lies two folders up from here in src/ and in dist/ alike. */
export function version(): string {
  const text = readFileSync(new URL('package.json', PACKAGE_FOLDER), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
