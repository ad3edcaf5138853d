import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SectionShape } from '../../../src/records/index.js';
import { shapeProperties } from '../../../src/sections/index.js';
import { barTorsion } from '../../../src/sections/torsion.js';

/** Metal or not at a place measured from the middle of the box: written anew here, so that geometry is checked by counting. */
type Inside = (depth: number, width: number) => boolean;

/** Sums over a fine grid of square cells. */
function counted(inside: Inside, depth: number, width: number, cells: number) {
  const [dd, dw] = [depth / cells, width / cells];
  let [a, md, mw, dd2, dw2, ddw] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < cells; i++) {
    for (let k = 0; k < cells; k++) {
      const [d, w] = [(i + 0.5) * dd - depth / 2, (k + 0.5) * dw - width / 2];
      if (!inside(d, w)) continue;
      a += 1;
      md += d;
      mw += w;
      dd2 += d * d;
      dw2 += w * w;
      ddw += d * w;
    }
  }
  const cell = dd * dw;
  const [cd, cw] = [md / a, mw / a];
  return {
    area: a * cell,
    cd,
    cw,
    ix: (dd2 - a * cd * cd) * cell,
    iy: (dw2 - a * cw * cw) * cell,
    ixy: (ddw - a * cd * cw) * cell,
  };
}

function expectCounted(shape: SectionShape, depth: number, width: number, inside: Inside): void {
  const count = counted(inside, depth, width, 800);
  const one = shapeProperties(shape);
  expect(one.areaMm2 / count.area).toBeCloseTo(1, 2);
  expect(one.depthMm).toBeCloseTo(count.cd, 0);
  expect(one.widthMm).toBeCloseTo(count.cw, 0);
  expect(Math.abs(one.ixMm4 / count.ix - 1)).toBeLessThan(0.01);
  expect(Math.abs(one.iyMm4 / count.iy - 1)).toBeLessThan(0.01);
  expect(Math.abs(one.ixyMm4 - count.ixy)).toBeLessThan(0.01 * Math.sqrt(count.ix * count.iy));
}

describe('shapes without a table row, against counting cells', () => {
  it('a tee has its flange towards +depth', () => {
    const shape = { shape: 'tee', depthMm: 100, widthMm: 80, webMm: 8, flangeMm: 10, filletMm: 10 } as const;
    expectCounted(shape, 100, 80, (d, w) => {
      if (d > 40 || Math.abs(w) < 4) return true;
      const [u, v] = [Math.abs(w) - 4, 40 - d];
      return u < 10 && v < 10 && (10 - u) ** 2 + (10 - v) ** 2 > 100;
    });
    expect(shapeProperties(shape).depthMm).toBeGreaterThan(0);
  });

  it('an unequal angle has its heel at −depth, −width', () => {
    const shape = { shape: 'angle', depthMm: 100, widthMm: 60, wallMm: 8, filletMm: 10, toeRadiusMm: 6 } as const;
    expectCounted(shape, 100, 60, (d, w) => {
      const [v, u] = [d + 50, w + 30];
      if (u > 8 && v > 8) return u < 18 && v < 18 && (18 - u) ** 2 + (18 - v) ** 2 > 100;
      if (v > 94 && u > 2) return (v - 94) ** 2 + (u - 2) ** 2 < 36;
      if (u > 54 && v > 2) return (u - 54) ** 2 + (v - 2) ** 2 < 36;
      return true;
    });
  });

  it.each([
    // SEC-L02, SEC-L04 by their dimensions: the printed rz is up to 5 % under that of the shape itself
    [50.8, 3.175, 6.35, 3.175],
    [76.2, 6.35, 7.925, 6.35],
  ])('an equal angle of %d mm with full toe radii', (leg, t, root, toe) => {
    const shape = { shape: 'angle', depthMm: leg, widthMm: leg, wallMm: t, filletMm: root, toeRadiusMm: toe } as const;
    const inToe = (along: number, out: number): boolean =>
      along <= leg - toe || out <= t - toe || (along - leg + toe) ** 2 + (out - t + toe) ** 2 < toe ** 2;
    expectCounted(shape, leg, leg, (d, w) => {
      const [v, u] = [d + leg / 2, w + leg / 2];
      if (u < t) return inToe(v, u);
      if (v < t) return inToe(u, v);
      return u < t + root && v < t + root && (t + root - u) ** 2 + (t + root - v) ** 2 > root ** 2;
    });
  });

  it('a double hollow has its web across the middle of the depth', () => {
    const shape = { shape: 'double hollow', depthMm: 101.6, widthMm: 44.45, wallMm: 4, webMm: 4, cornerRadiusMm: 0 } as const;
    expectCounted(shape, 101.6, 44.45, (d, w) => Math.abs(d) > 46.8 || Math.abs(w) > 18.225 || Math.abs(d) < 2);
  });

  it.each([90, 60])('a corner radius of %d° is a part of a ring about the inner corner of its box', (sweepDeg) => {
    const shape = { shape: 'corner radius', outerRadiusMm: 150, wallMm: 12, sweepDeg } as const;
    expectCounted(shape, 150, 150, (d, w) => {
      const [v, u] = [d + 75, w + 75];
      const radius = Math.hypot(u, v);
      const off = Math.abs((Math.atan2(v, u) * 180) / Math.PI - 45);
      return radius < 150 && radius > 138 && off < sweepDeg / 2;
    });
  });

  it('a tube whose wall meets in the middle is a bar', () => {
    const tube = shapeProperties({ shape: 'rectangular tube', depthMm: 40, widthMm: 20, wallMm: 10, cornerRadiusMm: 0 });
    const flat = shapeProperties({ shape: 'flat bar', depthMm: 40, widthMm: 20 });
    expect(tube.areaMm2).toBe(flat.areaMm2);
    expect(tube.ixMm4).toBe(flat.ixMm4);
  });
});

describe('torsion', () => {
  // Timoshenko and Goodier, Theory of Elasticity, table of article 109: coefficients of a b³, from memory.
  it.each([
    [1, 0.1406],
    [1.5, 0.196],
    [2, 0.229],
    [3, 0.263],
    [5, 0.291],
    [10, 0.312],
  ])('a bar %d times as long as thick', (ratio, coefficient) => {
    expect(barTorsion(ratio * 10, 10) / (ratio * 10 * 1000)).toBeCloseTo(coefficient, 3);
  });

  // Prandtl's stress function over the section by relaxation: ∇²φ = −2, J = 2∫φ. A second method, coarse.
  it.each([
    ['channel', { shape: 'channel', depthMm: 60, widthMm: 32, webMm: 4, flangeMm: 5, filletMm: 4 } as const],
    ['angle', { shape: 'angle', depthMm: 40, widthMm: 40, wallMm: 5, filletMm: 4, toeRadiusMm: 0 } as const],
    ['tee', { shape: 'tee', depthMm: 40, widthMm: 40, webMm: 4, flangeMm: 5, filletMm: 4 } as const],
  ])('%s agrees with a relaxation to 5 %%', (_name, shape) => {
    expect(Math.abs(shapeProperties(shape).jMm4 / relaxed(shape) - 1)).toBeLessThan(0.05);
  });
});

type Open = Extract<SectionShape, { shape: 'channel' | 'angle' | 'tee' }>;

function metal(shape: Open): Inside {
  const { depthMm, widthMm, filletMm: r } = shape;
  const inRoot = (u: number, v: number): boolean => u >= 0 && v >= 0 && u < r && v < r && (r - u) ** 2 + (r - v) ** 2 > r * r;
  return (d, w) => {
    const [v, u] = [d + depthMm / 2, w + widthMm / 2];
    if (shape.shape === 'angle') return u < shape.wallMm || v < shape.wallMm || inRoot(u - shape.wallMm, v - shape.wallMm);
    if (shape.shape === 'channel') {
      const out = Math.min(v, depthMm - v) - shape.flangeMm;
      return out < 0 || u < shape.webMm || inRoot(u - shape.webMm, out);
    }
    const under = depthMm - shape.flangeMm - v;
    const aside = Math.abs(w) - shape.webMm / 2;
    return under < 0 || aside < 0 || inRoot(aside, under);
  };
}

function relaxed(shape: Open): number {
  const h = 0.25;
  const rows = Math.round(shape.depthMm / h);
  const columns = Math.round(shape.widthMm / h);
  const inside = metal(shape);
  const cells: number[] = [];
  const phi = new Float64Array((rows + 1) * (columns + 1));
  for (let i = 1; i < rows; i++) {
    for (let k = 1; k < columns; k++) {
      if (inside(i * h - shape.depthMm / 2, k * h - shape.widthMm / 2)) cells.push(i * (columns + 1) + k);
    }
  }
  for (let round = 0; round < 1500; round++) {
    for (const at of cells) {
      const around =
        (phi[at - 1] as number) + (phi[at + 1] as number) + (phi[at - columns - 1] as number) + (phi[at + columns + 1] as number);
      phi[at] = (phi[at] as number) + 1.7 * ((around + 2 * h * h) / 4 - (phi[at] as number));
    }
  }
  return 2 * h * h * cells.reduce((sum, at) => sum + (phi[at] as number), 0);
}

describe('laws', () => {
  it('scaling a section by k scales area by k² and second moments by k⁴', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 20, noNaN: true }), (k) => {
        const shape = (s: number): SectionShape => ({
          shape: 'channel',
          depthMm: 100 * s,
          widthMm: 50 * s,
          webMm: 5 * s,
          flangeMm: 6 * s,
          filletMm: 7 * s,
        });
        const [one, more] = [shapeProperties(shape(1)), shapeProperties(shape(k))];
        expect(more.areaMm2 / (one.areaMm2 * k ** 2)).toBeCloseTo(1, 9);
        expect(more.ixMm4 / (one.ixMm4 * k ** 4)).toBeCloseTo(1, 9);
        expect(more.iyMm4 / (one.iyMm4 * k ** 4)).toBeCloseTo(1, 9);
        expect(more.jMm4 / (one.jMm4 * k ** 4)).toBeCloseTo(1, 9);
      }),
    );
  });
});
