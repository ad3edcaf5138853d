import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { EDITIONS, type Edition } from '../../src/book/index.js';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { followingPage } from '../../src/book/print/open-page.js';
import { printDocument, printIn } from '../../src/book/print/print.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

let browser: OpenBrowser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser?.close());

const input = (edition: Edition) => ({
  assessment: smallAssessment(),
  edition,
  fingerprint: FINGERPRINT,
  history: HISTORY,
  photoFile: async () => undefined,
});

describe('a browser that gets the book chapter by chapter', () => {
  it.each(EDITIONS)('prints the %s edition byte for byte as one that gets it whole', async (edition) => {
    const following = followingPage(Promise.resolve(browser));
    const document = await bookDocument(input(edition), following);
    const followed = await printIn(await following.page, document, following.whole());
    await following.close();
    const whole = await printDocument(browser, document);
    expect(followed.pageCount).toBeGreaterThan(10);
    expect(followed.pages).toEqual(whole.pages);
    expect(Buffer.from(followed.pdf).equals(Buffer.from(whole.pdf))).toBe(true);
  });

  it('is not kept waiting by a picture that was taken away meanwhile', async () => {
    const gone = {
      type: 'image/jpeg',
      get bytes(): Buffer {
        throw new Error('taken away');
      },
    };
    const following = followingPage(Promise.resolve(browser));
    const document = await bookDocument(input('owner'));
    await following.open('<!doctype html><html><head></head><body></body></html>', new Map([['/photo/1.jpg', gone]]));
    await following.chapter('<section class="chapter"><img src="/photo/1.jpg"></section>', 0);
    await expect(following.whole()).resolves.toBeUndefined();
    await following.close();
    const carry = () => Promise.reject(new Error('no carry'));
    await expect(printDocument(browser, { ...document, carry })).rejects.toThrow('no carry');
  });

  it('is told once, by the print, of a browser that does not start', async () => {
    const following = followingPage(Promise.reject(new Error('no browser')));
    await expect(bookDocument(input('owner'), following)).rejects.toThrow('no browser');
    await expect(following.close()).resolves.toBeUndefined();
  });
});
