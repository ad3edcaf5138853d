/** How long things take, as ratios within one run: `npm run bench`. No test hangs on these figures. */
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { assess } from '../../src/assess.js';
import { takeOff } from '../../src/compute/takeoff/index.js';
import { weights } from '../../src/compute/weights/index.js';
import { loadStore } from '../../src/model/load.js';
import type { LoadedShell } from '../../src/model/load-types.js';
import { readDocument } from '../../src/source/document.js';
import { benchAccess } from './access.js';
import { benchEntry } from './entry.js';
import { benchGrowth, lay } from './growth.js';
import { measure } from './measure.js';
import { benchPictures } from './pictures.js';
import { benchPocket } from './pocket.js';
import { benchStore, SHELL } from './store.js';
import { brokeOff, node, ratio, say, tell, tellGoals } from './tell.js';
import { benchWarm } from './warm.js';

const COUNT = 5000;
const ROUNDS = 7;
const COLD_ROUNDS = 5;

/** What any program that reads these files must do at least. */
const PARSE = `import { readFileSync } from 'node:fs';
import { parseDocument } from 'yaml';
const [folder, ...names] = process.argv.slice(1);
for (const name of names) parseDocument(readFileSync(folder + '/' + name, 'utf8')).toJS();`;

const files = benchStore(COUNT);
const bytes = [...files.values()].reduce((sum, text) => sum + text.length, 0);

say(`${os.cpus()[0]?.model ?? 'processor not known'}, ${os.cpus().length} threads, Node ${process.version}, ${os.platform()}`);
say(`One shell of ${COUNT} mass items, ${Math.round(bytes / 1024)} KiB of YAML\n`);

const load = (): LoadedShell => {
  const shell = loadStore({ root: 'bench', files, photos: new Map() }).shells.get(SHELL);
  if (!shell) throw new Error(`The store made for measuring has no shell ${SHELL}`);
  return shell;
};
const { model, findings } = load();
const faults = findings.filter((one) => one.severity === 'error');
if (faults.length > 0) throw new Error(`The store made for measuring does not read clean: ${faults[0]?.message}`);
const taken = takeOff(model);

const warm = measure(
  {
    'parse the YAML': () => [...files].map(([file, text]) => readDocument(file, text)),
    'read and check the records': load,
    'take-off': () => takeOff(model),
    'weights from the take-off': () => weights(model, taken),
    'take-off and weights': () => weights(model, takeOff(model)),
    // Figures come when asked for: the findings ask for all of them.
    'everything that check computes': () => assess(model, []).findings.length,
  },
  ROUNDS,
);
tell(`In one process, warm, median of ${ROUNDS}`, warm);
ratio(warm, 'take-off and weights', 'read and check the records');

benchWarm();
await benchPictures();
await benchPocket();
benchGrowth();
benchAccess(say);

const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-bench-'));
try {
  lay(files, folder);
  const cold = measure(
    {
      'parse the YAML': () => node(['--input-type=module', '-e', PARSE, folder, ...files.keys()]),
      check: () => node(['dist/main.js', 'check', SHELL, '--store', folder, '--quiet']),
      weights: () => node(['dist/main.js', 'weights', SHELL, '--store', folder, '--quiet']),
      release: () => node(['dist/main.js', 'release', SHELL, '--store', folder, '--quiet']),
    },
    COLD_ROUNDS,
  );
  say('');
  tell(`Each in a process of its own, from start to end, median of ${COLD_ROUNDS}`, cold);
  ratio(cold, 'check', 'parse the YAML', 1.5);
  for (const name of ['weights', 'release']) ratio(cold, name, 'parse the YAML');
  const entry = benchEntry(node);
  say('');
  tell('Getting records in, each in a process of its own', entry);
  for (const name of ['add a record', 'import 5,000 new rows', 'import them again'])
    ratio(entry, name, 'node and one parse of the file');
} finally {
  rmSync(folder, { recursive: true, force: true });
}

const PARTS: Readonly<Record<string, () => Promise<unknown>>> = {
  'Questions on unchanged records': () => import('./lookups.js'),
  'A check after an edit': () => import('./edited.js'),
  'A printed book': () => import('./book.js'),
  'Many shells and commits': () => import('./ledger.js'),
};
for (const [name, run] of Object.entries(PARTS)) await run().catch((error: unknown) => brokeOff(name, error));
tellGoals();
