/**
 * How time and memory grow from 1,000 to 64,000 records. A growth exponent of 1 is linear: 64 times the records, 64 times the time.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { takeOff } from '../../src/compute/takeoff/index.js';
import { weights } from '../../src/compute/weights/index.js';
import { loadStore } from '../../src/model/load.js';
import type { LoadedShell } from '../../src/model/load-types.js';
import { benchStore, SHELL } from './store.js';
import { BUILT, node, say, told } from './tell.js';

export const SIZES = [1000, 4000, 16_000, 64_000] as const;
/** Small work is done more often: what counts is the quickest time. */
const LEAST_MS = 1500;
const MOST_TIMES = 9;

/** Told beside every growth exponent. */
const EXPONENT_GOAL = 1.1;
const PEAK_GOAL_MB = 1000;

setFlagsFromString('--expose-gc');
const tidyUp = runInNewContext('gc') as () => void;

/** Processor time of this process, ms: other work on the machine does not count, nor what other work has left in memory. */
export function cpuMs(work: () => unknown): number {
  tidyUp();
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

export function quickest(cost: () => number): number {
  let [best, spent] = [Number.POSITIVE_INFINITY, 0];
  for (let i = 0; i < MOST_TIMES && (i === 0 || spent < LEAST_MS); i++) {
    const ms = cost();
    best = Math.min(best, ms);
    spent += ms;
  }
  return best;
}

/** One line of times, and the exponent from the first to the last. */
export function tellGrowth(name: string, sizes: readonly number[], times: readonly number[]): void {
  say(`  ${name.padEnd(32)}${times.map((ms) => `${ms.toFixed(ms < 10 ? 1 : 0)} ms`.padStart(12)).join('')}`);
  const [first = 1, last = 1] = [sizes[0], sizes.at(-1)];
  told(
    `${name}, growth exponent`,
    Math.log((times.at(-1) as number) / (times[0] as number)) / Math.log(last / first),
    EXPONENT_GOAL,
  );
}

const header = (what: string): void =>
  say(`\n${what}\n  ${'records'.padEnd(32)}${SIZES.map((count) => `${count}`.padStart(12)).join('')}`);

/** Reading and weights in this process; the whole of `check` in processes of its own, with the memory that it takes at most. */
export function benchGrowth(): void {
  header('Mass items in one shell, in one process, processor time');
  const load = (files: ReadonlyMap<string, string>): LoadedShell['model'] =>
    (loadStore({ root: 'bench', files, photos: new Map() }).shells.get(SHELL) as LoadedShell).model;
  const works = { 'take-off and weights': (model: LoadedShell['model']) => weights(model, takeOff(model)) };
  const times = new Map<string, number[]>();
  const note = (name: string, ms: number): void => void times.set(name, [...(times.get(name) ?? []), ms]);
  // Once more to warm up; one size at a time, so that none is measured beside the memory of another.
  for (const [i, count] of [SIZES[1], ...SIZES].entries()) {
    const files = benchStore(count);
    const read = quickest(() => cpuMs(() => load(files)));
    const model = load(files);
    const worked = Object.entries(works).map(([name, work]) => [name, quickest(() => cpuMs(() => work(model)))] as const);
    if (i > 0) for (const [name, ms] of [['read and check the records', read] as const, ...worked]) note(name, ms);
  }
  for (const [name, list] of times) tellGrowth(name, SIZES, list);
  wholeCheck();
}

/** Runs the program and says on its last line its processor time, µs, and how much memory it had at most, kB. */
const PEAK = `import { writeSync } from 'node:fs';
process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  writeSync(2, '\\nspent ' + (userCPUTime + systemCPUTime) + ' ' + maxRSS);
});
await import(${JSON.stringify(BUILT)});`;

function wholeCheck(): void {
  header('check of the same, each in a process of its own, from start to end, processor time');
  const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-growth-'));
  try {
    let peakMb = 0;
    const times = SIZES.map((count) => {
      lay(benchStore(count), folder);
      return quickest(() => {
        const said = node(['--input-type=module', '-e', PEAK, 'shellbook', 'check', SHELL, '--store', folder, '--quiet']);
        const [, cpuUs, peakKb] = /spent (\d+) (\d+)$/u.exec(said) ?? [];
        peakMb = Number(peakKb) / 1024;
        return Number(cpuUs) / 1000;
      });
    });
    tellGrowth('check', SIZES, times);
    told(`check of ${SIZES.at(-1)} records, peak memory`, peakMb, PEAK_GOAL_MB, ' MB');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Writes the files of a store made for measuring. */
export function lay(files: ReadonlyMap<string, string>, root: string): void {
  for (const [file, text] of files) {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
}
