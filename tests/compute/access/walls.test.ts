import { describe, expect, it } from 'vitest';
import { lineWalls } from '../../../src/compute/access/walls.js';
import { zoneBoxes, zoneClearMm2 } from '../../../src/compute/access/zones.js';
import { isInBox } from '../../../src/geometry/box.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { SectionShape } from '../../../src/records/index.js';
import { shapeProperties } from '../../../src/sections/index.js';
import { lineMember, zone } from '../../support/services.js';

/** Upwards of a member that runs rearward its depth stands; its width lies to the right. */
const member = lineMember('M', 'S', [0, 0, 0], [1000, 0, 0]);

/** Area and centroid of the walls' shadow, counted on a mesh of half a millimetre. */
function counted(shape: SectionShape, spanMm: number): { readonly area: number; readonly depth: number; readonly width: number } {
  const walls = lineWalls(member, shape);
  const step = 0.5;
  let [count, depth, width] = [0, 0, 0];
  for (let z = -spanMm + step / 2; z < spanMm; z += step) {
    for (let y = -spanMm + step / 2; y < spanMm; y += step) {
      const at: Vec3 = [500, y, z];
      if (!walls.some((wall) => isInBox(at, wall))) continue;
      count += 1;
      depth += z;
      width += y;
    }
  }
  return { area: count * step * step, depth: depth / count, width: width / count };
}

const SHAPES: readonly SectionShape[] = [
  { shape: 'rectangular tube', depthMm: 60, widthMm: 40, wallMm: 4, cornerRadiusMm: 0 },
  { shape: 'double hollow', depthMm: 60, widthMm: 40, wallMm: 4, webMm: 4, cornerRadiusMm: 0 },
  { shape: 'I-beam', depthMm: 60, widthMm: 40, webMm: 4, flangeMm: 6, filletMm: 0 },
  { shape: 'channel', depthMm: 60, widthMm: 40, webMm: 4, flangeMm: 6, filletMm: 0 },
  { shape: 'angle', depthMm: 60, widthMm: 40, wallMm: 4, filletMm: 0, toeRadiusMm: 0 },
  { shape: 'tee', depthMm: 60, widthMm: 40, webMm: 4, flangeMm: 6, filletMm: 0 },
  { shape: 'flat bar', depthMm: 60, widthMm: 10 },
  { shape: 'round bar', diameterMm: 40 },
  { shape: 'round tube', diameterMm: 60, wallMm: 4 },
  { shape: 'corner radius', outerRadiusMm: 60, wallMm: 4, sweepDeg: 90 },
];

describe('walls of a member', () => {
  // The take-off computes area and centroid on a way of its own (SEC rows); flat walls for round ones may differ by a few per cent.
  it.each(SHAPES)('$shape: fill the area and centroid of the section', (shape) => {
    const round = shape.shape === 'round bar' || shape.shape === 'round tube' || shape.shape === 'corner radius';
    const expected = shapeProperties(shape);
    const found = counted(shape, 45);
    expect(Math.abs(found.area / expected.areaMm2 - 1)).toBeLessThan(round ? 0.06 : 0.002);
    expect(Math.abs(found.depth - expected.depthMm)).toBeLessThan(round ? 1 : 0.3);
    expect(Math.abs(found.width - expected.widthMm)).toBeLessThan(round ? 1 : 0.3);
  });
});

describe('zones', () => {
  it('swept: across is level, up is up', () => {
    const truss = {
      ...zone('TR', [
        [0, 0, 0],
        [0, 0, 0],
      ]),
      box: undefined,
      along: [
        [64, -48, 96],
        [64, 48, 96],
      ] as Vec3[],
      clearMm: [20, 30] as const,
    };
    const [box] = zoneBoxes(truss);
    if (!box) throw new Error('one stretch');
    expect(isInBox([73, 0, 110], box)).toBe(true);
    expect(isInBox([75, 0, 96], box)).toBe(false);
    expect(isInBox([64, 0, 112], box)).toBe(false);
    expect(isInBox([64, 49, 96], box)).toBe(false);
    expect(zoneClearMm2(truss)).toBe(600);
  });

  it('of a box the clear area is that of its two smaller sizes', () => {
    expect(
      zoneClearMm2(
        zone('Z', [
          [0, 0, 0],
          [4000, 300, 200],
        ]),
      ),
    ).toBe(60000);
  });
});
