/**
 * Joins the built program into few files: a question is answered in the time that Node takes to open four hundred. `dist/` itself stays for
 * other programs and for threads; what `shellbook` starts is `dist/main.js`, which then leads to `dist/program/`.
 */
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

/** Packages that an answer from what is kept needs. */
const JOINED = [
  'ansi-regex',
  'canonicalize',
  'commander',
  'get-east-asian-width',
  'heap',
  'is-any-array',
  'ml-array-max',
  'ml-array-min',
  'ml-array-rescale',
  'ml-matrix',
  'string-width',
  'strip-ansi',
  'yalps',
];

/** What a look-up opens is in two files: opening one more costs more than reading what it does not need. */
const TOGETHER = [
  {
    name: 'figures',
    test: /dist\/(?:compute\/(?!camera|pictures)|geometry|quantity|query\/(?!pictures))/u,
  },
  {
    name: 'answers',
    test: /dist\/cli\/(?:answering|commands\/(?:where|near|behind|isolate|load|weights|takeoff|release)|report\/(?:checked|facts|findings|isolate|json|load|nearby|release|shown|tables|takeoff|topic|weights|what|where|wrap)[a-z-]*)\.js$/u,
  },
];

/** Joins what `dist/main.js` leads to; packages but {@link JOINED} stay what they are, in node_modules. */
async function bundle(root: string): Promise<void> {
  const dist = path.join(root, 'dist');
  const dir = path.join(dist, 'program');
  rmSync(dir, { recursive: true, force: true });
  const built = await rolldown({
    input: path.join(dist, 'main.js'),
    platform: 'node',
    external: (id) => !id.startsWith('.') && !path.isAbsolute(id) && !JOINED.includes(id),
    logLevel: 'silent',
  });
  await built.write({
    dir,
    format: 'esm',
    chunkFileNames: '[name]-[hash].js',
    minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
    codeSplitting: { groups: TOGETHER },
  });
  await built.close();
  writeFileSync(path.join(dir, 'LICENSES.txt'), JOINED.map((name) => licenceOf(root, name)).join('\n'));
  writeFileSync(path.join(dist, 'main.js'), "#!/usr/bin/env node\nimport './program/main.js';\n");
}

function licenceOf(root: string, name: string): string {
  const folder = path.join(root, 'node_modules', name);
  const { version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as Record<string, string>;
  const file = readdirSync(folder).find((one) => /^licen[cs]e/iu.test(one));
  return `${name} ${version}, ${license}\n\n${file ? readFileSync(path.join(folder, file), 'utf8') : ''}`;
}

/** Pages that run in a browser by themselves, and where their scripts begin: each becomes one file, which the program puts into its page. */
const PAGES = { mark: 'page/mark', pocket: 'page/pocket', floor: 'floor/script/floor' };

async function bundlePages(root: string): Promise<void> {
  for (const [name, script] of Object.entries(PAGES)) {
    const built = await rolldown({ input: path.join(root, 'dist', `${script}.js`), platform: 'browser', logLevel: 'silent' });
    const { output } = await built.write({
      file: path.join(root, 'dist/page', `${name}.bundle.js`),
      format: 'iife',
      minify: true,
    });
    if (output[0].imports.length > 0) throw new Error(`page ${name} needs ${output[0].imports.join(', ')}, which no browser has`);
    await built.close();
  }
}

const ROOT = fileURLToPath(new URL('../', import.meta.url));
await bundle(ROOT);
await bundlePages(ROOT);
