/**
 * Tests the tests: changes the program a little, many times over, and looks whether a test turns red.
 *
 *     SHELLBOOK_MUTATE=weights npm run mutation
 *     SHELLBOOK_MUTATE=weights npm run mutation -- --mutate src/compute/weights/tanks.ts
 *
 * The second line takes one file. What was tried before and did not change is not tried again; `--force` tries it all.
 *
 *     SHELLBOOK_MUTATE=isolation SHELLBOOK_SAMPLE=100 SHELLBOOK_SEED=1 npm run mutation
 *
 * tries a hundred changes drawn at random, the same ones for the same seed, and prints the score with its interval.
 */

/** What is changed, and the tests near to it. Further tests would catch more, and take hours. */
const SUBJECTS = {
  weights: {
    mutate: ['src/compute/weights/*.ts'],
    tests: ['tests/compute/weights/**/*.test.ts', 'tests/rules/weight/**/*.test.ts'],
  },
  takeoff: { mutate: ['src/{compute/takeoff,sections}/**/*.ts'], tests: ['tests/compute/takeoff/**/*.test.ts'] },
  isolation: {
    mutate: ['src/query/isolate/**/*.ts'],
    tests: [
      'tests/query/isolate/**/*.test.ts',
      'tests/query/hazards.test.ts',
      'tests/fuzz/isolation.test.ts',
      'tests/rules/service/{feeders,roles}.test.ts',
      'tests/drawing/emergency.test.ts',
    ],
  },
  places: {
    mutate: [
      'src/model/{anchor,occupant,place-at,placed,tape,tape-end,tape-solid,typed-origin}.ts',
      'src/compute/access/surfaces.ts',
      'src/query/{place,place-words}.ts',
      'src/query/lookup/where.ts',
    ],
    tests: [
      'tests/model/{place-at,tape,tape-solid}.test.ts',
      'tests/compute/access/{surface-of,surfaces}.test.ts',
      'tests/query/{place,place-regions,place-words}.test.ts',
      'tests/query/lookup/*.test.ts',
    ],
  },
  entry: {
    mutate: ['src/entry/**/*.ts'],
    tests: ['tests/entry/**/*.test.ts', 'tests/cli/{add,import,entry-steps}.test.ts'],
  },
  pictures: {
    mutate: ['src/compute/{camera,pictures}/*.ts'],
    tests: ['tests/compute/{camera,pictures}/*.test.ts'],
  },
  'weight-rules': {
    mutate: ['src/rules/weight/*.ts'],
    tests: ['tests/rules/weight/**/*.test.ts', 'tests/compute/weights/**/*.test.ts'],
  },
  geometry: { mutate: ['src/geometry/*.ts'], tests: ['tests/geometry/**/*.test.ts', 'tests/compute/access/**/*.test.ts'] },
  evidence: {
    mutate: ['src/compute/{welding,verdicts,record}/*.ts', 'src/query/release/*.ts', 'src/closeout/*.ts'],
    tests: [
      'tests/compute/{welding,record}/**/*.test.ts',
      'tests/query/release/**/*.test.ts',
      'tests/rules/{weld,test,record,order}/**/*.test.ts',
      'tests/closeout/{items,hold-points}.test.ts',
    ],
  },
};

const name = process.env.SHELLBOOK_MUTATE ?? '';
const subject = SUBJECTS[name];
if (!subject) throw new Error(`Unknown SHELLBOOK_MUTATE \`${name}\`, expected one of ${Object.keys(SUBJECTS).join(', ')}`);

/** How many changes to draw; none for all. */
const sampled = Number(process.env.SHELLBOOK_SAMPLE ?? 0) > 0;

export const nearTests = subject.tests;

export default {
  mutate: subject.mutate,
  testRunner: 'vitest',
  vitest: { configFile: '.vitest.mutation.config.ts', related: false },
  coverageAnalysis: 'perTest',
  concurrency: 1,
  // A machine with other work to do is slow; what truly never ends is stopped by counting.
  timeoutMS: 30_000,
  dryRunTimeoutMinutes: 20,
  // Constants of a module: the environment would have to start anew, with every test, for each of them.
  ignoreStatic: true,
  // Strings are sentences for people, whose wording is not tested letter by letter, or words of a union, which the type check holds.
  mutator: { excludedMutations: ['StringLiteral'] },
  // No compiler looks at the changed program, and the rewriting of tsconfig files wants an older one.
  checkers: sampled ? ['sample'] : [],
  plugins: ['@stryker-mutator/*', './.tools/mutation-sample.mjs'],
  tsconfigFile: 'none',
  ignorePatterns: ['out', 'dist'],
  tempDirName: `out/mutation/${name}/tmp`,
  cleanTempDir: 'always',
  // A change that was not drawn is not one that was tried.
  incremental: !sampled,
  incrementalFile: `out/mutation/${name}/tried.json`,
  reporters: ['progress-append-only', 'clear-text', 'html', 'json', 'interval'],
  clearTextReporter: { reportTests: false, allowColor: false },
  htmlReporter: { fileName: `out/mutation/${name}/report.html` },
  jsonReporter: { fileName: `out/mutation/${name}/report.json` },
  allowEmpty: false,
};
