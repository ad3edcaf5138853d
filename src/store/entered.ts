import { patchLog } from './git/patch-log.js';
import { isUnborn, repositoryOf } from './git/repository.js';

const COMMIT = '\u001e';
/** An added line that begins or holds a record's id: `+- {id: W-1, …`, `+- id: W-1`, `+  id: W-1`. */
const ID = /^\+\s*(?:- ?)?(?:\{ ?)?(?:[^#]*?[\s{,])?id:\s*["']?([^\s,}"'#]+)/u;

/** When a record came into the history (ISO 8601), and under whose name. */
export interface Entered {
  readonly date: string;
  readonly who: string;
}

/** As `enteredBy`, without the names. */
export async function enteredOn(root: string, shell: string): Promise<ReadonlyMap<string, string>> {
  return new Map([...(await enteredBy(root, shell))].map(([id, { date }]) => [id, date]));
}

/**
 * When each record of a shell came into its history, and by whom: by the author's date and name of the first commit that has it. One pass over the
 * shell's folder, from the first commit on. Empty where the store is not in Git or has no commit. Throws {@link GitFailed} where
 * the history is not all here.
 */
export async function enteredBy(root: string, shell: string): Promise<ReadonlyMap<string, Entered>> {
  const entered = new Map<string, Entered>();
  const repository = repositoryOf(root);
  if (!repository || isUnborn(repository)) return entered;
  const told = await patchLog(root, '%x1e%aI %an', [`shells/${shell}`]);
  let commit: Entered = { date: '', who: '' };
  for (const line of told.split('\n')) {
    if (line.startsWith(COMMIT)) {
      const [date = '', ...name] = line.slice(1).trim().split(' ');
      commit = { date, who: name.join(' ') };
    } else if (line.startsWith('+') && line.includes('id:')) {
      const id = ID.exec(line)?.[1];
      if (id !== undefined && !entered.has(id)) entered.set(id, commit);
    }
  }
  return entered;
}
