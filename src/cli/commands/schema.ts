import type { KindName } from '../../records/index.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly kind: string | undefined;
  readonly write: boolean;
  readonly answers: boolean;
}

export function declareSchema(registry: Registry): void {
  registry
    .add('schema [kind]', 'JSON Schema of a record file, for editors, or of a --json answer, for scripts', [
      'shellbook schema members > members.schema.json',
      'shellbook schema answer-check   what a script may count on in check --json',
      'shellbook schema --answers     the schemas of all answers, by command',
      'shellbook schema --write      writes all of them into the store, with editor settings',
    ])
    .helpGroup('For developers:')
    .option('--write', 'write every schema and the editor settings into the store')
    .option('--answers', 'the schemas of all --json answers, in one object')
    .action(
      registry.run(
        ([kind], { write, answers }) => ({ kind: kind as string | undefined, write: write === true, answers: answers === true }),
        schema,
      ),
    );
}

async function schema({ kind, write, answers }: Options, context: Context): Promise<Status> {
  if (write) return writeAll(context);
  if (answers) {
    const { answerSchemas } = await import('../answers/index.js');
    context.print(JSON.stringify(answerSchemas(), null, 2));
    return 0;
  }
  if (kind?.startsWith(ANSWER)) return answerOf(kind.slice(ANSWER.length), context);
  const [{ recordSchema, SCHEMA_KINDS }, { fileSchemas }, { KIND_IN }, { didYouMean }] = await Promise.all([
    import('../../records/form/json.js'),
    import('../../records/form/files.js'),
    import('../../records/lists.js'),
    import('../../source/nearest.js'),
  ]);
  if (kind === undefined)
    throw new UserError(
      'Which one? As `shellbook schema members`; `answer-check` for the answer of a command; `--write` for all files of records',
    );
  // A kind that has a file of its own answers with the file's form; a part of one with the record's.
  const file = fileSchemas().find(({ name }) => name === kind || KIND_IN[name] === kind);
  const known = SCHEMA_KINDS.find((one) => one === kind);
  if (!file && !known) {
    const close = didYouMean(kind, [...SCHEMA_KINDS, ...Object.keys(KIND_IN)]);
    throw new UserError(`No record kind ${kind}${close === '' ? `, expected one of ${SCHEMA_KINDS.join(', ')}` : close}`);
  }
  context.print(JSON.stringify(file ? file.schema : recordSchema(known as KindName), null, 2));
  return 0;
}

const ANSWER = 'answer-';

async function answerOf(command: string, context: Context): Promise<Status> {
  const { ANSWERED, answerSchema } = await import('../answers/index.js');
  const found = answerSchema(command);
  if (!found)
    throw new UserError(
      `No command \`${command}\` with an answer of its own, expected answer- and one of ${ANSWERED.join(', ')}`,
    );
  context.print(JSON.stringify(found, null, 2));
  return 0;
}

async function writeAll(context: Context): Promise<Status> {
  const [{ findStore }, { writeEditorFiles }] = await Promise.all([import('../../store/find.js'), import('../editor-files.js')]);
  const { written, kept } = await writeEditorFiles(findStore(context.io.cwd, context.settings.store));
  context.print(
    `Wrote ${written.length} files: the schemas in .schemas/${kept.length === 0 ? ', and .vscode/settings.json' : ''}.`,
  );
  for (const file of kept) context.tell(`Left ${file} as it is: it is there already, and may be your own.`);
  return 0;
}
