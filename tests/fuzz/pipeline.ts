import type { Assessment } from '../../src/assess.js';
import { EDITIONS } from '../../src/book/input.js';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from '../cli/literal-io.js';
import { foreign, readMarkup } from '../security/markup.js';
import { bookPage, labelPage } from '../security/pages.js';

export interface Ran {
  readonly args: readonly string[];
  readonly status: number;
  readonly answer: string;
  readonly messages: string;
  /** Of the processor: a busy machine makes nothing hang. */
  readonly tookMs: number;
}

/** Runs one command over a folder in this process. */
export async function ran(root: string, ...args: readonly string[]): Promise<Ran> {
  const io = literalIo(root);
  const from = process.cpuUsage();
  const status = await runProgram(args, io);
  return { args, status, answer: io.answer(), messages: io.messages(), tookMs: since(from) };
}

function since(from: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

const SLOWEST_MS = 10_000;

/**
 * What no store, however spoiled, may bring a command to. Empty where all is well.
 * @param typed Everything that the store holds: what it says itself may be said again.
 */
export function complaints({ args, status, answer, messages, tookMs }: Ran, typed: string): readonly string[] {
  const said: string[] = [];
  const name = args.join(' ');
  if (![0, 1, 2].includes(status)) said.push(`${name}: exit status ${status}`);
  if (tookMs > SLOWEST_MS) said.push(`${name}: took ${Math.round(tookMs)} ms`);
  if (/Unexpected fault|mistake in shellbook/u.test(messages)) said.push(`${name}: ${messages.trim().split('\n')[0]}`);
  if (/^\s+at .+(?:\.[cm]?[jt]s|node:\S+):\d+:\d+/mu.test(answer + messages)) said.push(`${name}: shows a stack`);
  for (const word of ['undefined', 'NaN', '[object ']) {
    if ((answer + messages).includes(word) && !typed.includes(word)) said.push(`${name}: says ${word}`);
  }
  // A table goes to a file byte for byte; this output is no terminal.
  const shown = args[0] === 'export' ? messages : answer + messages;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: that none is sent to a terminal
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001a\u001c-\u001f\u202a-\u202e]/u.test(shown))
    said.push(`${name}: sends a control character`);
  if (status === 2 && (answer !== '' || messages === '')) said.push(`${name}: status 2 with an answer, or without a word`);
  if (args.includes('--json') && status !== 2) said.push(...jsonComplaints(name, answer));
  if (args[0] === 'check' && args.includes('--json') && status !== 2) said.push(...statusComplaints(name, status, answer));
  return said;
}

/** Errors say no, and so do warnings that nobody decided; notes and decided warnings do not. */
function statusComplaints(name: string, status: number, answer: string): readonly string[] {
  const { findings } = JSON.parse(answer) as { findings: { severity: string; decided_by?: unknown }[] };
  const blocking = findings.filter(
    ({ severity, decided_by }) => severity === 'error' || (severity === 'warning' && decided_by === undefined),
  );
  return status === (blocking.length > 0 ? 1 : 0) ? [] : [`${name}: status ${status} with ${blocking.length} that block`];
}

/** The same for a printed page: one edition, drawn by number, and the labels. */
export async function pageComplaints(assessment: Assessment, drawn: number, typed: string): Promise<readonly string[]> {
  const edition = EDITIONS[drawn % EDITIONS.length] as (typeof EDITIONS)[number];
  const from = process.cpuUsage();
  const pages = [(await bookPage(assessment, edition)).html, labelPage(assessment).html].map(readMarkup);
  const tookMs = since(from);
  const said = pages.flatMap(foreign);
  if (tookMs > SLOWEST_MS) said.push(`${edition}: took ${Math.round(tookMs)} ms`);
  for (const word of ['undefined', 'NaN', 'Infinity', '[object ']) {
    if (pages.some(({ words, tags }) => words.includes(word) || tags.some(({ attributes }) => holds(attributes, word)))) {
      if (!typed.includes(word)) said.push(`${edition}: says ${word}`);
    }
  }
  return said;
}

/** Pictures and letters within the page are left out: they hold any word. */
const holds = (attributes: Readonly<Record<string, string>>, word: string): boolean =>
  Object.values(attributes).some((value) => value.includes(word) && !value.startsWith('data:'));

function jsonComplaints(name: string, answer: string): readonly string[] {
  try {
    const { findings = [] } = JSON.parse(answer);
    return findings.flatMap((one: { message: string; file: string; line: number; column: number; rule: string }) => {
      if (!(one.line >= 1 && one.column >= 1) || one.file === '') return [`${name}: ${one.rule} has no place`];
      return /\n/u.test(one.message) ? [`${name}: ${one.rule} has a line break in its message`] : [];
    });
  } catch {
    return [`${name}: answers what is no JSON`];
  }
}
