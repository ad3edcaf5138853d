import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Measured } from './measure.js';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

export const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Status 2 is a command that could not be done: then there is nothing to measure. */
export function node(args: readonly string[]): void {
  const done = spawnSync(process.execPath, args, { cwd: PROJECT, stdio: ['ignore', 'ignore', 'pipe'], encoding: 'utf8' });
  if (done.status !== 0 && done.status !== 1) throw new Error(`node ${args[0]} ended with ${done.status}: ${done.stderr}`);
}

export function tell(title: string, list: readonly Measured[]): void {
  say(title);
  for (const { name, medianMs, lowMs, highMs } of list) {
    say(`  ${name.padEnd(32)}${medianMs.toFixed(0).padStart(7)} ms   ${lowMs.toFixed(0)} to ${highMs.toFixed(0)}`);
  }
}

export function ratio(list: readonly Measured[], name: string, against: string): void {
  const of = (one: string): number => list.find((each) => each.name === one)?.medianMs ?? Number.NaN;
  say(`  ${name} ÷ ${against}: ${(of(name) / of(against)).toFixed(2)}`);
}
