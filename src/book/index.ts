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

/** One browser for several editions. Whoever opens it closes it in a `finally`. */
export async function openPrinter(): Promise<Printer> {
  const browser = await openChromium();
  return {
    async print(input) {
      input.progress?.('Laying out');
      const document = await bookDocument(input);
      return printDocument(browser, document, input.progress);
    },
    close: () => browser.close(),
  };
}

/**
 * The as-built book of one shell in one edition.
 * @throws CannotDo where no browser can be started, or where the print does not come out as planned
 */
export async function printBook(input: BookInput): Promise<PrintedBook> {
  const printer = await openPrinter();
  try {
    return await printer.print(input);
  } finally {
    await printer.close();
  }
}
