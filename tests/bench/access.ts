/** Access and separation on coaches of one, two … eight times the length: how the time grows, and what the index is worth. */
import { performance } from 'node:perf_hooks';
import { access } from '../../src/compute/access/index.js';
import { obstacles, type Way } from '../../src/compute/access/obstacles.js';
import { panelOpening } from '../../src/compute/access/opening.js';
import { tooClose } from '../../src/compute/services/separation.js';
import { nearestOfSegments } from '../../src/geometry/segment.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import type { Run } from '../../src/model/services.js';
import type { Model } from '../../src/model/shell.js';
import { benchCoach } from './coach.js';

const SCALES = [1, 2, 4, 8] as const;
/** So few of each are asked of the brute force: all would take hours. */
const SAMPLE = 400;

const WORKS: Readonly<Record<string, (model: Model) => unknown>> = {
  access: (model) => access(model),
  separation: (model) => tooClose(model.shell.runs, model.shop.limits.keepApart, outside),
};
const outside = (): number => 12;

export function benchAccess(say: (line: string) => void): void {
  const coaches = SCALES.map(benchCoach);
  const one = coaches[0] as Model;
  say(
    `\nCoaches of ${one.shell.members.length} members, ${one.shell.runs.length} runs, ${one.shell.panels.length} panels, and 2, 4, 8 times that`,
  );
  for (const [name, work] of Object.entries(WORKS)) {
    // Once to warm up: what counts is the second time.
    work(one);
    const times = coaches.map((model) => timed(() => work(model)));
    say(`  ${name.padEnd(32)}${times.map((ms) => `${ms.toFixed(0)} ms`.padStart(12)).join('')}`);
    say(`  ${name}, growth exponent 1 to 8: ${exponent(times[0] as number, times.at(-1) as number, 8).toFixed(2)} (1 is linear)`);
  }
  say(`  ways through the index ÷ past every obstacle, ${SAMPLE} ways: ${indexRatio(one)}`);
  say(`  separation ÷ every pair of stretches, ${SAMPLE} runs: ${pairRatio(one)}`);
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const exponent = (small: number, large: number, times: number): number => Math.log(large / small) / Math.log(times);

/** The same ways asked of the index and of an index with one cell, which looks at everything; the answers must be the same. */
function indexRatio(model: Model): string {
  const opening = panelOpening(model.shell.panels[0] as Model['shell']['panels'][number], undefined, [0, 0, 0]);
  if (!opening) throw new Error('A panel of the coach made for measuring has no area');
  const ways = model.shell.nodes.slice(0, SAMPLE).map(({ at }): Way => {
    const start: Vec3 = [at[0] + 300, at[1] + 90, at[2] - 200];
    return { start, hand: at, target: at, radiusMm: 27.5 };
  });
  const [quick, plain] = [obstacles(model), obstacles(model, Infinity)];
  const answers = [quick, plain].map((one) => ways.map((way) => one.inTheWay(way, opening).length));
  if (String(answers[0]) !== String(answers[1])) throw new Error('The index and the look at every obstacle do not agree');
  const [byIndex, byAll] = [quick, plain].map((one) => timed(() => ways.map((way) => one.inTheWay(way, opening)))) as [
    number,
    number,
  ];
  return `${(byIndex / byAll).toFixed(4)} (the same answers)`;
}

function pairRatio(model: Model): string {
  const runs = model.shell.runs.slice(0, SAMPLE);
  const rules = model.shop.limits.keepApart;
  const byIndex = timed(() => tooClose(runs, rules, outside));
  let found = 0;
  const byAll = timed(() => {
    for (const { media, distanceMm = 0 } of rules) {
      for (const a of runs.filter((run) => run.medium === media[0])) {
        for (const b of runs.filter((run) => run.medium === media[1])) if (least(a, b) < distanceMm) found += 1;
      }
    }
  });
  if (found !== tooClose(runs, rules, outside).length) throw new Error('Separation and the look at every pair do not agree');
  return `${(byIndex / byAll).toFixed(4)} (the same ${found} pairs)`;
}

function least(a: Run, b: Run): number {
  let mm = Infinity;
  for (let i = 1; i < a.path.length; i++) {
    for (let k = 1; k < b.path.length; k++) {
      const [a0, a1, b0, b1] = [a.path[i - 1], a.path[i], b.path[k - 1], b.path[k]] as [Vec3, Vec3, Vec3, Vec3];
      mm = Math.min(mm, nearestOfSegments(a0, a1, b0, b1).distance - outside());
    }
  }
  return mm - (a.toleranceMm ?? 0) - (b.toleranceMm ?? 0);
}
