import { describe, expect, test } from 'vitest';
import { loadStore } from '../../src/model/load.js';
import { densityOf, meansContents } from '../../src/records/tank-contents.js';
import { loadOne, storeText } from '../support/store.js';

const LIBRARY = {
  'library/materials.yaml': '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, modulus: 68.9 GPa, group: 23}\n',
  'library/sections.yaml': '- {id: RT6x2-1/2x3/8, shape: rectangular tube, depth: 6 in, width: 2-1/2 in, wall: 3/8 in}\n',
  'library/stages.yaml': '- {id: subframe, name: Subframe}\n- {id: belly, name: Belly}\n',
};
const IN = 25.4;

/** No finding at all, with what was found where there is one. */
const clean = (loaded: ReturnType<typeof loadOne>) => {
  expect([...loaded.store.findings, ...loaded.findings].map((one) => one.message)).toEqual([]);
  return loaded.model.shell;
};

describe('units and datum', () => {
  const member =
    '- {id: M-1, alloy: 6061-T6, section: RT6x2-1/2x3/8, stage: subframe, from: [-10 in, -17 in, 3 in], to: [1 m, 0, 0]}\n';

  test('a member in SI, with its defaults', () => {
    const shell = clean(loadOne({ ...LIBRARY, 'shells/T-1/members.yaml': member }));
    expect(shell.members[0]).toMatchObject({
      id: 'M-1',
      part: 'M-1',
      stage: 'subframe',
      photos: [],
      shape: { kind: 'line', from: [-254, -17 * IN, 3 * IN], to: [1000, 0, 0], rollDeg: 0 },
    });
    expect(shell.members[0]?.typed).toEqual({
      id: 'M-1',
      alloy: '6061-T6',
      section: 'RT6x2-1/2x3/8',
      stage: 'subframe',
      from: ['-10 in', '-17 in', '3 in'],
      to: ['1 m', 0, 0],
    });
  });

  test('the datum moves places and stations, not lengths', () => {
    const shell = clean(
      loadOne({
        ...LIBRARY,
        'shells/T-1/shell.yaml':
          'shell: T-1\ndatum: {origin: [100 mm, 0, -50 mm]}\nchassis: {axles: [{id: steer, x: 0 in}]}\ntanks: [{id: F, contents: water, capacity: 1 m3, at: [0, 0, 0]}]\n',
        'shells/T-1/members.yaml': member,
        'shells/T-1/zones.yaml': '- {id: Z, along: [[0, 0, 0], [1 m, 0, 0]], clear: 2 in x 3-1/2 in}\n',
        'shells/T-1/components.yaml': '- {id: C, name: Pump, mass: 4 kg, at: [1 m, 0, 0], size: [1 m, 1 m, 1 m]}\n',
      }),
    );
    expect(shell.chassis.axles[0]?.xMm).toBe(100);
    expect(shell.tanks[0]?.at).toEqual([100, 0, -50]);
    expect(shell.members[0]?.shape).toMatchObject({ to: [1100, 0, -50] });
    expect(shell.zones[0]).toMatchObject({
      along: [
        [100, 0, -50],
        [1100, 0, -50],
      ],
      clearMm: [2 * IN, 3.5 * IN],
      concealed: true,
    });
    expect(shell.components[0]).toMatchObject({ at: [1100, 0, -50], sizeMm: [1000, 1000, 1000], basis: 'estimated' });
  });

  test('bare numbers in the units of the file, nowhere else', () => {
    const shell = clean(
      loadOne({
        'shells/T-1/components.yaml':
          'units: {length: in, mass: lb}\ncomponents:\n  - {id: A, name: A, mass: 10, at: [1, 2, 3]}\n',
        'shells/T-1/components-2.yaml': '- {id: B, name: B, mass: 10 kg, at: [1 mm, 2 mm, 3 mm]}\n',
      }),
    );
    const at = new Map(shell.components.map((one) => [one.id, one]));
    expect(at.get('A')?.massKg).toBeCloseTo(4.5359237, 9);
    expect(at.get('A')?.at[1]).toBeCloseTo(2 * IN, 9);
    expect(at.get('B')).toMatchObject({ massKg: 10, at: [1, 2, 3] });
  });
});

describe('shell.yaml', () => {
  const shellYaml = `shell: T-1
chassis:
  axles:
    - {id: tag, x: 307 in, gawr: 20000 lb, lift: true, share: {with: drive, fraction: 0.42}, tyres: {count: 2, load_index: 154}}
    - {id: steer, x: 0, gawr: 14600 lb, tyres: {count: 2, load_index: 150, inflation: 120 psi}}
    - {id: drive, x: 255 in, gawr: 23000 lb, tyres: {count: 4, load_index: [146, 143]}, mass: 1100 kg, spring_rate: 300 N/mm}
  bare: {condition: {fuel: 1/4}, readings: {steer: {left: 1000 kg, right: 1100 kg}, drive: 3 t}}
tanks:
  - {id: FRESH, contents: water, capacity: 100 gal, at: [0, 0, 0]}
  - {id: GREY, contents: grey water, capacity: 60 gal, at: [0, 0, 0]}
  - {id: F1, contents: diesel, capacity: 60 gal, at: [0, 0, 0]}
  - {id: F2, contents: diesel, capacity: 60 gal, at: [0, 0, 0]}
  - {id: BRINE, contents: brine, capacity: 60 gal, at: [0, 0, 0], density: 1200 kg/m3}
seats: [{id: driver, at: [0, 0, 0]}]
bays: [{id: B-1, at: [0, 0, 0], limit: 600 lb}]
conditions: [{name: market day, condition: {water: 1/2, bays: {B-1: 100 kg}, tag: up}}]
`;
  const ticket = `- id: T-5
  date: 2026-06-30
  condition: {fuel: 1, fresh: 0, grey: 50 %, occupants: [driver, {seat: driver, mass: 82 kg}], tag: down}
  readings: {steer: 6 t}
`;
  const shell = clean(loadOne({ 'shells/T-1/shell.yaml': shellYaml, 'shells/T-1/weights.yaml': ticket }));

  test('axles stand front to rear, with their defaults', () => {
    expect(shell.chassis.axles.map(({ id, dual, steered, lift }) => [id, dual, steered, lift])).toEqual([
      ['steer', false, true, false],
      ['drive', true, false, false],
      ['tag', false, false, true],
    ]);
    expect(shell.chassis.axles[1]).toMatchObject({
      ownMassKg: 1100,
      springRateNM: 300_000,
      tyres: { count: 4, loadIndex: [146, 143] },
    });
    expect(shell.chassis.axles[2]?.share).toEqual({ with: 'drive', fraction: 0.42 });
  });

  test('both ends of a reading make the whole', () => {
    expect(shell.chassis.bare?.readings).toEqual({
      steer: { totalKg: 2100, leftKg: 1000, rightKg: 1100 },
      drive: { totalKg: 3000 },
    });
  });

  test('a condition names tanks by id or contents; levels come by tank id', () => {
    expect(shell.chassis.bare?.condition.levels).toEqual({ F1: 0.25, F2: 0.25 });
    const condition = shell.tickets[0]?.condition;
    expect(condition?.levels).toEqual({ F1: 1, F2: 1, FRESH: 0, GREY: 0.5 });
    expect(condition?.lifted).toEqual({ tag: 'down' });
    expect(condition?.fuelKnown).toBe(true);
    // LAB-06: 68 kg (150 lb), 49 CFR 571.110 S3, 567.4(g)(3)
    expect(condition?.occupants).toEqual([
      { seat: 'driver', massKg: 68 },
      { seat: 'driver', massKg: 82 },
    ]);
    expect(shell.conditions[0]).toMatchObject({
      name: 'market day',
      condition: { levels: { FRESH: 0.5 }, bays: { 'B-1': 100 }, lifted: { tag: 'up' }, fuelKnown: false },
    });
  });

  test('density by contents, or as typed', () => {
    expect(shell.tanks.map((tank) => tank.densityKgM3)).toEqual([1000, 1000, 832, 832, 1200]);
  });

  test('every id is in the index, axles, tanks, seats and bays too', () => {
    const kinds = ['steer', 'FRESH', 'driver', 'B-1', 'T-5', 'T-1'].map((id) => shell.byId.get(id)?.kind);
    expect(kinds).toEqual(['axle', 'tank', 'seat', 'bay', 'ticket', 'shell']);
  });
});

test('densities of tank contents', () => {
  // FLU-25: NFPA 58 Annex B, relative density 0.504; FLU-13: 1 kg/L; FLU-19, FLU-22: from memory
  expect(['propane', 'fresh water', 'black water', 'diesel', 'diesel exhaust fluid', 'DEF', 'mercury'].map(densityOf)).toEqual([
    504,
    1000,
    1000,
    832,
    1090,
    1090,
    undefined,
  ]);
  expect(meansContents('fresh', { contents: 'grey water' })).toBe(false);
  expect(meansContents('fuel', { contents: 'diesel exhaust fluid' })).toBe(false);
  expect(meansContents('fresh', { contents: 'water', use: 'waste' })).toBe(false);
});

describe('services', () => {
  const dc = `service: House 12 V
medium: dc
circuits:
  - {id: DC-12, name: Lights, voltage: 12.8 V, load: 25 W, conductor: {awg: 00, rating: 105 C}, protection: {kind: fuse, rating: 15 A, at: DCP}}
nodes:
  - {id: DCP, kind: panel, at: [0, 0, 0]}
  - {id: DC-12/S1, kind: splice, at: [2 m, 0, 0], load: 6 A}
runs:
  - {id: DC-12/1, circuit: DC-12, from: DCP, to: DC-12/S1, via: [[1 m, 0, 0]], grommets: [[1 m, 0, 0]]}
  - {id: W-1, from: DCP, to: VALVE, size: 1/2 in PEX tube, working_pressure: 60 psi}
`;
  const water =
    'service: Cold water\nmedium: water\nnodes: [{id: VALVE, kind: valve, at: [3 m, 0, 0], position: normally closed}]\n';
  const shell = clean(loadOne({ 'shells/T-1/services/dc-house.yaml': dc, 'shells/T-1/services/water.yaml': water }));

  test('runs know their whole way, across services too', () => {
    expect(shell.runs.map((run) => run.path)).toEqual([
      [
        [0, 0, 0],
        [1000, 0, 0],
        [2000, 0, 0],
      ],
      [
        [0, 0, 0],
        [3000, 0, 0],
      ],
    ]);
    expect(shell.services.map(({ id, medium, name }) => [id, medium, name])).toEqual([
      ['dc-house', 'dc', 'House 12 V'],
      ['water', 'water', 'Cold water'],
    ]);
    expect(shell.services[0]?.runs[0]).toBe(shell.runs[0]);
  });

  test('wires, loads, protection, pipes', () => {
    expect(shell.circuits[0]).toMatchObject({
      loadW: 25,
      conductor: { awg: '2/0', conductors: 2, ratingC: 105, material: 'copper' },
      protection: { kind: 'fuse', ratingA: 15, at: 'DCP' },
    });
    expect(shell.nodes[1]).toMatchObject({ loadA: 6, service: 'dc-house', medium: 'dc' });
    expect(shell.runs[1]?.size).toEqual({ text: '1/2 in PEX tube', nominalMm: 12.7, material: 'PEX tube' });
  });

  test('a run whose end is unknown has no path', () => {
    const { model } = loadOne({ 'shells/T-1/services/dc.yaml': dc });
    expect(model.shell.runs.map((run) => run.path.length)).toEqual([3, 0]);
  });
});

describe('what is lost and what is not', () => {
  test('one fault loses one record; the rest of the file is in the model', () => {
    const { model, findings } = loadOne({
      'shells/T-1/components.yaml':
        '- {id: A, name: A, mass: 10, at: [0, 0, 0]}\n- {id: B, name: B, mass: 10 kg, at: [0, 0, 0]}\n',
    });
    expect(findings.map((one) => one.rule)).toEqual(['format.unit-missing']);
    expect(model.shell.components.map((one) => one.id)).toEqual(['B']);
  });

  test('a heat number keeps its zeros, a serial number its signs', () => {
    const { model } = loadOne({
      'shells/T-1/components.yaml': '- {id: 007, name: A, mass: 1 kg, at: [0, 0, 0], serial: 00123, part: 1e5}\n',
    });
    expect(model.shell.components[0]).toMatchObject({ id: '007', serial: '00123', part: '1e5' });
  });

  test('a key to which nothing is typed counts as not typed; own keys are kept in the record', () => {
    const { model } = loadOne({
      'shells/T-1/components.yaml': '- id: A\n  name: A\n  mass: 1 kg\n  at: [0, 0, 0]\n  serial:\n  x-shelf: {row: 4}\n',
    });
    expect(model.shell.components[0]?.serial).toBeUndefined();
    expect(model.shell.components[0]?.typed).toMatchObject({ serial: null, 'x-shelf': { row: 4 } });
  });

  test('sign-offs need no id, and two of one stage stand side by side', () => {
    const files = {
      ...LIBRARY,
      'library/people.yaml': '- {id: J2, name: An Inspector, role: inspector}\n',
      'shells/T-1/signoffs.yaml':
        '- {stage: belly, role: inspector, by: J2, date: 2026-02-20}\n- {stage: belly, role: inspector, by: J2, date: 2026-03-01}\n',
    };
    expect(clean(loadOne(files)).signoffs.map((one) => one.id)).toEqual([
      'belly/inspector/2026-02-20',
      'belly/inspector/2026-03-01',
    ]);
  });

  test('a store without shop.yaml and a shell without shell.yaml still load, and say so', () => {
    const store = loadStore(storeText({ 'shells/T-9/components.yaml': '[]\n' }));
    expect(store.findings.map((one) => one.rule)).toEqual(['format.missing-file']);
    expect(store.shop.limits.axleMargin).toBe(0.03);
    expect(store.shells.get('T-9')?.findings.map((one) => one.rule)).toEqual(['format.missing-file']);
    expect(store.shells.get('nowhere')).toBeUndefined();
    expect([...store.shells.keys()]).toEqual(['T-9']);
  });

  test('a photo whose file is not there is told, with the nearest name', () => {
    const { findings } = loadOne({
      'shells/T-1/photos/photos.yaml': '- {id: P-1, file: P-0231.jpeg}\n- {id: P-2, file: ../../shop.yaml}\n',
      'shells/T-1/photos/P-0231.jpg': 'x',
    });
    expect(findings.map(({ rule, severity }) => [rule, severity])).toEqual([
      ['format.missing-file', 'warning'],
      ['format.wrong-value', 'error'],
    ]);
    expect(findings[0]?.message).toContain('P-0231.jpg`');
  });

  test('limits of shop.yaml are taken, the others keep their defaults', () => {
    const { store } = loadOne({ 'shop.yaml': 'shop: {name: S}\nlimits: {axle_margin: 5 %, late_entry: 3 d, keep_apart: []}\n' });
    expect(store.shop.limits).toMatchObject({ axleMargin: 0.05, lateEntryDays: 3, keepApart: [], cavityFill: 0.4 });
    expect(store.shop.limits.headerSagMm).toBeCloseTo(IN / 16, 12);
  });
});

test('a slip in one axle costs that axle, and neither the ratings beside it nor the other axle', () => {
  const loaded = loadOne({
    ...LIBRARY,
    'shells/T-1/shell.yaml': `shell: T-1
title: Slip
chassis:
  gvwr: 33,000 lb
  axles:
    - {id: steer, x: 0 in, gawr: 14,600 lb}
    - {id: drive, x: 240 in, gawr: "23,000 lb"}
`,
  });
  expect(loaded.findings.map((one) => one.rule)).toEqual(['format.comma-slip']);
  // FLU-01: NIST SP 811, 1 lb = 0.45359237 kg exactly.
  expect(loaded.model.shell.chassis.gvwrKg).toBeCloseTo(33000 * 0.45359237, 9);
  expect(loaded.model.shell.title).toBe('Slip');
  expect(loaded.model.shell.chassis.axles.map((axle) => axle.id)).toEqual(['drive']);
});
