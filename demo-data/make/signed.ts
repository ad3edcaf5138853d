import { type Plan, statesOf } from '../../src/cli/demo/plan.js';
import { coverageOf, digestOf } from '../../src/closeout/coverage.js';
import { loadStore } from '../../src/model/load.js';
import { takenAs } from '../../src/store/taken.js';

type Files = ReadonlyMap<string, string | Buffer>;

/** Gives every sign-off the digest of what it covered on the day of the commit that it came in with. */
export function withDigests(files: Files, plan: Plan): Files {
  const stateOn = statesOf(plan, new Map([...files].map(([name, text]) => [name, Buffer.from(text)])));
  const signed = new Map(files);
  for (const [name, text] of files) {
    const shell = /^shells\/([^/]+)\/signoffs\.yaml$/u.exec(name)?.[1];
    if (shell === undefined) continue;
    const models = new Map<string, ReturnType<typeof modelOn>>();
    const lines = String(text)
      .split('\n')
      .map((line) => {
        const [, stage = '', day = ''] = /stage: ([^,]+),.*date: ([\d-]+)\}$/u.exec(line) ?? [];
        if (day === '') return line;
        const entered = plan.commits.map(({ date }) => date.slice(0, 10)).find((date) => date >= day) ?? day;
        const model = models.get(entered) ?? modelOn(stateOn(entered), shell);
        models.set(entered, model);
        return `${line.slice(0, -1)},\n   digest: ${digestOf(coverageOf(model, stage, day))}}`;
      });
    signed.set(name, lines.join('\n'));
  }
  return signed;
}

function modelOn(state: ReadonlyMap<string, Buffer>, shell: string) {
  const yaml = [...state]
    .filter(([name]) => takenAs(name) === 'yaml')
    .map(([name, bytes]) => [name, bytes.toString('utf8')] as const);
  const photos = [...state].filter(([name]) => takenAs(name) === 'photo').map(([name, bytes]) => [name, bytes.length] as const);
  const one = loadStore({ root: 'demo-data', files: new Map(yaml), photos: new Map(photos) }).shells.get(shell);
  if (!one) throw new Error(`no shell ${shell} on that day`);
  return one.model;
}
