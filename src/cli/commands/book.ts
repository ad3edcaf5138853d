import path from 'node:path';
import { Option } from 'commander';
import type { Edition } from '../../book/input.js';
import { UserError } from '../../user-error.js';
import { LANGUAGES, type Language } from '../../words/index.js';
import type { CarryPhotos } from '../carry.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  /** All three where none is named. */
  readonly edition?: Edition;
  readonly out?: string;
  readonly photos: CarryPhotos;
  readonly language?: Language;
  /** Only the pages that are not as they were in this revision. */
  readonly since?: string;
}

const EDITIONS: readonly Edition[] = ['owner', 'service', 'shop'];

export function declareBook(registry: Registry): void {
  registry
    .add('book <shell>', 'prints the as-built book, in one edition or all three', [
      'shellbook book QF-007',
      'shellbook book QF-007 --edition service --out qf-007.pdf',
      'shellbook book QF-007 --edition service --since QF-007-closed',
    ])
    .addOption(new Option('--edition <edition>', 'which reader it is for').choices([...EDITIONS]))
    .addOption(
      new Option('--language <language>', 'the language of the owner’s edition (default: as in shop.yaml)').choices([
        ...LANGUAGES,
      ]),
    )
    .option('--out <file>', 'where to write it (default: books/SHELL-EDITION.pdf in the store)')
    .addOption(
      new Option('--photos <which>', 'what the shop edition carries: the photo files, or only their hashes')
        .choices(['originals', 'hashes'])
        .default('originals'),
    )
    .option('--since <revision>', 'only the pages that changed since a commit, tag or date, and what they replace')
    .action(
      registry.run(
        ([shell], { edition, language, out, since, photos }) => ({
          shell: shell as string,
          photos: photos as CarryPhotos,
          ...(edition === undefined ? {} : { edition: edition as Edition }),
          ...(language === undefined ? {} : { language: language as Language }),
          ...(out === undefined ? {} : { out: out as string }),
          ...(since === undefined ? {} : { since: since as string }),
        }),
        book,
      ),
    );
}

async function book(options: Options, context: Context): Promise<Status> {
  const { shell, edition, language, out } = options;
  if (out !== undefined && edition === undefined) {
    throw new UserError(`--out names one file, and there are three editions: add --edition owner, service or shop`);
  }
  if (options.since !== undefined) {
    const opened = await openForAnswer(shell, context);
    const { supplements } = await import('../print-supplements.js');
    return supplements(opened, options.since, edition ? [edition] : EDITIONS, { out, language }, context);
  }
  const { printBooks, withPrinter } = await import('../print-books.js');
  // The browser starts while the records are read.
  const { opened, printed } = await withPrinter(async (printer) => {
    const opened = await openForAnswer(shell, context);
    const fileOf = (one: Edition): string =>
      out === undefined ? path.join(opened.store.root, 'books', `${shell}-${one}.pdf`) : path.resolve(context.io.cwd, out);
    const how = { printer, photos: options.photos, ...(language ? { language } : {}) };
    return { opened, printed: await printBooks(opened, edition ? [edition] : EDITIONS, fileOf, context, how) };
  });
  for (const one of printed) for (const warning of one.warnings) context.tell(`${one.edition} edition: ${warning}`);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const books = printed.map((one) => ({
      edition: one.edition,
      file: shownPath(one.file, context),
      pages: one.pageCount,
      warnings: one.warnings,
    }));
    context.print(envelope('book', shell, revisionOf(opened), { books }));
  } else for (const one of printed) context.print(`${shownPath(one.file, context)}  ${one.pageCount} pages`);
  return 0;
}
