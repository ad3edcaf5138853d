import { writeOut } from '../store/write-out.js';
import type { Context } from './context.js';
import type { OpenShell } from './open.js';
import { inputOf } from './print-books.js';
import type { HandOver } from './report/release.js';

/**
 * Prints the hand-over sheet with its drawings, and says how many pages it has.
 * @throws UserError where no browser can be started or the file cannot be written
 */
export async function printHandOver(opened: OpenShell, sheet: HandOver, file: string, context: Context): Promise<number> {
  const [{ handOverDocument }, { openChromium }, { printDocument }, { stateText }] = await Promise.all([
    import('../book/handover/document.js'),
    import('../book/print/chromium.js'),
    import('../book/print/print.js'),
    import('./report/release-text.js'),
  ]);
  const { input } = await inputOf(opened, 'hashes', context);
  context.progress('Laying out the hand-over sheet');
  // No photo stands on the sheet.
  const plain = { ...input, photoFile: async () => undefined };
  const document = await handOverDocument(plain, { state: stateText(sheet), open: sheet.open });
  const browser = await openChromium();
  for (const notice of browser.notices) context.tell(notice);
  try {
    const { pdf, pageCount, warnings } = await browser.guard(
      printDocument(browser, document, (text) => context.progress(`hand-over sheet: ${text}`)),
    );
    for (const warning of warnings) context.tell(warning);
    await writeOut(opened.store.root, file, pdf);
    return pageCount;
  } finally {
    await browser.close();
  }
}
