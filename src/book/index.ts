import { bookDocument } from './document.js';
import type { BookInput, PrintedBook } from './input.js';
import { openChromium } from './print/chromium.js';
import { printDocument } from './print/print.js';

export { type BookInput, EDITIONS, type Edition, type History, type PrintedBook } from './input.js';

export interface Printer {
  /** Prints one edition. Throws {@link CannotDo} where the printed pages are not the planned ones. */
  print(input: BookInput): Promise<PrintedBook>;
  close(): Promise<void>;
}

/**
 * One browser for several editions; it starts while the first of them is laid out. Whoever opens it closes it in a `finally`. Where no
 * browser can be started, the first `print` says so.
 */
export function openPrinter(): Printer {
  const opening = openChromium();
  // Whoever prints hears of it; nobody may have asked yet.
  opening.catch(() => undefined);
  return {
    async print(input) {
      input.progress?.('Laying out');
      const document = await bookDocument(input);
      return printDocument(await opening, document, input.progress);
    },
    close: () =>
      opening.then(
        (browser) => browser.close(),
        () => undefined,
      ),
  };
}
