import path from 'node:path';
import { InvalidArgumentError, Option } from 'commander';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import { formerOption } from '../former-options.js';
import type { Status } from '../io.js';
import type { CheckAnswer } from '../kept-check.js';
import { type OpenStore, openShell, openStoreFor } from '../open.js';
import type { Registry } from '../registry.js';
import type { CheckedFindings, CheckedShell } from '../report/checked.js';
import { version } from '../version.js';

interface Options {
  /** Empty: all of them. */
  readonly shells: readonly string[];
  readonly all: boolean;
  readonly format: Format;
  readonly watch: boolean;
  /** Only shells that differ from this revision. */
  readonly since?: string;
  /** Only this share of them, as `1/8`. */
  readonly share?: string;
}

/** text: for people, or one JSON object with `--json`. sarif: for what shows findings of a build at their lines. */
const FORMATS = ['text', 'json', 'sarif'] as const;
/** No standard, and not offered any more: it reads on for one version. */
const FORMER_FORMAT = 'junit';
type Format = (typeof FORMATS)[number] | typeof FORMER_FORMAT;

function readFormat(typed: string): Format {
  const known = [...FORMATS, FORMER_FORMAT].find((one) => one === typed);
  if (known) return known as Format;
  throw new InvalidArgumentError(`Allowed choices are ${FORMATS.join(', ')}.`);
}

/** Stands for the time of the run in a JUnit report, which may be told again later. A record's own `<` is written otherwise there. */
const NOW = '<now>';

export function declareCheck(registry: Registry): void {
  registry
    .add('check [shells...]', 'checks the records and lists what is wrong, by file, line and column', [
      'shellbook check              every shell of the store',
      'shellbook check QF-007 --all one shell, like findings not cut short',
      'shellbook check --watch      again at every save, until Ctrl-C',
      'shellbook check --since origin/main --share 1/8',
      'shellbook check --format sarif > check.sarif    for a build server',
    ])
    .option('--all', 'show every finding, even where many are alike')
    .addOption(new Option('--format <format>', 'how to answer').choices(FORMATS).argParser(readFormat).default('text'))
    .option('--watch', 'check again whenever a record changes')
    .option('--since <revision>', 'only shells that changed since a commit, tag or date')
    .option('--share <share>', 'check one share of the shells, such as 1/8, to split the work over machines')
    .addOption(formerOption('--changed-since <revision>'))
    .addOption(formerOption('--shard <share>'))
    .action(
      registry.run(
        ([shells], { all, format, watch, since, share }) => ({
          shells: (shells ?? []) as readonly string[],
          all: all === true,
          format: format as Format,
          watch: watch === true,
          ...(since === undefined ? {} : { since: since as string }),
          ...(share === undefined ? {} : { share: share as string }),
        }),
        check,
      ),
    );
}

async function check(options: Options, context: Context): Promise<Status> {
  if (!options.watch) return checkOnce(options, context);
  if (context.settings.book) throw new UserError('A printed book does not change: leave out --watch');
  const [{ findStore }, { watchRecords }] = await Promise.all([import('../../store/find.js'), import('../watch.js')]);
  let status: Status = 0;
  const again = async (): Promise<void> => {
    // On a terminal the last answer goes, so that what is on the screen is true.
    if (context.io.out.terminal) context.io.out.write('\u001b[2J\u001b[3J\u001b[H');
    status = await checkOnce(options, context);
    context.tell(`Checked at ${new Date().toTimeString().slice(0, 8)}; waiting for the next save. Ctrl-C ends it.`);
  };
  await watchRecords(findStore(context.io.cwd, context.settings.store), again, context.io.signal ?? new AbortController().signal);
  return status;
}

async function checkOnce(options: Options, context: Context): Promise<Status> {
  const { keepAnswer, keptAnswer, cachePlaceOf } = await import('../kept-check.js');
  // Which shells differ from a branch or a day is asked of Git each time.
  const place = options.since === undefined ? await cachePlaceOf(questionOf(options, context), context) : undefined;
  const kept = place && (await keptAnswer(place));
  const { text, status } = kept ?? (await answerOf(options, context));
  context.print(formatOf(options, context) === 'junit' ? text.replaceAll(NOW, new Date().toISOString().slice(0, 19)) : text);
  if (place && !kept) await keepAnswer(place, { text, status });
  return status;
}

const formatOf = ({ format }: Options, { settings }: Context): Format => (format === 'text' && settings.json ? 'json' : format);

/** All that makes the answer another while the store is the same. */
function questionOf(options: Options, context: Context): readonly unknown[] {
  const { shells, all, share } = options;
  const format = formatOf(options, context);
  const coloured = context.paint.error('x') !== 'x';
  // That report names files from where it is asked for.
  return [shells, format, all, share ?? null, coloured, format === 'sarif' ? context.io.cwd : ''];
}

async function answerOf(options: Options, context: Context): Promise<CheckAnswer> {
  const store = await openStoreFor(context);
  if (store.book && store.book.withheld.length > 0) {
    const { edition, withheld } = store.book;
    context.tell(`The ${edition} edition leaves out ${withheld.join('; ')}: some findings may come from that alone.`);
  }
  const wanted = await chosen(options, store);
  const [{ checkedShell, checkedStore }, { lookAround }] = await Promise.all([
    import('../report/checked.js'),
    import('../look-around.js'),
  ]);
  const shells = [];
  for (const shell of wanted) {
    const more = await lookAround(store, shell, context);
    shells.push(checkedShell(await openShell(store, shell, context, undefined, more)));
  }
  const library = checkedStore(store, await storeRevision(store));
  const text = await reportOf(options, context, store, [library, shells]);
  return { text, status: [library, ...shells].some((one) => one.blocks) ? 1 : 0 };
}

async function reportOf(
  options: Options,
  context: Context,
  store: OpenStore,
  [library, shells]: readonly [CheckedFindings, readonly CheckedShell[]],
): Promise<string> {
  const format = formatOf(options, context);
  if (format === 'sarif') {
    const { checkSarif } = await import('../report/check-sarif.js');
    const from = path.relative(context.io.cwd, store.root).split(path.sep).join('/');
    return checkSarif([library, ...shells], from, version());
  }
  if (format === FORMER_FORMAT) {
    context.tell('--format junit goes with the next version: SARIF is the open standard, --format sarif');
    const { checkJunit } = await import('../report/check-junit.js');
    return checkJunit(library, shells, NOW);
  }
  if (format === 'json') {
    const { checkJson } = await import('../report/check-json.js');
    return checkJson(library, shells);
  }
  const { checkText } = await import('../report/check-text.js');
  return checkText(library, shells, store.text, context.paint, options.all);
}

/** The shells that are asked for, in the store's order where none is named. */
async function chosen({ shells, since: revision, share: typed }: Options, store: OpenStore): Promise<readonly string[]> {
  let wanted = shells.length > 0 ? [...new Set(shells)] : [...store.loaded.shells.keys()];
  if (typed !== undefined) {
    const { inShare, readShare } = await import('./check-share.js');
    const share = readShare(typed);
    wanted = wanted.filter((shell) => inShare(shell, share));
  }
  if (revision !== undefined) {
    const { changedSince } = await import('../../store/changed-since.js');
    const changed = await changedSince(store.root, revision);
    if (changed !== 'all') wanted = wanted.filter((shell) => changed.has(shell));
  }
  return wanted;
}

const storeRevision = async (store: OpenStore): Promise<string | null> =>
  (await store.history?.standing())?.last?.commit ?? store.book?.revision ?? null;
