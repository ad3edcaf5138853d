import { Command, CommanderError } from 'commander';
import { getOwn } from '../get-own.js';
import { UserError } from '../user-error.js';
import { makeContext } from './context.js';
import type { Io, Status } from './io.js';
import { makeRegistry, type Registry, shareOptions } from './registry.js';
import { printable } from './report/printable.js';
import { version } from './version.js';

const ABOUT = `Keeps the record of a welded aluminium coach shell as YAML in Git, checks it,
and prints its as-built book.`;

const AFTER = `
Exit status: 0 done and clean; 1 done, and the answer is "no"; 2 not done.
Start with:  shellbook demo        the whole job on a made-up store
             shellbook new-store   a store of your own`;

/** Runs one command line (without the program's own name). Never throws; gives the exit status. */
export async function runProgram(args: readonly string[], io: Io): Promise<Status> {
  let status: Status = 0;
  const program = buildProgram(await commandsFor(args[0]), io, (ended) => {
    status = ended;
  });
  try {
    if (args[0] === COMPLETE) return await complete(program, args.slice(1), io);
    await program.parseAsync(args.map(shieldPosition), { from: 'user' });
    return status;
  } catch (error) {
    return failed(error, io);
  }
}

type Declare = (registry: Registry) => void;

/** Looked up many times a day: these are declared alone, so that the answer begins sooner. */
const ALONE: Readonly<Record<string, () => Promise<Declare>>> = {
  check: async () => (await import('./commands/check.js')).declareCheck,
  trace: async () => (await import('./commands/trace.js')).declareTrace,
  list: async () => (await import('./commands/list.js')).declareList,
  where: async () => (await import('./commands/where.js')).declareWhere,
  behind: async () => (await import('./commands/behind.js')).declareBehind,
  near: async () => (await import('./commands/near.js')).declareNear,
  load: async () => (await import('./commands/load.js')).declareLoad,
  isolate: async () => (await import('./commands/isolate.js')).declareIsolate,
  weights: async () => (await import('./commands/weights.js')).declareWeights,
  takeoff: async () => (await import('./commands/takeoff.js')).declareTakeoff,
  overlay: async () => (await import('./commands/overlay.js')).declareOverlay,
  locate: async () => (await import('./commands/locate.js')).declareLocate,
  verify: async () => (await import('./commands/verify.js')).declareVerify,
  release: async () => (await import('./commands/release.js')).declareRelease,
  progress: async () => (await import('./commands/progress.js')).declareProgress,
};

async function commandsFor(named: string | undefined): Promise<readonly Declare[]> {
  const alone = named === undefined ? undefined : getOwn(ALONE, named);
  return alone ? [await alone()] : (await import('./commands/index.js')).COMMANDS;
}

/** What the scripts of `completion` call on Tab; no command, so that no help shows it. */
const COMPLETE = '--complete';

async function complete(program: Command, words: readonly string[], io: Io): Promise<Status> {
  const [{ candidates }, { storeChoices }] = await Promise.all([
    import('./completion/candidates.js'),
    import('./completion/choices.js'),
  ]);
  for (const one of await candidates(program, words, storeChoices(io, words))) io.out.write(`${one}\n`);
  return 0;
}

/** `-10in,0,5in` is a place and no option: with a blank before it, it is read as what it is. */
const shieldPosition = (arg: string): string => (/^-[\d.][^,]*,/u.test(arg) ? ` ${arg}` : arg);

function buildProgram(commands: readonly Declare[], io: Io, end: (status: Status) => void): Command {
  const program = new Command('shellbook');
  program
    .description(ABOUT)
    .version(version(), '-V, --version', 'the version of this program')
    .helpOption('-h, --help', 'this help; after a command, its own')
    .helpCommand('help [command]', 'the help of a command')
    .addHelpText('after', AFTER)
    .configureHelp({ helpWidth: 80, subcommandTerm: termOf })
    .configureOutput({
      writeOut: (text) => io.out.write(text),
      writeErr: (text) => io.err.write(text),
      outputError: (text, write) => write(usageMessage(text)),
    })
    .showSuggestionAfterError(true)
    .exitOverride();
  shareOptions(program);
  const registry = makeRegistry(program, (settings) => makeContext(settings, io), end);
  for (const declare of commands) declare(registry);
  return program;
}

/** `where <shell> <query>`: the options are the same everywhere and only take room. */
const termOf = (command: Command): string =>
  [command.name(), ...command.registeredArguments.map((one) => bracketed(one.name(), one.required, one.variadic))].join(' ');

const bracketed = (name: string, required: boolean, variadic: boolean): string => {
  const shown = variadic ? `${name}...` : name;
  return required ? `<${shown}>` : `[${shown}]`;
};

/** Commander's `error: unknown command 'chek'` in this program's form, with the way to help. */
function usageMessage(text: string): string {
  const said = text.trim().replace(/^error: /u, '');
  return `shellbook: ${printable(said.charAt(0).toUpperCase() + said.slice(1))}\nSee \`shellbook --help\`.\n`;
}

function failed(error: unknown, io: Io): Status {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof UserError) {
    io.err.write(`shellbook: ${printable(error.message)}\n`);
    return error.status;
  }
  const said = error instanceof Error ? error.message : String(error);
  io.err.write(`shellbook: Unexpected fault: ${printable(said.split('\n')[0] ?? '')}\n`);
  io.err.write('This is a mistake in shellbook, not in your records: please report it. SHELLBOOK_DEBUG=1 shows more.\n');
  if (io.env.SHELLBOOK_DEBUG && error instanceof Error) io.err.write(`${printable(error.stack ?? '')}\n`);
  return 2;
}
