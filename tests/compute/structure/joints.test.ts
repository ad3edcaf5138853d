import { describe, expect, it } from 'vitest';
import { joints } from '../../../src/compute/structure/index.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { buildModel } from '../../support/build.js';
import { clamp, flatPanel, lineMember, plateMember, sections, weld } from '../../support/structure.js';

const rail = (y: number, rollDeg = 0) => lineMember(`R${y}`, [0, y, 0], [3000, y, 0], { rollDeg });
const cross = (id: string, x: number, y0: number, y1: number, z = 0) => lineMember(id, [x, y0, z], [x, y1, z]);

describe('joints', () => {
  it('are where outer surfaces meet: two rails and a cross member butted between them', () => {
    // 50 × 50 tubes: the rails' inner faces are at ±475
    const figures = joints(buildModel({ members: [rail(-500), rail(500), cross('C', 1000, -475, 475)] }, { sections }));
    const pairs = [
      ['R-500', 'C'],
      ['R500', 'C'],
    ];
    expect(figures.joints.map(({ members }) => members)).toEqual(pairs);
    const [left] = figures.joints;
    expect(left?.gapMm).toBeCloseTo(0, 9);
    expect(left?.at[0]).toBeCloseTo(1000, 6);
    expect(left?.at[1]).toBeCloseTo(-475, 1);
    // around a 50 × 50 end
    expect(left?.seamMm).toBeCloseTo(200, 0);
    expect(figures).toMatchObject({ found: 2, recorded: 0, withoutJoint: [], missing: pairs });
  });

  it.each([
    [2.9, 1],
    [3.1, 0],
  ])('a gap of %d mm gives %d', (gap, found) => {
    const figures = joints(buildModel({ members: [rail(0), cross('C', 1000, 25 + gap, 900)] }, { sections }));
    expect(figures.found).toBe(found);
    expect(figures.joints.map(({ gapMm }) => gapMm.toFixed(6))).toEqual(found === 1 ? [gap.toFixed(6)] : []);
  });

  it('a weld and a clamp each record their joint; a clamp without `joins` records none', () => {
    const members = [rail(-500), rail(500), cross('C', 1000, -475, 475), cross('D', 2000, -475, 475)];
    const welds = [
      weld('W', [
        ['C', 'R500'],
        ['R-500', 'C'],
      ]),
    ];
    const figures = joints(buildModel({ members, welds, clamps: [clamp('U1', ['R-500', 'D']), clamp('U2', [])] }, { sections }));
    expect(figures).toMatchObject({ found: 4, recorded: 3, missing: [['R500', 'D']] });
    expect(figures.joints[0]).toMatchObject({ members: ['R-500', 'C'], welds: ['W'] });
  });

  it('a weld between parts that do not meet has no joint, and the gap is told', () => {
    const figures = joints(
      buildModel({ members: [rail(-500), rail(500)], welds: [weld('W', [['R-500', 'R500']])] }, { sections }),
    );
    expect(figures.withoutJoint).toEqual(['W']);
    expect(figures.apart?.[0]).toMatchObject({ weld: 'W', members: ['R-500', 'R500'] });
    expect(figures.apart?.[0]?.gapMm).toBeCloseTo(950, 6);
  });

  it('a skin is no member, but a weld to it is measured', () => {
    const panels = [flatPanel('S', -25.5), flatPanel('F', -700)];
    const welds = [weld('A', [['R0', 'S']]), weld('B', [['R0', 'F']])];
    const figures = joints(buildModel({ members: [rail(0)], panels, welds }, { sections }));
    expect(figures.found).toBe(0);
    expect(figures.withoutJoint).toEqual(['B']);
  });

  it('a weld onto something without a shape is not judged', () => {
    const welds = [weld('W', [['R0', 'CHASSIS']])];
    expect(joints(buildModel({ members: [rail(0)], welds }, { sections })).withoutJoint).toEqual([]);
  });

  it('a gusset plate is the prism of its outline: what stands in its notch is not touched', () => {
    const outline: Vec3[] = [
      [0, 0, 0],
      [600, 0, 0],
      [600, 0, 200],
      [200, 0, 200],
      [200, 0, 500],
      [0, 0, 500],
    ];
    const inNotch = lineMember('N', [400, -300, 350], [400, 300, 350]);
    const onIt = lineMember('T', [100, 5, 100], [100, 300, 100]);
    const figures = joints(buildModel({ members: [plateMember('G', outline, 8), inNotch, onIt] }, { sections }));
    expect(figures.joints.map(({ members }) => members)).toEqual([['G', 'T']]);
    expect(figures.joints[0]?.at[0]).toBeCloseTo(100, 6);
    expect(figures.joints[0]?.at[2]).toBeCloseTo(100, 6);
  });

  it('a member turned by its roll meets with its corner', () => {
    // a 50 × 50 tube on edge reaches 35.4 mm to the side
    const at = (y: number) => joints(buildModel({ members: [rail(0, 45), rail(y)] }, { sections }));
    expect(at(25 + 36).joints[0]?.gapMm).toBeCloseTo(36 - 25 * Math.SQRT2, 6);
    expect(at(25 + 40).found).toBe(0);
  });

  it('members without section, length or area are passed over', () => {
    const line: Vec3[] = [
      [0, 0, 0],
      [1, 0, 0],
      [2, 0, 0],
    ];
    const members = [
      lineMember('U', [0, 0, 0], [100, 0, 0], { section: 'unknown' }),
      lineMember('Z', [0, 0, 0], [0, 0, 0]),
      plateMember('L', line, 5),
    ];
    expect(joints(buildModel({ members }, { sections })).found).toBe(0);
  });

  it('of 5,000 members are found', () => {
    const frames = 1250;
    const members = Array.from({ length: frames }, (_, i) => {
      const x = i * 60;
      const post = (id: string, y: number) => lineMember(`${id}${i}`, [x, y, 25], [x, y, 2000]);
      return [cross(`A${i}`, x, -525, 525), post('P', -500), post('Q', 500), cross(`T${i}`, x, -525, 525, 2025)];
    }).flat();
    const figures = joints(buildModel({ members }, { sections }));
    // four joints a frame, none between frames 10 mm apart
    expect(figures.found).toBe(4 * frames);
    expect(figures.joints.every(({ members: [a, b] }) => a.slice(1) === b.slice(1))).toBe(true);
  });
});
