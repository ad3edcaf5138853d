import { readFileSync } from 'node:fs';

/** From package.json, which lies two folders up from here in src/ and in dist/ alike. */
export function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
