import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'puppeteer';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { smallPage } from '../pocket/small-page.js';
import { hostileStore } from '../security/hostile-store.js';
import { PAYLOADS } from '../security/payloads.js';
import { loadOne } from '../support/store.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** As a phone is held. */
const PHONE = { width: 390, height: 844, hasTouch: true, isMobile: true };
const SCREENS = ['find', 'emergency', 'coach', 'loading', 'winter', 'notes', 'trust', 'l-panels', 'r-AP-11', 'r-DC-12', 'p-P-1'];

/** Every form of screen once, for what takes a second a screen. */
const LOOKED_AT = ['r-AP-11', 'emergency', 'coach', 'loading', 'notes', 'find'];

let opened: OpenBrowser;
let folder: string;
/** One page for most: loading it is what takes time. */
let page: Page;
const asked: string[] = [];
const wrong: string[] = [];

beforeAll(async () => {
  opened = await openChromium();
  folder = mkdtempSync(path.join(tmpdir(), 'pocket-'));
  // The browser may run as another user than the tests do.
  chmodSync(folder, 0o755);
  const picture = await sharp({ create: { width: 320, height: 240, channels: 3, background: '#6b7f86' } })
    .jpeg()
    .toBuffer();
  writeFileSync(path.join(folder, 'service.html'), await smallPage('service', { script: true, photoFile: async () => picture }));
  page = await open('service.html');
});
afterAll(async () => {
  await opened?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(file: string, before: (page: Page) => Promise<unknown> = async () => {}): Promise<Page> {
  const one = await opened.browser.newPage();
  one.on('request', (request) => void asked.push(request.url()));
  one.on('pageerror', (error) => void wrong.push(String(error)));
  one.on('dialog', (dialog) => void wrong.push(`dialog ${dialog.message()}`));
  await one.setViewport(PHONE);
  await one.setOfflineMode(true);
  await before(one);
  await one.goto(pathToFileURL(path.join(folder, file)).href);
  return one;
}

/** What of the page a reader sees. */
const seen = (): Promise<string> => page.$eval('.screen.here', (screen) => screen.textContent ?? '');
const go = (to: string): Promise<string> =>
  page.evaluate(
    (hash) =>
      new Promise<string>((done) => {
        window.addEventListener('hashchange', () => done(document.querySelector('.screen.here h1')?.textContent ?? ''), {
          once: true,
        });
        if (window.location.hash === `#${hash}`) window.location.hash = '';
        window.location.hash = hash;
      }),
    to,
  );

describe('the page for a phone, in a browser without a network', () => {
  it('shows one screen at a time; emergency is one tap from anywhere', async () => {
    expect(await seen()).toContain('What are you looking for?');
    for (const screen of SCREENS.filter((one) => one !== 'r-DC-12')) expect((await go(screen)).length, screen).toBeGreaterThan(3);
    await page.click('nav a.grave');
    await page.waitForFunction(() => document.querySelector('#emergency.here') !== null);
    expect(await page.$$eval('.screen.here', (all) => all.length)).toBe(1);
    expect(await seen()).toContain('Everyone out and away');
  });

  it('makes a screen when it is asked for, and leads back to where one was', async () => {
    await go('coach');
    expect(await page.$$eval('#r-DC-12', (all) => all.length)).toBe(0);
    const down = await page.evaluate(() => {
      window.scrollTo(0, 1e6);
      return window.scrollY;
    });
    expect(down).toBeGreaterThan(0);
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    await go('r-DC-12');
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await page.goBack();
    await page.waitForFunction(() => document.querySelector('#coach.here') !== null);
    expect(await page.evaluate(() => window.scrollY)).toBe(down);
  });

  it('finds as one types, and says where nothing is', async () => {
    await go('find');
    await page.type('#asked', 'dc12');
    expect(await page.$eval('#hits a', (link) => link.textContent)).toBe('DC-12');
    await page.$eval('#asked', (input) => {
      (input as HTMLInputElement).value = 'quetzal';
      input.dispatchEvent(new Event('input'));
    });
    expect(await seen()).toContain('No match for “quetzal”');
    await page.$eval('#asked', (input) => {
      (input as HTMLInputElement).value = '';
      input.dispatchEvent(new Event('input'));
    });
  });

  it('answers a finger on the coach and a place that is typed', async () => {
    await go('v-underside');
    const box = await (await page.$('#v-underside svg.plan'))?.boundingBox();
    if (!box) throw new Error('no drawing');
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    const told = await page.$eval('#here', (place) => place.textContent);
    expect(told).toMatch(/At x /u);
    expect(told).toContain('From the face of BP-04');
    expect(told).toContain('Drill with a stop');
    for (const [axis, value] of [
      ['x', '100'],
      ['y', '0'],
      ['z', '400'],
    ] as const)
      await page.type(`#point-${axis}`, value);
    await page.$eval('#point button', (button) => (button as HTMLButtonElement).click());
    expect(await page.$eval('#here', (place) => place.textContent)).toContain('That is no proof that nothing is there');
  });

  it('leads from a panel under the finger to its card', async () => {
    await go('v-underside');
    const label = await page.$('#v-underside svg.plan a .hit');
    const box = await label?.boundingBox();
    if (!box) throw new Error('no panel drawn');
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    expect(await page.$eval('#here', (place) => place.textContent)).toMatch(/^Under your finger/u);
    const id = await page.$eval('#here li a', (link) => link.textContent);
    await page.$eval('#here li a', (link) => (link as HTMLElement).click());
    await page.waitForFunction(() => document.querySelector('.card.here') !== null);
    expect(await page.$eval('.card.here h1', (head) => head.textContent?.split(' ')[0])).toBe(id);
  });

  it('moves under a finger, and shows the whole again', async () => {
    await go('v-plan');
    const window = (): Promise<string | null> => page.$eval('#v-plan svg.plan', (svg) => svg.getAttribute('viewBox'));
    await page.$eval('#v-plan button[data-zoom="0"]', (button) => (button as HTMLButtonElement).click());
    const whole = await window();
    await page.$eval('#v-plan button[data-zoom="1.6"]', (button) => (button as HTMLButtonElement).click());
    const near = await window();
    expect(near).not.toBe(whole);
    const box = await (await page.$('#v-plan svg.plan'))?.boundingBox();
    if (!box) throw new Error('no drawing');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.touchscreen.touchStart(x, y);
    for (const by of [10, 30, 60]) await page.touchscreen.touchMove(x + by, y);
    await page.touchscreen.touchEnd();
    expect(await window()).not.toBe(near);
    await page.$eval('#v-plan button[data-zoom="0"]', (button) => (button as HTMLButtonElement).click());
    expect(await window()).toBe(whole);
  });

  it('weighs what one thinks of loading', async () => {
    await go('loading');
    await page.$eval('[data-bay]', (input) => {
      (input as HTMLInputElement).value = '90000';
      input.dispatchEvent(new Event('input', { bubbles: true }));
    });
    expect(await page.$$eval('#gauges .over', (all) => all.length)).toBeGreaterThan(1);
    expect(await page.$eval('#gauges', (place) => place.textContent)).toContain('OVER');
  });

  it('shows either units first, on every screen, and keeps the choice', async () => {
    await go('r-AP-11');
    const before = await seen();
    const [, inches = '', mm = ''] = /([\d/-]+\sin) \((\d+\smm)\)/u.exec(before) ?? [];
    expect(mm).not.toBe('');
    const press = (units: string) => page.$eval(`[data-units=${units}]`, (button) => (button as HTMLButtonElement).click());
    await press('metric');
    expect(await seen()).toContain(`${mm} (${inches})`);
    await go('loading');
    expect(await page.$eval('#whatif label', (label) => label.textContent)).toContain('kg');
    expect(await page.$eval('#gauges', (place) => place.textContent)).toMatch(/\d\skg \([\d,]+\slb\)/u);
    await press('us');
    await go('r-AP-11');
    expect(await seen()).toBe(before);
  });

  it('keeps ticks and notes, and gives the notes back as a file', async () => {
    await go('notes');
    await page.evaluate(() => {
      HTMLAnchorElement.prototype.click = function click() {
        (window as unknown as { saved: string }).saved = this.href;
      };
    });
    await page.type('#note-of', 'dc-12');
    await page.type('#note-text', 'Splice made new, <b>sealed</b>');
    await page.type('#note-by', 'A. Technician');
    await page.$eval('#note button', (button) => (button as HTMLButtonElement).click());
    await page.waitForFunction(() => document.querySelectorAll('#note-list li').length === 1);
    expect(await page.$eval('#note-said', (place) => place.textContent)).toBe('Kept on this phone.');
    await page.$eval('#note-save', (button) => (button as HTMLButtonElement).click());
    const saved = await page.evaluate(() => (window as unknown as { saved: string }).saved);
    const file = JSON.parse(decodeURIComponent(saved.slice(saved.indexOf(',') + 1)));
    expect(file).toMatchObject({ shellbook: 'notes', version: 1, shell: 'T-1', notes: [{ of: ['DC-12'], by: 'A. Technician' }] });
    expect(file.notes[0].text).toBe('Splice made new, <b>sealed</b>');
    expect(await page.$$eval('#note-list b', (all) => all.length)).toBe(0);
  });

  it.each(['light', 'dark'])('has nothing that axe finds, in %s, with enhanced contrast', async (scheme) => {
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
    await page.evaluate(AXE);
    for (const screen of scheme === 'light' ? LOOKED_AT : LOOKED_AT.slice(0, 2)) {
      await go(screen);
      const found = await page.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        const { violations } = await axe.run({
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
          rules: { 'color-contrast-enhanced': { enabled: true } },
        });
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
      });
      expect([screen, found]).toEqual([screen, []]);
    }
  });

  it('has targets of 48 px, and no sideways scrolling with text twice as large', async () => {
    for (const screen of SCREENS) {
      await go(screen);
      const small = await page.evaluate(() =>
        [
          ...document.querySelectorAll<HTMLElement>(
            'header a, .screen.here a, .screen.here button, .screen.here summary, .screen.here input:not([type=checkbox]), .screen.here label:has(input[type=checkbox])',
          ),
        ]
          .filter((one) => one.getClientRects().length > 0 && !one.closest('svg'))
          .filter((one) => one.getBoundingClientRect().height < 47.5 || one.getBoundingClientRect().width < 47.5)
          .map((one) => one.outerHTML.slice(0, 120)),
      );
      expect([screen, small]).toEqual([screen, []]);
      const wide = await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
        const over = document.documentElement.scrollWidth - window.innerWidth;
        document.documentElement.style.fontSize = '';
        return over;
      });
      expect([screen, wide <= 0]).toEqual([screen, true]);
    }
  });

  it('asked for nothing and failed nowhere', () => {
    expect(asked.filter((url) => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([]);
    expect(wrong).toEqual([]);
  });
});

describe('elsewhere', () => {
  it('prints the steps that are folded away on the screen', async () => {
    const printed = await open('service.html');
    await printed.evaluate(() => {
      window.location.hash = 'r-BAT';
    });
    await printed.waitForFunction(() => document.querySelector('#r-BAT.here details') !== null);
    const folded = (): Promise<number> => printed.$$eval('.screen.here details:not([open])', (all) => all.length);
    const before = await folded();
    await printed.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    expect([before > 0, await folded()]).toEqual([true, 0]);
    await printed.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await folded()).toBe(before);
    await printed.close();
  });

  it('is whole with scripts off', async () => {
    const off = await open('service.html', (one) => one.setJavaScriptEnabled(false));
    const shut = await off.$$eval('.screen', (all) => all.filter((one) => getComputedStyle(one).display === 'none').length);
    expect(shut).toBe(0);
    const text = await off.$eval('body', (body) => body.textContent ?? '');
    for (const word of ['DC-12', 'AP-11', 'Everyone out and away', 'Search needs scripts', 'Picture P-1'])
      expect([word, text.includes(word)]).toEqual([word, true]);
    await off.close();
  });

  it('is whole where a viewer refuses its scripts without turning scripts off', async () => {
    const html = readFileSync(path.join(folder, 'service.html'), 'utf8');
    const policy = '<meta http-equiv="Content-Security-Policy" content="script-src \'none\'">';
    writeFileSync(path.join(folder, 'refusing.html'), html.replace('<head>', `<head>${policy}`));
    const refusing = await open('refusing.html');
    expect(await refusing.$eval('#r-AP-11', (card) => getComputedStyle(card).display)).toBe('block');
    expect(await refusing.$$eval('.screen', (all) => all.length)).toBeGreaterThan(50);
    await refusing.close();
  });

  it('says at once where the phone keeps nothing', async () => {
    const refused = await open('service.html', (one) =>
      one.evaluateOnNewDocument(() => {
        Object.defineProperty(window, 'localStorage', {
          get() {
            throw new DOMException('refused', 'SecurityError');
          },
        });
      }),
    );
    expect(await refused.$eval('#note-said', (place) => place.textContent)).toContain('save the file now');
    await refused.close();
  });

  it('runs nothing of what a record says', async () => {
    const words = [0, 1, 4]
      .map((at) => PAYLOADS[at] as (typeof PAYLOADS)[number])
      .map(([, one]) => one)
      .join(' ');
    const { model, findings } = loadOne(hostileStore(words).files);
    writeFileSync(
      path.join(folder, 'hostile.html'),
      await smallPage('service', { script: true, assessment: assess(model, findings) }),
    );
    const before = wrong.length;
    const hostile = await open('hostile.html');
    // A long page is held as pieces of text, each whole screens: a browser copies a long text again with every stretch that it reads.
    const pieces = await hostile.$$eval('script.held', (all) => all.map(({ textContent }) => textContent ?? ''));
    expect(pieces.length).toBeGreaterThan(1);
    expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThan(250_000);
    for (const piece of pieces.slice(1)) expect(piece).toMatch(/^<(?:article|section) class="screen/u);
    // As when each screen is made.
    await hostile.evaluate(() =>
      document.body.insertAdjacentHTML(
        'beforeend',
        [...document.querySelectorAll('script.held')].map(({ textContent }) => textContent).join(''),
      ),
    );
    expect(await hostile.$$eval('.card', (all) => all.length)).toBeGreaterThan(10);
    const strange = await hostile.evaluate(() => [
      ...[...document.querySelectorAll('iframe, base, form[action], object, embed, foreignObject, animate, img, link')].map(
        ({ outerHTML }) => outerHTML.slice(0, 80),
      ),
      ...[...document.querySelectorAll('a')]
        .map((link) => link.getAttribute('href') ?? '')
        .filter((href) => !href.startsWith('#')),
      ...[...document.querySelectorAll('*')].flatMap((one) =>
        one.getAttributeNames().filter((name) => name.startsWith('on') || name === 'style'),
      ),
    ]);
    expect(strange.filter((one) => one !== '')).toEqual([]);
    expect(await hostile.$$eval('script:not(.held)', (all) => new Set(all.map(({ textContent }) => textContent)).size)).toBe(5);
    expect(wrong.slice(before)).toEqual([]);
    expect(asked.filter((url) => url.includes('example.org'))).toEqual([]);
    await hostile.close();
  });
});
