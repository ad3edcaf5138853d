import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { median } from './measure.js';
import { node } from './tell.js';

/** What `shellbook` starts. */
export const STARTED = fileURLToPath(new URL('../../dist/shellbook.cjs', import.meta.url));

/** Says last what the process has spent, µs, and its memory at most, kB. */
const SPENT = `process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  require('node:fs').writeSync(2, '\\nspent ' + (userCPUTime + systemCPUTime) + ' ' + maxRSS);
});`;

/** After these V8 has learnt what a command runs. */
const LEARNING_RUNS = 4;

/** Processor time of one process of Node, ms: other work on the machine does not spend it. */
export type SpentMs = (args: readonly string[]) => number;

/** Lays down in `folder` what a process of Node loads to say what it spent; the options that have it loaded. */
export function watchedIn(folder: string): readonly string[] {
  const watch = path.join(folder, 'spent.cjs');
  writeFileSync(watch, SPENT);
  return ['--require', watch];
}

/** What a watched process said last: processor time, ms, and memory at most, MB. Undefined where it said nothing. */
export function saidSpent(said: string): { readonly ms: number; readonly peakMb: number } | undefined {
  const [, us, kb] = /spent (\d+) (\d+)$/u.exec(said) ?? [];
  return us === undefined ? undefined : { ms: Number(us) / 1000, peakMb: Number(kb) / 1024 };
}

/** @param folder Where the file may lie that the process loads to say it. */
export function spentIn(folder: string): SpentMs {
  const watched = watchedIn(folder);
  return (args) => saidSpent(node([...watched, ...args]))?.ms ?? Number.NaN;
}

/** The median of each, once V8 has learnt it; in turn, round after round. */
export function spentEach(
  works: ReadonlyMap<string, readonly string[]>,
  spentMs: SpentMs,
  rounds: number,
): ReadonlyMap<string, number> {
  for (let run = 0; run < LEARNING_RUNS; run++) for (const args of works.values()) spentMs(args);
  const spent = new Map([...works.keys()].map((name) => [name, [] as number[]] as const));
  for (let round = 0; round < rounds; round++) for (const [name, args] of works) spent.get(name)?.push(spentMs(args));
  return new Map([...spent].map(([name, all]) => [name, median(all)]));
}
