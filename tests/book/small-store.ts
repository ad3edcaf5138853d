/** A small shell for tests of the book: a bit of everything, all names invented. */

import type { Assessment } from '../../src/assess.js';
import { assess } from '../../src/assess.js';
import { loadOne } from '../support/store.js';

const LIBRARY: Record<string, string> = {
  'library/materials.yaml': `
- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, modulus: 68.9 GPa, yield: 240 MPa, tensile: 290 MPa, group: 23}
- {id: 5052-H32, kind: aluminium, density: 2680 kg/m3, modulus: 70 GPa, group: 22}
`,
  'library/sections.yaml': `
- {id: RT6, shape: rectangular tube, depth: 6 in, width: 2-1/2 in, wall: 3/8 in, corner_radius: 0 in}
- {id: I5, shape: I-beam, depth: 5 in, width: 3-1/2 in, web: 0.19 in, flange: 0.32 in}
`,
  'library/procedures.yaml': `
- {id: WPS-02, process: GMAW, types: [fillet], base: [6061-T6, 5052-H32], thickness: [1/8 in, 1/2 in], filler: [ER5356], positions: [1F, 2F, 3F]}
`,
  'library/people.yaml': `
- {id: K7, name: Orla Vantongeren, role: welder, qualified: [{process: GMAW, positions: [1F, 2F], thickness: [1/8 in, 3/4 in], from: 2025-09-01, until: 2027-09-01}]}
- {id: J2, name: Piet Holloway, role: inspector, qualified: [{method: VT, from: 2024-01-15, until: 2027-01-15}]}
`,
  'library/instruments.yaml': `
- {id: SC-1, kind: axle scale, resolution: 20 lb, tolerance: 0.2 %, calibrated: 2026-01-20, due: 2027-01-20}
- {id: GA-3, kind: pressure gauge, resolution: 0.1 psi, calibrated: 2026-01-20, due: 2027-01-20}
`,
  'library/stages.yaml': `
- {id: subframe, name: Subframe and dampers, hold_points: [welds accepted]}
- {id: walls, name: Walls, hold_points: [welds accepted]}
- {id: belly, name: Belly panels, hold_points: [photos]}
`,
};

const SHELL = `
shell: T-1
title: Travelling test bench
customer: {name: Ysolde Brackwater, place: Lower Fennimarsh, contact: ysolde@example.test}
envelope: {length: 30 ft, width: 101 in, height: 98 in}
chassis:
  description: 33000 lb chassis
  gvwr: 33000 lb
  frame: {rail_top_above_ground: 41 in, rail_spacing: 34 in}
  axles:
    - {id: steer, x: 0 in, gawr: 13000 lb, suspension: 13000 lb, track: 83 in, tyres: {count: 2, load_index: 150, inflation: 120 psi, inflation_for_index: 123 psi}}
    - {id: drive, x: 255 in, gawr: 21000 lb, track: 73 in, dual: true, tyres: {count: 4, load_index: [146, 143], inflation: 110 psi, inflation_for_index: 123 psi}}
  bare: {condition: {fuel: 1}, readings: {steer: 8000 lb, drive: 6000 lb}}
tanks:
  - {id: FRESH, contents: water, capacity: 60 gal, at: [200 in, 0 in, -6 in]}
  - {id: FUEL, contents: diesel, capacity: 80 gal, at: [90 in, -38 in, 0 in]}
seats:
  - {id: driver, at: [40 in, -20 in, 30 in], belted: true}
bays:
  - {id: B3-L, at: [180 in, -38 in, -10 in], limit: 600 lb}
`;

/** Cross beams along the subframe, so that schedules run over pages. */
const beams = (count: number): string =>
  Array.from(
    { length: count },
    (_, at) =>
      `- {id: CB-${String(at + 1).padStart(2, '0')}, part: cross beam, stage: subframe, section: I5, alloy: 6061-T6, from: [${20 + at * 8} in, -48 in, 8.5 in], to: [${20 + at * 8} in, 48 in, 8.5 in], heat: H-44${at % 5}}`,
  ).join('\n');

const SERVICES: Record<string, string> = {
  'services/dc-house.yaml': `
service: House 12 V
medium: dc
circuits:
  - {id: DC-12, name: Bay lights left, voltage: 12.8 V, load: 6 A, conductor: {awg: 14, conductors: 2, rating: 105 C}, protection: {kind: fuse, rating: 15 A, at: DCP}, marking: BL-12}
nodes:
  - {id: DCP, kind: panel, role: busbar, name: House DC panel, at: [100 in, -30 in, 0 in]}
  - {id: BAT, kind: source, role: battery, name: House battery, at: [90 in, -30 in, -6 in]}
  - {id: DC-12/S1, kind: splice, at: [150 in, -8 in, 0 in], panel: AP-11, tolerance: 15 mm}
  - {id: DC-12/L1, kind: load, name: Bay light, at: [220 in, -40 in, 0 in]}
runs:
  - {id: DC-12/1, circuit: DC-12, from: DCP, to: DC-12/S1, via: [[120 in, -8 in, 0 in]], zones: [TROUGH], installed_length: 6 ft, tolerance: 15 mm, date: 2026-04-07, photos: [P-1]}
  - {id: DC-12/2, circuit: DC-12, from: DC-12/S1, to: DC-12/L1, zones: [TROUGH], tolerance: 15 mm, date: 2026-04-07}
`,
  'services/gas.yaml': `
service: Propane
medium: gas
circuits:
  - {id: LP-1, name: Heater gas, size: 3/8 in copper, working_pressure: 11 kPa}
nodes:
  - {id: LP-CYL, kind: source, role: cylinder, name: Cylinder, at: [60 in, 40 in, -4 in]}
  - {id: LP-V1, kind: valve, name: Cylinder valve, position: normally open, at: [64 in, 40 in, -2 in]}
runs:
  - {id: LP-1/1, circuit: LP-1, from: LP-CYL, to: LP-V1, date: 2026-04-07}
`,
};

/** The store's files; `extra` adds or replaces some. */
export function smallStore(extra: Readonly<Record<string, string>> = {}): Record<string, string> {
  const shell = (files: Record<string, string>) =>
    Object.fromEntries(Object.entries(files).map(([file, text]) => [`shells/T-1/${file}`, text]));
  return {
    'shop.yaml':
      'shop: {name: Harrowquill Test Works, place: Lesser Quill, contact: works@example.test}\nunits: both\npaper: letter\n',
    ...LIBRARY,
    ...shell({
      'shell.yaml': SHELL,
      'members.yaml': `- {id: SF-L, part: subframe rail left, stage: subframe, section: RT6, alloy: 6061-T6, from: [-10 in, -17 in, 3 in], to: [372 in, -17 in, 3 in], heat: H-4471}\n- {id: SF-R, part: subframe rail right, stage: subframe, section: RT6, alloy: 6061-T6, from: [-10 in, 17 in, 3 in], to: [372 in, 17 in, 3 in], heat: H-4471}\n${beams(44)}\n`,
      'welds.yaml':
        '- {id: W-1, joins: [SF-L, CB-01], type: fillet, size: 1/4 in, length: 5 in, sides: both, process: GMAW, procedure: WPS-02, filler: ER5356, position: 2F, welder: K7, date: 2026-02-11, note: Orla Vantongeren let it cool, inspections: [{method: VT, by: J2, date: 2026-02-12, result: accept}]}\n',
      'panels.yaml': `
- {id: BP-04, kind: belly, alloy: 5052-H32, thickness: 0.090 in, outline: [[20 in, -20 in, -2 in], [360 in, -20 in, -2 in], [360 in, 20 in, -2 in], [20 in, 20 in, -2 in]], stage: belly, date: 2026-05-02}
- {id: AP-11, kind: access, of: BP-04, outline: [[140 in, -16 in, -2 in], [158 in, -16 in, -2 in], [158 in, -2 in, -2 in], [140 in, -2 in, -2 in]], opening: 14 in x 18 in, facing: down, fixing: {method: screws, count: 8, driver: 3/16 hex}, stage: belly}
`,
      'zones.yaml':
        '- {id: TROUGH, name: belly service trough, box: [[20 in,-16 in,-2 in],[360 in,16 in,4 in]], concealed: true, closed_by: [BP-04]}\n',
      'openings.yaml':
        '- {id: DO-1, kind: door, wall: right, sill: [[60 in, 50 in, 10 in], [96 in, 50 in, 10 in]], width: 36 in, height: 78 in, measured: {top: 36 in, bottom: 36-1/16 in, front: 78 in, rear: 78 in, diagonals: [85-15/16 in, 86 in]}}\n',
      'components.yaml':
        '- {id: GEN, name: Generator, mass: 700 lb, at: [300 in, 0 in, -4 in], stage: walls, basis: weighed, serial: "8841"}\n',
      'weights.yaml':
        '- {id: TK-5, date: 2026-06-30, stage: walls, scale: SC-1, ticket: 88-1204, condition: {fuel: 1, fresh: 0, occupants: [driver]}, readings: {steer: 9000 lb, drive: 11000 lb}}\n',
      'tests.yaml':
        '- {id: TE-1, kind: pressure, of: [LP-1/1], limit: 3 psi, measured: 3.1 psi, duration: 10 min, instrument: GA-3, by: K7, date: 2026-04-08}\n',
      'findings.yaml': `
- {id: NC-1, raised: 2026-03-01, of: [SF-L], description: Nick in the flange found by K7, decision: use as is, approved_by: J2, closed: 2026-03-02}
- {id: NC-2, raised: 2026-03-04, of: [BP-04], description: Dent of 2 mm beside the panel, decision: use as is, approved_by: J2, tell_owner: true}
`,
      'signoffs.yaml': '- {id: SO-A, stage: subframe, role: inspector, by: J2, date: 2026-03-10}\n',
      'amendments.yaml':
        '- {id: AM-1, date: 2026-08-01, by: K7, reason: Bay light moved for Ysolde Brackwater, changes: [DC-12/L1]}\n',
      'photos/photos.yaml': `
- {id: P-1, file: p1.jpg, of: [DC-12/S1], view: from below, taken: 2026-04-07, caption: Splice before the belly panel, stage: belly}
- {id: P-2, file: lost.jpg, of: [SF-L], caption: Rail before paint, stage: subframe}
`,
      'photos/p1.jpg': 'picture',
      ...SERVICES,
    }),
    ...extra,
  };
}

export function smallAssessment(extra: Readonly<Record<string, string>> = {}): Assessment {
  const { model, findings } = loadOne(smallStore(extra));
  return assess(model, findings);
}

export const HISTORY = {
  revision: '5f2c9a7e41d0b6c83f1e2d4a5b6c7d8e9f0a1b2c',
  revisionDate: '2026-07-02T09:30:00+02:00',
  tag: 'T-1/closed',
  commits: [
    {
      hash: '5f2c9a7e41d0b6c83f1e2d4a5b6c7d8e9f0a1b2c',
      date: '2026-07-02T09:30:00+02:00',
      author: 'Orla Vantongeren',
      message: 'Close the build for Ysolde Brackwater',
    },
    {
      hash: '1111111111d0b6c83f1e2d4a5b6c7d8e9f0a1b2c',
      date: '2026-06-30T17:00:00+02:00',
      author: 'Piet Holloway',
      message: 'Weigh it',
    },
  ],
};
export const FINGERPRINT = '9d'.repeat(32);
