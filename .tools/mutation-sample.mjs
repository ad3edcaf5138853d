import { createHash } from 'node:crypto';

/**
 * Draws the changes that a mutation run tries (`SHELLBOOK_SAMPLE`, `SHELLBOOK_SEED`), and prints what share of them a test found out.
 * Each change is as likely to be drawn as any other. What is not drawn is set aside before a test runs, and counts for nothing.
 */
const WANTED = Number(process.env.SHELLBOOK_SAMPLE ?? 0);
const SEED = process.env.SHELLBOOK_SEED ?? '1';

/** The place and kind of a change, mixed with the seed: the changes with the least of these are drawn. */
function lot({ fileName, location, mutatorName, replacement }) {
  const { start, end } = location;
  const where = [fileName.split('/src/').at(-1), start.line, start.column, end.line, end.column, mutatorName, replacement];
  return createHash('sha256')
    .update(`${SEED}\n${where.join('\n')}`)
    .digest('hex');
}

class Sample {
  drawn = new Set();

  async init() {}

  /** All changes come at once; they are drawn here, before any is checked. */
  async group(mutants) {
    const lots = mutants.map((mutant) => ({ id: mutant.id, lot: lot(mutant) })).sort((a, b) => (a.lot < b.lot ? -1 : 1));
    for (const { id } of lots.slice(0, Math.max(0, WANTED - this.drawn.size))) this.drawn.add(id);
    return mutants.length === 0 ? [] : [mutants.map(({ id }) => id)];
  }

  async check(mutants) {
    const told = (id) => (this.drawn.has(id) ? { status: 'passed' } : { status: 'compileError', reason: 'not drawn' });
    return Object.fromEntries(mutants.map(({ id }) => [id, told(id)]));
  }
}

/** Wilson's interval of 95 % of a share (E. B. Wilson, 1927), from memory. */
export function interval(found, tried) {
  const z = 1.959964;
  const share = found / tried;
  const middle = share + z ** 2 / (2 * tried);
  const half = z * Math.sqrt((share * (1 - share)) / tried + z ** 2 / (4 * tried ** 2));
  return [middle - half, middle + half].map((bound) => bound / (1 + z ** 2 / tried));
}

const percent = (share) => `${(100 * share).toFixed(1)} %`;

class Interval {
  onMutationTestReportReady(report) {
    const statuses = Object.values(report.files).flatMap(({ mutants }) => mutants.map(({ status }) => status));
    const count = (...of) => statuses.filter((status) => of.includes(status)).length;
    const [killed, timeouts, missed] = [count('Killed'), count('Timeout'), count('Survived', 'NoCoverage')];
    const tried = killed + timeouts + missed;
    if (tried === 0) return;
    const total = tried + count('CompileError', 'Pending');
    const [low, high] = interval(killed + timeouts, tried);
    process.stdout.write(
      `${tried} of ${total} changes tried (seed ${SEED}): ${percent((killed + timeouts) / tried)} found out, ` +
        `95 % interval ${percent(low)} to ${percent(high)}. Killed ${killed}, not found out ${missed} ` +
        `(${count('NoCoverage')} where no test comes), ended by time ${timeouts} ` +
        `(without them ${percent(killed / Math.max(1, killed + missed))}), static and left out ${count('Ignored')}.\n`,
    );
  }
}

export const strykerPlugins = [
  { kind: 'Checker', name: 'sample', injectableClass: Sample },
  { kind: 'Reporter', name: 'interval', injectableClass: Interval },
];
