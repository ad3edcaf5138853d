import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { sheetsOf } from '../../src/book/print/document.js';
import { printDocument } from '../../src/book/print/print.js';

let browser: OpenBrowser;
beforeAll(async () => {
  browser = await openChromium();
});
afterAll(() => browser?.close());

const print = (css: string) =>
  printDocument(browser, {
    html: `<!doctype html><html lang="en"><head><title>Growing</title><style>
      body { margin: 0 }
      .leaf { display: flow-root; width: 170mm; height: 240mm; overflow: hidden; contain: size; }
      section.chapter > p { width: 100mm; height: 10mm; margin: 0 } .turn { break-after: page } .turn:last-child { break-after: auto } ${css}
    </style></head><body><section class="chapter" data-chapter="one"><p>First</p></section>
    <section class="chapter" data-chapter="two"><p class="grows">Second</p><svg width="20" height="20"><text>sign</text></svg></section></body></html>`,
    sheets: sheetsOf('letter'),
    chapters: [
      { key: 'one', title: 'One' },
      { key: 'two', title: 'Two' },
    ],
    pictures: new Map(),
    runningLeft: '',
    runningFoot: '',
    date: '2026-07-02',
    warnings: [],
  });

describe('a page that holds more than was measured', () => {
  it('is told by its number', async () => {
    const { warnings, pageCount } = await print('.leaf > p.grows { height: 300mm }');
    expect(pageCount).toBe(2);
    expect(warnings).toEqual(['Page 2 holds more than was measured: look at its foot.']);
  });

  it('is not told where everything has room', async () => {
    expect((await print('.leaf > p.grows { height: 11mm }')).warnings).toEqual([]);
  });
});
