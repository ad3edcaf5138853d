import path from 'node:path';
import { Option } from 'commander';
import { POCKET_EDITIONS, type PocketEdition } from '../../pocket/input.js';
import { LANGUAGES, type Language } from '../../words/index.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  readonly edition: PocketEdition;
  readonly language?: Language;
  readonly out?: string;
}

export function declarePocket(registry: Registry): void {
  registry
    .add('pocket <shell>', 'makes one file for a phone that works without a network: search, drawings to tap, emergency', [
      'shellbook pocket QF-007',
      'shellbook pocket QF-007 --edition owner --language es --out qf-007-owner.html',
    ])
    .addOption(new Option('--edition <edition>', 'which reader it is for').choices([...POCKET_EDITIONS]).default('service'))
    .addOption(
      new Option('--language <language>', 'the language of its words (default: as in shop.yaml)').choices([...LANGUAGES]),
    )
    .option('--out <file>', 'where to write it (default: books/SHELL-EDITION.html in the store)')
    .action(
      registry.run(
        ([shell], { edition, language, out }) => ({
          shell: shell as string,
          edition: edition as PocketEdition,
          ...(language === undefined ? {} : { language: language as Language }),
          ...(out === undefined ? {} : { out: out as string }),
        }),
        pocket,
      ),
    );
}

async function pocket({ shell, edition, language, out }: Options, context: Context): Promise<Status> {
  const opened = await openForAnswer(shell, context, []);
  const [{ inputOf }, { pocketPage }, { pageScript }, { writeOut }, { readerOf }, { toldToShop }] = await Promise.all([
    import('../print-books.js'),
    import('../../pocket/page.js'),
    import('../page-script.js'),
    import('../../store/write-out.js'),
    import('../../words/index.js'),
    import('../../book/redact/told.js'),
  ]);
  const { input, carry } = await inputOf(opened, 'hashes', context);
  const { model } = opened.assessment;
  context.progress('Making the page');
  const made = await pocketPage({
    assessment: opened.assessment,
    edition,
    reader: readerOf({ ...model.shop, ...(language === undefined ? {} : { language }) }),
    fingerprint: await carry.fingerprint(edition),
    history: input.history,
    dirty: input.dirty === true,
    script: await pageScript('pocket'),
    photoFile: input.photoFile,
  });
  const file =
    out === undefined ? path.join(opened.store.root, 'books', `${shell}-${edition}.html`) : path.resolve(context.io.cwd, out);
  await writeOut(opened.store.root, file, Buffer.from(made.html, 'utf8'));
  for (const warning of toldToShop(model, edition)) context.tell(warning);
  if (made.picturesLeft > 0)
    context.tell(`${made.picturesLeft} pictures are not on the page: they cannot be read, or it would be larger than 6 MB.`);
  const bytes = Buffer.byteLength(made.html);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const { cards, pictures, picturesLeft } = made;
    context.print(
      envelope('pocket', shell, revisionOf(opened), {
        file: shownPath(file, context),
        edition,
        size_bytes: bytes,
        cards,
        pictures,
        pictures_left: picturesLeft,
      }),
    );
  } else
    context.print(`${shownPath(file, context)}  ${(bytes / 1e6).toFixed(1)} MB, ${made.cards} cards, ${made.pictures} pictures`);
  return 0;
}
