/** A made-up store with one coach of many mass items, as the text of its files. The same text for the same count. */
export function benchStore(count: number): ReadonlyMap<string, string> {
  const members = Math.floor(count / 2);
  return new Map([
    ['shop.yaml', 'shop: {name: Bench shop}\nunits: both\n'],
    ['library/materials.yaml', '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3, modulus: 69 GPa}\n'],
    [
      'library/sections.yaml',
      '- {id: RT2x2x1/8, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in, corner_radius: 0 in}\n',
    ],
    ['library/stages.yaml', STAGES.map((id) => `- {id: ${id}, name: ${id}}\n`).join('')],
    [
      'library/instruments.yaml',
      '- {id: SC-1, kind: axle scale, resolution: 20 lb, tolerance: 0.1 %, calibrated: 2026-01-20, due: 2027-01-20}\n',
    ],
    [`shells/${SHELL}/shell.yaml`, HEAD],
    [`shells/${SHELL}/weights.yaml`, TICKETS],
    [`shells/${SHELL}/members.yaml`, list(members, member)],
    [`shells/${SHELL}/components.yaml`, list(count - members, component)],
  ]);
}

export const SHELL = 'BN-001';
const STAGES = ['floor', 'walls', 'roof', 'fitout', 'finished'];
const stage = (i: number): string => STAGES[i % STAGES.length] as string;

const HEAD = `shell: ${SHELL}
title: Coach for measuring
chassis:
  gvwr: 48000 lb
  axles:
    - {id: steer, x: 0 in, gawr: 14600 lb, track: 83 in, steered: yes}
    - {id: drive, x: 240 in, gawr: 23000 lb, track: 73 in, dual: yes}
    - {id: tag, x: 292 in, gawr: 17000 lb, track: 80 in, lift: yes, share: {with: drive, fraction: 0.42}}
  bare:
    condition: {fuel: 1/4}
    readings: {steer: 8520 lb, drive: 5840 lb, tag: 4230 lb}
tanks:
  - {id: FUEL, contents: diesel, capacity: 90 gal, at: [92 in, 38 in, -14 in]}
  - {id: FRESH, contents: water, capacity: 50 gal, at: [88 in, -36 in, 24 in]}
  - {id: GREY, contents: grey, capacity: 50 gal, at: [196 in, -36 in, -9 in]}
seats:
  - {id: driver, at: [14 in, -20 in, 34 in], belted: yes}
bays:
  - {id: B1, at: [120 in, 40 in, -8 in], limit: 500 lb}
  - {id: B2, at: [330 in, 40 in, -8 in], limit: 400 lb}
`;

const TICKETS = STAGES.map(
  (id, i) =>
    `- {id: T-${i + 1}, date: 2026-0${i + 2}-01, stage: ${id}, scale: SC-1, condition: {fuel: 1/2, fresh: 0, grey: 0},\n   readings: {steer: ${9000 + 200 * i} lb, drive: ${7000 + 500 * i} lb, tag: ${5000 + 400 * i} lb}}\n`,
).join('');

const list = (count: number, one: (i: number) => string): string => Array.from({ length: count }, (_, i) => one(i)).join('');

/** Members stand apart, so that joints are looked for and none is found. */
function member(i: number): string {
  const [x, z] = [48 + (i % 80) * 4, 4 + Math.floor(i / 80) * 3];
  return `- {id: M-${i + 1}, part: rail, stage: ${stage(i)}, section: RT2x2x1/8, alloy: 6061-T6, from: [${x} in, -40-1/2 in, ${z} in], to: [${x} in, 40-1/2 in, ${z} in]}\n`;
}

function component(i: number): string {
  const at = `[${24 + ((i * 37) % 340)}-1/4 in, ${((i * 13) % 80) - 40} in, ${(i * 7) % 90} in]`;
  return `- {id: C-${i + 1}, name: "fitting ${i + 1}", mass: ${1 + (i % 9)} lb, at: ${at}, stage: ${stage(i)}, basis: catalogue, date: 2026-0${(i % 6) + 1}-15}\n`;
}
