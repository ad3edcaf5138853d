/** A made-up shop that has built coaches for fifteen years, as commits of its records. The same store for the same count. */

const YEARS = 15;
/** 3 January 2011, s since 1970. */
const FIRST_DAY = Date.UTC(2011, 0, 3) / 1000;
const DAY_S = 86_400;
/** Rails of a shell: five sizes in turn, so that every count of shells that is a multiple of five has the same mean. */
const RAILS = [6, 10, 16, 24, 34] as const;
const WELDERS = ['F1', 'F2', 'F3', 'F4', 'F5', 'F6'] as const;
const TRADES = ['soil laboratory', 'mobile library', 'dental room', 'film workshop', 'map office'] as const;

/** What `layRepository` lays down: files of one commit, and when it was made. */
export interface FleetCommit {
  readonly files: ReadonlyMap<string, string>;
  /** Seconds since 1970. */
  readonly at: number;
}

export const fleetShell = (i: number): string => `FL-${String(i + 1).padStart(3, '0')}`;

/** Four commits a shell, from its chassis to its scale tickets, evenly over the years; the shared library comes first. */
export function* fleetCommits(count: number): Generator<FleetCommit> {
  yield { files: LIBRARY, at: FIRST_DAY };
  const apart = (YEARS * 365 * DAY_S) / count;
  for (let i = 0; i < count; i++) {
    const steps = stepsOf(i, FIRST_DAY + i * apart);
    for (const [n, files] of steps.entries())
      yield { files, at: Math.round(FIRST_DAY + (i + (n + 1) / (steps.length + 1)) * apart) };
  }
}

const LIBRARY: ReadonlyMap<string, string> = new Map([
  ['shop.yaml', 'shop: {name: Fleetmoor Coachworks}\nunits: us\n'],
  [
    'library/materials.yaml',
    '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, modulus: 69 GPa, yield: 240 MPa, tensile: 290 MPa, group: 23}\n- {id: 5052-H32, kind: aluminium, density: 2680 kg/m3, modulus: 70 GPa, yield: 195 MPa, tensile: 230 MPa, group: 22}\n',
  ],
  [
    'library/sections.yaml',
    '- {id: RT3x2x1/8, shape: rectangular tube, depth: 3 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n- {id: RT2x2x1/8, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n',
  ],
  [
    'library/procedures.yaml',
    '- {id: WPS-01, process: GMAW, types: [fillet], base: [6061-T6], thickness: [1/16 in, 1/2 in], filler: [ER5356], positions: [1F, 2F, 3F]}\n',
  ],
  [
    'library/people.yaml',
    WELDERS.map(
      (id, n) =>
        `- {id: ${id}, name: Welder ${n + 1}, role: welder, qualified: [{process: GMAW, positions: [1F, 2F, 3F], thickness: [1/16 in, 1/2 in], from: 2011-01-01, until: 2027-01-01}]}\n`,
    ).join('') +
      '- {id: V1, name: Inspector 1, role: inspector, qualified: [{method: VT, from: 2011-01-01, until: 2027-01-01}]}\n',
  ],
  [
    'library/instruments.yaml',
    '- {id: SC-1, kind: axle scale, resolution: 20 lb, tolerance: 0.1 %, calibrated: 2011-01-03, due: 2027-01-03}\n',
  ],
  ['library/stages.yaml', '- {id: floor, name: Floor frame}\n- {id: skin, name: Skin}\n- {id: finished, name: Finished}\n'],
]);

/** What a shell's four commits each bring. */
function stepsOf(i: number, began: number): readonly ReadonlyMap<string, string>[] {
  const id = fleetShell(i);
  const rails = RAILS[i % RAILS.length] as number;
  const random = scatter(i + 11);
  const day = new Date((began + DAY_S) * 1000).toISOString().slice(0, 10);
  const in_ = (file: string): string => `shells/${id}/${file}`;
  return [
    new Map([
      [in_('shell.yaml'), head(id, TRADES[i % TRADES.length] as string)],
      [in_('members.yaml'), list(rails, (n) => member(n, i, random)) + list(2, (n) => sill(n, rails))],
    ]),
    new Map([[in_('welds.yaml'), list(2 * rails, (n) => weld(n, day, WELDERS[(i + n) % WELDERS.length] as string))]]),
    new Map([
      [in_('panels.yaml'), list(Math.ceil(rails / 8), accessPanel)],
      [in_('services/dc.yaml'), circuits(Math.ceil(rails / 8))],
    ]),
    new Map([
      [in_('components.yaml'), list(rails, (n) => component(n, random, day))],
      [in_('weights.yaml'), ticket(day, i)],
    ]),
  ];
}

const head = (id: string, title: string): string => `shell: ${id}
title: Traveling ${title}
envelope: {length: 34 ft, width: 100 in, height: 98 in}
chassis:
  gvwr: 48000 lb
  frame: {rail_top_above_ground: 41 in, rail_spacing: 34 in}
  axles:
    - {id: steer, x: 0 in, gawr: 14600 lb, track: 83 in, steered: yes}
    - {id: drive, x: 240 in, gawr: 33400 lb, track: 73 in, dual: yes}
  bare: {condition: {fuel: 1/4}, readings: {steer: 8520 lb, drive: 9840 lb}}
tanks:
  - {id: FUEL, contents: diesel, capacity: 90 gal, at: [92 in, 38 in, -14 in]}
seats:
  - {id: driver, at: [14 in, -20 in, 34 in], belted: yes}
`;

/** Cross rails that end on the two sills, as many as the shell is large. */
function member(n: number, shell: number, random: () => number): string {
  const x = (24 + n * 2.5).toFixed(2);
  const heat = `H-${Math.floor(shell / 10)}${Math.floor(random() * 4)}`;
  return `- {id: M-${n + 1}, part: cross rail, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, heat: ${heat}, from: [${x} in, -39 in, 3 in], to: [${x} in, 39 in, 3 in]}\n`;
}

const sill = (n: number, rails: number): string =>
  `- {id: S-${n + 1}, part: sill, stage: floor, section: RT3x2x1/8, alloy: 6061-T6, heat: H-S${n}, from: [20 in, ${n === 0 ? -40 : 40} in, 3 in], to: [${30 + rails * 2.5} in, ${n === 0 ? -40 : 40} in, 3 in]}\n`;

const weld = (n: number, day: string, welder: string): string =>
  `- {id: W-${n + 1}, joins: [S-${1 + (n % 2)}, M-${1 + Math.floor(n / 2)}], type: fillet, size: 1/8 in, length: 6 in, sides: both, process: GMAW, procedure: WPS-01, filler: ER5356,\n   position: 2F, welder: ${welder}, date: ${day}, inspections: [{method: VT, by: V1, date: ${day}, result: accept}]}\n`;

function accessPanel(n: number): string {
  const x = 26 + n * 20;
  return `- {id: AP-${n + 1}, kind: access, alloy: 5052-H32, thickness: 0.090 in, stage: skin, facing: down, opening: 12 in x 12 in, outline: [[${x} in, -8 in, 0 in], [${x + 14} in, -8 in, 0 in], [${x + 14} in, 6 in, 0 in], [${x} in, 6 in, 0 in]]}\n`;
}

const circuits = (count: number): string =>
  `service: House 12 V\nmedium: dc\ncircuits:\n${list(
    count,
    (n) =>
      `  - {id: DC-${n + 1}, name: Lights ${n + 1}, voltage: 12.8 V, load: 4 A, conductor: {awg: 14, conductors: 2, rating: 105 C}, protection: {kind: fuse, rating: 15 A, at: DCP}}\n`,
  )}nodes:\n  - {id: DCP, kind: panel, name: House panel, at: [24 in, -30 in, 20 in], tolerance: 1 in}\n${list(
    count,
    (n) => `  - {id: DC-${n + 1}/E, kind: load, role: lamp, at: [${33 + n * 20} in, 0 in, 3 in], tolerance: 1 in}\n`,
  )}runs:\n${list(
    count,
    (n) =>
      `  - {id: DC-${n + 1}/1, circuit: DC-${n + 1}, from: DCP, to: DC-${n + 1}/E, via: [[24 in, 0 in, 6 in]], tolerance: 1 in}\n`,
  )}`;

const component = (n: number, random: () => number, day: string): string =>
  `- {id: C-${n + 1}, name: Fitting ${n + 1}, mass: ${1 + Math.floor(random() * 30)} lb, at: [${Math.floor(24 + random() * 330)} in, ${Math.floor(random() * 70 - 35)} in, ${Math.floor(20 + random() * 60)} in], stage: finished, basis: catalogue, date: ${day}}\n`;

const ticket = (day: string, i: number): string =>
  `- {id: T-1, date: ${day}, stage: finished, scale: SC-1, condition: {fuel: 1/2}, readings: {steer: ${9000 + (i % 7) * 60} lb, drive: ${10800 + (i % 5) * 80} lb}}\n`;

const list = (count: number, one: (n: number) => string): string => Array.from({ length: count }, (_, n) => one(n)).join('');

/** Numbers from 0 to 1 that scatter well enough (Park and Miller 1988). */
function scatter(seed: number): () => number {
  let state = seed * 7919;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
