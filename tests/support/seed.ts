import fc from 'fast-check';

/**
 * Property tests take the same examples in every run, so that a red gate means a change and not a draw. `SHELLBOOK_SEED=random`
 * (or a number) draws others, to look for what these do not find.
 */
const wanted = process.env.SHELLBOOK_SEED ?? '20261125';
if (wanted !== 'random') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(wanted) });
