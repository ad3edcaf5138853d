import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Where the program's modules lie: beside this one, or beside the folder of joined ones. */
const PLACES = ['../page/', '../../page/', './page/'];

/** The script of a page, bundled when the program was built; run from its sources, bundled now. */
export async function pageScript(name: string): Promise<string> {
  for (const place of PLACES) {
    const built = fileURLToPath(new URL(`${place}${name}.bundle.js`, import.meta.url));
    if (existsSync(built)) return readFileSync(built, 'utf8');
  }
  const { rolldown } = await import('rolldown');
  const made = await rolldown({
    input: fileURLToPath(new URL(`../${name === 'floor' ? 'floor/script' : 'page'}/${name}.ts`, import.meta.url)),
    platform: 'browser',
    logLevel: 'silent',
  });
  const { output } = await made.generate({ format: 'iife', minify: true });
  await made.close();
  const [lost] = output[0].imports;
  if (lost !== undefined) throw new Error(`the script of page ${name} needs ${lost}, which no browser has`);
  return output[0].code;
}
