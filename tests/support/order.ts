import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** They stand in for a module, turn the clock, or change the settings of their process: none of it may reach another test. */
export const APART = [
  'cli/close.test.ts',
  'cli/entry-steps.test.ts',
  'cli/kept-check.test.ts',
  'cli/kept-figures.test.ts',
  'cli/questions.test.ts',
  'cli/verify.test.ts',
  'demo/history.test.ts',
  'fuzz/fuzz.test.ts',
  'security/git-settings.test.ts',
  'security/git-states.test.ts',
  'store/compiled-code.test.ts',
  'store/write.test.ts',
];

/** What takes longest begins first, so that no process ends long after the other. */
const LONG = ['cli/demo.', 'demo/history.', 'records/one-file.', 'metamorphic/', 'store/kill.', 'cli/kept-check.', 'cli/verify.'];

const rank = ({ moduleId, project }: TestSpecification): number => {
  const at = LONG.findIndex((one) => moduleId.includes(one));
  return (project.name === 'apart' ? 0 : LONG.length + 1) + (at < 0 ? LONG.length : at);
};

/** Files that have a process of their own first, then those that share one; each with the long ones at the front. */
export class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return [...sorted].sort((a, b) => rank(a) - rank(b));
  }
}
