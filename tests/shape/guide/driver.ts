/** Run within a copy of the tree: what a kind, rule, command and chapter that were added there do. Prints one JSON object. */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { FINGERPRINT, HISTORY, smallStore } from '../../book/small-store.js';
import { literalIo } from '../../cli/literal-io.js';
import { storeText } from '../../support/store.js';

const [src = '', store = ''] = process.argv.slice(2);
// biome-ignore lint/suspicious/noExplicitAny: what is imported is the copy, which has no types here.
const load = (file: string): Promise<any> => import(pathToFileURL(path.join(src, file)).href);
const [{ loadStore }, { assess }, { bookDocument }, { runProgram }] = await Promise.all([
  load('model/load.ts'),
  load('assess.ts'),
  load('book/document.ts'),
  load('cli/program.ts'),
]);

const decals = '- {id: DE-1, words: "Mind <b>the</b> step", panels: [AP-11], faded: yes}\n';
const { model, findings } = loadStore(storeText(smallStore({ 'shells/T-1/decals.yaml': decals }))).shells.get('T-1');
const assessment = assess(model, findings);
const html: Record<string, string> = {};
for (const edition of ['owner', 'shop']) {
  const photoFile = async () => undefined;
  html[edition] = (await bookDocument({ assessment, edition, fingerprint: FINGERPRINT, history: HISTORY, photoFile })).html;
}
const io = literalIo();
const status = await runProgram(['decals', 'T-1', '--json', '--store', store], io);
process.stdout.write(
  JSON.stringify({
    record: model.shell.decals[0].words,
    found: assessment.findings.filter(({ rule }: { rule: string }) => rule === 'panel.decal-faded').length,
    chapter: Object.values(html).map((one) => one.includes('<h1 id="c-decals">')),
    contents: (html.shop ?? '').includes('href="#c-decals"'),
    home: (html.shop ?? '').includes('id="r-DE-1"'),
    escaped: (html.shop ?? '').includes('Mind &lt;b&gt;the&lt;/b&gt; step'),
    status,
    answer: JSON.parse(io.answer()).decals,
  }),
);
