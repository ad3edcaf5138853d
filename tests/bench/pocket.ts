import { readFileSync } from 'node:fs';
import path from 'node:path';
import { assess } from '../../src/assess.js';
import { pageScript } from '../../src/cli/page-script.js';
import { DEMO, judged } from '../demo/store.js';
import { smallPage } from '../pocket/small-page.js';
import { median } from './measure.js';
import { benchPhone } from './phone.js';
import { told } from './tell.js';
import { trainOf } from './train.js';

const ROUNDS = 3;
const COACHES = 10;

/** What a page for a phone costs to make, and what it is like to open, to search and to move on a slow processor. */
export async function benchPocket(): Promise<void> {
  const { model } = judged('OV-021').assessment;
  const photos = new Map(model.shell.photos.map(({ id, file }) => [id, path.join(DEMO, 'shells/OV-021/photos', file)] as const));
  const photoFile = async (id: string): Promise<Buffer> => readFileSync(photos.get(id) as string);
  const script = await pageScript('pocket');
  const page = (of = assess({ ...model }, [])): Promise<string> => smallPage('service', { assessment: of, photoFile, script });
  const checks: number[] = [];
  const pages: number[] = [];
  for (let round = 0; round <= ROUNDS; round++) {
    const check = await processorMs(() => assess({ ...model }, []).findings.length);
    const made = await processorMs(page);
    if (round === 0) continue;
    checks.push(check);
    pages.push(made);
  }
  told('\nEverything that check computes, processor time', median(checks), undefined, ' ms');
  told('make the demo’s page for a phone, processor time', median(pages), undefined, ' ms');
  told('make the page for a phone ÷ everything that check computes', median(pages) / median(checks), 2);
  const train = trainOf(model, COACHES);
  let tenfold = '';
  const made = await processorMs(async () => {
    tenfold = await page(assess(train, []));
  });
  told(`make the page of ${COACHES} coaches in a row`, made, undefined, ' ms');
  told(`a coach of it ÷ the demo’s page`, made / COACHES / median(pages), 3);
  await benchPhone({ demo: await page(), tenfold });
}

/** Processor time of this process with all its threads: other work on the machine does not count. */
async function processorMs(work: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

if (process.argv[1]?.endsWith('pocket.ts')) await benchPocket();
