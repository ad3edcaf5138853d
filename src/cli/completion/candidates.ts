import type { Command, Option } from 'commander';

/** What a store has to choose from; each is asked for only where the word may be one. */
export interface Choices {
  shells(): Promise<readonly string[]>;
  /** Access panels of a shell. */
  panels(shell: string): Promise<readonly string[]>;
  stages(): Promise<readonly string[]>;
  /** Every id of a shell. */
  ids(shell: string): Promise<readonly string[]>;
  kinds(): Promise<readonly string[]>;
  /** Names of rules. */
  rules(): Promise<readonly string[]>;
}

/** Names from folders and records are untrusted, and shells expand what they are given: only these signs go to one. */
const SAFE = /^[\p{L}\p{N}][\p{L}\p{N}._/+-]*$/u;
const OPTION = /^--[a-z][a-z-]*$/u;

/**
 * What may stand in the place of the last word: commands, options, choices of an option, shells, panels, stages, ids.
 * @param words Everything typed after the program's name; the last is what is being typed, and may be empty.
 */
export async function candidates(program: Command, words: readonly string[], choices: Choices): Promise<readonly string[]> {
  const typed = words.at(-1) ?? '';
  const before = words.slice(0, -1);
  const found = await within(program, before, typed, choices);
  return [...new Set(found)].filter((one) => one.startsWith(typed) && (typed.startsWith('-') ? OPTION : SAFE).test(one));
}

async function within(program: Command, before: readonly string[], typed: string, choices: Choices): Promise<readonly string[]> {
  const { command, given, open } = walk(program, before);
  if (open) return open.argChoices ?? (/^--(?:by|stage)$/u.test(open.long ?? '') ? choices.stages() : []);
  if (typed.startsWith('-')) return optionsOf(command, program).flatMap(({ long, hidden }) => (long && !hidden ? [long] : []));
  if (command === program) return [...program.commands.map((one) => one.name()), 'help'];
  if (command.name() === 'help') return program.commands.map((one) => one.name());
  const argument = command.registeredArguments[given.length] ?? command.registeredArguments.findLast((one) => one.variadic);
  switch (argument?.name()) {
    case 'shell':
    case 'shells':
      return choices.shells();
    case 'panel':
      return choices.panels(given[0] ?? '');
    case 'stage':
      return choices.stages();
    case 'kind':
      return choices.kinds();
    case 'rule':
      return choices.rules();
    case 'id':
    case 'query':
      return choices.ids(given[0] ?? '');
    default:
      return argument?.argChoices ?? [];
  }
}

interface Walked {
  readonly command: Command;
  /** Arguments of the command so far. */
  readonly given: readonly string[];
  /** An option that waits for its value. */
  readonly open?: Option;
}

function walk(program: Command, words: readonly string[]): Walked {
  let command = program;
  const given: string[] = [];
  let open: Option | undefined;
  for (const word of words) {
    if (open) open = undefined;
    else if (word.startsWith('-')) {
      const option = optionsOf(command, program).find(({ long, short }) => word === long || word === short);
      if (option && (option.required || option.optional)) open = option;
    } else if (command === program) command = program.commands.find((one) => one.name() === word) ?? program;
    else given.push(word);
  }
  return { command, given, ...(open ? { open } : {}) };
}

const optionsOf = (command: Command, program: Command): readonly Option[] =>
  command === program ? program.options : [...command.options, ...program.options];
