import { type DemoPlan, statesOf } from '../../../src/cli/demo/plan.js';
import { coverageOf, digestOf } from '../../../src/closeout/coverage.js';
import { loadStore } from '../../../src/model/load.js';
import { takenAs } from '../../../src/store/taken.js';
import { setInRecords } from './in-place.js';

/** The sign-offs of a shell, each with the digest of what it covered on the day of the commit that it came in with. */
export function withDigests(shell: string, store: ReadonlyMap<string, Buffer>, plan: DemoPlan): string {
  const stateOn = statesOf(plan, store);
  const models = new Map<string, ReturnType<typeof modelOn>>();
  return setInRecords(String(store.get(signoffsOf(shell))), 'digest', ({ stage, date }) => {
    const entered = plan.commits.map((commit) => commit.date.slice(0, 10)).find((day) => day >= String(date)) ?? String(date);
    const model = models.get(entered) ?? modelOn(stateOn(entered), shell);
    models.set(entered, model);
    return digestOf(coverageOf(model, String(stage), String(date)));
  });
}

export const signoffsOf = (shell: string): string => `shells/${shell}/signoffs.yaml`;

export function modelOn(state: ReadonlyMap<string, Buffer>, shell: string) {
  const files = [...state].filter(([name]) => takenAs(name) === 'yaml').map(([name, bytes]) => [name, String(bytes)] as const);
  const photos = [...state].filter(([name]) => takenAs(name) === 'photo').map(([name, bytes]) => [name, bytes.length] as const);
  const one = loadStore({ root: 'demo-data', files: new Map(files), photos: new Map(photos) }).shells.get(shell);
  if (!one) throw new Error(`no shell ${shell} on that day`);
  return one.model;
}
