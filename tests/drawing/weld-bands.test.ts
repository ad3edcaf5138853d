import { describe, expect, it } from 'vitest';
import type { Figures } from '../../src/assess.js';
import { heatAffectedZones } from '../../src/compute/welding/weld-bands.js';
import { weldBandMarks } from '../../src/drawing/marks/weld-bands.js';
import { VIEWS } from '../../src/drawing/projection.js';
import { type Point, rectAbout } from '../../src/drawing/scene.js';
import { layOut, type Port } from '../../src/drawing/sheet.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import { buildModel, section } from '../support/build.js';
import { member } from './sample.js';

type Joint = Figures['joints']['joints'][number];

const tube = section('RT4', { shape: 'rectangular tube', depthMm: 100, widthMm: 50, wallMm: 5, cornerRadiusMm: 0 });
const library = { sections: new Map([['RT4', tube]]) };
const rail = member('A', 'subframe', 'RT4', [0, 0, 0], [100, 0, 0]);
const layout = layOut(
  [{ view: VIEWS.left, bounds: { x0: 0, y0: -100, x1: 2540, y1: 100 } }],
  { widthMm: 300, heightMm: 200 },
  { sideMm: 5, aboveMm: 5, belowMm: 5, mostMm: 5 },
);
const port = layout.ports[0] as Port;

const joint = (min: Vec3, max: Vec3, more: Partial<Joint> = {}): Joint => ({
  members: ['A', 'B'],
  at: min,
  gapMm: 0,
  welds: ['W-1'],
  bounds: { min, max },
  ...more,
});

/** Bands as stretches along the vehicle, mm. */
function bands(joints: readonly Joint[], one = rail): readonly (readonly number[])[] {
  const toVehicle = (x: number): number => Math.round((x - port.frame.x0) * layout.reduction);
  const model = buildModel({ members: [one] }, library);
  const found = new Map(heatAffectedZones(model, joints).map((band) => [band.member, band]));
  return weldBandMarks(one, found, model.library, port).map((mark) => {
    const box = rectAbout(mark.kind === 'shape' ? (mark.rings[0] as readonly Point[]) : []);
    return [toVehicle(box?.x0 ?? 0), toVehicle(box?.x1 ?? 0)];
  });
}

// MAT-44: 1 in (25 mm) each way from the weld, Aluminum Design Manual, from memory. 25.4 mm by definition of the inch.
describe('weld-affected bands', () => {
  it('reach 25 mm beyond the contact each way', () => {
    expect(bands([joint([1000, -25, 50], [1050, 25, 50])])).toEqual([[975, 1075]]);
  });

  it('end with the member, and join where they meet', () => {
    expect(bands([joint([0, -25, 50], [50, 25, 50])])).toEqual([[0, 75]]);
    expect(bands([joint([1000, 0, 50], [1050, 0, 50]), joint([1090, 0, 50], [1140, 0, 50])])).toEqual([[975, 1165]]);
  });

  it('are not drawn where there is no weld, nor on a secondary member', () => {
    expect(bands([joint([1000, 0, 50], [1050, 0, 50], { welds: [] })])).toEqual([]);
    expect(bands([joint([1000, 0, 50], [1050, 0, 50])], { ...rail, memberClass: 'secondary' })).toEqual([]);
  });
});
