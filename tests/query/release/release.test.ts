import { describe, expect, it } from 'vitest';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import { weights } from '../../../src/compute/weights/index.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { faces, keepClean, openByZone, stations } from '../../../src/query/release/index.js';
import type { Axle, Panel, Run, ServiceNode } from '../../../src/records/index.js';
import { bareOf, item, seat, takeOffOf, twoAxles, vehicle } from '../../compute/weights/support.js';
import { buildModel, record } from '../../support/build.js';

const panel = (id: string, panelKind: Panel['panelKind'], outline: readonly Vec3[]): Panel => ({
  ...record(id),
  panelKind,
  outline,
  holes: [],
  thicknessMm: 2,
});
const run = (id: string, path: readonly Vec3[], toleranceMm?: number): Run => ({
  ...record(id),
  service: 's',
  medium: 'dc',
  from: 'A',
  to: 'B',
  via: [],
  path,
  zones: [],
  grommets: [],
  ...(toleranceMm === undefined ? {} : { toleranceMm }),
});
const node = (id: string, nodeKind: ServiceNode['nodeKind'], name: string): ServiceNode => ({
  ...record(id),
  service: 's',
  medium: 'dc',
  nodeKind,
  name,
  at: [500, 0, 50],
});
const roof = panel('RF', 'roof', [
  [0, -500, 1000],
  [1000, -500, 1000],
  [1000, 500, 1000],
  [0, 500, 1000],
]);
const left = panel('SK-L', 'skin', [
  [0, -500, 0],
  [1000, -500, 0],
  [1000, -500, 1000],
  [0, -500, 1000],
]);
const right = panel('SK-R', 'skin', [
  [0, 500, 0],
  [1000, 500, 0],
  [1000, 500, 1000],
  [0, 500, 1000],
]);

describe('what runs behind a face', () => {
  const model = buildModel({
    panels: [roof, left, right],
    runs: [
      run(
        'NEAR',
        [
          [100, 0, 960],
          [900, 0, 960],
        ],
        10,
      ),
      run('LOOSE', [
        [100, -400, 500],
        [900, -400, 500],
      ]),
      run(
        'DEEP',
        [
          [100, 0, 500],
          [900, 0, 500],
        ],
        10,
      ),
    ],
  });
  const of = (name: string) => faces(model, takeOff(model)).find((face) => face.name === name);
  it('is told by its least depth: 40 mm less half the sheet and 10 mm of tolerance', () => {
    // Height of a line over a plane; no diameter is on record.
    expect(of('roof')?.runs).toEqual([expect.objectContaining({ id: 'NEAR', depthMm: expect.closeTo(29, 9), panel: 'RF' })]);
  });
  it('counts 25 mm where no tolerance is on record: 100 − 1 − 25', () => {
    expect(of('left outside')?.runs.map(({ id, depthMm }) => [id, Math.round(depthMm)])).toEqual([['LOOSE', 74]]);
  });
  it('leaves a side that nothing comes near without runs, and still names it', () => {
    expect(of('right outside')?.runs).toEqual([]);
  });
});

describe('what paint must stay off', () => {
  const model = buildModel({
    nodes: [
      node('E1', 'terminal', 'earth stud, rail'),
      node('G1', 'device', 'ground fault outlet'),
      node('T1', 'terminal', 'fuse position 1'),
      node('D1', 'drain', 'low point'),
      { ...node('V1', 'fitting', 'sound'), medium: 'gas', role: 'outlet' },
      node('E2', 'terminal', 'earth stud that nothing bonds'),
    ],
    circuits: [{ ...record('EB'), service: 's', medium: 'dc', name: 'EB', bonding: true }],
    runs: [{ ...run('EB/1', []), circuit: 'EB', from: 'E1', to: 'G1' }],
    clamps: [{ ...record('UB-1'), clampKind: 'U-bolt', at: [0, 0, 0], joins: [] }],
  });
  it('is each place once, by its reason', () => {
    const groups = keepClean(model).map(({ what, items }) => [what, items.map(({ id }) => id).join(' ')]);
    expect(groups).toEqual([
      ['ground and bonding pads', 'E1'],
      ['drains and vents', 'D1 V1'],
      ['terminals and connectors', 'T1 E2'],
      ['clamps and U-bolts', 'UB-1'],
    ]);
  });
});

describe('what is open', () => {
  it('stands under the zone of the first record that lies in one', () => {
    const zone = {
      ...record('Z'),
      name: 'trough',
      box: [
        [0, -100, 0],
        [1000, 100, 100],
      ] as const,
      concealed: true,
      closedBy: [],
      carries: [],
    };
    const model = buildModel({ zones: [zone], nodes: [node('N', 'splice', 'splice')] });
    const finding = (ids: readonly string[]) =>
      ({
        rule: 'r.x',
        severity: 'warning',
        message: '',
        ids,
        place: { file: 'f', line: 1, column: 1, endLine: 1, endColumn: 2 },
      }) as const;
    const open = openByZone(model, [finding(['nowhere']), finding(['other', 'N'])]);
    expect(open.map(({ zone: of, findings }) => [of?.id, findings[0]?.ids[0]])).toEqual([
      ['Z', 'other'],
      [undefined, 'nowhere'],
    ]);
  });
});

describe('what a station may take', () => {
  // Wheelbase 5,000 mm; bare 3,000 + 4,000 kg; one seat over the front axle: 68 kg. Reserve 10 %.
  // Bare readings ± 1 % as a rectangle, k = 2: 34.641 kg on the front, 46.188 kg on the rear.
  // No track is on record, so no ends are told.
  const trackless = (axles: readonly Axle[]): readonly Axle[] => axles.map(({ trackMm: _, ...axle }) => axle);
  const model = vehicle(
    { gvwrKg: 16000, axles: trackless(twoAxles()), bare: bareOf({ front: 3000, rear: 4000 }) },
    { seats: [seat('driver', 0)] },
  );
  const { axles } = model.shell.chassis;
  const all = stations(weights(model, takeOffOf()), axles);
  const at = (xMm: number) => all.find((one) => one.xMm === xMm);
  it('is what the axle has left, over its own place', () => {
    // 7000 − 3068 − 700 = 3232 kg on the front; 11000 − 4000 − 1100 = 5900 kg on the rear; less the uncertainty.
    expect(at(0)).toMatchObject({ mostKg: expect.closeTo(3232 - 34.641, 3), limitedBy: 'front' });
    expect(at(5000)).toMatchObject({ mostKg: expect.closeTo(5900 - 46.188, 3), limitedBy: 'rear' });
  });
  it('is more between the axles: 3197.36 ÷ 0.6 at 2,000 mm', () => {
    expect(at(2000)).toMatchObject({ mostKg: expect.closeTo(3197.359 / 0.6, 2), limitedBy: 'front' });
  });
  it('is held by the GVWR where both axles have more left: 16000 − 7068', () => {
    expect(at(3000)?.mostKg).toBeCloseTo(Math.min(3197.359 / 0.4, 5853.812 / 0.6, 16000 - 7068), 2);
    const light = stations(weights(vehicle({ ...model.shell.chassis, gvwrKg: 9000 }), takeOffOf()), axles);
    expect(light.find(({ xMm }) => xMm === 3000)).toMatchObject({ mostKg: expect.closeTo(2000, 6), limitedBy: 'GVWR' });
  });
  it('far behind is held by the share that steers: (3000 − 0.2 · 7000) ÷ (0.2 + 1) at 10,000 mm', () => {
    const long = stations(weights(vehicle(model.shell.chassis), takeOffOf([item('mast', 0, 10_000)])), axles);
    expect(long.find(({ xMm }) => xMm === 10_000)).toMatchObject({
      mostKg: expect.closeTo(1333.333, 3),
      limitedBy: 'steer share',
    });
  });
  it('far ahead is held by the rear axle, which lifts: 4000 ÷ 1.2 at −6,000 mm', () => {
    const strong = trackless(twoAxles()).map((one) => ({ ...one, gawrKg: 70_000 }));
    const chassis = { ...model.shell.chassis, axles: strong, gvwrKg: 100_000 };
    const ahead = stations(weights(vehicle(chassis), takeOffOf([item('boom', 0, -6000)])), strong);
    expect(ahead.find(({ xMm }) => xMm === -6000)).toMatchObject({
      mostKg: expect.closeTo(3333.333, 3),
      limitedBy: 'rear lifts',
    });
  });
  it('is not said of a vehicle with an axle that nothing rates', () => {
    const unrated = trackless(twoAxles()).map(({ gawrKg, ...axle }, i) => (i === 0 ? axle : { ...axle, gawrKg: 11000 }));
    const none = stations(weights(vehicle({ ...model.shell.chassis, axles: unrated }), takeOffOf()), unrated);
    expect(none[0]?.mostKg).toBeUndefined();
    expect(none[0]?.addsKg.front).toBeDefined();
  });
});
