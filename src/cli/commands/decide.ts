import type { DecidedFinding } from '../../rules/decide.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { localDay } from '../local-day.js';
import { committed, readEntry, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly rule: string;
  readonly ids: readonly string[];
  readonly shell: string | undefined;
  readonly as: string;
  readonly by: string;
  readonly because: string;
  readonly tellOwner: boolean;
  readonly all: boolean;
  readonly dryRun: boolean;
  readonly commit: boolean;
}

export function declareDecide(registry: Registry): void {
  registry
    .add('decide <rule> [ids...]', 'settles warnings of one rule: one decision in findings.yaml for all the records you name', [
      "shellbook decide order.test-after-close-in DC-12/1 DC-12/2 --shell QF-007 --as 'use as is' --by J2 --because 'opened and tested again'",
    ])
    .requiredOption('--as <decision>', 'rework, repair, use as is or reject')
    .requiredOption('--by <person>', 'who approved it: the ID in library/people.yaml')
    .requiredOption('--because <reason>', 'the reason, in words')
    .option('--shell <shell>', 'the shell they belong to (needed if the store has several)')
    .option('--all', 'all open warnings of this rule, instead of IDs')
    .option('--tell-owner', 'print it in the owner’s book too')
    .option('--dry-run', 'show the record, and write nothing')
    .option('--commit', 'commit what was written')
    .action(
      registry.run(
        ([rule, ids], given) => ({
          rule: rule as string,
          ids: (ids ?? []) as readonly string[],
          shell: given.shell as string | undefined,
          as: given.as as string,
          by: given.by as string,
          because: given.because as string,
          tellOwner: given.tellOwner === true,
          all: given.all === true,
          dryRun: given.dryRun === true,
          commit: given.commit === true,
        }),
        decideThem,
      ),
    );
}

async function decideThem(options: Options, context: Context): Promise<Status> {
  const [{ findingsOf }, { entering }] = await Promise.all([import('../findings-of.js'), import('../entering.js')]);
  const root = await storeOf(context);
  const shell = options.shell ?? (await onlyShell(root));
  if (options.because.trim() === '') throw new UserError('Found an empty --because, expected the reason, in words');
  if (options.dryRun) return decided(options, await findingsOf(shell, options.rule, context), root, shell, context);
  return entering(
    root,
    () => `decide ${options.rule} of ${shell}`,
    async (writer) => decided(options, await findingsOf(shell, options.rule, context), root, shell, context, writer),
  );
}

async function onlyShell(root: string): Promise<string> {
  const [{ readdir }, path] = await Promise.all([import('node:fs/promises'), import('node:path')]);
  const found = await readdir(path.join(root, 'shells'), { withFileTypes: true }).catch(() => []);
  const shells = found.filter((one) => one.isDirectory()).map(({ name }) => name);
  const [only, ...others] = shells;
  if (only !== undefined && others.length === 0) return only;
  throw new UserError(`Of which shell? Name it, as --shell ${only ?? 'QF-007'}`);
}

async function decided(
  options: Options,
  findings: readonly DecidedFinding[],
  root: string,
  shell: string,
  context: Context,
  writer?: Parameters<typeof writeTexts>[0],
): Promise<Status> {
  const [{ draftOf }, { textsOf }, { recordText }, { envelope }] = await Promise.all([
    import('../../entry/draft.js'),
    import('../../entry/texts.js'),
    import('../report/add-text.js'),
    import('../report/json.js'),
  ]);
  const open = openOnes(options, findings, shell);
  const { known, text } = await readEntry(root, shell);
  if (open.length === 0) {
    const by = [...new Set(findings.flatMap(({ decidedBy }) => decidedBy ?? []))].join(', ');
    if (context.settings.json)
      context.print(
        envelope('decide', shell, null, {
          rule: options.rule,
          id: null,
          of: [],
          file: null,
          record: null,
          dry_run: options.dryRun,
        }),
      );
    else context.print(`All of these are already decided, by ${by}: nothing was written.`);
    return 0;
  }
  const of = [...new Set(open.map(({ ids }) => ids[0] as string))];
  const draft = draftOf(
    'finding',
    {
      id: 'next',
      raised: localDay(new Date()),
      of,
      rules: [options.rule],
      description: description(open),
      decision: options.as,
      reason: options.because.trim(),
      approved_by: options.by,
      ...(options.tellOwner ? { tell_owner: 'yes' } : {}),
    },
    known,
    undefined,
    'next',
  );
  if (writer) await writeTexts(writer, textsOf('finding', { added: [{ ...draft, row: 0 }], changed: [] }, known), known);
  if (context.settings.json)
    context.print(
      envelope('decide', shell, null, {
        rule: options.rule,
        id: draft.id,
        of,
        file: draft.place.file,
        record: draft.data as Readonly<Record<string, string>>,
        dry_run: options.dryRun,
      }),
    );
  else
    context.print(
      `${writer ? 'Decided' : 'Would decide'} ${open.length} of ${options.rule} in ${draft.place.file}:\n${recordText(draft.data, draft.place.usual)}`,
    );
  const { loadStore } = await import('../../model/load.js');
  if (!loadStore(text).library.people.has(options.by))
    context.tell(
      `${options.by} is nobody in library/people.yaml: a decision without a name behind it is worth little. Add who that is.`,
    );
  if (writer && options.commit)
    context.tell(
      await committed(root, [draft.place.file], `Decide ${options.rule} of ${shell}: ${options.as}, by ${options.by}`),
    );
  return 0;
}

/** Those that the person means and nobody decided yet. Throws {@link UserError} for what is none, and what nobody may decide. */
function openOnes({ rule, ids, all }: Options, findings: readonly DecidedFinding[], shell: string): readonly DecidedFinding[] {
  const blamed = new Set(findings.map((one) => one.ids[0]));
  const listed = [...blamed].slice(0, MOST).join(', ') + (blamed.size > MOST ? ', …' : '');
  if (ids.length === 0 && !all)
    throw new UserError(
      `Which? Name the records${listed === '' ? `: ${rule} finds nothing in ${shell}` : `, as ${listed}; or --all`}`,
    );
  if (ids.length > 0 && all) throw new UserError('Name the records or give --all, not both');
  const strange = ids.filter((id) => !blamed.has(id));
  if (strange.length > 0 || findings.length === 0)
    throw new UserError(
      `${rule} finds nothing at ${strange.join(', ') || `all in ${shell}`}${listed === '' ? '' : `, expected one of ${listed}`}: nothing was written`,
    );
  const meant = findings.filter((one) => all || ids.includes(one.ids[0] as string));
  const error = meant.find(({ severity }) => severity === 'error');
  if (error)
    throw new UserError(`${rule} at ${error.ids[0]} is an error, which nobody can decide away: put it right. ${error.message}`);
  if (meant.every(({ severity }) => severity === 'note'))
    throw new UserError(`${rule} at ${meant[0]?.ids[0]} is a note: it blocks nothing and needs no decision`);
  return meant.filter(({ severity, decidedBy }) => severity === 'warning' && decidedBy === undefined);
}

const MOST = 6;

/** What was found, in the words of the check; of many like ones the first. */
function description(findings: readonly DecidedFinding[]): string {
  const [first, ...others] = findings as readonly [DecidedFinding, ...DecidedFinding[]];
  return others.length === 0 ? first.message : `${first.message}; and ${others.length} like it`;
}
