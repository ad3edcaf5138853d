/** Chassis, tickets and take-offs from literals. Lengths mm, masses kg. */
import type { MassItem, TakeOff } from '../../../src/compute/takeoff/types.js';
import type { Model } from '../../../src/model/shell.js';
import type { Axle, Bay, Condition, Seat, Tank, Ticket } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';

export const axle = (id: string, xMm: number, more: Partial<Axle> = {}): Axle => ({
  id,
  xMm,
  dual: false,
  lift: false,
  steered: false,
  ...more,
});

/** Rows STA-09 to STA-11: steer at 0, drive at 6.00 m with 0.6, tag at 7.37 m with 0.4. */
export const tagCoach = (more: Partial<Record<'steer' | 'drive' | 'tag', Partial<Axle>>> = {}): readonly Axle[] => [
  axle('steer', 0, { gawrKg: 7000, trackMm: 2050, steered: true, ...more.steer }),
  axle('drive', 6000, { gawrKg: 10500, trackMm: 1850, ...more.drive }),
  axle('tag', 7370, { gawrKg: 7000, trackMm: 2050, lift: true, share: { with: 'drive', fraction: 0.4 }, ...more.tag }),
];

export const twoAxles = (wheelbaseMm = 5000, more: Partial<Axle> = {}): readonly Axle[] => [
  axle('front', 0, { gawrKg: 7000, trackMm: 2000, steered: true, ...more }),
  axle('rear', wheelbaseMm, { gawrKg: 11000, trackMm: 2000, ...more }),
];

export const condition = (more: Partial<Condition> = {}): Condition => ({
  levels: {},
  occupants: [],
  aboard: [],
  missing: [],
  lifted: {},
  bays: {},
  fuelKnown: true,
  ...more,
});

export const tank = (id: string, contents: string, litres: number, xMm: number, more: Partial<Tank> = {}): Tank => ({
  id,
  contents,
  capacityM3: litres / 1000,
  at: [xMm, 0, 0],
  densityKgM3: 1000,
  ...more,
});
export const seat = (id: string, xMm: number, yMm = 0, belted = true): Seat => ({ id, at: [xMm, yMm, 700], belted });
export const bay = (id: string, xMm: number, limitKg?: number, yMm = 0): Bay => ({
  id,
  at: [xMm, yMm, -200],
  ...(limitKg === undefined ? {} : { limitKg }),
});

export const readings = (kg: Readonly<Record<string, number>>): Ticket['readings'] =>
  Object.fromEntries(Object.entries(kg).map(([id, totalKg]) => [id, { totalKg }]));

export const ticket = (id: string, kg: Readonly<Record<string, number>>, more: Partial<Ticket> = {}): Ticket => ({
  ...record(id),
  date: '2026-06-30',
  condition: condition({ levels: { FUEL: 1 } }),
  readings: readings(kg),
  ...more,
});

export const item = (id: string, massKg: number, xMm: number, more: Partial<MassItem> = {}): MassItem => ({
  id,
  kind: 'component',
  massKg,
  centroid: [xMm, 0, 500],
  basis: 'weighed',
  uMassKg: 0,
  uPositionMm: 0,
  ...more,
});

export function takeOffOf(items: readonly MassItem[] = []): TakeOff {
  const none = { massKg: 0, centroid: [0, 0, 0], count: 0 } as const;
  return {
    sections: [],
    members: [],
    panels: [],
    runs: [],
    items,
    total: none,
    byStage: {},
    byAlloy: {},
    bySection: {},
    bySide: { left: none, right: none },
    assumptions: [],
  };
}

export const scaleSC1 = {
  ...record('SC-1'),
  instrumentKind: 'axle scale',
  resolution: { value: 10, dimension: 'mass', text: '10 kg' },
  tolerance: { value: 0.002, dimension: 'fraction', text: '0.2 %' },
  calibrated: '2026-01-20',
  due: '2027-01-20',
};

export const stages = ['subframe', 'walls', 'finished'].map((id) => ({ ...record(id), name: id, holdPoints: [] }));

/** A fuel tank that holds nothing: a ticket must say how full it was. */
const fuelTank: Tank = { id: 'FUEL', contents: 'diesel', use: 'fuel', capacityM3: 0, at: [0, 0, 0], densityKgM3: 832 };

/** A shell on a chassis; where its tanks are not told, or none of them is `FUEL`, it has one of no volume. */
export function vehicle(
  chassis: Partial<Model['shell']['chassis']>,
  shell: Partial<Model['shell']> = {},
  shop: Partial<Model['shop']> = {},
): Model {
  const tanks =
    shell.tanks?.length === 0 || shell.tanks?.some((one) => one.id === 'FUEL') ? shell.tanks : [...(shell.tanks ?? []), fuelTank];
  return buildModel(
    { ...shell, tanks, chassis: { frame: {}, axles: [], ...chassis } },
    { stages, instruments: new Map([[scaleSC1.id, scaleSC1]]) },
    shop,
  );
}

export const bareOf = (kg: Readonly<Record<string, number>>, more: Partial<Condition> = {}) => ({
  condition: condition({ levels: { FUEL: 1 }, ...more }),
  readings: readings(kg),
});
