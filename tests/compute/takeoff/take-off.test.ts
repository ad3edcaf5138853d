import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import { sumOf } from '../../../src/compute/takeoff/sums.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { lerp } from '../../../src/geometry/vector.js';
import type { Member, Opening, Panel } from '../../../src/model/structure.js';
import { buildModel, record, section } from '../../support/build.js';

const RT2 = section('RT2', { shape: 'rectangular tube', depthMm: 50.8, widthMm: 50.8, wallMm: 3.175, cornerRadiusMm: 0 });
const CS4 = section('CS4', { shape: 'channel', depthMm: 101.6, widthMm: 50.8, webMm: 3.81, flangeMm: 5.842, filletMm: 6.35 });
const sections = new Map([RT2, CS4].map((one) => [one.id, one]));

const line = (
  id: string,
  from: Vec3,
  to: Vec3,
  more: { section?: string; rollDeg?: number; cutLengthMm?: number; stage?: string } = {},
): Member => ({
  ...record(id),
  part: 'part',
  alloy: '6061-T6',
  stage: more.stage,
  shape: { kind: 'line', section: more.section ?? 'RT2', from, to, rollDeg: more.rollDeg ?? 0, cutLengthMm: more.cutLengthMm },
});

const plate = (id: string, outline: readonly Vec3[], thicknessMm: number): Member => ({
  ...record(id),
  part: 'gusset',
  alloy: '6061-T6',
  shape: { kind: 'plate', thicknessMm, outline },
});

const panel = (id: string, outline: readonly Vec3[], more: Partial<Panel> = {}): Panel => ({
  ...record(id),
  panelKind: 'skin',
  alloy: '6061-T6',
  thicknessMm: 2,
  outline,
  holes: [],
  ...more,
});

const upright = (x0: number, z0: number, x1: number, z1: number): Vec3[] => [
  [x0, -1200, z0],
  [x1, -1200, z0],
  [x1, -1200, z1],
  [x0, -1200, z1],
];

describe('members', () => {
  it('weigh section × length × density', () => {
    const { members, sections: table } = takeOff(buildModel({ members: [line('A', [0, 0, 0], [2000, 0, 0])] }, { sections }));
    // SEC-K2: RT 2 x 2 x 0.125, 6061 at 2700: 1.6331 kg/m
    expect(members[0]?.massKg).toBeCloseTo(2 * 1.6331, 3);
    expect(table.find(({ id }) => id === 'RT2')?.kgPerM['6061-T6']).toBeCloseTo(1.6331, 4);
    expect(table.find(({ id }) => id === 'CS4')?.kgPerM).toEqual({});
  });

  it('take the cut length before the line, and keep both', () => {
    const { members } = takeOff(
      buildModel({ members: [line('A', [0, 0, 0], [2000, 0, 0], { cutLengthMm: 1900 })] }, { sections }),
    );
    expect(members[0]).toMatchObject({ lengthMm: 1900, lineLengthMm: 2000 });
    expect(members[0]?.massKg).toBeCloseTo(1.9 * 1.6331, 3);
  });

  it('carry their section’s own centroid, rolled', () => {
    const across = (rollDeg: number) =>
      takeOff(buildModel({ members: [line('C', [0, 0, 0], [1000, 0, 0], { section: 'CS4', rollDeg })] }, { sections })).members[0]
        ?.centroid as Vec3;
    // SEC-C05: x 0.653 in from the back, which lies at half the width of 2 in on the −y side
    const off = (0.653 - 1) * 25.4;
    expect(across(0)[1]).toBeCloseTo(off, 1);
    expect(across(0)[2]).toBeCloseTo(0, 9);
    // SEC-K3: turned 90° the 16.59 mm off the web stand vertical
    expect(Math.abs(across(90)[2])).toBeCloseTo(25.4 - 16.59, 1);
    expect(across(90)[1]).toBeCloseTo(0, 9);
  });

  it('SEC-K1: a plate of 4 × 1000 × 2500 mm at 2700 kg/m³ is 27 kg', () => {
    const outline: Vec3[] = [
      [0, 0, 0],
      [2500, 0, 0],
      [2500, 0, 1000],
      [0, 0, 1000],
    ];
    const { members } = takeOff(buildModel({ members: [plate('P', outline, 4)] }));
    expect(members[0]?.massKg).toBeCloseTo(27, 9);
    expect(members[0]?.centroid).toEqual([1250, 0, 500]);
  });

  it('in an alloy that the library lacks are taken as aluminium, and that is said', () => {
    const odd = { ...line('A', [0, 0, 0], [1000, 0, 0]), alloy: 'X-99' };
    const { members, assumptions } = takeOff(buildModel({ members: [odd] }, { sections }));
    expect(members[0]?.massKg).toBeCloseTo(1.6331, 3);
    expect(assumptions.join(' ')).toContain('X-99');
  });
});

describe('panels', () => {
  const opening = (sill: readonly Vec3[], widthMm: number, heightMm: number): Opening => ({
    ...record('SO'),
    openingKind: 'slide-out',
    sill,
    widthMm,
    heightMm,
    gussets: [],
  });

  it('GEO-18, GEO-20: an L of 18 area with its centroid', () => {
    const outline = (
      [
        [0, 0, 0],
        [6, 0, 0],
        [6, 2, 0],
        [2, 2, 0],
        [2, 5, 0],
        [0, 5, 0],
      ] as Vec3[]
    ).map(([x, y]) => [x * 100, y * 100, 0] as Vec3);
    const { panels } = takeOff(buildModel({ panels: [panel('L', outline)] }));
    expect(panels[0]?.areaMm2).toBeCloseTo(18e4, 6);
    expect(panels[0]?.centroid[0]).toBeCloseTo(233.333, 3);
    expect(panels[0]?.centroid[1]).toBeCloseTo(183.333, 3);
    expect(panels[0]?.massKg).toBeCloseTo(18e4 * 2 * 2.7e-6, 9);
  });

  it('lose their holes, and the centroid moves away from the hole', () => {
    const skin = panel('S', upright(0, 0, 2000, 1000), { holes: [upright(1500, 250, 2000, 750)] });
    const one = takeOff(buildModel({ panels: [skin] })).panels[0];
    expect(one?.areaMm2).toBeCloseTo(1.75e6, 6);
    // 2 × 1 less 0.5 × 0.5 centred at x 1.75: (2·1 − 0.25·1.75)/1.75 m
    expect(one?.centroid[0]).toBeCloseTo(892.857, 3);
  });

  it('lose the clear opening of an access panel set in them, once', () => {
    const belly = panel('B', upright(0, 0, 2000, 1000), { panelKind: 'belly' });
    const access = panel('AP', upright(100, 100, 600, 500), { panelKind: 'access', of: 'B', openingMm: [460, 360] });
    const cut = panel('B', upright(0, 0, 2000, 1000), { panelKind: 'belly', holes: [upright(120, 120, 580, 480)] });
    const net = (one: Panel) => takeOff(buildModel({ panels: [one, access] })).panels[0]?.areaMm2;
    expect(net(belly)).toBeCloseTo(2e6 - 460 * 360, 6);
    expect(net(cut)).toBeCloseTo(2e6 - 460 * 360, 6);
  });

  it('lose the part of a wall opening that they cover; a panel of the other wall loses nothing', () => {
    const skin = panel('S', upright(0, 0, 2000, 1000));
    const other = panel(
      'R',
      skin.outline.map(([x, y, z]) => [x, -y, z] as Vec3),
    );
    const door = opening(
      [
        [1500, -1160, 200],
        [2500, -1160, 200],
      ],
      1000,
      600,
    );
    const { panels } = takeOff(buildModel({ panels: [skin, other], openings: [door] }));
    expect(panels[0]?.areaMm2).toBeCloseTo(2e6 - 500 * 600, 6);
    expect(panels[1]?.areaMm2).toBeCloseTo(2e6, 6);
  });

  it('that were weighed weigh that, with its smaller uncertainty', () => {
    const { items } = takeOff(buildModel({ panels: [panel('S', upright(0, 0, 2000, 1000), { massKg: 12 })] }));
    expect(items[0]).toMatchObject({ massKg: 12, basis: 'weighed', uPositionMm: 25 });
    expect(items[0]?.uMassKg).toBeCloseTo(0.06, 9);
  });

  it('without thickness or alloy are named as not counted', () => {
    const { items, assumptions } = takeOff(
      buildModel({ panels: [panel('S-9', upright(0, 0, 2000, 1000), { thicknessMm: undefined })] }),
    );
    expect(items[0]?.massKg).toBe(0);
    expect(assumptions.some((words) => words.includes('S-9'))).toBe(true);
  });
});

describe('components and sums', () => {
  const component = (id: string, massKg: number, at: Vec3, basis: 'weighed' | 'estimated' = 'weighed') => ({
    ...record(id),
    name: id,
    massKg,
    at,
    basis,
  });

  it('STA-06: 9,000 kg at 3.0 m and 1,000 kg at 6.2 m balance at 3.320 m', () => {
    const components = [component('A', 9000, [3000, 0, 0]), component('B', 1000, [6200, 0, 0], 'estimated')];
    const { total, items } = takeOff(buildModel({ components }));
    expect(total.massKg).toBe(10000);
    expect(total.centroid[0]).toBeCloseTo(3320, 9);
    expect(items[1]?.uMassKg).toBeCloseTo(100, 9);
  });

  it('sums by side, and shares what lies on the centre line', () => {
    const components = [component('L', 10, [0, -5, 0]), component('R', 20, [0, 5, 0]), component('M', 8, [0, 0, 0])];
    const { bySide } = takeOff(buildModel({ components }));
    expect(bySide.left.massKg).toBe(14);
    expect(bySide.right.massKg).toBe(24);
  });

  it('sums by stage, alloy and section', () => {
    const members = [
      line('A', [0, 0, 0], [1000, 0, 0], { stage: 'floor' }),
      line('B', [0, 0, 0], [0, 500, 0], { stage: 'walls', cutLengthMm: 490 }),
    ];
    const { byStage, byAlloy, bySection, total } = takeOff(buildModel({ members }, { sections }));
    expect(Object.keys(byStage)).toEqual(['floor', 'walls']);
    expect(byAlloy['6061-T6']?.massKg).toBeCloseTo(total.massKg, 12);
    expect(bySection.RT2).toMatchObject({ lengthMm: 1490, count: 2 });
  });
});

const place = fc.tuple(
  fc.integer({ min: -9000, max: 9000 }),
  fc.integer({ min: -1300, max: 1300 }),
  fc.integer({ min: -500, max: 3000 }),
) as fc.Arbitrary<Vec3>;
const apart = fc.tuple(place, place).filter(([a, b]) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) > 10);
function near(a: Vec3, b: Vec3): void {
  for (const i of [0, 1, 2] as const) expect(a[i]).toBeCloseTo(b[i], 6);
}

describe('laws', () => {
  it('splitting a member in two keeps mass and centroid', () => {
    fc.assert(
      fc.property(
        apart,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.integer({ min: 0, max: 359 }),
        ([a, b], t, rollDeg) => {
          const more = { section: 'CS4', rollDeg };
          const whole = takeOff(buildModel({ members: [line('A', a, b, more)] }, { sections })).total;
          const mid = lerp(a, b, t);
          const halves = takeOff(buildModel({ members: [line('A', a, mid, more), line('B', mid, b, more)] }, { sections })).total;
          expect(halves.massKg).toBeCloseTo(whole.massKg, 9);
          // A near-upright member's reference direction may flip between the halves by rounding.
          const leaning = Math.abs(b[2] - a[2]) < 0.999 * Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
          if (leaning) near(halves.centroid, whole.centroid);
        },
      ),
    );
  });

  it('a mirrored shell has the mirrored centre of gravity', () => {
    fc.assert(
      fc.property(fc.array(apart, { minLength: 1, maxLength: 6 }), (lines) => {
        const flip = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
        const model = (turn: (at: Vec3) => Vec3) =>
          takeOff(buildModel({ members: lines.map(([a, b], i) => line(`M${i}`, turn(a), turn(b))) }, { sections }));
        const [here, there] = [model((at) => at), model(flip)];
        near(there.total.centroid, flip(here.total.centroid));
        expect(there.bySide.left.massKg).toBeCloseTo(here.bySide.right.massKg, 9);
      }),
    );
  });

  it('sums of parts are the sum of the whole', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place, fc.double({ min: 0.1, max: 900, noNaN: true }), fc.constantFrom('a', 'b', undefined))),
        (list) => {
          const components = list.map(([at, massKg, stage], i) => ({
            ...record(`C${i}`),
            name: 'c',
            massKg,
            at,
            stage,
            basis: 'catalogue' as const,
          }));
          const { total, byStage, bySide, items } = takeOff(buildModel({ components }));
          const parts = Object.values(byStage);
          const sum = (one: (part: { massKg: number; centroid: Vec3 }) => number) =>
            parts.reduce((so, part) => so + one(part), 0);
          expect(sum(({ massKg }) => massKg)).toBeCloseTo(total.massKg, 6);
          expect(sum(({ massKg, centroid }) => massKg * centroid[0])).toBeCloseTo(total.massKg * total.centroid[0], 3);
          expect(bySide.left.massKg + bySide.right.massKg).toBeCloseTo(total.massKg, 6);
          expect(sumOf(items)).toEqual(total);
        },
      ),
    );
  });
});
