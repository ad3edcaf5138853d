import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { CDPSession, Page } from 'puppeteer';
import { openChromium } from '../../src/book/print/chromium.js';
import { median } from './measure.js';
import { told } from './tell.js';

const OPENINGS = 3;
/** A phone's processor beside this one. */
const SLOWER = 6;
const FRAME_MS = 1000 / 60;
const PHONE = { width: 390, height: 844, hasTouch: true, isMobile: true };

/** As text: the page has none of this program's helpers. */
const OPENED = `[performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0, performance.getEntriesByType('navigation')[0].domComplete]`;
const ANSWER = `((text) => {
  const input = document.getElementById('asked');
  input.value = text;
  const start = performance.now();
  input.dispatchEvent(new Event('input'));
  return performance.now() - start;
})`;
const FRAMES = `(window.frames_ = [], window.going_ = true, (function next(at) {
  window.frames_.push(at);
  if (window.going_) requestAnimationFrame(next);
})(performance.now()))`;

interface Opened {
  readonly first: number;
  readonly whole: number;
  readonly answer: number;
}

/** Opening, an answer and movement of pages for a phone, on a processor slowed down; a bare page beside them. */
export async function benchPhone({ demo, tenfold }: { readonly demo: string; readonly tenfold: string }): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-pocket-'));
  chmodSync(folder, 0o755);
  const { browser, close } = await openChromium();
  const open = async (name: string): Promise<Page> => {
    const tab = await browser.newPage();
    await tab.setViewport(PHONE);
    // A first page takes the process along: what is set before that would be lost.
    await tab.goto(pathToFileURL(path.join(folder, 'bare.html')).href);
    await tab.emulateCPUThrottling(SLOWER);
    await tab.goto(pathToFileURL(path.join(folder, `${name}.html`)).href, { waitUntil: 'load' });
    return tab;
  };
  try {
    const bare = '<!doctype html><html lang="en"><title>bare</title><p>bare</p><input id="asked"></html>';
    for (const [name, html] of Object.entries({ bare, demo, tenfold })) writeFileSync(path.join(folder, `${name}.html`), html);
    const times = new Map<string, Opened[]>();
    for (let i = 0; i < OPENINGS; i++)
      for (const name of ['bare', 'demo', 'tenfold']) {
        const tab = await open(name);
        const [first, whole] = (await tab.evaluate(OPENED)) as readonly [number, number];
        const answer = (await tab.evaluate(`${ANSWER}('pump fuse')`)) as number;
        times.set(name, [...(times.get(name) ?? []), { first, whole, answer }]);
        await tab.close();
      }
    const of = (name: string, what: keyof Opened): number => median((times.get(name) ?? []).map((one) => one[what]));
    told(`bare page, first seen, processor ${SLOWER} times slower`, of('bare', 'first'), undefined, ' ms');
    told('page for a phone, first seen', of('demo', 'first'), 1000, ' ms');
    told('page for a phone, whole', of('demo', 'whole'), 2000, ' ms');
    told('the first answer, asked at once', of('demo', 'answer'), undefined, ' ms');
    for (const what of ['first', 'whole'] as const)
      told(`ten coaches ÷ the demo, ${what}`, of('tenfold', what) / of('demo', what), 3);
    const tab = await open('demo');
    await tab.evaluate(`${ANSWER}('water')`);
    told('an answer after the last key', (await tab.evaluate(`${ANSWER}('pump fuse')`)) as number, 100, ' ms');
    await movement(tab);
  } finally {
    await close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Frames that are not shown while a finger scrolls a list and moves a drawing, of all that would be. */
async function movement(tab: Page): Promise<void> {
  const session = await tab.createCDPSession();
  await tab.emulateCPUThrottling(SLOWER);
  const go = async (to: string): Promise<void> => {
    await tab.evaluate(`window.location.hash = '${to}'`);
    await new Promise((done) => setTimeout(done, 1500));
  };
  const share = async (act: () => Promise<unknown>): Promise<number> => {
    await tab.evaluate(FRAMES);
    await act();
    const frames = ((await tab.evaluate('(window.going_ = false, window.frames_)')) as number[]).slice(1);
    const gaps = frames.slice(1).map((at, i) => at - (frames[i] as number));
    const lost = gaps.reduce((sum, gap) => sum + Math.max(0, Math.round(gap / FRAME_MS) - 1), 0);
    return (100 * lost) / (lost + gaps.length);
  };
  const still = await share(() => new Promise((done) => setTimeout(done, 1500)));
  told('frames lost while nothing moves (the machine’s own)', still, undefined, ' %');
  await go('l-nodes');
  told('frames lost while a list scrolls', await share(() => swept(session, { yDistance: -1500, speed: 1200 })), 5, ' %');
  await go('v-left-out');
  const pan = async (): Promise<void> => {
    for (const xDistance of [-250, 250, -250, 250]) await swept(session, { xDistance, speed: 400 });
  };
  told('frames lost while a drawing is moved', await share(pan), 5, ' %');
}

const swept = (session: CDPSession, by: { xDistance?: number; yDistance?: number; speed: number }): Promise<unknown> =>
  session.send('Input.synthesizeScrollGesture', { x: PHONE.width / 2, y: PHONE.height / 2, gestureSourceType: 'touch', ...by });
