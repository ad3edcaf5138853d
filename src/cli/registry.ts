import { type Command, Option } from 'commander';
import type { Context, Settings } from './context.js';
import { withoutFormer } from './former-options.js';
import type { Status } from './io.js';

/** Second half of a command file: plain options in, answer out, status back. */
export type Act<Options> = (options: Options, context: Context) => Promise<Status>;

/** What a command file declares itself with. */
export interface Registry {
  /** `usage` as typed (`where <shell> <query>`), one sentence of help, and at least one example. */
  add(usage: string, summary: string, examples: readonly string[]): Command;
  /** Ties arguments and options, as the command line gave them, to the act. */
  run<Options>(
    read: (args: readonly (string | readonly string[] | undefined)[], options: Readonly<Record<string, unknown>>) => Options,
    act: Act<Options>,
  ): (...given: unknown[]) => Promise<void>;
}

/** The options that may stand before or after any command's name. */
export function shareOptions(command: Command): Command {
  return command
    .addOption(new Option('--store <dir>', 'the store to work on (default: the nearest one above, else records/)'))
    .addOption(new Option('--json', 'answer with one JSON object'))
    .addOption(new Option('--quiet', 'no progress and no hints'))
    .addOption(new Option('--no-color', 'no colors (also: NO_COLOR in the environment)'));
}

/** What a printed book alone can answer: years later it may be all that there is. */
const ANSWERS_FROM_BOOK: ReadonlySet<string> = new Set([
  'check',
  'weights',
  'takeoff',
  'where',
  'behind',
  'near',
  'isolate',
  'load',
  'release',
]);

const bookOptions = (): readonly Option[] => [
  new Option('--book <file.pdf>', 'answer from the records inside a printed book; no store needed'),
  new Option('--proved', 'exit 1 unless that book is signed with a known key'),
];

/** Reads the shared options of a command and of the program before it. */
function settingsOf(command: Command): Settings {
  const { book, proved } = command.opts();
  const given = [command, command.parent].map((one) => one?.opts() ?? {});
  const any = (name: string): boolean => given.some((options) => options[name] === true);
  const store = given.map((options) => options.store).find((dir) => typeof dir === 'string');
  return {
    json: any('json'),
    quiet: any('quiet'),
    color: given.every((options) => options.color !== false),
    ...(typeof store === 'string' ? { store } : {}),
    ...(typeof book === 'string' && ANSWERS_FROM_BOOK.has(command.name()) ? { book, proved: proved === true } : {}),
  };
}

export function makeRegistry(program: Command, begin: (settings: Settings) => Context, end: (status: Status) => void): Registry {
  return {
    add(usage, summary, examples) {
      const command = shareOptions(program.command(usage).description(summary));
      if (ANSWERS_FROM_BOOK.has(command.name())) for (const one of bookOptions()) command.addOption(one);
      const heading = examples.length > 1 ? 'Examples:' : 'Example:';
      return command.addHelpText('after', `\n${heading}\n${examples.map((line) => `  ${line}`).join('\n')}`);
    },
    run(read, act) {
      return async (...given) => {
        const command = given.at(-1) as Command;
        const context = begin(settingsOf(command));
        try {
          const { given: options, notes } = withoutFormer(command.opts());
          for (const note of notes) context.tell(note);
          const status = await act(read(command.processedArgs as (string | undefined)[], options), context);
          end(Math.max(status, context.least()) as Status);
          await context.finish();
        } finally {
          context.done();
        }
      };
    },
  };
}
