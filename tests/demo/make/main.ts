/**
 * After an edit of demo-data/: makes the pictures that are missing, then writes the SHA-256 of every picture and the digest of every
 * sign-off into the records, in place. Run: npm run demo-data
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { readDemoPlan, readDemoStore } from '../../../src/cli/demo/history.js';
import { DEMO } from '../store.js';
import { modelOn, signoffsOf, withDigests } from './digests.js';
import { setInRecords } from './in-place.js';
import { makeMissingPictures } from './pictures.js';

const plan = await readDemoPlan();

for (const shell of Object.keys(plan.stages)) {
  const folder = path.join(DEMO, 'shells', shell, 'photos');
  const made = await makeMissingPictures(folder, modelOn(await readDemoStore(DEMO), shell), plan);
  for (const file of made) console.log(`made ${path.relative(DEMO, file)}`);
  rewrite(path.join(folder, 'photos.yaml'), (text) =>
    setInRecords(text, 'sha256', ({ file }) =>
      createHash('sha256')
        .update(readFileSync(path.join(folder, String(file))))
        .digest('hex'),
    ),
  );
  const signed = withDigests(shell, await readDemoStore(DEMO), plan);
  rewrite(path.join(DEMO, signoffsOf(shell)), () => signed);
}

function rewrite(file: string, change: (text: string) => string): void {
  const before = readFileSync(file, 'utf8');
  const after = change(before);
  if (after === before) return;
  writeFileSync(file, after);
  console.log(`rewrote ${path.relative(DEMO, file)}`);
}
