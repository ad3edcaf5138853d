import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import { massSumOf } from '../../../src/compute/takeoff/sums.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { lerp } from '../../../src/geometry/vector.js';
import type { Member, Opening, Panel } from '../../../src/records/index.js';
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

  describe('and the openings of walls', () => {
    /** Clear area of the skin that an opening takes, mm². */
    const taken = (skin: Panel, ...doors: readonly Opening[]) =>
      2e6 - (takeOff(buildModel({ panels: [skin], openings: doors })).panels[0]?.areaMm2 as number);
    const skin = panel('S', upright(0, 0, 2000, 1000));
    const at = (y: number, x = 500) =>
      opening(
        [
          [x, y, 200],
          [x + 400, y, 200],
        ],
        400,
        600,
      );
    it('are taken off once, whichever way round the skin and the sill were measured', () => {
      const area = 400 * 600;
      const turned = panel('S', skin.outline.toReversed());
      const back = { ...at(-1200), sill: at(-1200).sill.toReversed() };
      for (const one of [skin, turned]) for (const door of [at(-1200), back]) expect(taken(one, door)).toBeCloseTo(area, 6);
      expect(taken(skin, at(-1200), at(-1200, 1200))).toBeCloseTo(2 * area, 6);
    });
    it('move the centroid away from them', () => {
      const [one] = takeOff(buildModel({ panels: [skin], openings: [at(-1200)] })).panels;
      // 2 m² at 1.0 and 0.5 m, less 0.24 m² at 0.7 and 0.5 m.
      expect(one?.centroid[0]).toBeCloseTo((2e6 * 1000 - 24e4 * 700) / 176e4, 6);
      expect(one?.centroid[2]).toBeCloseTo(500, 6);
    });
    it('reach a skin and a lining 100 mm deep, and no further', () => {
      // Project default: a wall's skin and its lining.
      expect([-1101, -1299].map((y) => taken(skin, at(y)) > 0)).toEqual([true, true]);
      expect([-1099, -1301].map((y) => taken(skin, at(y)))).toEqual([0, 0]);
    });
    it('leave what stands across the wall, what does not meet them, and what has no sill', () => {
      const across = panel('S', [
        [700, -2200, 0],
        [700, -200, 0],
        [700, -200, 1000],
        [700, -2200, 1000],
      ]);
      expect(taken(across, at(-1200))).toBe(0);
      expect(taken(skin, at(-1200, 2100))).toBe(0);
      expect(taken(skin, { ...at(-1200), sill: [] })).toBe(0);
      expect(taken(skin, { ...at(-1200), heightMm: 0 })).toBe(0);
    });
    it('are not taken off twice where a hole in the record covers them; a hole elsewhere is one more', () => {
      const hole = upright(480, 180, 920, 820);
      expect(taken({ ...skin, holes: [hole] }, at(-1200))).toBeCloseTo(440 * 640, 6);
      expect(taken({ ...skin, holes: [hole] }, at(-1200, 1200))).toBeCloseTo(440 * 640 + 400 * 600, 6);
    });
    it('take a triangle off where only a corner is covered', () => {
      const wedge = panel('S', [
        [0, -1200, 0],
        [700, -1200, 200],
        [0, -1200, 1000],
      ]);
      const whole = takeOff(buildModel({ panels: [wedge] })).panels[0]?.areaMm2 as number;
      const net = takeOff(buildModel({ panels: [wedge], openings: [at(-1200, 600)] })).panels[0]?.areaMm2 as number;
      // Over the sill at 200 mm and aft of 600 mm: the edge falls 800 in 700 mm, so the corner is 100 wide and 114.29 mm high.
      expect(whole - net).toBeCloseTo((100 * ((100 * 800) / 700)) / 2, 4);
    });
  });

  it('lose only the access panels that are set in them, of a known opening', () => {
    const access = (id: string, more: Partial<Panel>) =>
      panel(id, upright(100, 100, 600, 500), { panelKind: 'access', openingMm: [460, 360], ...more });
    const net = (...others: readonly Panel[]) =>
      takeOff(buildModel({ panels: [panel('B', upright(0, 0, 2000, 1000)), ...others] })).panels[0]?.areaMm2;
    expect(net(access('AP', { of: 'other' }))).toBeCloseTo(2e6, 6);
    expect(net(access('AP', {}))).toBeCloseTo(2e6, 6);
    expect(net(access('AP', { of: 'B', openingMm: undefined }))).toBeCloseTo(2e6, 6);
    expect(net(access('AP', { of: 'B' }), access('AQ', { of: 'B', openingMm: [100, 50] }))).toBeCloseTo(
      2e6 - 460 * 360 - 5000,
      6,
    );
  });
  it('of which nothing is left, or nothing was there, weigh nothing where they stand', () => {
    const gone = panel('G', upright(0, 0, 100, 100), { holes: [upright(0, 0, 100, 100)] });
    const flat = panel('F', [
      [0, 0, 0],
      [10, 0, 0],
      [20, 0, 0],
    ]);
    const { panels } = takeOff(buildModel({ panels: [gone, flat] }));
    expect(panels.map((one) => [one.areaMm2, one.massKg])).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(panels[0]?.centroid).toEqual([expect.closeTo(50, 6), expect.closeTo(-1200, 6), expect.closeTo(50, 6)]);
    expect(panels.flatMap((one) => one.centroid).every(Number.isFinite)).toBe(true);
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

  it('each item with the uncertainty of its kind, and each kind by its own basis', () => {
    const { items } = takeOff(
      buildModel(
        {
          members: [line('M', [0, 0, 0], [1000, 0, 0])],
          panels: [panel('P', upright(0, 0, 1000, 1000)), panel('W', upright(0, 0, 1000, 1000), { massKg: 9 })],
          components: [component('C', 10, [0, 0, 0], 'estimated')],
        },
        { sections },
      ),
    );
    // Project defaults: common practice, no source.
    expect(
      items.map((one) => [one.id, one.kind, one.basis, Number((one.uMassKg / one.massKg).toFixed(9)), one.uPositionMm]),
    ).toEqual([
      ['M', 'member', 'calculated', 0.02, 10],
      ['P', 'panel', 'calculated', 0.02, 10],
      ['W', 'panel', 'weighed', 0.005, 25],
      ['C', 'component', 'estimated', 0.1, 100],
    ]);
  });
  it('have sums by alloy and section of those that are of one, and no sum of nothing', () => {
    const answer = takeOff(
      buildModel(
        {
          members: [line('M', [0, 0, 0], [1000, 0, 0]), plate('G', upright(0, 0, 300, 100), 4)],
          components: [component('C', 10, [0, 0, 0])],
        },
        { sections },
      ),
    );
    expect(Object.keys(answer.byAlloy)).toEqual(['6061-T6']);
    expect(Object.keys(answer.bySection)).toEqual(['RT2']);
    expect(Object.keys(answer.sections.find(({ id }) => id === 'RT2')?.kgPerM ?? {})).toEqual(['6061-T6']);
    // The length told of a plate is that of its longest side.
    expect(answer.members.find(({ id }) => id === 'G')).toMatchObject({ lengthMm: 300, lineLengthMm: 300 });
    const none = { massKg: 0, centroid: [0, 0, 0], count: 0 };
    expect(takeOff(buildModel({}))).toMatchObject({ total: none, bySide: { left: none, right: none } });
  });
  it('half a millimetre off the centre line still counts to both sides', () => {
    const sides = (y: number) => {
      const { left, right } = takeOff(buildModel({ components: [component('A', 10, [0, y, 0])] })).bySide;
      return [left.massKg, right.massKg];
    };
    expect([-0.6, -0.5, 0, 0.5, 0.6].map(sides)).toEqual([
      [10, 0],
      [5, 5],
      [5, 5],
      [5, 5],
      [0, 10],
    ]);
  });
  it('a member of a section that the library lacks weighs nothing, at the middle of its line', () => {
    const lost = line('A', [0, 0, 0], [1000, 0, 0], { section: 'NONE' });
    expect(takeOff(buildModel({ members: [lost] }, { sections })).members[0]).toMatchObject({ massKg: 0, centroid: [500, 0, 0] });
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
          expect(massSumOf(items)).toEqual(total);
        },
      ),
    );
  });
});
