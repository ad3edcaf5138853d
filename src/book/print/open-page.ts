import { setImmediate, setTimeout } from 'node:timers/promises';
import type { HTTPRequest, Page } from 'puppeteer';
import type { Follower } from '../document.js';
import type { OpenBrowser } from './chromium.js';
import type { BookDocument } from './document.js';
import { addChapter, install, picturesThere } from './in-page.js';

type Pictures = BookDocument['pictures'];
type Picture = Parameters<Parameters<Pictures['forEach']>[0]>[0];

/** No machine has this name, and nothing is asked of it: every answer comes from memory. */
const HERE = 'http://book.invalid';

/** Some builds of this program name inner functions through a helper that the page has not. */
const INSTALL = `globalThis.__name = (given) => given; (${install})()`;

/** Until it is printed; see `layOut`. */
const HIDDEN = '<style>@media screen { body { display: none } }</style>';

/** Opens the whole document in a page. */
export const openWhole = (page: Page, { html, pictures }: Pick<BookDocument, 'html' | 'pictures'>): Promise<void> =>
  openQuietly(page, html, pictures);

/** Opens a document with scripts of the page off; whatever it asks for comes from memory or is refused. */
async function openQuietly(page: Page, html: string, pictures: Pictures): Promise<void> {
  const body = html.replace('</head>', `${HIDDEN}</head>`);
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  const answers = fewAtOnce();
  page.on('request', (request) => {
    const url = request.url();
    const path = url.startsWith(`${HERE}/`) ? url.slice(HERE.length) : undefined;
    const picture = path === undefined ? undefined : pictures.get(path);
    if (path === '/' && request.isNavigationRequest()) {
      void request.respond({ status: 200, contentType: 'text/html; charset=utf-8', body });
    } else if (picture) {
      answers.give(() => respondWith(request, picture));
    } else if (url.startsWith('data:')) {
      void request.continue();
    } else {
      void request.abort('accessdenied');
    }
  });
  await page.goto(`${HERE}/`, { waitUntil: 'load', timeout: 0 });
  await page.evaluate(INSTALL);
  // What is hidden asks for no typeface, and must be measured in its own.
  await page.evaluate('Promise.all([...document.fonts].map((face) => face.load())).then(() => undefined)');
}

/** One that was taken away meanwhile is refused; the print says so when it takes its digest. */
async function respondWith(request: HTTPRequest, picture: Picture): Promise<void> {
  try {
    await request.respond({ status: 200, contentType: picture.type, body: picture.bytes });
  } catch {
    await request.abort('failed').catch(() => undefined);
  }
}

/** Pictures that are on their way to the browser at a time: each travels as text, and a thousand at once fill the memory. */
const PICTURES_AT_ONCE = 8;

/** Gives answers in turn, so many at a time. */
function fewAtOnce(): { give(answer: () => Promise<void>): void } {
  const waiting: (() => Promise<void>)[] = [];
  let busy = 0;
  const next = (): void => {
    const answer = busy < PICTURES_AT_ONCE ? waiting.shift() : undefined;
    if (!answer) return;
    busy++;
    void answer().finally(() => {
      busy--;
      next();
    });
  };
  return {
    give(answer) {
      waiting.push(answer);
      next();
    },
  };
}

/** How long the browser is left alone before it is asked again whether it has all pictures, ms. */
const PICTURES_MS = 20;

/** A page of the browser that follows a book: it reads and lays out each chapter while the next one is made. */
export interface FollowingPage extends Follower {
  readonly page: Promise<Page>;
  /** Fulfilled when everything is there that was given so far. */
  whole(): Promise<void>;
  close(): Promise<void>;
}

/** A page that follows a book in a browser that may still be starting. */
export function followingPage(opening: Promise<OpenBrowser>): FollowingPage {
  const page = opening.then(({ browser }) => browser.newPage());
  page.catch(() => undefined);
  const added: Promise<void>[] = [];
  return {
    page,
    async open(html, pictures) {
      const one = await page;
      await openQuietly(one, html, pictures);
      await one.emulateMediaType('print');
    },
    async chapter(html, at) {
      const adding = page.then((one) => one.evaluate(addChapter, html, at));
      // Whoever waits for the whole hears of it.
      adding.catch(() => undefined);
      added.push(adding);
      // Making the next chapter takes long: this one is to go out before.
      await setImmediate();
    },
    async whole() {
      await Promise.all(added);
      const one = await page;
      while (!(await one.evaluate(picturesThere))) await setTimeout(PICTURES_MS);
    },
    close: () =>
      page.then(
        (one) => one.close(),
        () => undefined,
      ),
  };
}
