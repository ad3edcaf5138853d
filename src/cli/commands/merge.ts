import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { storeOf } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly files: readonly string[];
  readonly driver: boolean;
  readonly install: boolean;
}

export function declareMerge(registry: Registry): void {
  registry
    .add('merge [files...]', 'settles, field by field, what two people changed differently', [
      'shellbook merge              after a pull or rebase that Git could not finish',
      'shellbook merge --install    lets Git merge records in this copy; once is enough',
    ])
    .option('--install', 'let Git merge the records of this copy field by field')
    .option('--driver', 'as Git calls it: base, ours, theirs, path')
    .action(
      registry.run(
        ([files], { driver, install }) => ({
          files: (files ?? []) as readonly string[],
          driver: driver === true,
          install: install === true,
        }),
        merge,
      ),
    );
}

async function merge({ files, driver, install }: Options, context: Context): Promise<Status> {
  const own = await import('../merge-driver.js');
  if (driver) return own.runDriver(files, context);
  const root = await storeOf(context);
  if (install) return installIt(root, context);
  if (files.length > 0) throw new UserError('Leave the files out: every record file of the store is looked at');
  return settleAll(root, context);
}

async function installIt(root: string, context: Context): Promise<Status> {
  const [{ installed }, { writing }, path] = await Promise.all([
    import('../merge-driver.js'),
    import('../../store/write.js'),
    import('node:path'),
  ]);
  if (!(await installed(root)))
    throw new UserError('The store is not in a Git work tree, or this program is not built: nothing was changed');
  const { ATTRIBUTES } = await import('../../store/git/merge-driver.js');
  const { readFile } = await import('node:fs/promises');
  const there = await readFile(path.join(root, '.gitattributes'), 'utf8').catch(() => '');
  if (!there.includes(ATTRIBUTES.trim()))
    await writing(root, (writer) =>
      writer.update('.gitattributes', (old) => `${old ?? ''}${old && !old.endsWith('\n') ? '\n' : ''}${ATTRIBUTES}`),
    );
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(envelope('merge', null, null, { installed: true, left: [], settled: [] }));
  } else context.print('Git merges the records of this copy by record and field from now on.');
  return 0;
}

async function settleAll(root: string, context: Context): Promise<Status> {
  const [{ readStoreText }, { conflictsIn, idsInConflict }] = await Promise.all([
    import('../../store/read.js'),
    import('../../source/conflicts.js'),
  ]);
  const { files } = await readStoreText(root);
  const open = [...files].filter(([, text]) => /^<{7}/mu.test(text) && conflictsIn(text).length > 0);
  const questions = open.flatMap(([file, text]) =>
    conflictsIn(text).map((block) => ({ file, line: block.line, ids: idsInConflict(block) })),
  );
  const asker = open.length > 0 ? await context.io.ask?.() : undefined;
  const settled = asker ? await ask(root, open, asker) : [];
  const left = asker ? [] : questions;
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(envelope('merge', null, null, { installed: false, left, settled }));
  } else if (questions.length === 0) context.print('No record file holds lines that a merge has marked.');
  else if (asker) {
    context.print(`Settled ${settled.join(', ')}.`);
    context.tell(`Look at it, then: shellbook check; git add ${settled.join(' ')}; and go on with the merge or rebase`);
  } else {
    context.print(left.map(({ file, line, ids }) => `${file}:${line}: ${ids.join(', ') || 'some lines'}`).join('\n'));
    context.tell('Two people changed these to different things. At a terminal shellbook merge asks which is true.');
  }
  return left.length === 0 ? 0 : 1;
}

async function ask(
  root: string,
  open: readonly (readonly [string, string])[],
  asker: Parameters<typeof import('../../entry/merge/settle.js')['settle']>[2],
): Promise<readonly string[]> {
  const [{ settle }, { entering }, { normalizeEol }] = await Promise.all([
    import('../../entry/merge/settle.js'),
    import('../entering.js'),
    import('../../store/line-ends.js'),
  ]);
  const texts = new Map<string, { readonly old: string; readonly now: string }>();
  for (const [file, text] of open) {
    const old = normalizeEol(text).text;
    texts.set(file, { old, now: await settle(file, old, asker) });
  }
  await entering(
    root,
    () => `merge ${[...texts.keys()].join(', ')}`,
    async (writer) => {
      for (const [file, { old, now }] of texts)
        await writer.update(file, (standing) => {
          if (standing === old) return now;
          throw new UserError(`${file} was changed by another program in this moment: try again`);
        });
    },
  );
  return [...texts.keys()];
}
