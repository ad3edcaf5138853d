import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { smallStore } from '../book/small-store.js';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** New files of a kind, a rule, a command and a chapter, as the guide (DEVELOPERS.md, To add) has them made. */
const NEW: Readonly<Record<string, string>> = {
  'src/records/decal.ts': `import { ids, text, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';
export const decal = kind('decal', { in: 'shell', list: 'decals' }, {
  words: text('What it says').required(),
  panels: ids('Panels that it is on').names('panel').usual([]),
  faded: yesNo('It cannot be read any more'),
});
export type Decal = RecordOf<typeof decal>;
`,
  'src/rules/panel/decal-faded.ts': `import type { Rule } from '../rule.js';
export const decalFaded: Rule = {
  name: 'panel.decal-faded', severity: 'warning', asks: 'defect', duty: 'trade', finds: 'A decal that cannot be read.', why: 'It warns nobody.',
  source: 'common practice, no source', examples: { given: '', fails: '', passes: '' },
  check: ({ model: { shell } }) => shell.decals.flatMap((one) =>
    one.faded ? [{ message: 'Decal ' + one.id + ' is faded', ids: [one.id], place: one.source.place('faded') }] : []),
};
`,
  'src/cli/commands/decals.ts': `import { answering } from '../answering.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';
import { envelope } from '../report/json.js';
export function declareDecals(registry: Registry): void {
  registry.add('decals <shell>', 'every decal and what it says', ['shellbook decals QF-007'])
    .action(registry.run(([shell]) => ({ shell: shell as string }), decals));
}
async function decals({ shell }: { readonly shell: string }, context: Context): Promise<Status> {
  const { assessment, revision } = await answering(shell, context, ['panel']);
  context.print(envelope('decals', shell, revision, { decals: assessment.model.shell.decals.map(({ id, words }) => ({ id, words })) }));
  return 0;
}
`,
  'src/book/chapters/decals.ts': `import type { Book, Chapter } from '../book.js';
import { recordTable } from '../record-table.js';
export function decals(book: Book): readonly Chapter[] {
  const rows = book.assessment.model.shell.decals;
  if (rows.length === 0) return [];
  const table = recordTable(book, { rows, columns: (c) => [c.id('ID', (one) => one.id), c.text('Words', (one) => one.words)], empty: '' });
  return [{ key: 'decals', title: 'Decals', template: 'decals', data: { decals: table } }];
}
`,
  'templates/decals.hbs': '<h1 id="c-decals">Decals</h1>\n{{> table data.decals}}\n',
};

/** Lines that go into files which are there: after the first that begins like this. */
const LINES: readonly (readonly [file: string, after: string, line: string])[] = [
  ['src/records/names.ts', "  | 'declared'", "  | 'decal'"],
  ['src/records/kinds.ts', 'import { conductor }', "import { decal } from './decal.js';"],
  ['src/records/kinds.ts', '  declared,', '  decal,'],
  ['src/records/index.ts', 'export type { Clamp', "export type { Decal } from './decal.js';"],
  ['src/rules/panel/index.ts', 'import { bondTime }', "import { decalFaded } from './decal-faded.js';"],
  ['src/cli/commands/index.ts', 'import { declareCompletion }', "import { declareDecals } from './decals.js';"],
  ['src/cli/commands/index.ts', '  declareCompletion,', '  declareDecals,'],
  ['src/book/chapters/index.ts', 'import { cover }', "import { decals } from './decals.js';"],
];

it('a kind, a rule, a command and a chapter that are added by the guide work together', () => {
  const copy = mkdtempSync(path.join(tmpdir(), 'shellbook-guide-'));
  try {
    for (const folder of ['src', 'templates', 'package.json'])
      cpSync(path.join(ROOT, folder), path.join(copy, folder), { recursive: true });
    symlinkSync(path.join(ROOT, 'node_modules'), path.join(copy, 'node_modules'));
    for (const [file, text] of Object.entries(NEW)) writeFileSync(path.join(copy, file), text);
    for (const [file, after, line] of LINES)
      edit(path.join(copy, file), (text) => text.replace(`\n${after}`, (found) => `\n${line}${found}`));
    edit(path.join(copy, 'src/rules/panel/index.ts'), (text) => text.replace('readonly Rule[] = [', '$&decalFaded, '));
    edit(path.join(copy, 'src/book/chapters/index.ts'), (text) =>
      text.replaceAll('skins, equipment', 'skins, decals, equipment'),
    );
    const store = { ...smallStore(), 'shells/T-1/decals.yaml': '- {id: DE-1, words: No step}\n' };
    for (const [file, text] of Object.entries(store)) {
      mkdirSync(path.dirname(path.join(copy, 'store', file)), { recursive: true });
      writeFileSync(path.join(copy, 'store', file), text);
    }
    const tsx = path.join(ROOT, 'node_modules/tsx/dist/cli.mjs');
    const driver = path.join(ROOT, 'tests/shape/guide/driver.ts');
    const said = execFileSync(process.execPath, [tsx, driver, path.join(copy, 'src'), path.join(copy, 'store')], {
      cwd: copy,
      encoding: 'utf8',
    });
    expect(JSON.parse(said)).toEqual({
      record: 'Mind <b>the</b> step',
      found: 1,
      chapter: [false, true],
      contents: true,
      home: true,
      escaped: true,
      status: 0,
      answer: [{ id: 'DE-1', words: 'No step' }],
    });
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
});

function edit(file: string, change: (text: string) => string): void {
  const text = readFileSync(file, 'utf8');
  const changed = change(text);
  expect([file, changed]).not.toEqual([file, text]);
  writeFileSync(file, changed);
}
