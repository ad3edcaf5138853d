import { runGit } from './git.js';

const COMMIT = '\u001e';
/** An added line that begins or holds a record's id: `+- {id: W-1, …`, `+- id: W-1`, `+  id: W-1`. */
const ID = /^\+\s*(?:- ?)?(?:\{ ?)?(?:[^#]*?[\s{,])?id:\s*["']?([^\s,}"'#]+)/u;

/**
 * When each record of a shell came into its history: id → author's date (ISO 8601) of the first commit that has it. One pass over the
 * shell's folder, from the first commit on. Empty where the store is not in Git or has no commit.
 */
export async function enteredOn(root: string, shell: string): Promise<ReadonlyMap<string, string>> {
  const entered = new Map<string, string>();
  let told: string;
  try {
    told = (
      await runGit(root, [
        'log',
        '--reverse',
        '--format=%x1e%aI',
        '--patch',
        '--unified=0',
        '--no-renames',
        '--no-color',
        '--no-ext-diff',
        '--no-textconv',
        '--',
        `shells/${shell}`,
      ])
    ).toString('utf8');
  } catch {
    return entered;
  }
  let date = '';
  for (const line of told.split('\n')) {
    if (line.startsWith(COMMIT)) date = line.slice(1).trim();
    else if (line.startsWith('+') && line.includes('id:')) {
      const id = ID.exec(line)?.[1];
      if (id !== undefined && !entered.has(id)) entered.set(id, date);
    }
  }
  return entered;
}
