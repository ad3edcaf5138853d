/**
 * How long a whole book takes against what no book can be without: one print of the same HTML by the same browser, nothing measured,
 * nothing numbered, nothing carried. The store is in Git, as a shop's is, and was looked at before, so that its figures are kept, but not
 * printed: parts of its books are kept only where a change is printed after them. Part of `npm run bench`; by itself: `npx tsx tests/bench/book.ts` after a build.
 */
import { spawnSync } from 'node:child_process';
import { appendFileSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { assess } from '../../src/assess.js';
import { bookDocument } from '../../src/book/document.js';
import type { Edition } from '../../src/book/input.js';
import { loadStore } from '../../src/model/load.js';
import { readStoreText } from '../../src/store/read.js';
import { measure } from './measure.js';
import { STARTED, spentEach, spentIn } from './spent.js';
import { node, ratio, say, tell, told } from './tell.js';

const ROUNDS = 3;
const OPENED_ROUNDS = 5;
/** Nothing is kept while a file is younger than a coarse clock's tick. */
const SETTLED_MS = 5000;
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

let amended = 0;
const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-bench-'));
try {
  const store = path.join(folder, 'store');
  cpSync(path.join(PROJECT, 'demo-data'), store, { recursive: true });
  const bare = { service: path.join(folder, 'bare-service'), shop: path.join(folder, 'bare-shop') };
  for (const edition of ['service', 'shop'] as const) await layDocument(store, edition, bare[edition]);
  inGit(store, 'init', '--quiet');
  commit(store);
  node(['dist/main.js', 'check', BOOK_SHELL, '--store', store, '--quiet']);
  const kept = path.join(store, '.git', 'shellbook', 'contents');
  const looked = path.join(folder, 'looked');
  cpSync(kept, looked, { recursive: true });
  const unprinted = (): void => {
    rmSync(kept, { recursive: true });
    cpSync(looked, kept, { recursive: true });
  };
  const editions = (...more: readonly string[]) =>
    node(['dist/main.js', 'book', BOOK_SHELL, '--store', store, '--quiet', ...more]);
  const service = path.join(folder, 'service.pdf');
  const timed = measure(
    {
      'bare print of the same HTML': () => node(['--input-type=module', '-e', BARE, bare.service]),
      'bare print, shop edition': () => node(['--input-type=module', '-e', BARE, bare.shop]),
      'book, three editions': () => {
        unprinted();
        editions();
      },
      'book, service edition': () => {
        unprinted();
        editions('--edition', 'service', '--out', service);
      },
      'book after a small amendment': () => {
        amend(store);
        editions('--edition', 'service', '--out', service);
      },
      'verify the service edition': () => node(['dist/main.js', 'verify', service, '--quiet']),
      'where, from the book alone': () => node(['dist/main.js', 'where', BOOK_SHELL, 'AC-12', '--book', service, '--quiet']),
    },
    ROUNDS,
  );
  say('');
  tell(`A book of ${BOOK_SHELL}, each in a process of its own, from start to end, median of ${ROUNDS}`, timed);
  ratio(timed, 'book, service edition', 'bare print of the same HTML', 1.25);
  // What `close` prints.
  ratio(timed, 'book, three editions', 'bare print, shop edition', 1.5);
  ratio(timed, 'book after a small amendment', 'book, service edition', 0.5);
  await wait(SETTLED_MS);
  const opened = spentEach(
    new Map<string, readonly string[]>([
      ['node -e 0', ['-e', '0']],
      ['where, from a book opened before', [STARTED, 'where', BOOK_SHELL, 'AC-12', '--book', service, '--quiet']],
      ['verify --quick of it', [STARTED, 'verify', '--quick', service, '--quiet']],
    ]),
    spentIn(folder),
    OPENED_ROUNDS,
  );
  const bareMs = opened.get('node -e 0') ?? Number.NaN;
  for (const [name, ms] of [...opened].slice(1)) told(`${name} ÷ node -e 0, processor time`, ms / bareMs, 3);
  const sizes = [path.join(bare.service, 'bare.pdf'), service].map((file) => (statSync(file).size / 1e6).toFixed(1));
  say(`  bare print ${sizes[0]} MB, service edition ${sizes[1]} MB`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function inGit(store: string, ...args: readonly string[]): void {
  const who = ['-c', 'user.name=Bench', '-c', 'user.email=bench@example.invalid'];
  const { status, stderr } = spawnSync('git', ['-C', store, ...who, ...args], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`git ${args[0]}: ${stderr}`);
}

function commit(store: string): void {
  inGit(store, 'add', '--all');
  inGit(store, 'commit', '--quiet', '--message', 'As measured');
}

/** One more amendment, committed, as after a day's work on a coach that is out. */
function amend(store: string): void {
  amended += 1;
  const file = path.join(store, 'shells', BOOK_SHELL, 'amendments.yaml');
  const record = `- {id: AM-9${amended}, date: 2026-11-20, by: ${personIn(readFileSync(file, 'utf8'))}, reason: "lamp renewed", changes: [CMP-53]}\n`;
  appendFileSync(file, record);
  commit(store);
}

/** Whoever wrote the first amendment. */
function personIn(amendments: string): string {
  const by = /\bby: ([\w-]+)/u.exec(amendments)?.[1];
  if (by === undefined) throw new Error('The made-up store has no amendment');
  return by;
}

/** The HTML of an edition and its pictures, as files. */
async function layDocument(store: string, edition: Edition, to: string): Promise<void> {
  mkdirSync(to, { recursive: true });
  const shell = loadStore(await readStoreText(store)).shells.get(BOOK_SHELL);
  if (!shell) throw new Error(`The made-up store has no shell ${BOOK_SHELL}`);
  const photos = new Map(shell.model.shell.photos.map((photo) => [photo.id, photo.file]));
  const { html, pictures } = await bookDocument({
    assessment: assess(shell.model, shell.findings),
    edition,
    fingerprint: '0'.repeat(64),
    history: { commits: [] },
    photoFile: async (id) => readFileSync(path.join(store, 'shells', BOOK_SHELL, 'photos', photos.get(id) ?? '')),
  });
  writeFileSync(path.join(to, 'book.html'), html);
  for (const [file, { bytes }] of pictures) {
    mkdirSync(path.dirname(path.join(to, file)), { recursive: true });
    writeFileSync(path.join(to, file), bytes);
  }
}
