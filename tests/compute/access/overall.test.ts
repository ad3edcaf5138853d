import { describe, expect, it } from 'vitest';
import { overall } from '../../../src/compute/access/overall.js';
import { buildModel } from '../../support/build.js';
import { component, levelPanel } from '../../support/services.js';

const roof = levelPanel('RF', [3000, 0, 2500], [6000, 2400], { panelKind: 'roof' });

describe('sizes over all', () => {
  it('go over roof units and awnings, and say what sets each', () => {
    const unit = component('UNIT', [2000, 0, 2600], [800, 700, 300]);
    const awning = { ...component('AWNING', [3000, -1260, 2300], [4000, 120, 120]), outside: true };
    const model = buildModel({
      panels: [roof],
      components: [unit, awning],
      chassis: { axles: [], frame: { railTopAboveGroundMm: 1000 } },
    });
    const found = overall(model);
    // From −1320 (awning) to 1200 (roof); from 0 to 6000; 2750 over a rail that is 1000 over the ground.
    expect(found?.widthMm).toBeCloseTo(2520, 9);
    expect(found?.lengthMm).toBeCloseTo(6000, 9);
    expect(found?.heightAboveGroundMm).toBeCloseTo(3750, 9);
    expect(found?.setBy).toEqual({ length: ['RF', 'RF'], width: ['AWNING', 'RF'], height: 'UNIT' });
  });

  it('count a thing without a size by its middle at least, and a box by its own middle', () => {
    const model = buildModel({
      panels: [roof],
      components: [component('LAMP', [6100, 0, 0]), { ...component('BOX', [0, 0, 0], [200, 200, 200]), middle: [0, 0, 2600] }],
      chassis: { axles: [], frame: { railTopAboveGroundMm: 1000 } },
    });
    expect(overall(model)).toMatchObject({ lengthMm: 6200, heightAboveGroundMm: 3700, setBy: { height: 'BOX' } });
  });

  it('have no height without the frame’s, and say which key is missing; nothing recorded has no size', () => {
    const found = overall(buildModel({ panels: [roof] }));
    expect(found?.heightAboveGroundMm).toBeUndefined();
    expect(found?.notes.join(' ')).toContain('`rail_top_above_ground`');
    expect(overall(buildModel({}))).toBeUndefined();
  });

  it('reach out to the outer tyres: track, dual spacing and width', () => {
    const tyres = { count: 4, loadIndex: [140], diameterMm: 1000, widthMm: 300, spacingMm: 340 };
    const axle = { id: 'drive', xMm: 6500, trackMm: 1900, dual: true, lift: false, steered: false, tyres };
    const found = overall(buildModel({ panels: [roof], chassis: { axles: [axle], frame: { railTopAboveGroundMm: 1000 } } }));
    expect(found?.widthMm).toBeCloseTo(2540, 9);
    expect(found?.setBy.width).toEqual(['drive', 'drive']);
    expect(found?.lengthMm).toBeCloseTo(7000, 9);
  });
});
