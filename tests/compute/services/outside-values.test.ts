import { describe, expect, it } from 'vitest';
import { conduitFill } from '../../../src/compute/services/cavities.js';
import { services } from '../../../src/compute/services/index.js';
import { resistanceOhm } from '../../../src/compute/services/wire.js';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import { pipeOf } from '../../../src/compute/takeoff/services/pipes.js';
import { fieldsInModel } from '../../../src/records/read-model.js';
import { LIMIT_FIELDS, type Limits } from '../../../src/records/shop.js';
import { buildModel } from '../../support/build.js';
import { circuit, node, run } from '../../support/services.js';

/** The shop's limits where shop.yaml does not say otherwise. */
const LIMITS = fieldsInModel(LIMIT_FIELDS, {}, { id: 'shop', read: {}, path: [] }) as unknown as Limits;

const IN2_MM2 = 645.16;
const insideIn2 = (text: string, nominalMm: number, material: string): number => {
  const bore = pipeOf({ text, nominalMm, material })?.insideMm ?? 0;
  return ((Math.PI / 4) * bore ** 2) / IN2_MM2;
};

describe('resistance against printed values', () => {
  const copper = (areaMm2: number) => ({ areaMm2, material: 'copper' }) as const;

  it('WIR-16, WIR-20: IEC 60287-1-1, copper from 20 to 75, 50 and −20 °C', () => {
    const at = (t: number): number => resistanceOhm(copper(1), 1000, t) / resistanceOhm(copper(1), 1000, 20);
    expect([at(75), at(50), at(-20)].map((factor) => Number(factor.toFixed(5)))).toEqual([1.21615, 1.1179, 0.8428]);
  });

  it('WIR-21: seen from 75 °C the coefficient is 0.003232 (NEC Chapter 9 Table 8 note, 0.00323, from memory)', () => {
    const [r75, r76] = [resistanceOhm(copper(1), 1000, 75), resistanceOhm(copper(1), 1000, 76)];
    expect((r76 - r75) / r75).toBeCloseTo(0.003232, 6);
  });

  it('WIR-57: 25 mm² class 2 copper has at most 0.727 Ω/km at 20 °C (IEC 60228 Table 2): the formula stays below by its lay', () => {
    const formula = resistanceOhm(copper(25), 1e6, 20);
    expect(formula).toBeLessThan(0.727);
    expect(formula).toBeGreaterThan(0.727 * 0.93);
  });
});

describe('voltage drop, worked examples', () => {
  const drop = (medium: 'dc' | 'ac', lengthMm: number, amps: number, conductor: object, volts: number) => {
    const [panel, load] = [
      node('P', [0, 0, 0], { nodeKind: 'panel', medium }),
      node('L', [lengthMm, 0, 0], { nodeKind: 'load', medium }),
    ];
    const model = buildModel({
      circuits: [
        circuit('C', { medium, voltageV: volts, loadA: amps, conductor: { conductors: 2, material: 'copper', ...conductor } }),
      ],
      nodes: [panel, load],
      runs: [run('R', panel, load, [], { circuit: 'C', medium })],
    });
    return services(model, takeOff(model)).circuits[0];
  };

  it('WIR-39: 148.7603 ft of 10 AWG solid is 3 % at 10 A and 120 V, by the printed 1.21 Ω/kft', () => {
    const found = drop('ac', 148.7603 * 304.8, 10, { awg: '10' }, 120);
    // The formula gives 1.2148 Ω/kft where the table prints 1.21.
    expect(found?.drop).toBeCloseTo(0.03 * (1.2148 / 1.21), 4);
  });

  it('WIR-40, WIR-20: 20 A over 6 m of 6 mm² at 12 V is 0.6896 V at 20 °C; DC is reckoned at 50 °C', () => {
    const found = drop('dc', 6000, 20, { areaMm2: 6 }, 12);
    expect((found?.dropV ?? 0) / 1.1179).toBeCloseTo(0.6896, 4);
  });

  it('WIR-69 (from memory): 3 % is what a shop starts from', () => {
    expect(LIMITS.voltageDrop).toBe(0.03);
  });
});

describe('conduits', () => {
  it('WIR-49: inside of EMT, NEC Chapter 9 Table 4, in²', () => {
    const printed = [
      ['1/2 in EMT', 12.7, 0.304],
      ['3/4 in EMT', 19.05, 0.533],
      ['1 in EMT', 25.4, 0.864],
    ] as const;
    for (const [text, nominal, area] of printed) expect(insideIn2(text, nominal, 'EMT')).toBeCloseTo(area, 2);
  });

  it('WIR-50: inside of PVC schedule 40, NEC Chapter 9 Table 4, in²; the pipe’s own table is its nominal bore, within 8 %', () => {
    const printed = [
      ['1/2 in PVC', 12.7, 0.285],
      ['3/4 in PVC', 19.05, 0.508],
      ['1 in PVC', 25.4, 0.832],
    ] as const;
    for (const [text, nominal, area] of printed) expect(Math.abs(insideIn2(text, nominal, 'PVC') / area - 1)).toBeLessThan(0.08);
  });

  it('WIR-52, WIR-53, WIR-54: most THHN wires of WIR-51 in EMT by 40 % fill', () => {
    const most = (conduitIn2: number, wireIn2: number): number => {
      const count = (conduitFill(3) * conduitIn2) / wireIn2;
      // NEC Chapter 9 note 7 (from memory): a remainder of 0.8 and more rounds up.
      return count % 1 >= 0.8 ? Math.ceil(count) : Math.floor(count);
    };
    expect([most(0.304, 0.0133), most(0.304, 0.0097), most(0.533, 0.0133), most(0.864, 0.0133)]).toEqual([9, 12, 16, 26]);
  });

  it('WIR-48 (from memory): 53 % with one wire, 31 % with two, 40 % with more', () => {
    expect([0, 1, 2, 3, 30].map(conduitFill)).toEqual([0.53, 0.53, 0.31, 0.4, 0.4]);
  });
});
