import os from 'node:os';
import path from 'node:path';
import fc from 'fast-check';

/**
 * Property tests take the same examples in every run, so that a red gate means a change and not a draw. `SHELLBOOK_SEED=random`
 * (or a number) draws others, to look for what these do not find.
 */
const wanted = process.env.SHELLBOOK_SEED ?? '20261125';
if (wanted !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(wanted) });

// What is kept of the user's own goes to a folder of the tests; the programs that they start find it there too.
process.env.XDG_CACHE_HOME = path.join(os.tmpdir(), `shellbook-tests-${os.userInfo().username}`);
process.env.XDG_STATE_HOME = process.env.XDG_CACHE_HOME;
