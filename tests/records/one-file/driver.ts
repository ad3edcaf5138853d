/**
 * Run within a copy of the tree: what becomes of a field of welds in a record that has it. Prints one JSON object. Modules are named
 * by the caller, who has copied them.
 */
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [src = '', key = ''] = process.argv.slice(2);
// biome-ignore lint/suspicious/noExplicitAny: what is imported is the copy, which has no types here.
const load = (file: string): Promise<any> => import(pathToFileURL(path.join(src, file)).href);

const [{ loadStore }, { recordSchema }, { tradeWords }, { askRecord }, { redact }, { canonicalRecords }, { coverageOf }] =
  await Promise.all([
    load('model/load.ts'),
    load('records/form/json.ts'),
    load('entry/trade-words.ts'),
    load('entry/ask-record.ts'),
    load('book/redact/value.ts'),
    load('archive/canonical.ts'),
    load('closeout/coverage.ts'),
  ]);
const [{ RecordIndex }, { loadLibrary }, { hiddenFrom }] = await Promise.all([
  load('entry/record-index.ts'),
  load('model/load-library.ts'),
  load('book/redact/hidden.ts'),
]);
const { matchHeads } = await load('entry/headers.ts');

const weld = (more: string): string =>
  `- {id: W-1, joins: [A, B], type: fillet, size: 5 mm, length: 90 mm, process: GMAW, stage: floor, welder: K7${more}}\n`;
const text = (more: string) => ({
  root: '',
  photos: new Map(),
  files: new Map([
    ['shop.yaml', 'shop: {name: S}\n'],
    ['library/stages.yaml', '- {id: floor, name: Floor}\n'],
    ['library/people.yaml', '- {id: K7, name: Zed Quarles, role: welder}\n'],
    ['shells/T-1/shell.yaml', 'shell: T-1\n'],
    ['shells/T-1/welds.yaml', weld(more)],
  ]),
});
const read = (more: string) => loadStore(text(more)).shells.get('T-1');
const faults = (more: string): string[] =>
  read(more)
    .findings.map((one: { message: string }) => one.message)
    .filter((one: string) => one.includes(key));

const value = 'by K7 to 110 C';
const [without, having] = [read('').model, read(`, ${key}: ${value}`).model];
const hashes = (model: unknown): string => JSON.stringify(canonicalRecords(model, new Map()));
const covers = (model: unknown): string => coverageOf(model, 'floor', '2026-01-01').get('weld W-1');

const asked: string[] = [];
const none = async ({ text: question }: { text: string }): Promise<string> => {
  asked.push(question.split(/[ :]/u)[0] as string);
  return '';
};
const known = new RecordIndex(
  text(''),
  'T-1',
  loadLibrary(text('').files, () => {}),
);
const asker = { text: none, choose: none, confirm: async () => false };
await askRecord({ kind: 'weld', given: {}, known, model: without }, asker);

const hidden = hiddenFrom(having, 'owner');
console.log(
  JSON.stringify({
    model: having.shell.welds[0][key],
    faults: [...faults(`, ${key}: {a: b}`), ...faults(`, ${key.slice(0, -1)}: ${value}`)],
    help: (recordSchema('weld').properties as Record<string, { description: string }>)[key]?.description,
    heads: ['Preheat', 'Pre-heating'].map(
      (head) => matchHeads('weld', [head], { said: new Map(), own: new Map() })[0].column?.key ?? null,
    ),
    sheets: [...tradeWords('weld')].filter(([, to]: [string, string]) => to === key).map(([word]: [string]) => word),
    asked: asked.includes(key),
    redacted: (redact(having.shell.welds, hidden) as Record<string, string>[])[0]?.[key],
    fingerprinted: hashes(having) !== hashes(without),
    signed: covers(having) !== covers(without),
  }),
);
