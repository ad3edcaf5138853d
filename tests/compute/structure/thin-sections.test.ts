import { describe, expect, it } from 'vitest';
import { joints } from '../../../src/compute/structure/joints.js';
import { memberMetal } from '../../../src/compute/structure/solids-of.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import type { SectionShape, Weld } from '../../../src/records/index.js';
import { buildModel, record, section } from '../../support/build.js';
import { lineMember } from '../../support/services.js';

const SECTIONS: readonly (readonly [string, SectionShape])[] = [
  ['ANGLE', { shape: 'angle', depthMm: 60, widthMm: 60, wallMm: 6, filletMm: 0, toeRadiusMm: 0 }],
  ['TUBE', { shape: 'rectangular tube', depthMm: 80, widthMm: 80, wallMm: 4, cornerRadiusMm: 0 }],
  ['CHANNEL', { shape: 'channel', depthMm: 100, widthMm: 50, webMm: 5, flangeMm: 6, filletMm: 0 }],
  ['ROUND', { shape: 'round tube', diameterMm: 60, wallMm: 3 }],
];
const bar = (mm: number) => section(`BAR${mm}`, { shape: 'flat bar', depthMm: mm, widthMm: mm });
const library: Partial<Model['library']> = {
  sections: new Map([...SECTIONS.map(([id, shape]) => section(id, shape)), ...[20, 60, 72].map(bar)].map((one) => [one.id, one])),
};

/** Two members along the vehicle; the second lies so much to the side and up of the first. */
const beside = (outer: string, inner: string, [y, z]: readonly [number, number]) => {
  const end = (x: number): Vec3 => [x, y, z];
  return buildModel(
    { members: [lineMember('A', outer, [0, 0, 0], [1000, 0, 0]), lineMember('B', inner, end(100), end(900))] },
    library,
  );
};
const found = (model: Model) => joints(model).found;

describe('joints are contact of metal, not of the boxes about it', () => {
  // The angle's legs lie along its lower side and its left: 60 × 60 about the line, 6 thick.
  it('a bar in the open of an angle, 12 mm of air to both legs, is none; laid on a leg it is one', () => {
    const clear = -30 + 6 + 12 + 10;
    expect(found(beside('ANGLE', 'BAR20', [clear, clear]))).toBe(0);
    expect(found(beside('ANGLE', 'BAR20', [clear, -30 + 6 + 10]))).toBe(1);
    expect(found(beside('ANGLE', 'BAR20', [-30 + 6 + 10 + 2.9, clear]))).toBe(1);
    expect(found(beside('ANGLE', 'BAR20', [-30 + 6 + 10 + 3.1, clear]))).toBe(0);
  });

  it('a bar in a tube with 6 mm all round is none, and filling it is one', () => {
    expect(found(beside('TUBE', 'BAR60', [0, 0]))).toBe(0);
    expect(found(beside('TUBE', 'BAR72', [0, 0]))).toBe(1);
    expect(found(beside('TUBE', 'BAR60', [4, 0]))).toBe(1);
  });

  it('a bar in the mouth of a channel and in a round tube is none, against their walls one', () => {
    expect(found(beside('CHANNEL', 'BAR20', [12, 0]))).toBe(0);
    expect(found(beside('CHANNEL', 'BAR20', [-25 + 5 + 10, 0]))).toBe(1);
    expect(found(beside('ROUND', 'BAR20', [0, 0]))).toBe(0);
    expect(found(beside('ROUND', 'BAR20', [0, 16]))).toBe(1);
  });

  it('a weld between a bar and the tube about it, which do not touch, joins nothing', () => {
    const model = beside('TUBE', 'BAR60', [0, 0]);
    const weld: Weld = {
      ...record('W'),
      joins: [['A', 'B']],
      type: 'fillet',
      sizeMm: 5,
      lengthMm: 50,
      sides: 'arrow',
      process: 'GMAW',
      allRound: false,
      inspections: [],
    };
    const figures = joints({ ...model, shell: { ...model.shell, welds: [weld] } });
    expect(figures.withoutJoint).toEqual(['W']);
    expect(figures.apart?.[0]?.gapMm).toBeCloseTo(6, 6);
  });

  it('the least gap is that between all pairs of points of the walls, by brute force', () => {
    const model = beside('ANGLE', 'BAR20', [-4, -2]);
    const [a, b] = model.shell.members.map((member) => memberMetal(member, model));
    // Only across matters: both run along x. Points every half millimetre over each part's corners in y and z.
    const spread = (body: typeof a) =>
      (body?.parts ?? []).flatMap(({ corners }) => {
        const [ys, zs] = [1, 2].map((k) => corners.map((at) => at[k] as number)) as [number[], number[]];
        const points: (readonly [number, number])[] = [];
        for (let y = Math.min(...ys); y <= Math.max(...ys) + 1e-9; y += 0.5)
          for (let z = Math.min(...zs); z <= Math.max(...zs) + 1e-9; z += 0.5) points.push([y, z]);
        return points;
      });
    const [ofA, ofB] = [spread(a), spread(b)];
    let least = Infinity;
    for (const [y0, z0] of ofA) for (const [y1, z1] of ofB) least = Math.min(least, Math.hypot(y1 - y0, z1 - z0));
    const weld: Weld = {
      ...record('W'),
      joins: [['A', 'B']],
      type: 'fillet',
      sizeMm: 5,
      lengthMm: 50,
      sides: 'arrow',
      process: 'GMAW',
      allRound: false,
      inspections: [],
    };
    expect(joints({ ...model, shell: { ...model.shell, welds: [weld] } }).apart?.[0]?.gapMm).toBeCloseTo(least, 6);
  });
});
