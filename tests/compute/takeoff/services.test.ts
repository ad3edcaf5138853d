import { describe, expect, it } from 'vitest';
import {
  awgAreaMm2,
  awgDiameterMm,
  CONDUCTOR_DENSITY_KG_M3,
  RESISTIVITY_OHM_MM2_M,
  TEMPERATURE_COEFFICIENT,
} from '../../../src/compute/conductors.js';
import { runOutsideDiameterMm, takeOff } from '../../../src/compute/takeoff/index.js';
import { pipe, pipeOf } from '../../../src/compute/takeoff/services/pipes.js';
import { bundleDiameter, insulatedAreaMm2, wiresOf } from '../../../src/compute/takeoff/services/wires.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Circuit, ConductorType, Run, Service } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';

const IN = 25.4;
const LB_FT = 0.45359237 / 0.3048;
const within = (value: number, expected: number, share: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

describe('gauges', () => {
  // WIR-01, WIR-02: ASTM B258, copper wire table, in
  it.each([
    ['4/0', 0.46],
    ['2/0', 0.3648],
    ['1/0', 0.3249],
    ['2', 0.2576],
    ['4', 0.2043],
    ['6', 0.162],
    ['8', 0.1285],
    ['10', 0.1019],
    ['12', 0.08081],
    ['14', 0.06408],
    ['16', 0.05082],
    ['18', 0.0403],
    ['20', 0.03196],
  ])('WIR-02 %s AWG', (awg, inches) => within(awgDiameterMm(awg) as number, inches * IN, 0.0006));

  // WIR-03: area in circular mils; WIR-04: mass of bare copper, lb/1000 ft
  it.each([
    ['4/0', 211600, 640.5],
    ['2/0', 133100, 402.8],
    ['1/0', 105500, 319.5],
    ['2', 66370, 200.9],
    ['4', 41740, 126.4],
    ['6', 26250, 79.46],
    ['8', 16510, 49.97],
    ['10', 10380, 31.43],
    ['12', 6530, 19.77],
    ['14', 4107, 12.43],
    ['16', 2583, 7.818],
    ['18', 1624, 4.917],
    ['20', 1022, 3.092],
  ])('WIR-03, WIR-04 %s AWG', (awg, cmil, lbPer1000Ft) => {
    const area = awgAreaMm2(awg) as number;
    within(area, (cmil * 1e-6 * IN ** 2 * Math.PI) / 4, 0.0012);
    within(area * 1e-6 * CONDUCTOR_DENSITY_KG_M3.copper, (lbPer1000Ft / 1000) * LB_FT, 0.002);
  });

  // WIR-05: by the formula, mm²
  it.each([
    ['4/0', 107.2193],
    ['1/0', 53.4751],
    ['6', 13.3018],
    ['12', 3.3088],
    ['20', 0.5176],
  ])('WIR-05 %s AWG', (awg, area) => expect(awgAreaMm2(awg)).toBeCloseTo(area, 4));

  it('WIR-06: 12 AWG copper is 19.766 lb/1000 ft', () => {
    expect((((awgAreaMm2('12') as number) * 1e-6 * 8890) / LB_FT) * 1000).toBeCloseTo(19.766, 2);
  });

  it('WIR-15 to WIR-17: constants of IEC 60287-1-1 Table 1', () => {
    expect(RESISTIVITY_OHM_MM2_M.copper).toBe(17.241e-3);
    expect(RESISTIVITY_OHM_MM2_M.aluminium).toBe(28.26e-3);
    expect(TEMPERATURE_COEFFICIENT).toEqual({ copper: 0.00393, aluminium: 0.00403 });
  });

  it.each(['', '5/0', '41', '-1', '14 AWG', 'x'])('`%s` is no gauge', (awg) => expect(awgAreaMm2(awg)).toBeUndefined());
});

describe('wires', () => {
  it('WIR-51: THHN area over the insulation, NEC Chapter 9 Table 5', () => {
    for (const [awg, squareInches] of [
      ['14', 0.0097],
      ['8', 0.0366],
      ['4/0', 0.3237],
    ] as const) {
      expect(insulatedAreaMm2(awgAreaMm2(awg) as number)).toBeCloseTo(squareInches * IN ** 2, 6);
    }
  });

  it('areas between and beyond the rows rise with the metal', () => {
    const areas = [0.3, 0.82, 1, 2.5, 6, 10, 25, 50, 95, 120, 240].map(insulatedAreaMm2);
    expect(areas).toEqual([...new Set(areas)].sort((a, b) => a - b));
  });

  it('two lie side by side, seven in a ring around one: equal circles in a circle', () => {
    expect(bundleDiameter(2, 3)).toBe(6);
    expect(bundleDiameter(3, 1)).toBeCloseTo(1 + 2 / Math.sqrt(3), 3);
    expect(bundleDiameter(7, 1)).toBe(3);
  });

  it('weigh their metal and an insulation', () => {
    const one = wiresOf({ awg: '12', conductors: 1, material: 'copper' }, new Map());
    const copper = (19.77 / 1000) * LB_FT;
    expect(one?.massKgM).toBeGreaterThan(copper * 1.15);
    expect(one?.massKgM).toBeLessThan(copper * 1.35);
    const three = wiresOf({ awg: '12', conductors: 3, material: 'copper' }, new Map());
    expect(three?.massKgM).toBeCloseTo(3 * (one?.massKgM as number), 12);
  });
});

describe('pipes', () => {
  const size = (nominalIn: number, material: string) =>
    pipeOf({ text: `${nominalIn} in ${material}`, nominalMm: nominalIn * IN, material });

  // ASTM B88 type L, printed mass per foot: from memory
  it.each([
    [0.5, 0.285],
    [0.75, 0.455],
    [1, 0.655],
    [2, 1.75],
  ])('%d in copper type L', (nominal, lbFt) => within((size(nominal, 'copper')?.massKgM as number) / LB_FT, lbFt, 0.01));

  // SEC-P01 to P04: Aluminum Association pipe table, lb/ft at 0.098 lb/in3 (ASME B36.10 sizes)
  it.each([
    [0.75, 0.391],
    [1, 0.581],
    [1.5, 0.94],
    [2, 1.26],
  ])('%d in aluminium pipe', (nominal, lbFt) => {
    within((size(nominal, 'aluminum pipe')?.massKgM as number) / LB_FT, lbFt * (2700 / 2712.6), 0.005);
  });

  // SEC-S06: 3 in standard pipe 7.58 lb/ft, AISC Shapes Database v15.0
  it('3 in steel pipe', () => within((size(3, 'steel pipe')?.massKgM as number) / LB_FT, 7.58, 0.005));

  // WIR-49: inside area of EMT, in², NEC Chapter 9 Table 4
  it.each([
    [0.5, 0.304],
    [0.75, 0.533],
    [1, 0.864],
    [1.25, 1.496],
    [1.5, 2.036],
    [2, 3.356],
  ])('WIR-49: %d in EMT', (nominal, squareInches) => {
    const inside = (size(nominal, 'EMT')?.insideMm as number) / IN;
    expect((Math.PI / 4) * inside ** 2).toBeCloseTo(squareInches, 3);
  });

  it('1/2 in PEX is 5/8 in outside (copper tube size)', () => expect(size(0.5, 'PEX')?.outsideMm).toBeCloseTo(15.875, 9));
  it('a hose is named by its bore, nylon tube by its outside', () => {
    expect(size(1, 'heater hose')?.insideMm).toBeCloseTo(25.4, 9);
    expect(size(0.375, 'nylon tube')?.outsideMm).toBeCloseTo(9.525, 9);
  });
  it('what no table has is unknown, not guessed', () => {
    expect(size(0.5, 'bamboo')).toBeUndefined();
    expect(size(0.55, 'PEX')).toBeUndefined();
  });
  it('a wall of half the diameter is a rod', () => expect(pipe(10, 5, 1000).massKgM).toBeCloseTo(0.0785398, 6));
});

describe('runs', () => {
  const run = (medium: Run['medium'], more: Partial<Run> = {}): Run => ({
    ...record('R'),
    service: 'S',
    medium,
    from: 'a',
    to: 'b',
    via: [],
    path: [
      [0, 0, 0],
      [10000, 0, 0],
      [10000, 5000, 0],
    ] as Vec3[],
    zones: [],
    grommets: [],
    ...more,
  });
  const hose = { text: '1 in hose', nominalMm: 25.4, material: 'heater hose' };
  const circuit = (medium: Circuit['medium'], more: Partial<Circuit>): Circuit => ({
    ...record('C'),
    service: 'S',
    medium,
    name: 'C',
    ...more,
  });

  it('FLU-37: 15 m of 1 in bore hold 8.13 kg of coolant (relative density 1.07), which stays in', () => {
    const of = (contents: Service['contents']) =>
      takeOff(
        buildModel({
          runs: [run('water', { service: 'S1', size: hose })],
          services: [{ ...record('S1'), name: 'loop', contents } as unknown as Service],
        }),
      );
    const [filled, empty] = [of('coolant'), of('water')];
    expect((filled.runs[0]?.massKg as number) - (empty.runs[0]?.massKg as number)).toBeCloseTo(8.1327, 3);
  });

  it('go by their own size before their circuit’s, and by the installed length before the way', () => {
    const pex = { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' };
    const own = run('water', { circuit: 'C', size: pex, installedLengthMm: 14500 });
    const model = buildModel({ runs: [own], circuits: [circuit('water', { size: hose })] });
    const one = takeOff(model).runs[0];
    expect(one).toMatchObject({ lengthMm: 14500, pathLengthMm: 15000 });
    expect(one?.outsideDiameterMm).toBeCloseTo(15.875, 9);
    // centre of length: (10 m at x 5, 5 m at x 10)
    expect(one?.centroid?.[0]).toBeCloseTo(6666.667, 3);
    expect(one?.centroid?.[1]).toBeCloseTo(833.333, 3);
  });

  it('of a library type take its mass and diameter', () => {
    const type = { ...record('LV-7'), massKgM: 0.21, outsideDiameterMm: 9 };
    const model = buildModel(
      { runs: [run('data', { conductor: { type: 'LV-7', conductors: 1, material: 'copper' } })] },
      { conductors: new Map([['LV-7', type]]) },
    );
    expect(takeOff(model).runs[0]?.massKg).toBeCloseTo(0.21 * 15, 9);
    expect(runOutsideDiameterMm(model.shell.runs[0] as Run, undefined, model.library)).toBe(9);
  });

  it('of a library pipe take its diameters, and the mass of its wall in its material', () => {
    const pipeType = (more: Partial<ConductorType>) => ({
      ...record('PX'),
      outsideDiameterMm: 30,
      insideDiameterMm: 26,
      ...more,
    });
    const one = (type: Partial<ConductorType>, more: Partial<Run> = {}) => {
      const size = { text: 'house 30', nominalMm: 28, material: 'PX' };
      const model = buildModel({ runs: [run('water', { size, ...more })] }, { conductors: new Map([['PX', pipeType(type)]]) });
      return takeOff(model).runs[0]!;
    };
    // Wall of 2 mm on a middle diameter of 28 mm: π·28·2 mm² over 15 m; densities as handbooks have them, from memory.
    const wallM3 = Math.PI * 28 * 2 * 1e-6 * 15;
    for (const [materialKind, density] of [
      ['copper', 8940],
      ['brass', 8940],
      ['stainless steel', 7850],
      ['cast iron', 7850],
      ['aluminium', 2700],
      ['aluminum', 2700],
      ['nylon', 1400],
      [undefined, 1400],
    ] as const)
      expect(one({ materialKind }).massKg).toBeCloseTo(wallM3 * density, 6);
    expect(one({}).outsideDiameterMm).toBe(30);
    expect(one({ massKgM: 0.5 }).massKg).toBeCloseTo(7.5, 9);
    const bare = { outsideDiameterMm: undefined, insideDiameterMm: undefined };
    expect(one(bare)).toMatchObject({ outsideDiameterMm: 28, massKg: 0 });
    expect(one({ ...bare, massKgM: 0.5 }).massKg).toBeCloseTo(7.5, 9);
    // Hydraulic oil stays in, 870 kg/m³: handbook, from memory. A pipe without a known bore holds none that could be counted.
    const full = (type: Partial<ConductorType>) => one(type, { medium: 'hydraulic' }).massKg - one(type).massKg;
    expect(full({})).toBeCloseTo((Math.PI / 4) * 0.026 ** 2 * 15 * 870, 6);
    expect(full({ insideDiameterMm: undefined })).toBe(0);
    // A library entry may be named by the very words of the size, before its material.
    const size = { text: 'house 30', nominalMm: 28, material: 'PX' };
    const conductors = new Map([
      ['PX', pipeType({})],
      ['house 30', { ...pipeType({ outsideDiameterMm: 33 }), id: 'house 30' }],
    ]);
    expect(takeOff(buildModel({ runs: [run('water', { size })] }, { conductors })).runs[0]?.outsideDiameterMm).toBe(33);
  });
  it('hold coolant where their service records it, and water lines only', () => {
    const massOf = (medium: Run['medium'], contents?: Service['contents']) =>
      takeOff(
        buildModel({
          runs: [run(medium, { service: 'S1', circuit: 'C', size: hose })],
          circuits: [circuit(medium, { name: 'loop' })],
          services: [{ ...record('S1'), serviceKind: 'water', name: 'Engine heat', contents } as unknown as Service],
        }),
      ).runs[0]?.massKg as number;
    const empty = massOf('water');
    expect(massOf('water', 'coolant') - empty).toBeCloseTo(8.1327, 3);
    expect(massOf('water', 'water')).toBe(empty);
    expect(massOf('air', 'coolant') - massOf('air')).toBe(0);
  });
  it('with no way yet, or one of no length, weigh nothing where they begin', () => {
    const at = (path: readonly Vec3[]) => takeOff(buildModel({ runs: [run('water', { size: hose, path })] })).runs[0];
    expect(at([])).toMatchObject({ massKg: 0, centroid: undefined, lengthMm: undefined });
    expect(at([[7, 8, 9]])).toMatchObject({ massKg: 0, centroid: [7, 8, 9] });
    expect(
      at([
        [7, 8, 9],
        [7, 8, 9],
      ]),
    ).toMatchObject({ massKg: 0, centroid: [7, 8, 9] });
  });
  it('go by a conductor of their own before a size, and by a size of their own before their circuit’s conductor', () => {
    const wire = { awg: '10', conductors: 1, material: 'copper' as const };
    const diameter = (own: Partial<Run>, its: Partial<Circuit>) => {
      const model = buildModel({ runs: [run('dc', { circuit: 'C', ...own })], circuits: [circuit('dc', its)] });
      return takeOff(model).runs[0]?.outsideDiameterMm as number;
    };
    const alone = diameter({ conductor: wire }, {});
    expect(alone).toBeGreaterThan(2.588);
    expect(diameter({ conductor: wire, size: hose }, {})).toBe(alone);
    expect(diameter({}, { conductor: wire })).toBe(alone);
    expect(diameter({ size: hose }, { conductor: wire })).toBeGreaterThan(25.4);
  });
  it('of nothing known weigh nothing, and are named', () => {
    const { runs, assumptions } = takeOff(buildModel({ runs: [{ ...run('dc'), id: 'R-77' }] }));
    expect(runs[0]?.massKg).toBe(0);
    expect(assumptions.some((words) => words.includes('R-77'))).toBe(true);
  });
});

describe('densities of record', () => {
  // MAT-27 to MAT-29: exact inch and pound
  it('0.0975 lb/in³ is 2698.8 kg/m³, and 2700 kg/m³ is 0.09754 lb/in³', () => {
    const perCubicInch = 0.45359237 / 0.0254 ** 3;
    expect(0.0975 * perCubicInch).toBeCloseTo(2698.8, 1);
    expect(2700 / perCubicInch).toBeCloseTo(0.09754, 5);
    expect(0.098 * perCubicInch).toBeCloseTo(2712.6, 1);
  });
});
