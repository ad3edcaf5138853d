import path from 'node:path';
import { Option } from 'commander';
import type { KindName } from '../../records/index.js';
import { UserError } from '../../user-error.js';
import { LANGUAGES, type Language } from '../../words/index.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { localDay } from '../local-day.js';
import { openForAnswer, revisionOf } from '../open.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly shell: string;
  readonly language?: Language;
  readonly sheet: boolean;
  readonly out?: string;
}

export function declareFloor(registry: Registry): void {
  registry
    .add('floor <shell>', 'makes a page for entering records at the coach: on a phone without a network, or on paper', [
      'shellbook floor QF-007',
      'shellbook floor QF-007 --language es --out floor.html',
      'shellbook floor QF-007 --sheet --out today.pdf    a sheet of paper to fill in by hand',
      'shellbook import floor QF-007-floor-7KQ2.json --shell QF-007',
    ])
    .addOption(
      new Option('--language <language>', 'the language of its words (default: as in shop.yaml)').choices([...LANGUAGES]),
    )
    .option('--sheet', 'a sheet to print instead: open hold points, lines to fill in, drawings to mark')
    .option('--out <file>', 'where to write it (default: books/SHELL-floor.html in the store); a sheet named .pdf is printed')
    .action(
      registry.run(
        ([shell], { language, sheet, out }) => ({
          shell: shell as string,
          sheet: sheet === true,
          ...(language === undefined ? {} : { language: language as Language }),
          ...(out === undefined ? {} : { out: out as string }),
        }),
        floor,
      ),
    );
}

async function floor({ shell, language, sheet, out }: Options, context: Context): Promise<Status> {
  const opened = await openForAnswer(shell, context, []);
  const [{ writeOut }, { readerOf }] = await Promise.all([import('../../store/write-out.js'), import('../../words/index.js')]);
  const { model } = opened.assessment;
  const reader = readerOf({ ...model.shop, ...(language === undefined ? {} : { language }) });
  context.progress(sheet ? 'Making the sheet' : 'Making the page');
  const asPdf = out !== undefined && /\.pdf$/iu.test(out);
  if (asPdf && !sheet)
    throw new UserError('A page for entering is HTML, and a sheet of paper may be PDF: add --sheet, or name it --out FILE.html');
  const html = sheet ? await sheetOf() : await pageOf();
  const usual = path.join(opened.store.root, 'books', `${shell}-floor${sheet ? '-sheet' : ''}.html`);
  const file = out === undefined ? usual : path.resolve(context.io.cwd, out);
  const made = asPdf ? await printed(html) : Buffer.from(html, 'utf8');
  await writeOut(opened.store.root, file, made);
  const bytes = made.length;
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(
      envelope('floor', shell, revisionOf(opened), {
        file: shownPath(file, context),
        sheet,
        size_bytes: bytes,
        language: reader.language,
      }),
    );
  } else context.print(`${shownPath(file, context)}  ${(bytes / 1e6).toFixed(1)} MB`);
  return 0;

  async function printed(page: string): Promise<Uint8Array> {
    const [{ openChromium }, { printPlain }] = await Promise.all([
      import('../../book/print/chromium.js'),
      import('../../book/print/plain.js'),
    ]);
    const browser = await openChromium();
    for (const notice of browser.notices) context.tell(notice);
    try {
      return await browser.guard(printPlain(browser, page));
    } finally {
      await browser.close();
    }
  }

  async function sheetOf(): Promise<string> {
    const [{ floorSheet }, { shellProgress }, { fontFaces }] = await Promise.all([
      import('../../floor/sheet.js'),
      import('../../closeout/stage-progress.js'),
      import('../../book/fonts.js'),
    ]);
    const day = localDay(new Date());
    const progress = shellProgress({ model, findings: opened.assessment.findings }, day);
    return floorSheet({ assessment: opened.assessment, progress, reader, day, typefaces: asPdf ? fontFaces() : '' });
  }

  async function pageOf(): Promise<string> {
    const [
      { floorPage },
      { floorData },
      { pageScript },
      { fingerprintOf },
      { readEntry },
      { numberHeadOf },
      { taskOf, TASKS },
      { coachViews },
    ] = await Promise.all([
      import('../../floor/page.js'),
      import('../../floor/floor-data-of.js'),
      import('../page-script.js'),
      import('../fingerprint-of.js'),
      import('../open-entry.js'),
      import('../../entry/numbering.js'),
      import('../../floor/tasks.js'),
      import('../../pocket/views.js'),
    ]);
    const { known } = await readEntry(opened.store.root, shell);
    const heads = Object.fromEntries(
      TASKS.flatMap((task): [KindName, string][] => {
        const { kind } = taskOf(task);
        const head = numberHeadOf(kind, known);
        return head === undefined ? [] : [[kind as KindName, head]];
      }),
    );
    const { fingerprint } = await fingerprintOf(opened);
    const views = coachViews(model);
    const data = floorData(opened.assessment, reader, fingerprint, heads, views);
    return floorPage({ data, reader, model, views, revision: revisionOf(opened), script: await pageScript('floor') });
  }
}
