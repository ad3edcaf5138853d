/** Joints, access and separation on coaches of 1,000 to 64,000 records: how the time grows, and what the indexes are worth. */
import { access } from '../../src/compute/access/index.js';
import { type HandWay, obstacles } from '../../src/compute/access/obstacles.js';
import { panelOpening } from '../../src/compute/access/opening.js';
import { tooClose } from '../../src/compute/services/separation.js';
import { JOINT_TOLERANCE_MM, joints } from '../../src/compute/structure/joints.js';
import { bodyDistance, memberBody, type SolidBody } from '../../src/compute/structure/solids-of.js';
import { nearestOfSegments } from '../../src/geometry/segment.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import { placedNodes } from '../../src/model/placed.js';
import type { Model } from '../../src/model/shell.js';
import type { Run } from '../../src/records/index.js';
import { benchCoach } from './coach.js';
import { cpuMs, quickest, SIZES, tellGrowth } from './growth.js';

/** So few of each are asked of the brute force: all would take hours. */
const SAMPLE = 400;

const WORKS: Readonly<Record<string, (model: Model) => unknown>> = {
  joints,
  access,
  separation: (model) => tooClose(model.shell.runs, model.shop.limits.keepApart, outside),
};
const outside = (): number => 12;

export function benchAccess(say: (line: string) => void): void {
  const [one, warmUp] = SIZES.map(benchCoach) as [Model, Model];
  const { members, runs, nodes, panels } = warmUp.shell;
  say(
    `\nCoaches of ${SIZES.join(', ')} records, in one process, processor time; that of ${SIZES[1]}: ${members.length} members, ${runs.length} runs, ${nodes.length} nodes, ${panels.length} panels`,
  );
  for (const [name, work] of Object.entries(WORKS)) {
    // Once to warm up: what counts is the second time.
    work(warmUp);
    const times = SIZES.map((count) => {
      const model = benchCoach(count);
      return quickest(() => cpuMs(() => work(model)));
    });
    tellGrowth(name, SIZES, times);
  }
  say(`  joints ÷ every pair of members, ${one.shell.members.length} members: ${jointRatio(one)}`);
  say(`  ways through the index ÷ past every obstacle, ${SAMPLE} ways: ${indexRatio(warmUp)}`);
  say(`  separation ÷ every pair of stretches, ${SAMPLE} runs: ${pairRatio(warmUp)}`);
}

/** Joints of the small coach beside the distance of every pair of its members. */
function jointRatio(model: Model): string {
  const bodies = model.shell.members.flatMap((member) => memberBody(member, model) ?? []);
  const found: string[] = [];
  const byAll = cpuMs(() => {
    bodies.forEach((a, i) => {
      for (const b of bodies.slice(i + 1) as SolidBody[])
        if (bodyDistance(a, b, JOINT_TOLERANCE_MM) !== undefined) found.push(`${a.id} ${b.id}`);
    });
  });
  const byIndex = quickest(() => cpuMs(() => joints(model)));
  const same = joints(model).joints.map(({ members: [a, b] }) => `${a} ${b}`);
  if (String([...same].sort()) !== String(found.sort())) throw new Error('Joints and the look at every pair do not agree');
  return `${(byIndex / byAll).toFixed(4)} (the same ${found.length} joints)`;
}

/** The same ways asked of the index and of an index with one cell, which looks at everything; the answers must be the same. */
function indexRatio(model: Model): string {
  const opening = panelOpening(model.shell.panels[0] as Model['shell']['panels'][number], undefined, [0, 0, 0]);
  if (!opening) throw new Error('A panel of the coach made for measuring has no area');
  const ways = placedNodes(model.shell.nodes)
    .slice(0, SAMPLE)
    .map(({ at }): HandWay => {
      const start: Vec3 = [at[0] + 300, at[1] + 90, at[2] - 200];
      return { start, hand: at, target: at, radiusMm: 27.5 };
    });
  const [quick, plain] = [obstacles(model), obstacles(model, Infinity)];
  const answers = [quick, plain].map((one) => ways.map((way) => one.inTheWay(way, opening).length));
  if (String(answers[0]) !== String(answers[1])) throw new Error('The index and the look at every obstacle do not agree');
  const [byIndex, byAll] = [quick, plain].map((one) => cpuMs(() => ways.map((way) => one.inTheWay(way, opening)))) as [
    number,
    number,
  ];
  return `${(byIndex / byAll).toFixed(4)} (the same answers)`;
}

function pairRatio(model: Model): string {
  const runs = model.shell.runs.slice(0, SAMPLE);
  const rules = model.shop.limits.keepApart;
  const byIndex = cpuMs(() => tooClose(runs, rules, outside));
  let found = 0;
  const byAll = cpuMs(() => {
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
