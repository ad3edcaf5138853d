/**
 * A real print of a store that is hostile throughout: what the browser makes of our page is our page, and it asks for nothing. That what
 * it would ask for is refused: tests/book/browser.test.ts.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { bookDocument } from '../../src/book/document.js';
import { launchArguments, type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { followingPage } from '../../src/book/print/open-page.js';
import { printIn } from '../../src/book/print/print.js';
import { readPdf } from '../book/read-pdf.js';
import { FINGERPRINT, HISTORY } from '../book/small-store.js';
import { loadOne } from '../support/store.js';
import { hostileStore } from './hostile-store.js';
import { foreign, type Tag } from './markup.js';
import { PAYLOADS } from './payloads.js';

const WORDS = PAYLOADS.map(([, words]) => words).join(' ');

let browser: OpenBrowser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser?.close());

/** Runs in the page: every element with its attributes, as the browser read them. */
function elements(): Tag[] {
  return [...document.querySelectorAll('*')].map((one) => ({
    name: one.localName,
    attributes: Object.fromEntries([...one.attributes].map(({ name, value }) => [name, value])),
  }));
}

describe('a hostile store, printed', () => {
  it('is our page to the browser, asks for nothing, and comes out as a book', async () => {
    const { model, findings } = loadOne(hostileStore(WORDS).files);
    const following = followingPage(Promise.resolve(browser));
    try {
      const asked: string[] = [];
      const page = await following.page;
      page.on('request', (request) => asked.push(request.url()));
      page.on('dialog', () => asked.push('dialog'));
      const input = { assessment: assess(model, findings), edition: 'shop', fingerprint: FINGERPRINT, history: HISTORY } as const;
      const document = await bookDocument({ ...input, photoFile: async () => undefined }, following);
      await following.whole();
      const tags = await page.evaluate(elements);
      expect(tags.length).toBeGreaterThan(2000);
      expect(foreign({ tags, words: '', styles: [], faults: [] })).toEqual([]);
      expect(tags.filter(({ name }) => name === 'script')).toEqual([]);
      const { pdf, pageCount } = await printIn(page, document, following.whole());
      expect(asked.filter((url) => !url.startsWith('data:') && url !== 'http://book.invalid/')).toEqual([]);
      const read = await readPdf(pdf);
      expect(read.pages.length).toBe(pageCount);
      expect(Buffer.from(pdf).toString('latin1')).not.toMatch(/\/(?:URI|JavaScript|JS|Launch|SubmitForm|GoToR|OpenAction)\b/u);
    } finally {
      await following.close();
    }
  });
});

describe('the browser', () => {
  it('keeps its sandbox for everybody but root', () => {
    for (const user of [1, 1000, 65534, undefined]) expect(launchArguments(user)).not.toContain('--no-sandbox');
    expect(launchArguments(0).filter((one) => !launchArguments(1000).includes(one))).toEqual(['--no-sandbox']);
  });

  it('is given no switch that opens a door, and has nowhere to send a request', () => {
    const given = launchArguments(1000);
    expect(given.join(' ')).not.toMatch(
      /disable-web-security|allow-file-access|remote-debugging-(?:address|port)|disable-setuid|single-process|no-zygote/u,
    );
    expect(given).toContain('--proxy-server=127.0.0.1:9');
  });
});
