/**
 * How the joined program is started (`.tools/bundle.ts`): each of its files is compiled from what V8 made of it the last time, so that
 * an answer does not wait for a compiler. Knows nothing of what it starts.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';
import { CompiledCode } from './store/compiled-code.js';

// Most of what is read lives to the end: let the young generation grow at once, instead of copying it again and again. Said before the
// first file is compiled: what V8 made holds for its settings alone.
setFlagsFromString('--semi-space-growth-factor=8');

const requireHere = createRequire(import.meta.url);
const FOLDER = path.dirname(fileURLToPath(import.meta.url));

/** Parts of Node that take several milliseconds to open, and that most answers never ask: opened at their first use. */
const WHEN_ASKED = new Set([
  'node:child_process',
  'node:fs/promises',
  'node:readline',
  'node:stream/promises',
  'node:worker_threads',
]);

/** Stands for a part of Node until something of it is asked: a name, or, as `await import` does, all that it has. */
function whenAsked(id: string): object {
  const part = (): object => requireHere(id) as object;
  return new Proxy(
    {},
    {
      get: (_none, name) => Reflect.get(part(), name) as unknown,
      has: (_none, name) => Reflect.has(part(), name),
      ownKeys: () => Reflect.ownKeys(part()),
      getOwnPropertyDescriptor: (_none, name) => {
        const own = Reflect.getOwnPropertyDescriptor(part(), name);
        return own && { value: Reflect.get(part(), name) as unknown, enumerable: own.enumerable === true, configurable: true };
      },
    },
  );
}

const requireNode = (id: string): unknown => (WHEN_ASKED.has(id) ? whenAsked(id) : requireHere(id));

/** What a joined file is: a module of CommonJS as Node would wrap it. */
type Wrapped = (exports: unknown, require: (id: string) => unknown, module: object, filename: string, dirname: string) => void;

/** Code is kept by what is asked of the program, and no word of the user's own is one. */
const command = (): string => /^[a-z-]{1,24}$/u.exec(process.argv[2] ?? '')?.[0] ?? '';

/** Runs a file of the program and what that one requires. */
export function start(entry: string): void {
  const code = process.env.NODE_DISABLE_COMPILE_CACHE ? undefined : CompiledCode.open([entry, command()]);
  const modules = new Map<string, { exports: unknown }>();
  const load = (file: string): unknown => {
    const known = modules.get(file);
    if (known) return known.exports;
    const module = { exports: {} };
    modules.set(file, module);
    const bytes = readFileSync(file);
    const key = createHash('sha256').update(bytes).digest('base64');
    const cachedData = code?.get(key);
    // Joined in ASCII, a byte a character, and as one function.
    const script = new Script(bytes.toString('latin1'), { filename: file, ...(cachedData ? { cachedData } : {}) });
    code?.took(key, script);
    const folder = path.dirname(file);
    const require = (id: string): unknown => (id.startsWith('.') ? load(path.join(folder, id)) : requireNode(id));
    (script.runInThisContext() as Wrapped)(module.exports, require, module, file, folder);
    return module.exports;
  };
  if (code) process.on('exit', () => code.keep());
  load(path.join(FOLDER, entry));
}
