import type { Mended, MendPlan } from '../../entry/mend.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import { gather } from '../gather.js';
import type { Status } from '../io.js';
import { committed, readEntry, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly rule: string;
  readonly only: readonly string[];
  readonly yes: boolean;
  readonly dryRun: boolean;
  readonly commit: boolean;
}

export function declareMend(registry: Registry): void {
  registry
    .add('mend <shell> <rule>', 'shows the fix that a rule proposes for each record, then writes them all', [
      'shellbook mend QF-007 service.no-grommet --dry-run',
      'shellbook mend QF-007 service.role-missing --only BAT --only DCP',
    ])
    .option('--only <id>', 'only this record (may be repeated)', gather)
    .option('--yes', 'write without asking; only once you have looked')
    .option('--dry-run', 'show what would be written, and write nothing')
    .option('--commit', 'commit what was written')
    .action(
      registry.run(
        ([shell, rule], { only, yes, dryRun, commit }) => ({
          shell: shell as string,
          rule: rule as string,
          only: (only ?? []) as readonly string[],
          yes: yes === true,
          dryRun: dryRun === true,
          commit: commit === true,
        }),
        mend,
      ),
    );
}

async function mend(options: Options, context: Context): Promise<Status> {
  const [{ findingsOf }, { entering }] = await Promise.all([import('../findings-of.js'), import('../entering.js')]);
  const { shell, rule } = options;
  const root = await storeOf(context);
  const shown = await planned(await findingsOf(shell, rule, context), root, options);
  const answer = (plan: MendPlan, written: boolean, files: readonly string[]) => report(plan, options, written, files, context);
  if (shown.mended.length === 0) return answer(shown, false, []);
  if (options.dryRun) return answer(shown, false, []);
  await confirmed(shown, options, context);
  const seen = textOf(shown);
  const message = `Mend ${shown.mended.length} records of ${shell} by ${rule}`;
  return entering(
    root,
    () => `mend ${shell} ${rule}`,
    async (writer) => {
      const plan = await planned(await findingsOf(shell, rule, context), root, options);
      if (textOf(plan) !== seen)
        throw new UserError('The records changed while you were looking: nothing was written. Look again.');
      const files = await write(plan, root, shell, (texts, known) => writeTexts(writer, texts, known));
      const status = await answer(plan, true, files);
      if (options.commit) context.tell(await committed(root, files, message));
      return status;
    },
  );
}

async function planned(
  findings: Parameters<typeof import('../../entry/mend.js')['mendPlan']>[0],
  root: string,
  { shell, only }: Options,
) {
  const { mendPlan } = await import('../../entry/mend.js');
  const { known } = await readEntry(root, shell);
  const plan = mendPlan(findings, known, only.length > 0 ? new Set(only) : undefined);
  const absent = only.filter((id) => !plan.mended.some((one) => one.id === id));
  if (absent.length > 0)
    throw new UserError(`Nothing is proposed for ${absent.join(', ')}: nothing was written. Leave out --only to see what is`);
  return plan;
}

/** Kind after kind, so that two of them may stand in one file. */
async function write(
  { mended }: MendPlan,
  root: string,
  shell: string,
  put: (texts: ReadonlyMap<string, string>, known: Awaited<ReturnType<typeof readEntry>>['known']) => Promise<void>,
): Promise<readonly string[]> {
  const { textsOf } = await import('../../entry/texts.js');
  const files = new Set<string>();
  for (const kind of new Set(mended.map((one) => one.kind))) {
    const { known } = await readEntry(root, shell);
    const changed = mended
      .filter((one) => one.kind === kind)
      .map(({ data, changes, id }) => ({ record: known.find(kind, id) as Mended['record'], data, changes, row: 0 }));
    const texts = textsOf(kind, { added: [], changed }, known);
    await put(texts, known);
    for (const file of texts.keys()) files.add(file);
  }
  return [...files];
}

async function confirmed(plan: MendPlan, { yes, rule }: Options, context: Context): Promise<void> {
  if (yes) return;
  const asker = await context.io.ask?.();
  context.tell(textOf(plan));
  if (!asker)
    throw new UserError(`Nothing was written. Look at the coach whether it is so, then: shellbook mend … ${rule} --yes`);
  if (!(await asker.confirm({ text: `You looked, and all ${plan.mended.length} are so?`, usual: false })))
    throw new UserError('Nothing was written.');
}

const textOf = ({ mended }: MendPlan): string => mended.map(lineOf).join('\n');

const lineOf = ({ kind, id, changes, record }: Mended): string =>
  `  ${kind} ${id} (${record.file}): ${changes.map(({ path, old, new: now }) => `${path.filter((step) => typeof step === 'string').join('.')}: ${old === undefined ? '' : `${shownValue(old)} → `}${shownValue(now)}`).join(', ')}`;

const shownValue = (value: unknown): string => (Array.isArray(value) ? `[${value.join(', ')}]` : String(value));

async function report(
  { mended, left }: MendPlan,
  { shell, rule, dryRun }: Options,
  written: boolean,
  files: readonly string[],
  context: Context,
): Promise<Status> {
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const changed = mended.map(({ kind, id, record, changes }) => ({
      kind,
      id,
      file: record.file,
      keys: changes.map(({ path }) => path.filter((step) => typeof step === 'string').join('.')),
    }));
    context.print(envelope('mend', shell, null, { rule, dry_run: dryRun, written, changed, left, files }));
  } else {
    const head =
      mended.length === 0
        ? `No finding of ${rule} in ${shell} proposes what could be written.`
        : `${written ? 'Wrote' : 'Would write'}, by ${rule}:`;
    context.print([head, ...mended.map(lineOf)].join('\n'));
    if (left.length > 0) context.tell(`By hand:\n${left.map((one) => `  ${one}`).join('\n')}`);
  }
  return 0;
}
