/** Models from literals, for tests of figures and rules that need no YAML. */
import { indexById } from '../../src/model/index-by-id.js';
import type { Entry } from '../../src/records/index.js';
import { emptyLists } from '../../src/records/shell-lists.js';
import type { Limits, Material, Model, Section } from './types.js';

export const source = {
  file: 'literal.yaml',
  place: () => ({ file: 'literal.yaml', line: 1, column: 1, endLine: 1, endColumn: 2 }),
};

export const record = (id: string) => ({ id, source, typed: { id }, photos: [] as string[] });

export const limits: Limits = {
  axleMargin: 0.03,
  diagonalDifferenceMm: 3.175,
  headerSagMm: 1.5875,
  trussSpacingMm: 508,
  cavityFill: 0.4,
  keepApart: [],
  movingClearanceMm: 50,
  hotClearanceMm: { dry: 230, wet: 50 },
  voltageDrop: 0.03,
  flatnessMm: 3,
  lateEntryDays: 7,
  unexplainedMass: 0.01,
};

export const aluminium: Material = {
  ...record('6061-T6'),
  materialKind: 'aluminium',
  densityKgM3: 2700,
  modulusPa: 68.9e9,
  group: '23',
};

export function section(id: string, dimensions: Section['dimensions']): Section {
  return { ...record(id), dimensions };
}

const NONE = { tanks: [], seats: [], bays: [], conditions: [], services: [] };

/** A model with nothing in it but what is given. `byId` is made from the records given. */
export function buildModel(
  shell: Partial<Model['shell']> = {},
  library: Partial<Model['library']> = {},
  shop: Partial<Model['shop']> = {},
): Model {
  const whole = { ...record('T-1'), title: 'Test shell', chassis: { frame: {}, axles: [] }, ...NONE, ...emptyLists(), ...shell };
  const byId: Map<string, Entry> = new Map();
  indexById({ ...whole, byId }, byId);
  return {
    shop: {
      ...record('shop'),
      name: 'Test shop',
      units: 'metric',
      paper: 'a4',
      weldSymbols: 'iso',
      limits,
      inspection: { primary: {}, secondary: {} },
      ...shop,
    },
    library: {
      materials: new Map([[aluminium.id, aluminium]]),
      certificates: new Map(),
      sections: new Map(),
      conductors: new Map(),
      procedures: new Map(),
      people: new Map(),
      instruments: new Map(),
      stages: [],
      rules: [],
      ...library,
    },
    shell: { ...whole, byId },
  };
}
