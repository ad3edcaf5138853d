import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { assess } from '../../src/assess.js';
import { openChromium } from '../../src/book/print/chromium.js';
import { pageScript } from '../../src/cli/page-script.js';
import { DEMO, judged } from '../demo/store.js';
import { smallPage } from '../pocket/small-page.js';
import { measureWaiting } from './measure.js';
import { ratio, tell, told } from './tell.js';

const ROUNDS = 3;
const OPENINGS = 3;
/** A phone's processor beside this one. */
const SLOWER = 6;

/** As text: the page has none of this program's helpers. */
const IN_PAGE = `(() => {
  const input = document.getElementById('asked');
  const typed = (text) => {
    input.value = text;
    const start = performance.now();
    input.dispatchEvent(new Event('input'));
    return performance.now() - start;
  };
  typed('water');
  const took = typed('pump fuse');
  const paint = performance.getEntriesByName('first-contentful-paint')[0];
  return [paint ? paint.startTime : 0, performance.getEntriesByType('navigation')[0].domComplete, took];
})()`;

/** What a page for a phone costs to make, and what it is like to open and to search on a slow processor. */
export async function benchPocket(): Promise<void> {
  const { model } = judged('OV-021').assessment;
  const photos = new Map(model.shell.photos.map(({ id, file }) => [id, path.join(DEMO, 'shells/OV-021/photos', file)] as const));
  const photoFile = async (id: string): Promise<Buffer> => readFileSync(photos.get(id) as string);
  const script = await pageScript('pocket');
  const page = (): Promise<string> => smallPage('service', { assessment: assess({ ...model }, []), photoFile, script });
  const list = await measureWaiting(
    { 'everything that check computes': () => assess({ ...model }, []).findings.length, 'make the page for a phone': page },
    ROUNDS,
  );
  tell(`The demo’s page for a phone, median of ${ROUNDS}`, list);
  ratio(list, 'make the page for a phone', 'everything that check computes', 2);
  const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-pocket-'));
  chmodSync(folder, 0o755);
  const { browser, close } = await openChromium();
  try {
    const bare = '<!doctype html><html lang="en"><title>bare</title><p>bare</p><input id="asked"></html>';
    const times: Record<string, number[]> = { first: [], whole: [], bare: [], answer: [] };
    writeFileSync(path.join(folder, 'pocket.html'), await page());
    writeFileSync(path.join(folder, 'bare.html'), bare);
    for (let i = 0; i < OPENINGS; i++)
      for (const name of ['bare', 'pocket']) {
        const tab = await browser.newPage();
        await tab.emulateCPUThrottling(SLOWER);
        await tab.goto(pathToFileURL(path.join(folder, `${name}.html`)).href, { waitUntil: 'load' });
        const [first, whole, answer] = (await tab.evaluate(IN_PAGE)) as readonly [number, number, number];
        if (name === 'bare') times.bare?.push(first);
        else {
          times.first?.push(first);
          times.whole?.push(whole);
          times.answer?.push(answer);
        }
        await tab.close();
      }
    const median = (all: readonly number[] = []): number =>
      [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;
    told(`bare page, first seen, processor ${SLOWER} times slower`, median(times.bare), undefined, ' ms');
    told(`page for a phone, first seen`, median(times.first), 1000, ' ms');
    told(`page for a phone, whole`, median(times.whole), 2000, ' ms');
    told(`an answer after the last key`, median(times.answer), 100, ' ms');
  } finally {
    await close();
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1]?.endsWith('pocket.ts')) await benchPocket();
