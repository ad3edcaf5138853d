import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memberBox } from '../../../src/compute/solids.js';
import { JOINT_TOLERANCE_MM, joints, OFF_JOINT_MM } from '../../../src/compute/structure/joints.js';
import { memberBody } from '../../../src/compute/structure/solids-of.js';
import { convexOfBox } from '../../../src/geometry/convex.js';
import { convexDistance } from '../../../src/geometry/convex-distance.js';
import { pairsNear } from '../../../src/geometry/pairs.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { LineMember, Member } from '../../../src/records/index.js';
import { longerThanJoint } from '../../../src/rules/weld/longer-than-joint.js';
import { offJoint } from '../../../src/rules/weld/off-joint.js';
import { buildModel } from '../../support/build.js';
import { blaming, judgeStructure } from '../../support/judge-structure.js';
import { flatPanel, lineMember, plateMember, RT50, sections, weld } from '../../support/structure.js';

const model = (members: readonly Member[], welds: Parameters<typeof buildModel>[0] = {}) =>
  buildModel({ members, ...welds }, { sections });
const pairsOf = (members: readonly Member[]) => joints(model(members)).joints.map(({ members: pair }) => pair.join('+'));

const coordinate = fc.integer({ min: -400, max: 400 });
const place = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>;
const bars = fc.array(fc.tuple(place, place, fc.integer({ min: 0, max: 90 })), { minLength: 2, maxLength: 14 });

describe('joint finding', () => {
  it('finds what a look at every pair of outer surfaces finds, and nothing else', () => {
    fc.assert(
      fc.property(bars, (list) => {
        const members = list
          .filter(([from, to]) => Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) > 1)
          .map(([from, to, rollDeg], i) => lineMember(`M${i}`, from, to, { rollDeg }));
        const solids = members.map(({ shape }) => convexOfBox(memberBox(shape as LineMember, RT50.dimensions)));
        const expected = members.flatMap((a, i) =>
          members.slice(i + 1).flatMap((b, k) => {
            const gap = convexDistance(solids[i] as never, solids[i + 1 + k] as never);
            // A gap of the tolerance itself may go either way by the last digit.
            return gap <= JOINT_TOLERANCE_MM - 1e-6 ? [`${a.id}+${b.id}`] : [];
          }),
        );
        expect(pairsOf(members)).toEqual(expected);
      }),
      { numRuns: 150 },
    );
  });

  it('does not depend on where the coach stands, nor on the order of its records', () => {
    fc.assert(
      fc.property(bars, place, (list, by) => {
        const at = (p: Vec3): Vec3 => [p[0] + by[0] * 10, p[1] + by[1] * 10, p[2] + by[2] * 10];
        const whole = list.filter(([from, to]) => from.join() !== to.join());
        const made = (move: (p: Vec3) => Vec3) => whole.map(([from, to], i) => lineMember(`M${i}`, move(from), move(to)));
        const sorted = (members: readonly Member[]) =>
          joints(model(members))
            .joints.map(({ members: pair }) => [...pair].sort().join('+'))
            .sort();
        const here = sorted(made((p) => p));
        expect(sorted(made(at))).toEqual(here);
        expect(sorted([...made((p) => p)].reverse())).toEqual(here);
      }),
      { numRuns: 60 },
    );
  });

  it('a grid of n by m crossed bars that lie on each other has n × m joints', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 }), (n, m) => {
        const lower = Array.from({ length: n }, (_, i) => lineMember(`A${i}`, [-100, i * 200, 0], [m * 200, i * 200, 0]));
        const upper = Array.from({ length: m }, (_, i) => lineMember(`B${i}`, [i * 200, -100, 50], [i * 200, n * 200, 50]));
        expect(joints(model([...lower, ...upper])).found).toBe(n * m);
      }),
      { numRuns: 20 },
    );
  });

  it('a mitred corner is one joint, at the corner', () => {
    // Both lines run to the corner of the frame: their boxes overlap there, as mitred tubes do.
    const [corner] = joints(
      model([lineMember('A', [0, 0, 0], [1000, 0, 0]), lineMember('B', [1000, 0, 0], [1000, 800, 0])]),
    ).joints;
    expect(corner?.members).toEqual(['A', 'B']);
    expect(corner?.at[0]).toBeCloseTo(1000, -2);
    expect(Math.abs(corner?.at[1] ?? 99)).toBeLessThan(30);
  });

  it('a lap is one joint as long as the two lie on each other', () => {
    const [lap] = joints(model([lineMember('A', [0, 0, 0], [1000, 0, 0]), lineMember('B', [700, 0, 50], [1700, 0, 50])])).joints;
    // 300 × 50: around it 700 mm
    expect(lap?.seamMm).toBeCloseTo(700, 0);
    expect(lap?.at[0]).toBeCloseTo(850, 0);
  });

  it('gussets on two faces of a corner are a joint each with each of the two', () => {
    const plate = (id: string, y: number) =>
      plateMember(
        id,
        [
          [-25, y, -25],
          [225, y, -25],
          [-25, y, 225],
        ],
        6,
      );
    const found = pairsOf([
      lineMember('POST', [0, 0, 25], [0, 0, 1000]),
      lineMember('SILL', [-25, 0, 0], [1000, 0, 0]),
      plate('G1', 28),
      plate('G2', -28),
    ]);
    expect(found.sort()).toEqual(['POST+G1', 'POST+G2', 'POST+SILL', 'SILL+G1', 'SILL+G2'].sort());
  });

  it('like joints are one record: each pair of it is on record, and counted once', () => {
    const rungs = [300, 600, 900].map((x) => lineMember(`C${x}`, [x, 25, 0], [x, 475, 0]));
    const rails = [lineMember('L', [0, 0, 0], [1200, 0, 0]), lineMember('R', [0, 500, 0], [1200, 500, 0])];
    const all = weld(
      'W',
      rungs.map(({ id }) => ['L', id] as const),
    );
    const figures = joints(model([...rails, ...rungs], { welds: [all] }));
    expect(figures).toMatchObject({ found: 6, recorded: 3, withoutJoint: [] });
    expect(figures.joints.filter(({ welds }) => welds.includes('W')).length).toBe(3);
  });

  it('looks at as many pairs more as there are members more: near linear, whatever the machine does beside it', () => {
    const looked = (count: number): number => {
      const members = Array.from({ length: count }, (_, i) => [
        lineMember(`A${i}`, [i * 60, -525, 0], [i * 60, 525, 0]),
        lineMember(`P${i}`, [i * 60, -500, 25], [i * 60, -500, 2000]),
        lineMember(`Q${i}`, [i * 60, 500, 25], [i * 60, 500, 2000]),
      ]).flat();
      const bodies = members.flatMap((member) => memberBody(member, model([])) ?? []);
      return pairsNear(
        bodies.map(({ bounds }) => bounds),
        JOINT_TOLERANCE_MM,
      ).length;
    };
    expect(looked(1000)).toBe(10 * looked(100));
  });
});

describe('weld.off-joint', () => {
  // C meets the rail R at x 1000; its foot is 50 × 50.
  const members = [
    lineMember('R', [0, 0, 0], [3000, 0, 0]),
    lineMember('C', [1000, 25, 0], [1000, 900, 0]),
    lineMember('D', [2000, 25, 0], [2000, 900, 0]),
  ];
  const judged = (at: Vec3 | undefined, joins: readonly (readonly [string, string])[] = [['R', 'C']]) => {
    const fields: string[] = [];
    const one = { ...weld('W', joins), at, source: blaming(fields) };
    return { fields, found: judgeStructure(offJoint, model(members, { welds: [one], panels: [flatPanel('S', -25.5)] })) };
  };

  it.each([
    ['on the joint', [1000, 25, 25], 0],
    ['within the tolerance along the rail', [1025 + OFF_JOINT_MM, 25, 25], 0],
    ['beyond it', [1026 + OFF_JOINT_MM, 25, 25], 1],
    ['on the rail, a bay further', [1500, 25, 25], 1],
    ['on the beam, away from the rail', [1000, 500, 25], 1],
    ['a yard above', [1000, 25, 900], 1],
  ] as const)('%s', (_name, at, count) => expect(judged(at as Vec3).found.length).toBe(count));

  it('is content with any of several like joints, and silent without a place', () => {
    expect(
      judged(
        [2000, 25, 0],
        [
          ['R', 'C'],
          ['R', 'D'],
        ],
      ).found,
    ).toEqual([]);
    expect(judged(undefined).found).toEqual([]);
    expect(judged([0, 0, 9000], [['R', 'CHASSIS']]).found).toEqual([]);
  });

  it('measures to the farther of the two and blames the place', () => {
    const { fields, found } = judged([1000, 425, 0]);
    expect(found[0]).toMatchObject({ severity: 'warning', ids: ['W', 'R', 'C'] });
    expect(found[0]?.message).toContain('400 mm from the joint of R and C');
    expect(fields).toEqual(['at']);
  });

  it('measures to a skin as well', () => expect(judged([1000, -25, 0], [['R', 'S']]).found).toEqual([]));
});

describe('a slip of a unit', () => {
  it('a weld of 400 in on a joint of 10 in is told with the way around the joint', () => {
    const members = [lineMember('R', [0, 0, 0], [3000, 0, 0]), lineMember('C', [1000, 25, 0], [1000, 900, 0])];
    const long = { ...weld('W', [['R', 'C']]), lengthMm: 400 * 25.4 };
    const [found] = judgeStructure(longerThanJoint, model(members, { welds: [long] }));
    expect(found).toMatchObject({ rule: 'weld.longer-than-joint', ids: ['W', 'R', 'C'] });
    expect(found?.message).toContain('10,160 mm at each joint, expected at most 200 mm');
  });
});
