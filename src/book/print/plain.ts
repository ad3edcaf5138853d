import type { OpenBrowser } from './chromium.js';
import { openWhole } from './open-page.js';

/** Prints a page as it stands, on the paper that its own style names: scripts off, no request. */
export async function printPlain({ browser }: OpenBrowser, html: string): Promise<Uint8Array> {
  const page = await browser.newPage();
  try {
    await openWhole(page, { html, pictures: new Map() });
    return await page.pdf({ tagged: true, preferCSSPageSize: true, printBackground: true, timeout: 0 });
  } finally {
    await page.close();
  }
}
