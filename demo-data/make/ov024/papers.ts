import type { Weighing } from '../ov021/tickets.js';
import type { Rec } from '../yaml.js';

export const shellYaml = (vin: string): string => `# OV-024: on the floor. Papers came with the chassis in May.
shell: OV-024
title: Travelling observatory classroom
vin: ${vin}
customer:
  name: Fellowship of the Patient Lens, Barnaby Quill-Osterhaus
  place: Upper Sallowmere
  contact: barnaby@patient-lens.example
envelope: {length: 16 ft 11-1/2 in, width: 100-1/4 in, height: 99 in}

chassis:
  description: conventional cab chassis, two axles, incomplete vehicle
  document: incomplete vehicle document 81-00977
  gvwr: 33,000 lb
  frame: {rail_top_above_ground: 40 in, rail_spacing: 34 in}
  axles:
    - {id: steer, x: 0 in, gawr: "12,000 lb", track: 82 in, steered: yes, steer_angle: 40 deg,
       travel: {bump: 3-1/2 in, rebound: 3 in},
       tyres: {count: 2, load_index: 148, inflation: 110 psi, inflation_for_index: 110 psi, size: 275/80R22.5}}
    - {id: drive, x: 190 in, gawr: "21,000 lb", track: 73 in, dual: yes, travel: {bump: 3 in, rebound: 4-1/2 in},
       tyres: {count: 4, load_index: [148, 145], inflation: 110 psi, inflation_for_index: 110 psi, size: 275/80R22.5, spacing: 12-3/4 in}}
  bare:
    condition: {fuel: 1/4}
    readings: {steer: "6,940 lb", drive: "4,720 lb"}

tanks:
  - {id: FUEL, contents: diesel, capacity: 60 gal, at: [90 in, -38 in, -12 in]}
  - {id: FRESH, contents: water, capacity: 30 gal, at: [124 in, -40 in, 22 in]}
  - {id: LPG, contents: propane, capacity: 10 gal, at: [26 in, 40 in, -10 in]}

seats:
  - {id: driver, at: [14 in, -20 in, 34 in], belted: yes}
  - {id: passenger, at: [14 in, 20 in, 34 in], belted: yes}

bays:
  - {id: B1, name: mirror locker, at: [140 in, 0 in, 20 in], limit: 400 lb}
`;

export const openings = (): readonly Rec[] => [
  {
    block: true,
    id: 'SO-1',
    kind: 'slide-out',
    wall: 'right',
    sill: [
      ['108-1/2 in', '49 in', '13-1/4 in'],
      ['183 in', '49 in', '13-1/4 in'],
    ],
    width: '6 ft 2-1/2 in',
    height: '65-1/2 in',
    measured: {
      top: '6 ft 2-1/2 in',
      bottom: '6 ft 2-1/2 in',
      front: '65-1/2 in',
      rear: '65-1/2 in',
      diagonals: ['99-3/16 in', '99-3/16 in'],
      header_sag: [{ at: '37 in', drop: '1/32 in' }],
    },
    header: 'HD-SO-1',
    gussets: ['G-01', 'G-02', 'G-03', 'G-04'],
    stage: 'walls',
    date: '2026-09-11',
    by: 'J5',
  },
  {
    id: 'DR-1',
    kind: 'entry door',
    wall: 'left',
    sill: [
      ['201-1/2 in', '-49 in', '11-1/4 in'],
      ['229-1/2 in', '-49 in', '11-1/4 in'],
    ],
    width: '28 in',
    height: '73-1/2 in',
    measured: {
      top: '28 in',
      bottom: '28 in',
      front: '73-1/2 in',
      rear: '73-1/2 in',
      diagonals: ['78-21/32 in', '78-21/32 in'],
      header_sag: [{ at: '14 in', drop: '0 in' }],
    },
    header: 'HD-DR-1',
    stage: 'walls',
    date: '2026-09-11',
    by: 'J5',
  },
  {
    id: 'WN-1',
    kind: 'window',
    wall: 'left',
    sill: [
      ['93 in', '-49 in', '48 in'],
      ['121 in', '-49 in', '48 in'],
    ],
    width: '28 in',
    height: '26 in',
    measured: { top: '28 in', bottom: '28 in', front: '26 in', rear: '26 in', diagonals: ['38-7/32 in', '38-7/32 in'] },
    header: 'HD-WN-1',
    stage: 'walls',
    date: '2026-09-11',
    by: 'J5',
  },
];

export const components = (): readonly Rec[] => [
  {
    '#': 'What is on it so far',
    id: 'CMP-01',
    name: 'damper pads and U-bolts',
    mass: '148 lb',
    at: ['140 in', '0 in', '-1 in'],
    stage: 'subframe',
    basis: 'weighed',
    date: '2026-06-18',
  },
  {
    id: 'CMP-02',
    name: 'floor plywood, sealed',
    mass: '428 lb',
    at: ['146 in', '0 in', '11.1 in'],
    stage: 'floor',
    basis: 'calculated',
    date: '2026-07-16',
  },
  {
    id: 'CMP-03',
    name: 'fresh tank, empty',
    mass: '31 lb',
    at: ['124 in', '-40 in', '22 in'],
    size: ['24 in', '16 in', '18 in'],
    stage: 'services',
    basis: 'weighed',
    date: '2026-10-22',
  },
  {
    id: 'CMP-04',
    name: 'house battery',
    mass: '112 lb',
    at: ['54 in', '-14 in', '20 in'],
    stage: 'services',
    basis: 'catalogue',
    date: '2026-10-19',
  },
  {
    id: 'CMP-05',
    name: 'telescope pier, cast',
    mass: '386 lb',
    at: ['138 in', '-4 in', '30 in'],
    size: ['14 in', '14 in', '36 in'],
    stage: 'fitout',
    basis: 'catalogue',
    date: '2026-11-16',
  },
];

export const tests = (): readonly Rec[] => [
  {
    id: 'TS-201',
    kind: 'coupon pull',
    of: ['SK-L-01'],
    limit: '250 lbf',
    measured: '402 lbf',
    instrument: 'PT-1',
    by: 'S8',
    date: '2026-10-05',
    stage: 'skin',
  },
  {
    id: 'TS-202',
    kind: 'insulation',
    of: ['D-00', 'D-01', 'D-02', 'D-03', 'D-04', 'D-05', 'D-06', 'D-07', 'D-08', 'D-09'],
    limit: '1 Mohm',
    measured: '33 Mohm',
    instrument: 'IR-1',
    by: 'E1',
    date: '2026-11-04',
    stage: 'services',
  },
  {
    id: 'TS-203',
    kind: 'insulation',
    of: ['M-SH', 'M-01', 'M-02', 'M-03', 'M-04'],
    limit: '1 Mohm',
    measured: '28 Mohm',
    instrument: 'IR-1',
    by: 'E1',
    date: '2026-10-28',
    stage: 'services',
  },
  {
    id: 'TS-204',
    kind: 'continuity',
    of: ['N-01', 'N-02', 'N-03'],
    limit: '12 ohm',
    measured: '3.1 ohm',
    instrument: 'CT-1',
    by: 'E1',
    date: '2026-11-04',
    stage: 'services',
  },
  {
    id: 'TS-205',
    kind: 'drop',
    of: ['WC'],
    limit: '1 psi',
    start: '100 psi',
    end: '100 psi',
    duration: '15 min',
    instrument: 'PG-2',
    by: 'F6',
    date: '2026-11-03',
    stage: 'services',
  },
  {
    id: 'TS-206',
    kind: 'drop',
    of: ['GA'],
    limit: '0 psi',
    start: '3.00 psi',
    end: '3.00 psi',
    start_temperature: '11 C',
    end_temperature: '11 C',
    duration: '15 min',
    instrument: 'PG-1',
    by: 'F6',
    date: '2026-11-02',
    stage: 'services',
  },
];

export const findings = (): readonly Rec[] => [
  {
    block: true,
    id: 'NC-01',
    raised: '2026-09-10',
    of: ['DR-1'],
    description: 'door opening 1/4 in out of square before the header was run out, expected 1/8 in or less',
    decision: 'rework',
    reason: 'header let go at one end, pulled, run again and measured',
    approved_by: 'J2',
    closed: '2026-09-11',
  },
];

export const signoffs = (): readonly Rec[] => [
  { stage: 'subframe', role: 'inspector', by: 'J2', date: '2026-06-22' },
  { stage: 'floor', role: 'inspector', by: 'J2', date: '2026-07-20' },
];

export const clamps = (): readonly Rec[] =>
  [46, 100, 150, 228].flatMap((x, i) =>
    (['L', 'R'] as const).map((side, k): Rec => {
      const n = String(i * 2 + k + 1).padStart(2, '0');
      return {
        id: `UB-${n}`,
        kind: 'U-bolt',
        at: [`${x} in`, side === 'L' ? '-17 in' : '17 in', '0.4 in'],
        bolt: '5/8 in grade 8',
        torque: '150 ft.lb',
        damper: `D-${n}`,
        isolator: true,
        joins: [`SF-${side}`],
        stage: 'subframe',
        date: '2026-06-18',
        by: 'B9',
        check_again: { after: '500 mi' },
      };
    }),
  );

export const WEIGHINGS: readonly Weighing[] = [
  { id: 'T-1', date: '2026-06-22', stage: 'subframe', scale: 'SC-1', ticket: '26-081', condition: { fuel: '1/4' } },
  { id: 'T-2', date: '2026-07-20', stage: 'floor', scale: 'SC-1', ticket: '26-094', condition: { fuel: '1/4' } },
  { id: 'T-3', date: '2026-09-14', stage: 'walls', scale: 'SC-2', ticket: 'NG 41190', condition: { fuel: '1/4' } },
];
