import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { markPage } from '../../src/cli/mark-page.js';
import { solvePhoto } from '../../src/compute/pictures/solve-photo.js';
import { buildModel } from '../support/build.js';

const [WIDE, HIGH] = [1600, 1200];
/** Dark squares on grey: their corners are known to the pixel. */
const SQUARES = [
  [300, 260],
  [1150, 300],
  [1200, 850],
  [340, 900],
] as const;

let browser: OpenBrowser;
let folder: string;

beforeAll(async () => {
  browser = await openChromium();
  folder = mkdtempSync(path.join(tmpdir(), 'mark-'));
  // The browser may run as another user than the tests do.
  chmodSync(folder, 0o755);
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function pageFile(): Promise<string> {
  const boxes = SQUARES.map(([x, y]) => `<rect x="${x}" y="${y}" width="120" height="90" fill="#222"/>`).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDE}" height="${HIGH}"><rect width="100%" height="100%" fill="#bbb"/>${boxes}</svg>`;
  const bytes = await sharp(Buffer.from(svg)).jpeg({ quality: 92 }).toBuffer();
  const model = buildModel({
    nodes: [{ id: 'N-1<b>', nodeKind: 'splice', medium: 'dc', at: [0, 0, 0] }] as never,
    photos: [{ id: 'P-1', file: 'p.jpg', of: [], caption: '</script><script>alert(1)</script>' }] as never,
  });
  const photo = model.shell.photos[0] as (typeof model.shell.photos)[number];
  const html = await markPage(model, solvePhoto(model, photo, { widthPx: WIDE, heightPx: HIGH }), bytes);
  const file = path.join(folder, 'mark.html');
  writeFileSync(file, html);
  return file;
}

describe('the page for picking points', () => {
  it.each(['mouse', 'touch'] as const)(
    'by %s: jumps to the corner, takes a name, gives back the line, and asks for nothing',
    async (by) => {
      const page = await browser.browser.newPage();
      const asked: string[] = [];
      const wrong: string[] = [];
      page.on('request', (request) => void asked.push(request.url()));
      page.on('pageerror', (error) => void wrong.push(String(error)));
      await page.setViewport({ width: 800, height: 900, hasTouch: by === 'touch' });
      const file = pathToFileURL(await pageFile()).href;
      await page.goto(file);
      await page.waitForSelector('#photo');
      const box = await (await page.$('#photo'))?.boundingBox();
      if (!box) throw new Error('no picture');
      // Seven pixels beside the corner of the second square.
      const at = [box.x + ((1150 + 7) / WIDE) * box.width, box.y + ((300 - 6) / HIGH) * box.height] as const;
      if (by === 'touch') await page.touchscreen.tap(...at);
      else await page.mouse.click(...at);
      await page.type('#name', 'N-1<b>');
      await page.click('#add');
      const lines = await page.$eval('#lines', (area) => (area as HTMLTextAreaElement).value);
      const found = /^seen: \[\{is: N-1<b>, px: \[(\d+), (\d+)\]\}\]$/u.exec(lines);
      expect(found, lines).not.toBeNull();
      expect(Math.hypot(Number(found?.[1]) - 1150, Number(found?.[2]) - 300)).toBeLessThan(3);
      expect(wrong).toEqual([]);
      expect(asked.filter((url) => url !== file && !url.startsWith('data:'))).toEqual([]);
      await page.close();
    },
  );

  it('has targets of 48 px for a thumb', async () => {
    const page = await browser.browser.newPage();
    await page.setViewport({ width: 390, height: 844 });
    await page.goto(pathToFileURL(await pageFile()).href);
    const small = await page.$$eval('button', (all) =>
      all.filter((one) => one.getBoundingClientRect().height < 48).map(({ id }) => id),
    );
    expect(small).toEqual([]);
    await page.close();
  });
});
