import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ambientFactor,
  ampacityA,
  bundleFactor,
  column,
  nextStandardA,
  smallConductorA,
} from '../../../src/compute/services/ampacity.js';
import { services } from '../../../src/compute/services/index.js';
import { resistanceOhm, type Wire, wireOf } from '../../../src/compute/services/wire.js';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import type { Model } from '../../../src/model/shell.js';
import type { Conductor } from '../../../src/records/index.js';
import { buildModel } from '../../support/build.js';
import { circuit, node, run, zone } from '../../support/services.js';

const library = buildModel().library;
const copper = (more: Partial<Conductor>): Conductor => ({
  conductors: 2,
  material: 'copper',
  ...more,
});
const wire = (more: Partial<Conductor>): Wire => wireOf(copper(more), library) as Wire;
const look = (shell: Partial<Model['shell']>) => {
  const model = buildModel(shell);
  return services(model, takeOff(model));
};
const OHM_PER_KFT = 304.8e3;

describe('resistance', () => {
  it('WIR-36: 12 AWG solid at 75 °C, 1.9315 Ω/kft by formula; NEC Chapter 9 Table 8 prints 1.93', () => {
    expect(resistanceOhm(wire({ awg: '12' }), OHM_PER_KFT, 75)).toBeCloseTo(1.9315, 4);
  });

  it('WIR-22: NEC Chapter 9 Table 8, solid copper at 75 °C, to half a per cent', () => {
    for (const [awg, printed] of [
      ['14', 3.07],
      ['12', 1.93],
      ['10', 1.21],
      ['8', 0.764],
    ] as const) {
      expect(Math.abs(resistanceOhm(wire({ awg }), OHM_PER_KFT, 75) / printed - 1)).toBeLessThan(0.005);
    }
  });

  it('WIR-37: 1 and 2.5 mm² at 20 °C', () => {
    expect(resistanceOhm(wire({ areaMm2: 1 }), 1000, 20) * 1000).toBeCloseTo(17.241, 9);
    expect(resistanceOhm(wire({ areaMm2: 2.5 }), 1000, 20) * 1000).toBeCloseTo(6.8964, 9);
  });

  it('WIR-17: aluminium by its own resistivity and coefficient', () => {
    const bar = { areaMm2: 10, material: 'aluminium' } as const;
    expect(resistanceOhm(bar, 1000, 20)).toBeCloseTo(0.002826, 12);
    expect(resistanceOhm(bar, 1000, 70) / resistanceOhm(bar, 1000, 20)).toBeCloseTo(1 + 50 * 0.00403, 12);
  });
});

describe('voltage drop', () => {
  const panel = node('P', [0, 0, 0], { nodeKind: 'panel' });

  it('WIR-41: 20 A over 6 m one way of 6 mm², 12 V, at 50 °C: 0.7709 V', () => {
    const lamp = node('L', [6000, 0, 0], { nodeKind: 'load' });
    const figure = look({
      circuits: [
        circuit('C', {
          voltageV: 12,
          loadA: 20,
          conductor: copper({ areaMm2: 6 }),
        }),
      ],
      nodes: [panel, lamp],
      runs: [run('R', panel, lamp, [], { circuit: 'C' })],
    }).circuits[0];
    expect(figure?.dropV).toBeCloseTo(0.7709, 4);
    expect(figure?.drop).toBeCloseTo(0.7709 / 12, 5);
    expect(figure?.worstLoad).toBe('L');
    expect(figure?.resistanceOhm).toBeCloseTo(0.7709 / 20, 5);
    expect(figure?.root).toBe('P');
  });

  it('WIR-38: 10 A over 100 ft one way of 12 AWG, 120 V: 3.86 V (3.22 %) from the printed table', () => {
    const outlet = node('O', [30480, 0, 0], { nodeKind: 'load', medium: 'ac' });
    const figure = look({
      circuits: [
        circuit('C', {
          medium: 'ac',
          voltageV: 120,
          loadA: 10,
          conductor: copper({ awg: '12', conductors: 3 }),
        }),
      ],
      nodes: [panel, outlet],
      runs: [run('R', panel, outlet, [], { circuit: 'C', medium: 'ac' })],
    }).circuits[0];
    expect(figure?.dropV).toBeCloseTo(3.86, 2);
    expect(figure?.drop).toBeCloseTo(0.0322, 4);
  });

  it('WIR-42: trunk 4 m of 10 mm² with 30 A, branch 3 m of 4 mm² with 10 A: 0.67240 V at 20 °C, here at 50 °C', () => {
    const tee = node('T', [4000, 0, 0]);
    const a = node('A', [4000, 3000, 0], { nodeKind: 'load', loadA: 10 });
    const b = node('B', [4000, -1, 0], { nodeKind: 'load', loadA: 20 });
    const figure = look({
      circuits: [circuit('C', { voltageV: 12, conductor: copper({ areaMm2: 4 }) })],
      nodes: [panel, tee, a, b],
      runs: [
        run('R1', panel, tee, [], {
          circuit: 'C',
          conductor: copper({ areaMm2: 10 }),
        }),
        run('R2', tee, a, [], { circuit: 'C' }),
        run('R3', tee, b, [], { circuit: 'C' }),
      ],
    }).circuits[0];
    // WIR-20: 20 → 50 °C is 1.11790
    expect(figure?.dropV).toBeCloseTo(0.6724 * 1.1179, 4);
    expect(figure?.worstLoad).toBe('A');
    expect(figure?.loadA).toBe(30);
    expect(figure?.loads.map((load) => load.runs)).toEqual([
      ['R1', 'R2'],
      ['R1', 'R3'],
    ]);
  });

  it('uses the installed length where it was measured', () => {
    const lamp = node('L', [6000, 0, 0], { nodeKind: 'load' });
    const figure = look({
      circuits: [
        circuit('C', {
          voltageV: 12,
          loadA: 20,
          conductor: copper({ areaMm2: 6 }),
        }),
      ],
      nodes: [panel, lamp],
      runs: [run('R', panel, lamp, [], { circuit: 'C', installedLengthMm: 12000 })],
    }).circuits[0];
    expect(figure?.dropV).toBeCloseTo(2 * 0.7709, 3);
    expect(figure?.lengthMm).toBe(12000);
  });

  it('gives no drop where a conductor on the way is not recorded, and says so', () => {
    const lamp = node('L', [6000, 0, 0], { nodeKind: 'load' });
    const figure = look({
      circuits: [circuit('C', { voltageV: 12, loadA: 20 })],
      nodes: [panel, lamp],
      runs: [run('R', panel, lamp, [], { circuit: 'C' })],
    }).circuits[0];
    expect(figure?.dropV).toBeUndefined();
    expect(figure?.assumptions.join(' ')).toContain('No conductor recorded for R');
  });

  it('agrees with nodal analysis of the same tree (Kirchhoff, solved by elimination), there and back', () => {
    const parts = fc.array(
      fc.tuple(fc.nat(20), fc.integer({ min: 100, max: 5000 }), fc.integer({ min: 0, max: 15 }), fc.integer({ min: 1, max: 16 })),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(parts, (drawn) => {
        const nodes = [panel, ...drawn.map(([, , loadA], i) => node(`N${i}`, [i + 1, 0, 0], { nodeKind: 'load', loadA }))];
        const runs = drawn.map(([to, lengthMm, , areaMm2], i) => {
          const from = nodes[to % (i + 1)];
          if (!from) throw new Error('a tree grows from what is there');
          return run(`R${i}`, from, nodes[i + 1] as typeof panel, [], {
            circuit: 'C',
            installedLengthMm: lengthMm,
            conductor: copper({ areaMm2 }),
          });
        });
        const figure = look({
          circuits: [circuit('C', { voltageV: 12 })],
          nodes,
          runs,
        }).circuits[0];
        const volts = solveNodes(
          nodes.length,
          runs.map((one) => {
            const ohm =
              2 *
              resistanceOhm(
                {
                  areaMm2: one.conductor?.areaMm2 as number,
                  material: 'copper',
                },
                one.installedLengthMm as number,
                50,
              );
            const number = (id: string): number => nodes.findIndex((other) => other.id === id);
            return [number(one.from), number(one.to), 1 / ohm] as const;
          }),
          nodes.map((one) => one.loadA ?? 0),
        );
        for (const load of figure?.loads ?? []) {
          expect(load.dropV).toBeCloseTo(-(volts[nodes.findIndex((one) => one.id === load.node)] as number), 6);
        }
        expect(figure?.loads.length).toBe(drawn.length);
      }),
      { numRuns: 60 },
    );
  });
});

/** Node voltages against node 0 from conductances and the current drawn at each node: G V = −I by Gauss elimination. */
function solveNodes(
  count: number,
  edges: readonly (readonly [number, number, number])[],
  drawn: readonly number[],
): readonly number[] {
  const rows = Array.from({ length: count - 1 }, (_, i) => [
    ...Array.from({ length: count - 1 }, () => 0),
    -(drawn[i + 1] as number),
  ]);
  const add = (a: number, b: number, value: number): void => {
    if (a > 0 && b > 0) (rows[a - 1] as number[])[b - 1] = ((rows[a - 1] as number[])[b - 1] as number) + value;
  };
  for (const [a, b, g] of edges) {
    add(a, a, g);
    add(b, b, g);
    add(a, b, -g);
    add(b, a, -g);
  }
  for (let k = 0; k < count - 1; k++) {
    const pivot = rows[k] as number[];
    for (let i = 0; i < count - 1; i++) {
      if (i === k) continue;
      const row = rows[i] as number[];
      const factor = (row[k] as number) / (pivot[k] as number);
      for (let j = k; j < count; j++) row[j] = (row[j] as number) - factor * (pivot[j] as number);
    }
  }
  return [0, ...rows.map((row, i) => (row[count - 1] as number) / (row[i] as number))];
}

describe('ampacity', () => {
  it('WIR-24: NEC Table 310.16, copper, 60 / 75 / 90 °C', () => {
    const printed = [
      ['14', 15, 20, 25],
      ['12', 20, 25, 30],
      ['10', 30, 35, 40],
      ['8', 40, 50, 55],
      ['6', 55, 65, 75],
      ['4', 70, 85, 95],
      ['2', 95, 115, 130],
      ['1/0', 125, 150, 170],
      ['4/0', 195, 230, 260],
    ] as const;
    for (const [awg, a60, a75, a90] of printed) {
      expect([60, 75, 90].map((ratingC) => ampacityA(wire({ awg, ratingC })))).toEqual([a60, a75, a90]);
    }
    expect(ampacityA(wire({ awg: '14' }))).toBe(15);
    expect(ampacityA(wire({ awg: '14', ratingC: 105 }))).toBe(25);
  });

  it('WIR-47: 12 AWG 90 °C wire, 40 °C, six conductors: 21.84 A', () => {
    const twelve = wire({ awg: '12', ratingC: 90 });
    // The printed 0.91 is √(50/60) to two digits.
    const factor = Number(ambientFactor(40, column(90)).toFixed(2)) * bundleFactor(6);
    expect((ampacityA(twelve) as number) * factor).toBeCloseTo(21.84, 9);
  });

  it('WIR-45: NEC Table 310.15(B)(1) is the formula at the top of each step, to two digits', () => {
    const printed = [
      [10, 1.29, 1.2, 1.15],
      [15, 1.22, 1.15, 1.12],
      [20, 1.15, 1.11, 1.08],
      [25, 1.08, 1.05, 1.04],
      [30, 1, 1, 1],
      [35, 0.91, 0.94, 0.96],
      [40, 0.82, 0.88, 0.91],
      [45, 0.71, 0.82, 0.87],
      [50, 0.58, 0.75, 0.82],
    ] as const;
    for (const [upToC, ...factors] of printed) {
      const found = ([60, 75, 90] as const).map((of) => ambientFactor(upToC, of));
      expect(Math.max(...found.map((factor, i) => Math.abs(factor - (factors[i] as number))))).toBeLessThanOrEqual(0.0051);
    }
    expect([59, 60, 75, 90].map((t) => ambientFactor(t, 60) > 0)).toEqual([true, false, false, false]);
  });

  it('takes the air from the circuit, else from shop.yaml, else 30 °C, and says so', () => {
    const [p, l] = [node('P', [0, 0, 0], { nodeKind: 'panel' }), node('L', [3000, 0, 0], { nodeKind: 'load' })];
    const figure = (more: object, ambientC?: number) => {
      const shell = { circuits: [circuit('C', { conductor: copper({ awg: '12', ratingC: 90 }), ...more })], nodes: [p, l] };
      const limits = { ...buildModel().shop.limits, ...(ambientC === undefined ? {} : { ambientC }) };
      const model = buildModel({ ...shell, runs: [run('R', p, l, [], { circuit: 'C' })] }, {}, { limits });
      return services(model, takeOff(model)).circuits[0];
    };
    expect(figure({})?.ampacityA).toBe(30);
    // WIR-47 without the bundle: 30 × √(50/60)
    expect(figure({}, 40)?.ampacityA).toBeCloseTo(30 * Math.sqrt(50 / 60), 9);
    expect(figure({ ambientC: 50 }, 40)?.ampacityA).toBeCloseTo(30 * Math.sqrt(40 / 60), 9);
    expect(figure({ ambientC: 50 })?.assumptions[0]).toContain('ampacity in 50 °C air');
  });

  it('WIR-46: adjustment for bundled conductors', () => {
    expect([3, 4, 6, 7, 9, 10, 20, 21, 30, 31, 40, 41].map(bundleFactor)).toEqual([
      1, 0.8, 0.8, 0.7, 0.7, 0.5, 0.5, 0.45, 0.45, 0.4, 0.4, 0.35,
    ]);
  });

  it('WIR-43, WIR-62 (from memory): small conductors; WIR-44: standard ratings', () => {
    expect(['18', '16', '14', '12', '10', '8'].map((awg) => smallConductorA(wire({ awg })))).toEqual([
      6,
      8,
      15,
      20,
      30,
      undefined,
    ]);
    expect([14, 15, 16, 55, 65, 401].map(nextStandardA)).toEqual([15, 15, 20, 60, 70, 401]);
  });

  it('takes a metric size as the largest gauge with no more metal: WIR-60', () => {
    expect(ampacityA(wire({ areaMm2: 2.5, ratingC: 75 }))).toBe(20);
    expect(ampacityA(wire({ areaMm2: 3.3, ratingC: 75 }))).toBe(25);
    expect(ampacityA(wire({ areaMm2: 0.5, ratingC: 75 }))).toBeUndefined();
  });

  it('counts wires that lie together for more than 24 in, and the smallest conductor rules', () => {
    const [p, l] = [node('P', [0, 0, 0], { nodeKind: 'panel' }), node('L', [3000, 0, 0], { nodeKind: 'load' })];
    const conductor = copper({ awg: '14', ratingC: 75 });
    const many = (apartMm: number) =>
      look({
        circuits: [0, 1, 2].map((i) => circuit(`C${i}`, { conductor })),
        nodes: [p, l],
        runs: [0, 1, 2].map((i) =>
          run(
            `R${i}`,
            p,
            l,
            [
              [100, i * apartMm, 0],
              [2900, i * apartMm, 0],
            ],
            { circuit: `C${i}` },
          ),
        ),
      }).circuits[0];
    // Six conductors: 20 A × 0.80
    expect(many(10)?.ampacityA).toBeCloseTo(16, 9);
    expect(many(10)?.bundledConductors).toBe(6);
    expect(many(300)?.ampacityA).toBe(20);
    expect(many(10)?.ampacityAloneA).toBe(20);
  });
});

describe('cavities', () => {
  it('fill is the outside circles over the clear area', () => {
    const [a, b] = [node('A', [0, 0, 0], { medium: 'water' }), node('B', [3000, 0, 0], { medium: 'water' })];
    const size = { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' };
    const figures = look({
      zones: [
        zone('Z', [
          [0, -25, -25],
          [3000, 25, 25],
        ]),
      ],
      nodes: [a, b],
      runs: [run('R1', a, b, [], { size }), run('R2', a, b, [], { size, zones: ['Z'] })],
    });
    // ASTM F876 (from memory): 1/2 in PEX is 5/8 in outside, 197.93 mm²
    expect(figures.zones[0]?.filledMm2).toBeCloseTo(2 * 197.933, 2);
    expect(figures.zones[0]?.fill).toBeCloseTo((2 * 197.933) / 2500, 5);
    expect(figures.zones[0]?.runs).toEqual(['R1', 'R2']);
  });

  it('runs that follow one another are not side by side', () => {
    const [a, b, c] = [0, 1500, 3000].map((x, i) => node(`N${i}`, [x, 0, 0], { medium: 'water' })) as [
      ReturnType<typeof node>,
      ReturnType<typeof node>,
      ReturnType<typeof node>,
    ];
    const size = { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' };
    const figures = look({
      zones: [
        zone('Z', [
          [0, -25, -25],
          [3000, 25, 25],
        ]),
      ],
      nodes: [a, b, c],
      runs: [run('R1', a, b, [], { size }), run('R2', b, c, [], { size }), run('R3', a, c, [], { size })],
    });
    // Geometry: at any place the whole-length run and one of the two halves. 1/2 in PEX outside as above.
    expect(figures.zones[0]?.filledMm2).toBeCloseTo(2 * 197.933, 2);
  });

  it('a run that only crosses a cavity is not in it', () => {
    const [a, b] = [node('A', [1000, -500, 0]), node('B', [1000, 500, 0])];
    expect(
      look({
        zones: [
          zone('Z', [
            [0, -25, -25],
            [3000, 25, 25],
          ]),
        ],
        nodes: [a, b],
        runs: [run('R', a, b)],
      }).zones,
    ).toMatchObject([{ id: 'Z', fill: 0, runs: [] }]);
  });
});
