import path from 'node:path';
import { UserError } from '../../user-error.js';
import type { Closed } from '../closing.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { type OpenShell, openShell, openStoreFor } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  readonly books: boolean;
  readonly all: boolean;
  readonly sign: boolean;
}

export function declareClose(registry: Registry): void {
  registry
    .add('close <shell>', 'closes the build: commits, tags and prints, or says what is missing and who must do it', [
      'shellbook close QF-007',
      'shellbook close QF-007 --no-books   only commit and tag',
      'shellbook close QF-007 --sign       sign the tag with the shop’s key',
    ])
    .option('--no-books', 'print no books')
    .option('--sign', 'sign the tag with the shop’s key (shellbook key)')
    .option('--all', 'list everything that is missing, even where many are alike')
    .action(
      registry.run(
        ([shell], { books, all, sign }) => ({
          shell: shell as string,
          books: books !== false,
          all: all === true,
          sign: sign === true,
        }),
        close,
      ),
    );
}

async function close(options: Options, context: Context): Promise<Status> {
  const { closeShell } = await import('../closing.js');
  const closed = await closeShell(options.shell, context, {}, options.sign);
  if (closed.outcome === 'missing') return reportMissing(closed, options, context);
  if (closed.outcome === 'closed already') return reportClosed(closed, [], context);
  context.tell(`Closed ${options.shell} as ${closed.tag}.`);
  // What is printed is what was committed, with the tag on it.
  return reportClosed(closed, await papers(closed.tag, options, context), context);
}

/** The tag stands whatever becomes of the papers, so a failure says both. */
async function papers(tag: string, { shell, books: wanted }: Options, context: Context): Promise<readonly string[]> {
  try {
    const opened = await openShell(await openStoreFor(context), shell, context);
    return [...(await handOverSheet(opened, wanted, context)), ...(wanted ? await books(opened, context) : [])];
  } catch (error) {
    if (!(error instanceof UserError)) throw error;
    throw new UserError(`${shell} is closed as ${tag}, but its papers are not all printed: ${error.message} ${again(shell)}`);
  }
}

const again = (shell: string): string =>
  `Its books again: shellbook book ${shell}; the hand-over sheet: shellbook release ${shell} --print, or --all as text.`;

async function reportMissing(closed: Closed, options: Options, context: Context): Promise<Status> {
  const { items, checked, opened } = closed;
  const [{ openItemsText, openItemJson, openCounts }, { envelope, findingJson }, { blocking }] = await Promise.all([
    import('../report/open-items.js'),
    import('../report/json.js'),
    import('../../closeout/items.js'),
  ]);
  const library = opened.store.loaded.findings;
  if (context.settings.json) {
    const answer = { closed: false, missing: items.map(openItemJson), library: library.map(findingJson) };
    context.print(envelope('close', options.shell, checked.revision, answer));
    return 1;
  }
  const text = items.length > 0 ? openItemsText(items, context.paint, options.all) : '';
  if (text !== '') context.print(text);
  for (const { place, message } of library) context.print(`${place.file}:${place.line}:${place.column}: ${message}`);
  context.tell(`${options.shell} is not closed: ${openCounts(blocking(items))} to do first.`);
  return 1;
}

async function reportClosed(closed: Closed, files: readonly string[], context: Context): Promise<Status> {
  if (closed.outcome === 'missing') return 1;
  const { tag, revision, commit, committed, items, opened } = closed;
  const { shell } = opened.assessment.model;
  const shown = files.map((file) => shownPath(file, context));
  if (context.settings.json) {
    const [{ envelope }, { openItemJson }] = await Promise.all([import('../report/json.js'), import('../report/open-items.js')]);
    const answer = {
      closed: true,
      tag,
      revision_letter: revision,
      committed,
      files: shown,
      missing: [],
      accepted: items.map(openItemJson),
    };
    context.print(envelope('close', shell.id, commit, answer));
    return 0;
  }
  const lines = [
    `${shell.id} is ${closed.outcome === 'closed' ? 'closed' : 'closed already, and nothing has changed since'}: revision ${revision}, tag ${tag} on ${commit.slice(0, 8)}.`,
    ...(committed.length > 0 ? [`Committed: ${committed.join(', ')}`] : []),
    ...shown,
  ];
  context.print(lines.join('\n'));
  context.tell(
    closed.outcome === 'closed'
      ? 'Next: git push --follow-tags. Where the other side refuses the tag, somebody closed this shell there: pull and look.'
      : again(shell.id),
  );
  return 0;
}

/** As text for whoever has no reader of PDF at hand; with the books, as the printed sheet with its drawings too. */
async function handOverSheet(opened: OpenShell, print: boolean, context: Context): Promise<readonly string[]> {
  const [{ handOver }, { checkedShell }, { closedOf }, { releaseText }, { paint }, { writeOut }] = await Promise.all([
    import('../report/release.js'),
    import('../report/checked.js'),
    import('../closed-of.js'),
    import('../report/release-text.js'),
    import('../report/paint.js'),
    import('../../store/write-out.js'),
  ]);
  const { id } = opened.assessment.model.shell;
  context.progress('Writing the hand-over sheet');
  const file = path.join(opened.store.root, 'books', `${id}-hand-over.txt`);
  const sheet = handOver(checkedShell(opened), await closedOf(opened));
  const text = [releaseText(sheet, paint(false), true), ...(await keysText(opened, context))].join('\n\n');
  await writeOut(opened.store.root, file, `${text}\n`);
  if (!print) return [file];
  const { printHandOver } = await import('../print-hand-over.js');
  const printed = path.join(opened.store.root, 'books', `${id}-hand-over.pdf`);
  await printHandOver(opened, sheet, printed, context);
  return [file, printed];
}

/** The keys that the shop signs with, on paper of its own: what a book says of its key proves nothing. */
async function keysText({ store }: OpenShell, context: Context): Promise<readonly string[]> {
  const [{ keysOfStore }, { groupedDigits }] = await Promise.all([import('../known-keys.js'), import('../../signing/words.js')]);
  const keys = keysOfStore(store.text, context).filter(({ lost, until }) => lost === undefined && until === undefined);
  if (keys.length === 0) return [];
  const lines = keys.flatMap(({ name, fingerprint }) => [`  ${name}`, `  ${groupedDigits(fingerprint)}`]);
  const head = 'This shop signs its books. Compare the key on the cover of a book, and in a PDF reader, with this one:';
  return [[head, ...lines].join('\n')];
}

async function books(opened: OpenShell, context: Context): Promise<readonly string[]> {
  const { printBooks } = await import('../print-books.js');
  const { id } = opened.assessment.model.shell;
  const fileOf = (edition: string): string => path.join(opened.store.root, 'books', `${id}-${edition}.pdf`);
  return (await printBooks(opened, ['owner', 'service', 'shop'], fileOf, context)).map(({ file }) => file);
}
