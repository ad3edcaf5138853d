/**
 * How long a whole book takes against what no book can be without: one print of the same HTML by the same browser, nothing measured,
 * nothing numbered, nothing carried. Part of `npm run bench`; by itself: `npx tsx tests/bench/book.ts` after a build.
 */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { assess } from '../../src/assess.js';
import { bookDocument } from '../../src/book/document.js';
import { loadStore } from '../../src/model/load.js';
import { readStoreText } from '../../src/store/read.js';
import { measure } from './measure.js';
import { node, ratio, say, tell } from './tell.js';

const ROUNDS = 3;
const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const BOOK_SHELL = 'OV-021';

/** Prints `book.html` of a folder with its pictures, as a page that somebody opens and prints. */
const BARE = `import { readFileSync, writeFileSync } from 'node:fs';
import { openChromium } from './dist/book/print/chromium.js';
const [folder] = process.argv.slice(1);
const { browser, close } = await openChromium();
const page = await browser.newPage();
await page.setJavaScriptEnabled(false);
await page.setRequestInterception(true);
page.on('request', (request) => {
  const { pathname, protocol } = new URL(request.url());
  if (protocol === 'data:') return void request.continue();
  const [file, contentType] = pathname === '/' ? ['/book.html', 'text/html; charset=utf-8'] : [pathname, 'image/jpeg'];
  void request.respond({ status: 200, contentType, body: readFileSync(folder + file) });
});
await page.goto('http://book.invalid/', { waitUntil: 'load', timeout: 0 });
const print = { tagged: true, outline: true, preferCSSPageSize: true, printBackground: true, timeout: 0 };
writeFileSync(folder + '/bare.pdf', await page.pdf(print));
await close();`;

const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-bench-'));
try {
  const store = path.join(folder, 'store');
  cpSync(path.join(PROJECT, 'demo-data'), store, { recursive: true });
  await layDocument(store);
  const editions = (...more: readonly string[]) =>
    node(['dist/main.js', 'book', BOOK_SHELL, '--store', store, '--quiet', ...more]);
  const service = path.join(folder, 'service.pdf');
  const timed = measure(
    {
      'bare print of the same HTML': () => node(['--input-type=module', '-e', BARE, folder]),
      'book, service edition': () => editions('--edition', 'service', '--out', service),
      'book, three editions': () => editions(),
      'verify the service edition': () => node(['dist/main.js', 'verify', service, '--quiet']),
      'where, from the book alone': () => node(['dist/main.js', 'where', BOOK_SHELL, 'AC-12', '--book', service, '--quiet']),
    },
    ROUNDS,
  );
  say('');
  tell(`A book of ${BOOK_SHELL}, each in a process of its own, from start to end, median of ${ROUNDS}`, timed);
  ratio(timed, 'book, service edition', 'bare print of the same HTML', 1.25);
  ratio(timed, 'book, three editions', 'book, service edition');
  const sizes = [path.join(folder, 'bare.pdf'), service].map((file) => (statSync(file).size / 1e6).toFixed(1));
  say(`  bare print ${sizes[0]} MB, service edition ${sizes[1]} MB`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** The HTML of the service edition and its pictures, as files. */
async function layDocument(store: string): Promise<void> {
  const shell = loadStore(await readStoreText(store)).shells.get(BOOK_SHELL);
  if (!shell) throw new Error(`The made-up store has no shell ${BOOK_SHELL}`);
  const photos = new Map(shell.model.shell.photos.map((photo) => [photo.id, photo.file]));
  const { html, pictures } = await bookDocument({
    assessment: assess(shell.model, shell.findings),
    edition: 'service',
    fingerprint: '0'.repeat(64),
    history: { commits: [] },
    photoFile: async (id) => readFileSync(path.join(store, 'shells', BOOK_SHELL, 'photos', photos.get(id) ?? '')),
  });
  writeFileSync(path.join(folder, 'book.html'), html);
  for (const [file, { bytes }] of pictures) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), bytes);
  }
}
