import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossings } from '../../../src/compute/services/crossings.js';
import { tooClose } from '../../../src/compute/services/separation.js';
import { trappedWater } from '../../../src/compute/services/trapped-water.js';
import { distance, lerp, type Vec3 } from '../../../src/geometry/vector.js';
import type { Member, Run, ServiceNode } from '../../../src/records/index.js';
import { buildModel, section } from '../../support/build.js';
import { levelPanel, lineMember, node, run } from '../../support/services.js';

describe('media that keep apart', () => {
  const gas = [node('G1', [0, 0, 0], { medium: 'gas' }), node('G2', [1000, 0, 0], { medium: 'gas' })] as const;
  const mains = [node('A1', [500, -500, 40], { medium: 'ac' }), node('A2', [500, 500, 40], { medium: 'ac' })] as const;
  const runs = [run('G', ...gas), run('A', ...mains)];
  const outside = (one: Run): number => (one.id === 'G' ? 20 : 12);

  it('GEO-13: outsides of 20 and 12, axes 40 apart: 24 mm, with the place', () => {
    const [found] = tooClose(runs, [{ media: ['gas', 'ac'], distanceMm: 50.8 }], outside);
    expect(found?.distanceMm).toBeCloseTo(24, 9);
    expect(found?.runs).toEqual(['G', 'A']);
    expect(distance(found?.at as Vec3, [500, 0, 20])).toBeLessThan(1e-9);
  });

  it('keeps its limit, whichever medium is named first', () => {
    expect(tooClose(runs, [{ media: ['ac', 'gas'], distanceMm: 24.1 }], outside)[0]?.runs).toEqual(['A', 'G']);
    expect(tooClose(runs, [{ media: ['gas', 'ac'], distanceMm: 23.9 }], outside)).toEqual([]);
    expect(tooClose(runs, [{ media: ['gas', 'ac'], shareZone: false }], outside)).toEqual([]);
  });

  it('finds what trying every 2 % of both ways finds', () => {
    const place = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 400 }))) as unknown as fc.Arbitrary<Vec3>;
    const way = fc.array(place, { minLength: 2, maxLength: 4 });
    const steps = Array.from({ length: 51 }, (_, i) => i / 50);
    fc.assert(
      fc.property(way, way, (one, other) => {
        const given = [one, other].map((path, i) => ({
          ...(runs[i] as Run),
          path,
        }));
        const limit = 120;
        const [found] = tooClose(given, [{ media: ['gas', 'ac'], distanceMm: limit }], () => 0);
        const all = (path: readonly Vec3[]) => path.slice(1).flatMap((to, i) => steps.map((t) => lerp(path[i] as Vec3, to, t)));
        const tried = Math.min(...all(one).flatMap((a) => all(other).map((b) => distance(a, b))));
        if (found) expect(found.distanceMm).toBeLessThanOrEqual(tried + 1e-9);
        else expect(tried).toBeGreaterThanOrEqual(limit - 1e-9);
      }),
      { numRuns: 60 },
    );
  });
});

describe('trapped water', () => {
  const INSIDE = 19;
  /** Litres of a length of 19 mm bore; FLU-36: 20 m hold 5.6706 kg of water. */
  const litres = (lengthMm: number): number => (5.6706 * lengthMm) / 20000;
  const wet = (id: string, at: Vec3, nodeKind: ServiceNode['nodeKind']) => node(id, at, { nodeKind, medium: 'water' });
  const look = (runs: readonly Run[], nodes: readonly ServiceNode[]) =>
    trappedWater(runs, new Map(nodes.map((one) => [one.id, one])), () => INSIDE);
  const tank = wet('T', [0, 0, 500], 'source');
  const tap = wet('K', [4000, 0, 500], 'load');

  it('a sag between tank and tap keeps what lies below the lower of the two', () => {
    const sag = run('W', tank, tap, [
      [1000, 0, 0],
      [3000, 0, 0],
    ]);
    const [found] = look([sag], [tank, tap]);
    // Level: both legs and the bottom are full to 500, the height of tank and tap.
    expect(found?.levelLitres).toBeCloseTo(litres(2000 + 2 * Math.hypot(1000, 500)), 3);
    expect(found?.at[2]).toBe(0);
    expect(found?.noOutlet).toBe(false);
  });

  it('a drain at the bottom empties it level', () => {
    const drain = wet('D', [1000, 0, 0], 'drain');
    const found = look([run('W1', tank, drain), run('W2', drain, tap, [[3000, 0, 0]])], [tank, drain, tap]);
    expect(found.filter((one) => one.levelLitres > 0)).toEqual([]);
    // Nose up by 3 %, the bottom falls 60 mm from the drain to the far corner, and holds: the bottom, and 60 of the 470 mm that the leg still rises.
    expect(found[0]?.slopeLitres).toBeCloseTo(litres(2000 + (60 / 470) * Math.hypot(1000, 500)), 4);
  });

  it('a line that falls all the way keeps nothing, level or on the slope', () => {
    const low = wet('D', [4000, 0, -500], 'drain');
    expect(look([run('W', tank, low)], [tank, low])).toEqual([]);
  });

  it('a line without any way out keeps all of it, and says so', () => {
    const [a, b] = [wet('A', [0, 0, 0], 'fitting'), wet('B', [2000, 0, 0], 'fitting')];
    const [found] = look([run('W', a, b)], [a, b]);
    expect(found?.noOutlet).toBe(true);
    expect(found?.levelLitres).toBeCloseTo(litres(2000), 3);
  });
});

describe('crossings', () => {
  const TUBE = section('TUBE', {
    shape: 'rectangular tube',
    depthMm: 100,
    widthMm: 50,
    wallMm: 3,
    cornerRadiusMm: 0,
  });
  const beam = lineMember('CB', 'TUBE', [1000, -500, 0], [1000, 500, 0]);
  const [a, b] = [node('A', [0, 0, 0]), node('B', [2000, 0, 0])];
  const look = (one: Run, shell: Parameters<typeof buildModel>[0] = {}) =>
    crossings(buildModel({ members: [beam], nodes: [a, b], runs: [one], ...shell }, { sections: new Map([[TUBE.id, TUBE]]) }));

  it('both walls of a tube are one crossing, at its near wall', () => {
    const found = look(run('R', a, b));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      run: 'R',
      through: 'CB',
      kind: 'member',
      grommet: false,
    });
    expect(found[0]?.at[0]).toBeCloseTo(1000 - 25 + 1.5, 6);
  });

  it('a grommet is known by the member, or by its place', () => {
    expect(look(run('R', a, b, [], { grommets: ['CB'] }))[0]?.grommet).toBe(true);
    expect(look(run('R', a, b, [], { grommets: [[1000, 0, 0]] }))[0]?.grommet).toBe(true);
    expect(look(run('R', a, b, [], { grommets: [[800, 0, 0]] }))[0]?.grommet).toBe(false);
  });

  it('a run beside or along a face, or inside the hollow, crosses nothing', () => {
    expect(look(run('R', node('A', [0, 0, 50]), node('B', [2000, 0, 50])))).toEqual([]);
    expect(look(run('R', node('A', [1000, -400, 0]), node('B', [1000, 400, 0])))).toEqual([]);
  });

  it('plates are crossed as sheets are, each once, in order along the run', () => {
    const plate = (id: string, x: number): Member => ({
      ...lineMember(id, 'TUBE', [0, 0, 0], [0, 0, 0]),
      shape: {
        kind: 'plate',
        thicknessMm: 8,
        outline: [
          [x, -100, -100],
          [x, 100, -100],
          [x, 100, 100],
        ],
      },
    });
    const members = [plate('G-2', 1600), beam, plate('G-1', 400)];
    const over = run('R', node('A', [0, 20, -20]), node('B', [2000, 20, -20]));
    expect(look(over, { members }).map((one) => [one.through, Math.round(one.at[0])])).toEqual([
      ['G-1', 400],
      ['CB', 977],
      ['G-2', 1600],
    ]);
    // The other half of the square that the triangle is cut from is open.
    const past = run('R', node('A', [0, -60, 60]), node('B', [900, -60, 60]));
    expect(look(past, { members })).toEqual([]);
    // A bend right in the plate is one passage.
    const bent = run('R', node('A', [0, 20, -20]), node('B', [800, 60, -20]), [[400, 20, -20]]);
    expect(look(bent, { members }).map((one) => one.through)).toEqual(['G-1']);
  });

  it('a skin, a plate and a tube in one way want a grommet each', () => {
    const down = run('R', node('A', [1000, 0, 300]), node('B', [1000, 0, -300]), [], { grommets: ['BP'] });
    const skin = levelPanel('BP', [1000, 0, -200], [400, 400]);
    const found = look(down, { panels: [skin] });
    expect(found.map((one) => [one.through, one.kind, one.grommet])).toEqual([
      ['CB', 'member', false],
      ['BP', 'panel', true],
    ]);
  });

  it('a run that ends in the wall ends at a fitting', () => {
    expect(look(run('R', a, node('B', [976.5, 0, 0])))).toEqual([]);
  });

  it('skins are crossed where they have no hole; access panels and linings of no metal want nothing', () => {
    const down = run('R', node('A', [0, 0, 100]), node('B', [0, 0, -100]));
    const skin = levelPanel('BP', [0, 0, 0], [400, 400]);
    expect(look(down, { panels: [skin] }).map((one) => one.through)).toEqual(['BP']);
    expect(
      look(down, {
        panels: [
          {
            ...skin,
            holes: [
              [
                [-20, -20, 0],
                [20, -20, 0],
                [20, 20, 0],
                [-20, 20, 0],
              ],
            ],
          },
        ],
      }),
    ).toEqual([]);
    expect(look(down, { panels: [{ ...skin, panelKind: 'access' }] })).toEqual([]);
    expect(look(down, { panels: [{ ...skin, panelKind: 'interior' }] })).toEqual([]);
  });
});
