import path from 'node:path';
import { Option } from 'commander';
import { EDITIONS, type Edition } from '../../book/input.js';
import { inLanguage } from '../../book/language.js';
import type { BookDocument } from '../../book/print/document.js';
import { UserError } from '../../user-error.js';
import { LANGUAGES, type Language } from '../../words/index.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  readonly edition: Edition;
  readonly language?: Language;
  readonly first: string;
  readonly markers: boolean;
  readonly out?: string;
}

export function declareLabels(registry: Registry): void {
  registry
    .add('labels <shell>', 'prints panel labels and the figures for the weight label', [
      'shellbook labels QF-007',
      'shellbook labels QF-007 --markers --first 4 --out labels.pdf',
    ])
    .addOption(
      new Option('--edition <edition>', 'the edition whose page numbers go on the labels')
        .choices([...EDITIONS])
        .default('service'),
    )
    .addOption(
      new Option('--language <language>', 'the language of the labels (default: as in shop.yaml)').choices([...LANGUAGES]),
    )
    .option('--first <number>', 'where to begin on the first sheet, if some labels are used up', '1')
    .option('--markers', 'also print markers for both ends of every wire and pipe')
    .option('--out <file>', 'where to write it (default: books/SHELL-labels.pdf in the store)')
    .action(
      registry.run(
        ([shell], { edition, first, language, markers, out }) => ({
          shell: shell as string,
          edition: edition as Edition,
          first: first as string,
          markers: markers === true,
          ...(language === undefined ? {} : { language: language as Language }),
          ...(out === undefined ? {} : { out: out as string }),
        }),
        labels,
      ),
    );
}

async function labels(options: Options, context: Context): Promise<Status> {
  const { STOCK, perSheet } = await import('../../book/labels/stock.js');
  const { shell, edition } = options;
  const opened = await openForAnswer(shell, context);
  const { model } = opened.assessment;
  const most = perSheet(STOCK[model.shop.paper].panel);
  const first = Number(options.first);
  if (!Number.isInteger(first) || first < 1 || first > most) {
    throw new UserError(`Found the label \`${options.first}\` for --first, expected a whole number from 1 to ${most}`);
  }
  const [{ fingerprintOf }, { readPageMap }, { labelDocument }] = await Promise.all([
    import('../fingerprint-of.js'),
    import('../../store/page-map.js'),
    import('../../book/labels/document.js'),
  ]);
  const { fingerprint } = await fingerprintOf(opened);
  const { history } = opened.store;
  const pages = history ? await readPageMap(history.gitDir, fingerprint, edition) : new Map<string, number>();
  const last = opened.standing?.last;
  const made = labelDocument({
    assessment: inLanguage(opened.assessment, options.language),
    edition,
    pages,
    uncommitted: (opened.standing?.uncommitted.length ?? 0) > 0,
    date: last?.date ?? '2000-01-01',
    fingerprint,
    first,
    withMarkers: options.markers,
    ...(last ? { revision: last.commit } : {}),
  });
  const warnings = [
    ...made.document.warnings,
    ...(pages.size === 0
      ? [
          `No ${edition} edition was printed from this record here, so the labels name no page. Print it first: shellbook book ${shell} --edition ${edition}`,
        ]
      : []),
  ];
  const file =
    options.out === undefined
      ? path.join(opened.store.root, 'books', `${shell}-labels.pdf`)
      : path.resolve(context.io.cwd, options.out);
  const pageCount = await print(made.document, opened.store.root, file, context);
  for (const warning of warnings) context.tell(warning);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('labels', shell, revisionOf(opened), {
        file: shownPath(file, context),
        pages: pageCount,
        edition,
        labels: made.panels.map(({ panel, name, page, code, hazards }) => ({
          panel,
          name,
          page,
          code,
          hazards: hazards.map(({ word }) => word),
        })),
        markers: made.markerCount,
        warnings,
      }),
    );
  } else {
    const parts = [`${pageCount} pages`, `${made.panels.length} panel labels`];
    if (options.markers) parts.push(`${made.markerCount} markers`);
    context.print(`${shownPath(file, context)}  ${parts.join(', ')}`);
  }
  return 0;
}

/** @throws UserError where no browser can be started or the file cannot be written */
async function print(document: BookDocument, root: string, file: string, context: Context): Promise<number> {
  const [{ openChromium }, { printDocument }, { writeOut }] = await Promise.all([
    import('../../book/print/chromium.js'),
    import('../../book/print/print.js'),
    import('../../store/write-out.js'),
  ]);
  const browser = await openChromium();
  for (const notice of browser.notices) context.tell(notice);
  try {
    const { pdf, pageCount } = await browser.guard(
      printDocument(browser, document, (text) => context.progress(`labels: ${text}`)),
    );
    await writeOut(root, file, pdf);
    return pageCount;
  } finally {
    await browser.close();
  }
}
