/**
 * The demo, laid down and printed once for all tests that look at it. It is kept in node_modules under a digest of everything that it is
 * made from, so that another state of the program never answers for this one.
 */
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runProgram } from '../../src/cli/program.js';
import { underLock } from '../../src/store/lock.js';
import { literalIo } from '../cli/literal-io.js';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const ROOM = path.join(ROOT, 'node_modules', '.cache', 'shellbook-tests');
const MADE_FROM = ['src', 'templates', 'demo-data', 'package-lock.json'];
/** Printing takes long on a busy machine, and the other processes wait for it. */
const PATIENCE_MS = 800_000;

export interface PrintedDemo {
  /** The folder that it was run in: the store is `demo` within. To be looked at, and never changed. */
  readonly top: string;
  readonly status: number;
  readonly answer: string;
  readonly messages: string;
}

/** The demo of this state of the program, printed now where it was not yet. */
export async function printedDemo(): Promise<PrintedDemo> {
  mkdirSync(ROOM, { recursive: true });
  return underLock(ROOM, async () => kept() ?? (await print()), PATIENCE_MS);
}

/** Keeps a demo that was printed elsewhere by this state of the program: by what was packed and installed. */
export function keepDemo(top: string, told: Omit<PrintedDemo, 'top'>): void {
  mkdirSync(ROOM, { recursive: true });
  const place = mkdtempSync(path.join(ROOM, 'making-'));
  cpSync(path.join(top, 'demo'), path.join(place, 'demo'), { recursive: true, preserveTimestamps: true });
  settle(place, told);
}

const entry = (): string => path.join(ROOM, `demo-${key()}`);

function kept(): PrintedDemo | undefined {
  const top = entry();
  if (!existsSync(top)) return undefined;
  return { top, ...(JSON.parse(readFileSync(path.join(top, 'told.json'), 'utf8')) as Omit<PrintedDemo, 'top'>) };
}

async function print(): Promise<PrintedDemo> {
  const place = mkdtempSync(path.join(ROOM, 'making-'));
  const io = literalIo(place);
  const status = await runProgram(['demo', 'demo'], io);
  settle(place, { status, answer: io.answer(), messages: io.messages() });
  return kept() as PrintedDemo;
}

/** At one stroke; those of other states go, and what a killed run left. */
function settle(place: string, told: Omit<PrintedDemo, 'top'>): void {
  writeFileSync(path.join(place, 'told.json'), JSON.stringify(told));
  for (const name of readdirSync(ROOM))
    if (/^(?:demo|making)-/u.test(name) && name !== path.basename(place)) rmSync(path.join(ROOM, name), { recursive: true });
  renameSync(place, entry());
}

function key(): string {
  const hash = createHash('sha256').update(process.version);
  const add = (name: string): void => {
    hash.update(`\n${name}\n`).update(readFileSync(path.join(ROOT, name)));
  };
  for (const part of MADE_FROM) {
    if (part.includes('.')) add(part);
    else
      for (const name of readdirSync(path.join(ROOT, part), { recursive: true, encoding: 'utf8' }).sort())
        if (/\.\w+$/u.test(name)) add(path.join(part, name));
  }
  return hash.digest('hex').slice(0, 24);
}
