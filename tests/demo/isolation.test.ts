import { beforeAll, describe, expect, it } from 'vitest';
import { behaviourOf } from '../../src/query/isolate/graph/behaviour.js';
import { isolate } from '../../src/query/isolate/index.js';
import { judged } from './store.js';

describe('isolation on the finished demo shell', () => {
  let assessment: ReturnType<typeof judged>['assessment'];
  beforeAll(() => {
    assessment = judged('OV-021').assessment;
  });
  const cut = (id: string): readonly string[] | undefined =>
    isolate(assessment, id)
      ?.actions.filter((one) => one.step === 'source')
      .map((one) => one.id)
      .sort();

  it('leaves no source on any circuit, and proves it', () => {
    const { shell } = assessment.model;
    const answers = shell.circuits.map((circuit) => isolate(assessment, circuit.id));
    expect(answers.filter((one) => !one?.verified || one.sourcesLeft.length > 0).map((one) => one?.id)).toEqual([]);
    for (const one of answers) {
      const done = one?.actions.filter(({ step }) => step === 'source').map(({ id, circuit }) => `${id} ${circuit}`) ?? [];
      expect(new Set(done).size).toBe(done.length);
    }
  });

  it('leaves on a source nothing but the source itself', () => {
    const sources = assessment.model.shell.nodes.filter((node) => behaviourOf(node).way === 'source');
    expect(sources.length).toBeGreaterThan(8);
    const left = sources.flatMap(({ id }) => (isolate(assessment, id)?.sourcesLeft ?? []).filter((other) => other !== id));
    expect(left).toEqual([]);
  });

  // Each followed by hand from the YAML.
  it.each([
    ['DCP', ['BAT/MD']],
    ['DC-30/0', ['BAT/MD']],
    ['DC-E', ['BAT/MD']],
    ['AC-M/1', ['GEN/B', 'SHORE/B']],
    ['AC-SH', ['SHORE']],
    ['AC-GN', ['GEN']],
    ['AC-03', ['AC-03/B']],
    ['CMP-16', ['GV-1', 'WV-7']],
    ['PUMP', ['DC-22/F', 'WV-1']],
    ['GV-1', ['LP/V']],
    ['DC-C/2', ['BAT/MF', 'CONV/F', 'SOL/BR']],
    ['HY', ['BAT/MD']],
    ['CMP-15', ['DC-24/F', 'GV-2']],
    ['CMP-17', ['BAT/MD']],
    ['DA-12', ['DC-33/F']],
  ])('%s: %j', (id, expected) => {
    expect(cut(id)).toEqual(expected);
    expect(isolate(assessment, id)).toMatchObject({ verified: true, sourcesLeft: [], unknown: [] });
  });
});
