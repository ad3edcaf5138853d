import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { assess } from './src/assess.js';
import { bookDocument } from './src/book/document.js';
import { openChromium } from './src/book/print/chromium.js';
import { printDocument } from './src/book/print/print.js';
import { loadStore } from './src/model/load.js';
import { readStoreText } from './src/store/read.js';

const [, , root = '', shell = '', edition = 'owner', key = 'loading', out = '/tmp/weigh/look/page'] = process.argv;
const loaded = loadStore(await readStoreText(root));
const one = loaded.shells.get(shell)!;
const { History } = await import('./src/store/history.js');
const { withChanges } = await import('./src/cli/open.js');
const text = await readStoreText(root);
const history = await History.open(root);
const standing = history ? await history.standing(shell) : null;
const model = await withChanges({ root, text, loaded, history } as never, one.model, standing as never);
const a = assess(model, one.findings);
const doc = await bookDocument({
  assessment: a,
  edition: edition as never,
  fingerprint: 'f'.repeat(64),
  history: { commits: [] },
  photoFile: async (id) => {
    const p = one.model.shell.photos.find((x) => x.id === id);
    return p ? readFile(`${root}/shells/${shell}/photos/${p.file}`).catch(() => undefined) : undefined;
  },
});
const start = doc.html.indexOf('<body>') + 6;
const sections = doc.html
  .slice(start)
  .split(/(?=<section class="chapter )/u)
  .filter((s) => key.split(',').some((k) => s.startsWith(`<section class="chapter ${k}"`)));
const html = `${doc.html.slice(0, start)}\n${sections.join('\n').replace(/<\/body>[\s\S]*$/u, '')}\n</body></html>`;
const browser = await openChromium();
const printed = await printDocument(browser, {
  ...doc,
  html,
  chapters: doc.chapters.filter((c) => key.split(',').includes(c.key)),
});
writeFileSync(`${out}.pdf`, printed.pdf);
await browser.close();
execFileSync('pdftoppm', ['-r', '70', '-png', `${out}.pdf`, out]);
console.log(printed.pageCount, printed.warnings);
