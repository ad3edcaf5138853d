import { bookDocument } from './document.js';
import type { BookInput, PrintedBook } from './input.js';
import { openChromium } from './print/chromium.js';
import { followingPage } from './print/open-page.js';
import { printIn } from './print/print.js';

export { type BookInput, type BookSigner, type CommitList, EDITIONS, type Edition, type PrintedBook } from './input.js';

export interface Printer {
  /** Prints one edition. Throws {@link UserError} where the printed pages are not the planned ones. */
  print(input: BookInput): Promise<PrintedBook>;
  /** Name and version of the browser. */
  browser(): Promise<string>;
  close(): Promise<void>;
}

/**
 * One browser for several editions; it starts while the first of them is laid out. Whoever opens it closes it in a `finally`. Where no
 * browser can be started, the first `print` says so.
 */
export function openPrinter(): Printer {
  const opening = openChromium();
  let told = false;
  // Whoever prints hears of it; nobody may have asked yet.
  opening.catch(() => undefined);
  return {
    async print(input) {
      input.progress?.('Laying out');
      const following = followingPage(opening);
      try {
        const document = await opening.then(({ guard }) => guard(bookDocument(input, following)));
        const { guard, notices } = await opening;
        const printed = await guard(printIn(await following.page, document, following.whole(), input.progress));
        const said = told ? [] : notices;
        told = true;
        return { ...printed, warnings: [...said, ...printed.warnings] };
      } finally {
        // A browser that has ended has no page to close.
        await following.close().catch(() => undefined);
      }
    },
    browser: async () => (await opening).browser.version(),
    close: () =>
      opening.then(
        (browser) => browser.close(),
        () => undefined,
      ),
  };
}
