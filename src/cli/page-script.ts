import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The script of a page, bundled when the program was built; run from its sources, bundled now. */
export async function pageScript(name: string): Promise<string> {
  const built = fileURLToPath(new URL(`../page/${name}.bundle.js`, import.meta.url));
  if (existsSync(built)) return readFileSync(built, 'utf8');
  const { build } = await import('esbuild');
  const entry = fileURLToPath(new URL(`../page/${name}.ts`, import.meta.url));
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2020',
    write: false,
  });
  return outputFiles[0]?.text ?? '';
}
