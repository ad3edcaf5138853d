import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { Io } from '../io.js';
import type { Choices } from './candidates.js';

/** Choices from the store around, or the one that `--store` names. Whatever cannot be read offers nothing. */
export function storeChoices(io: Io, words: readonly string[]): Choices {
  const at = words.lastIndexOf('--store');
  const named = at < 0 ? undefined : words[at + 1];
  const root = async (): Promise<string> => (await import('../../store/find.js')).findStore(io.cwd, named);
  const loaded = async () => {
    const [{ readStoreText }, { loadStore }] = await Promise.all([import('../../store/read.js'), import('../../model/load.js')]);
    return loadStore(await readStoreText(await root()));
  };
  const orNone =
    <Args extends readonly unknown[]>(find: (...args: Args) => Promise<readonly string[]>) =>
    (...args: Args): Promise<readonly string[]> =>
      find(...args).catch(() => []);
  return {
    shells: orNone(async () => {
      const found = await readdir(path.join(await root(), 'shells'), { withFileTypes: true });
      return found.filter((one) => one.isDirectory()).map((one) => one.name);
    }),
    panels: orNone(async (shell: string) => {
      const model = (await loaded()).shells.get(shell)?.model;
      return model?.shell.panels.filter((one) => one.panelKind === 'access').map((one) => one.id) ?? [];
    }),
    stages: orNone(async () => (await loaded()).library.stages.map((one) => one.id)),
    ids: orNone(async (shell: string) => [...((await loaded()).shells.get(shell)?.model.shell.byId.keys() ?? [])]),
    rules: orNone(async () => (await import('../../rules/index.js')).RULES.map(({ name }) => name)),
    kinds: orNone(async () => {
      const { ENTRY_KINDS } = await import('../../entry/homes.js');
      return ENTRY_KINDS.map(String);
    }),
  };
}
