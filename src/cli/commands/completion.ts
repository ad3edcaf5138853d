import { Argument } from 'commander';
import { SCRIPTS, SHELLS, type ShellName } from '../completion/scripts.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly of: ShellName;
}

export function declareCompletion(registry: Registry): void {
  registry
    .add('completion', 'makes Tab complete commands, shells and IDs in bash, zsh or fish', [
      'source <(shellbook completion bash)    in ~/.bashrc',
    ])
    .helpGroup('For developers:')
    .addArgument(new Argument('<of>', 'which command shell').choices(SHELLS))
    .action(registry.run(([of]) => ({ of: of as ShellName }), completion));
}

async function completion({ of }: Options, context: Context): Promise<Status> {
  context.print(SCRIPTS[of]);
  return 0;
}
