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

interface Goal {
  readonly what: string;
  readonly shown: string;
  readonly most: string;
  readonly met: boolean;
}

const goals: Goal[] = [];

/** A figure beside its goal. */
export function told(what: string, value: number, most?: number, unit = ''): void {
  const shown = `${value.toFixed(2)}${unit}`;
  if (most === undefined) {
    say(`  ${what}: ${shown}`);
    return;
  }
  const met = value <= most;
  goals.push({ what, shown, most: `${most}${unit}`, met });
  say(`  ${what}: ${shown}   goal at most ${most}${unit}: ${met ? 'met' : 'NOT MET'}`);
}

/** A part of the run that broke off, whose figures are missing: no goal of it is met. */
export function brokeOff(what: string, error: unknown): void {
  goals.push({ what, shown: 'not measured', most: '-', met: false });
  say(`\n${what} broke off: ${error instanceof Error ? error.message : String(error)}`);
}

/** The last word of a run: every goal in one table. It ends with status 1 where one was missed. */
export function tellGoals(): void {
  const missed = goals.filter(({ met }) => !met);
  if (missed.length > 0) process.exitCode = 1;
  const width = Math.max(...goals.map(({ what }) => what.length));
  say('\nGoals');
  for (const { what, shown, most, met } of goals)
    say(`  ${what.trim().padEnd(width)}  ${shown.padStart(12)}  at most ${most.padStart(7)}  ${met ? 'met' : 'NOT MET'}`);
  say(`\nGoals met: ${goals.length - missed.length} of ${goals.length}`);
}
