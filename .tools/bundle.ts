/**
 * Joins the built program into files that hold what is wanted together: a question is answered in the time that Node takes to open four
 * hundred. `dist/` itself stays for other programs; what `shellbook` starts is `dist/main.js`, which leads to `dist/program/`, and there
 * `start.js` keeps what V8 made of these files.
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

/** Its tables take as long to make as an answer to print, and few answers have a text for them: it is a file of its own, opened when it is asked. */
const WIDTHS = './string-width.js';
const widthsWhenAsked = {
  name: 'widths-when-asked',
  resolveId: (source: string) => (source === 'string-width' ? '\0widths' : undefined),
  load: (id: string) =>
    id === '\0widths' ? `let made;\nexport default text => (made ??= require('${WIDTHS}').default)(text);` : undefined,
};

/** A byte a character: read without being decoded. */
const inAscii = (code: string): string => {
  if (/String\.raw`[^`]*[^\0-\x7f]/u.test(code)) throw new Error('a sign beyond ASCII stands in a text that is taken as it is');
  if (/(?<!\\)(?:\\\\)*\\[^\0-\x7f]/u.test(code)) throw new Error('a sign beyond ASCII stands behind a backslash');
  return code.replace(/[^\0-\x7f]/gu, (sign) =>
    Array.from({ length: sign.length }, (_, i) => `\\u${sign.charCodeAt(i).toString(16).padStart(4, '0')}`).join(''),
  );
};

/** What Node itself opens; it runs the others. */
const STARTER = 'start.js';

/** What is started: the program, and its thread. */
const ENTRIES: Readonly<Record<string, string>> = { main: './main.js', 'summary-worker': './cli/summary-worker.js' };

/** Joins what {@link ENTRIES} lead to; packages but {@link JOINED} stay what they are, in node_modules. */
async function bundle(root: string): Promise<void> {
  const dist = path.join(root, 'dist');
  const dir = path.join(dist, 'program');
  rmSync(dir, { recursive: true, force: true });
  const join = async (input: Readonly<Record<string, string>>, entryFileNames: string): Promise<ReadonlyMap<string, string>> => {
    const built = await rolldown({
      input: { ...input },
      cwd: dist,
      platform: 'node',
      external: (id) => id === WIDTHS || !(/^[.\0]/u.test(id) || path.isAbsolute(id) || JOINED.includes(id)),
      plugins: input === ENTRIES ? [widthsWhenAsked] : [],
      logLevel: 'silent',
    });
    const { output } = await built.write({
      dir,
      format: 'cjs',
      dynamicImportInCjs: false,
      entryFileNames,
      chunkFileNames: '[name]-[hash].js',
      minify: { compress: false, mangle: false, codegen: { removeWhitespace: true } },
    });
    await built.close();
    const chunks = output.filter((one) => one.type === 'chunk');
    for (const { fileName } of chunks) {
      const file = path.join(dir, fileName);
      const code = inAscii(readFileSync(file, 'utf8').replace(/^#!.*\n/u, ''));
      writeFileSync(file, fileName === STARTER ? code : `(function(exports,require,module,__filename,__dirname){${code}\n})`);
    }
    return new Map(chunks.filter(({ isEntry }) => isEntry).map(({ name, fileName }) => [name, fileName]));
  };
  const entries = await join(ENTRIES, '[name]-[hash].js');
  await join({ start: './start.js', 'string-width': 'string-width' }, '[name].js');
  // Without the loader of modules, which takes a tenth of an answer: what `shellbook` starts.
  writeFileSync(
    path.join(dist, 'shellbook.cjs'),
    `#!/usr/bin/env node\nrequire('./program/${STARTER}').start('${entries.get('main')}');\n`,
  );
  writeFileSync(path.join(dir, 'package.json'), '{ "type": "commonjs" }\n');
  writeFileSync(path.join(dir, 'LICENSES.txt'), JOINED.map((name) => licenceOf(root, name)).join('\n'));
  for (const [name, file] of Object.entries(ENTRIES)) {
    const up = path.posix.relative(path.posix.dirname(file), 'program');
    const start = `createRequire(import.meta.url)('${up.startsWith('.') ? up : `./${up}`}/start.js').start('${entries.get(name)}');`;
    writeFileSync(path.join(dist, file), `#!/usr/bin/env node\nimport { createRequire } from 'node:module';\n${start}\n`);
  }
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
