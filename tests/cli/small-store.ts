import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { simpleGit } from 'simple-git';

/** A store with one small shell of every kind of record that the commands answer from. Invented. */
export const FILES: Readonly<Record<string, string>> = {
  'shop.yaml': 'shop: {name: Test shop}\nunits: both\npaper: a4\n',
  'library/materials.yaml':
    '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, modulus: 69 GPa, group: 23}\n- {id: 5052-H32, kind: aluminium, density: 2680 kg/m3, group: 22}\n',
  'library/sections.yaml':
    '- {id: RT2x2x1/8, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n',
  'library/stages.yaml': '- {id: floor, name: Floor frame}\n- {id: belly, name: Belly panels}\n',
  'library/instruments.yaml':
    '- {id: SC-1, kind: axle scale, resolution: 20 lb, tolerance: 0.2 %, calibrated: 2026-01-20, due: 2027-01-20}\n- {id: M-1, kind: meter, resolution: 0.01 ohm, calibrated: 2026-01-20, due: 2027-01-20}\n',
  'shells/T-1/shell.yaml': `shell: T-1
title: Small test shell
vin: 1M8GDM9AXKP042788
chassis:
  gvwr: 14500 lb
  axles:
    - {id: front, x: 0 in, gawr: 6000 lb, track: 68 in, tyres: {count: 2, load_index: 121}}
    - {id: rear, x: 160 in, gawr: 9000 lb, track: 66 in, dual: true, tyres: {count: 4, load_index: [121, 120]}}
  bare:
    condition: {fuel: 1}
    readings: {front: 3300 lb, rear: 2400 lb}
tanks:
  - {id: FUEL, contents: diesel, capacity: 40 gal, at: [60 in, -30 in, 0 in]}
  - {id: FRESH, contents: water, capacity: 20 gal, at: [120 in, 0 in, 10 in]}
seats:
  - {id: driver, at: [30 in, -20 in, 20 in], belted: true}
bays:
  - {id: B1, at: [140 in, 30 in, 5 in], limit: 300 lb}
`,
  'shells/T-1/members.yaml': `- {id: FL-1, part: floor rail left, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [20 in, -30 in, 4 in], to: [180 in, -30 in, 4 in]}
- {id: FL-2, part: floor rail right, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [20 in, 30 in, 4 in], to: [180 in, 30 in, 4 in], cut_length: 160 in}
`,
  'shells/T-1/panels.yaml': `- {id: BP-1, kind: belly, alloy: 5052-H32, thickness: 0.090 in, stage: belly, date: 2026-04-10,
   outline: [[60 in, -20 in, -4 in], [140 in, -20 in, -4 in], [140 in, 20 in, -4 in], [60 in, 20 in, -4 in]]}
- {id: AP-1, kind: access, of: BP-1, alloy: 5052-H32, thickness: 0.090 in, stage: belly, opening: 14 in x 18 in, facing: down, date: 2026-04-10,
   outline: [[91 in, -9 in, -4 in], [109 in, -9 in, -4 in], [109 in, 9 in, -4 in], [91 in, 9 in, -4 in]],
   fixing: {method: screws, count: 8, driver: 3/16 hex}}
`,
  'shells/T-1/zones.yaml':
    '- {id: TROUGH, name: belly trough, box: [[60 in, -16 in, -3 in], [140 in, 16 in, 3 in]], concealed: true, closed_by: [BP-1], drains: [[62 in, 0, -3 in]]}\n',
  'shells/T-1/services/dc.yaml': `service: House 12 V
medium: dc
circuits:
  - {id: DC-1, name: Bay light, voltage: 12.8 V, load: 4 A, conductor: {awg: 14, conductors: 2, rating: 105 C}, protection: {kind: fuse, rating: 10 A, at: DCP}, marking: DC-1}
nodes:
  - {id: BAT, kind: source, role: battery, name: House battery, at: [50 in, -24 in, 6 in]}
  - {id: DCP, kind: panel, role: busbar, name: House DC panel, at: [70 in, -24 in, 20 in]}
  - {id: DC-1/S1, kind: splice, at: [100 in, 0 in, 0 in], circuit: DC-1, panel: AP-1, tolerance: 15 mm}
  - {id: DC-1/L, kind: load, name: Bay light, at: [150 in, 20 in, 6 in], circuit: DC-1}
  - {id: BAT/SW, kind: device, role: switch, name: Battery switch, at: [52 in, -24 in, 8 in]}
runs:
  - {id: DC-0, from: BAT, to: BAT/SW, sheathed: yes, conductor: {awg: 6, conductors: 2, rating: 105 C}}
  - {id: DC-0/2, from: BAT/SW, to: DCP, sheathed: yes, conductor: {awg: 6, conductors: 2, rating: 105 C}}
  - {id: DC-1/1, circuit: DC-1, from: DCP, to: DC-1/S1, via: [[70 in, 0 in, 0 in]], zones: [TROUGH], tolerance: 15 mm, date: 2026-04-07}
  - {id: DC-1/2, circuit: DC-1, from: DC-1/S1, to: DC-1/L, via: [[150 in, 0 in, 0 in]], zones: [TROUGH], tolerance: 15 mm, date: 2026-04-07}
`,
  'shells/T-1/tests.yaml':
    '- {id: TS-1, kind: continuity, of: [DC-1], limit: 0.5 ohm, measured: 0.2 ohm, instrument: M-1, by: K. Marrow, date: 2026-04-08}\n',
  'shells/T-1/weights.yaml': `- id: T-1/W
  date: 2026-06-30
  stage: belly
  scale: SC-1
  condition: {fuel: 1, fresh: 0}
  readings: {front: 3320 lb, rear: 2440 lb}
`,
};

export interface SmallStore {
  readonly root: string;
  write(file: string, text: string | Uint8Array): void;
  /** Commits everything that changed. */
  commit(message: string): Promise<void>;
  remove(): void;
}

/** Lays the store down in a folder of its own, committed. */
export async function laySmallStore(more: Readonly<Record<string, string>> = {}): Promise<SmallStore> {
  const root = mkdtempSync(path.join(tmpdir(), 'shellbook-small-'));
  const write = (file: string, text: string | Uint8Array): void => {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  };
  for (const [file, text] of Object.entries({ ...FILES, ...more })) write(file, text);
  const git = simpleGit({ baseDir: root });
  await git.init();
  await git.addConfig('user.name', 'K. Marrow').addConfig('user.email', 'k@example.org');
  await git.add('.').commit('Record the small shell');
  const commit = async (message: string): Promise<void> => {
    await git.add('.').commit(message);
  };
  return { root, write, commit, remove: () => rmSync(root, { recursive: true, force: true }) };
}
