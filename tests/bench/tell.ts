import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Measured } from './measure.js';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

export const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Status 2 is a command that could not be done: then there is nothing to measure. */
export function node(args: readonly string[], cwd = PROJECT): string {
  const done = spawnSync(process.execPath, args, { cwd, stdio: ['ignore', 'ignore', 'pipe'], encoding: 'utf8' });
  if (done.status !== 0 && done.status !== 1) throw new Error(`node ${args[0]} ended with ${done.status}: ${done.stderr}`);
  return done.stderr;
}

/** The built program, wherever the command is run. */
export const BUILT = fileURLToPath(new URL('../../dist/main.js', import.meta.url));

export function tell(title: string, list: readonly Measured[]): void {
  say(title);
  for (const { name, medianMs, lowMs, highMs } of list) {
    say(`  ${name.padEnd(32)}${medianMs.toFixed(0).padStart(7)} ms   ${lowMs.toFixed(0)} to ${highMs.toFixed(0)}`);
  }
}

/** With `most`, the goal is told beside it. */
export function ratio(list: readonly Measured[], name: string, against: string, most?: number): void {
  const of = (one: string): number => list.find((each) => each.name === one)?.medianMs ?? Number.NaN;
  told(`${name} ÷ ${against}`, of(name) / of(against), most);
}

const missed: string[] = [];
let asked = 0;

/** A figure beside its goal. */
export function told(what: string, value: number, most?: number, unit = ''): void {
  const shown = `${what}: ${value.toFixed(2)}${unit}`;
  if (most === undefined) {
    say(`  ${shown}`);
    return;
  }
  asked += 1;
  const met = value <= most;
  if (!met) missed.push(shown);
  say(`  ${shown}   goal at most ${most}${unit}: ${met ? 'met' : 'NOT MET'}`);
}

/** The last word of a run, which ends with status 1 where a goal was missed. */
export function tellGoals(): void {
  if (missed.length > 0) process.exitCode = 1;
  say(`\nGoals met: ${asked - missed.length} of ${asked}${missed.length > 0 ? `. Not met: ${missed.join('; ')}` : ''}`);
}
