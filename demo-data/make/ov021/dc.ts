import { Service, WIRED } from '../coach/service.js';
import type { P } from '../inches.js';
import type { Rec } from '../yaml.js';
import { ac } from './ac.js';
import { ceilingOf, DC_BAYS } from './access.js';
import { GRID } from './plan.js';
import { CHASE_Y } from './zones.js';

const every = { ...WIRED, date: '2026-03-06' };
const wire = (awg: number | string, conductors = 2): Rec => ({ awg, conductors, rating: '105 C' });
const V = '25.6 V';

/** House 24 V: batteries and panel on the front wall left, lights through the roof, the rest through the trough. */
export function dc(): Service {
  const s = new Service(
    'dc-house',
    'House 24 V',
    'dc',
    every,
    [
      'House 24 V. Everything is tinned wire; heat-shrink on every splice, marker 3 in back from it.',
      'Fuse positions count from the top of the panel.',
    ],
    ac(),
  );
  supply(s);
  for (const [i, bay] of DC_BAYS.entries()) roofLights(s, bay, i);
  for (const [i, one] of TROUGH.entries()) troughCircuit(s, one, i);
  networkShelf(s);
  earths(s);
  unused(s);
  return s;
}

const PANEL: P = [47.5, -30, 60];
/** Fuse positions stand in two rows of twelve under the panel’s cover. */
const fuseAt = (n: number): P => [47.8, -34 + (n % 2) * 8, 70 - Math.floor(n / 2) * 1.25];

function supply(s: Service): void {
  s.circuit({
    '#': 'Supply',
    id: 'DC-00',
    name: 'battery main',
    voltage: V,
    load: '110 A',
    conductor: wire('4/0'),
    protection: { kind: 'class T fuse', rating: '200 A', at: 'BAT/MF' },
    marking: 'DC-00',
  });
  s.circuit({
    id: 'DC-S',
    name: 'solar charge',
    voltage: '36 V',
    load: '18 A',
    conductor: wire(6),
    protection: { kind: 'breaker', rating: '30 A', at: 'SOL/BR' },
    marking: 'DC-S',
  });
  s.circuit({
    id: 'DC-C',
    name: 'charger from mains',
    voltage: V,
    load: '40 A',
    conductor: wire(2),
    protection: { kind: 'fuse', rating: '60 A', at: 'CONV/F' },
    marking: 'DC-C',
  });
  s.node('BAT', 'source', [54, -14, 20], { name: 'house battery, lithium, 24 V 400 Ah' });
  s.node('BAT/MF', 'device', [54, -16, 25], { name: 'main fuse, class T', rating: '200 A', torque: '17 N.m' });
  s.node('BAT/MD', 'device', [52, -20, 40], { name: 'battery disconnect, red handle', rating: '275 A' });
  s.node('DCP', 'panel', PANEL, { name: 'House DC panel' });
  s.node('SOL', 'source', [GRID.mid(9), -15, 99.4], { name: 'solar gland, roof' });
  s.node('SOL/BR', 'device', [50, -38, 50], { name: 'solar breaker', rating: '30 A' });
  s.node('SOL/MPT', 'device', [50, -40, 44], { name: 'solar regulator' });
  s.node('CONV/F', 'device', [50, 20, 40], { name: 'charger fuse', rating: '60 A' });
  s.run('DC-00/1', 'DC-00', 'BAT', 'BAT/MF');
  s.run('DC-00/2', 'DC-00', 'BAT/MF', 'BAT/MD');
  s.run('DC-00/3', 'DC-00', 'BAT/MD', 'DCP', { via: [[49, -20, 46]] });
  s.run('DC-S/1', 'DC-S', 'SOL', 'SOL/BR', {
    via: [
      [GRID.mid(9), -15, 95],
      [GRID.mid(9), -30, 95],
      [50, -30, 95],
      [50, -38, 88],
    ],
    zones: ['TB-9', 'RC-L'],
    grommets: ['RF-04', 'CL-1'],
    extra: { sealed: ['RF-04'] },
    comment: 'gland on the roof sits 9 in ahead of truss 10',
  });
  s.run('DC-S/2', 'DC-S', 'SOL/BR', 'SOL/MPT');
  s.run('DC-S/3', 'DC-S', 'SOL/MPT', 'BAT/MD', { via: [[50, -30, 42]] });
  s.run('DC-C/1', 'DC-C', 'CONV', 'CONV/F', { extra: { date: '2026-03-17' } });
  s.run('DC-C/2', 'DC-C', 'CONV/F', 'BAT/MD', { via: [[50, 0, 38]] });
}

/** The fuse of a circuit and its link to the panel’s bus. */
function fuse(s: Service, circuit: string, n: number): string {
  const id = s.node(`${circuit}/F`, 'terminal', fuseAt(n), { name: `fuse position ${n + 1}`, torque: '2.5 N.m' });
  s.run(`${circuit}/0`, undefined, 'DCP', id, { extra: { conductor: wire(8, 1), marking: `${circuit} bus`, note: 'bus link' } });
  return id;
}

function roofLights(s: Service, bay: number, i: number): void {
  const id = `DC-${String(i + 1).padStart(2, '0')}`;
  const x = GRID.mid(bay);
  const y = -CHASE_Y - 2 + i * 0.6;
  const from = fuseAt(i);
  s.circuit({
    ...(i === 0 ? { '#': ['', 'Ceiling lights, one circuit a bay'] } : {}),
    id,
    name: `ceiling lights, bay ${bay}`,
    voltage: V,
    load: '2.4 A',
    conductor: wire(10),
    protection: { kind: 'fuse', rating: '10 A', at: `${id}/F` },
    marking: id,
    colour: 'grey/black',
  });
  const fused = fuse(s, id, i);
  const splice = s.node(`${id}/S1`, 'splice', [x, y, 94], {
    name: `splice, lights bay ${bay}`,
    circuit: id,
    panel: `AP-${String(21 + i).padStart(2, '0')}`,
    tolerance: '10 mm',
    marking: `${id}/S1`,
  });
  s.run(`${id}/1`, id, fused, splice, {
    via: [
      [50, from[1], from[2]],
      [50, y, 88],
      [50, y, 94],
    ],
    zones: ['RC-L'],
    grommets: ['CL-1'],
    extra: { marking: id },
  });
  const lights: readonly number[] = [-20, -12, -4, 4, 12, 20];
  let last = splice;
  lights.forEach((lightY, k) => {
    const light = s.node(`${id}/L${k + 1}`, 'load', [x, lightY, 90.4], {
      name: `light ${k + 1}, bay ${bay}`,
      circuit: id,
      load: '0.4 A',
    });
    const via: P[] =
      k === 0
        ? [[x, lightY, 94]]
        : [
            [x, lights[k - 1] as number, 94],
            [x, lightY, 94],
          ];
    s.run(`${id}/${k + 2}`, id, last, light, {
      via,
      zones: k === 0 ? ['RC-L', `TB-${bay}`] : [`TB-${bay}`],
      grommets: [ceilingOf(bay)],
    });
    last = light;
  });
}

interface TroughCircuit {
  readonly name: string;
  readonly amps: readonly [number, number];
  readonly loads: readonly [string, string];
  readonly fuse: number;
  readonly awg: number | string;
  /** Splice, in reach of this access panel; where the wires come up through the floor. */
  readonly splice: number;
  readonly panel: string;
  readonly up: number;
  readonly side: 1 | -1;
}

const TROUGH: readonly TroughCircuit[] = [
  {
    name: 'front wall and cab link',
    amps: [2, 1],
    loads: ['reading lamp', 'cab buzzer'],
    fuse: 10,
    awg: 10,
    splice: 60,
    panel: 'AP-01',
    up: 52.75,
    side: 1,
  },
  {
    name: 'water pump and senders',
    amps: [7, 0.5],
    loads: ['water pump', 'tank senders'],
    fuse: 15,
    awg: 10,
    splice: 94,
    panel: 'AP-02',
    up: 99.25,
    side: -1,
  },
  {
    name: 'front bench',
    amps: [3, 2],
    loads: ['bench lights', 'ink warmer'],
    fuse: 7.5,
    awg: 10,
    splice: 88,
    panel: 'AP-02',
    up: 83.75,
    side: 1,
  },
  {
    name: 'furnace',
    amps: [5, 0.5],
    loads: ['furnace blower', 'room thermostat'],
    fuse: 15,
    awg: 10,
    splice: 142,
    panel: 'AP-03',
    up: 145.75,
    side: -1,
  },
  {
    name: 'press lamps',
    amps: [2, 2],
    loads: ['lamp, hand press', 'lamp, platen press'],
    fuse: 10,
    awg: 10,
    splice: 148,
    panel: 'AP-03',
    up: 145.75,
    side: 1,
  },
  {
    name: 'slide-out power pack',
    amps: [55, 0],
    loads: ['slide power pack', 'pack sensor'],
    fuse: 80,
    awg: '4/0',
    splice: 204,
    panel: 'AP-04',
    up: 207.75,
    side: -1,
  },
  {
    name: 'slide-out control',
    amps: [1, 1],
    loads: ['slide controller', 'slide switch'],
    fuse: 5,
    awg: 12,
    splice: 211,
    panel: 'AP-04',
    up: 207.75,
    side: 1,
  },
  {
    name: 'tag lift',
    amps: [2, 0.5],
    loads: ['tag lift valve', 'tag ride sensor'],
    fuse: 5,
    awg: 10,
    splice: 266,
    panel: 'AP-05',
    up: 269.75,
    side: 1,
  },
  {
    name: 'type cases',
    amps: [2, 1],
    loads: ['case lights', 'slide-out lights'],
    fuse: 10,
    awg: 10,
    splice: 273,
    panel: 'AP-05',
    up: 269.75,
    side: -1,
  },
  {
    name: 'bindery',
    amps: [3, 2],
    loads: ['sewing frame light', 'glue pot'],
    fuse: 10,
    awg: 8,
    splice: 328,
    panel: 'AP-06',
    up: 331.75,
    side: -1,
  },
  {
    name: 'generator control',
    amps: [3, 0.5],
    loads: ['generator start', 'generator panel'],
    fuse: 10,
    awg: 8,
    splice: 356,
    panel: 'AP-07',
    up: 362.75,
    side: -1,
  },
  {
    name: 'rear step and porch',
    amps: [1, 1],
    loads: ['step light', 'rear porch light'],
    fuse: 5,
    awg: 10,
    splice: 360,
    panel: 'AP-07',
    up: 362.75,
    side: 1,
  },
];

function troughCircuit(s: Service, one: TroughCircuit, i: number): void {
  const id = `DC-${21 + i}`;
  const n = i + DC_BAYS.length;
  const from = fuseAt(n);
  const lane = one.side * (3 + (i % 6) * 1.5);
  s.circuit({
    ...(i === 0 ? { '#': ['', 'Through the trough'] } : {}),
    id,
    name: one.name,
    voltage: V,
    load: `${one.amps[0] + one.amps[1]} A`,
    conductor: wire(one.awg),
    protection: { kind: 'fuse', rating: `${one.fuse} A`, at: `${id}/F` },
    marking: id,
    colour: one.side < 0 ? 'red/black' : 'blue/black',
  });
  const fused = fuse(s, id, n);
  const splice = s.node(`${id}/S1`, one.fuse > 50 ? 'terminal' : 'splice', [one.splice, lane, 5.4], {
    name: `${one.fuse > 50 ? 'stud' : 'splice'}, ${one.name}`,
    circuit: id,
    panel: one.panel,
    tolerance: '10 mm',
    ...(one.fuse > 50 ? { torque: '14 N.m' } : {}),
    marking: `${id}/S1`,
  });
  s.run(`${id}/1`, id, fused, splice, {
    via: [
      [50, from[1], from[2]],
      [50, lane, 13],
      [50, lane, 5.4],
    ],
    zones: ['TC'],
    extra: { marking: id },
  });
  one.loads.forEach((name, k) => {
    const place: P = [one.up + (k === 0 ? 0 : 4), lane + one.side * (k === 0 ? 2 : 4), 13];
    const load = s.node(`${id}/L${k + 1}`, 'load', place, { name, circuit: id, load: `${one.amps[k]} A` });
    s.run(`${id}/${k + 2}`, id, splice, load, {
      via: [
        [one.up, lane, 5.4],
        [one.up, lane, 12],
      ],
      zones: ['TC'],
      ...(one.awg === '4/0' && k === 1 ? { extra: { conductor: wire('4/0') } } : {}),
    });
  });
}

/** What the data cables are fed from. */
function networkShelf(s: Service): void {
  const id = 'DC-33';
  s.circuit({
    '#': ['', 'Front wall'],
    id,
    name: 'network shelf',
    voltage: V,
    load: '2 A',
    conductor: wire(12),
    protection: { kind: 'fuse', rating: '5 A', at: `${id}/F` },
    marking: id,
    colour: 'violet/black',
  });
  const fused = fuse(s, id, DC_BAYS.length + TROUGH.length);
  const shelf = s.node(`${id}/L1`, 'load', [47.5, -38, 70], { name: 'network shelf, supply', circuit: id, load: '2 A' });
  s.run(`${id}/1`, id, fused, shelf, { via: [[49, -38, 62]], extra: { marking: id } });
}

/** A spare pair to the middle of the trough; a pair that was cut off when the buzzer moved. */
function unused(s: Service): void {
  const spare = s.node('DC-SP/A', 'terminal', [47.8, -20, 55], { name: 'capped end, spare pair, front' });
  const far = s.node('DC-SP/B', 'terminal', [206, 0.5, 5.6], {
    name: 'capped end, spare pair, trough',
    panel: 'AP-04',
    tolerance: '10 mm',
  });
  s.run('DC-SP/1', undefined, spare, far, {
    comment: 'Not in use',
    via: [
      [50, -20, 40],
      [50, 0.5, 13],
      [50, 0.5, 5.6],
    ],
    zones: ['TC'],
    extra: { conductor: wire(10), spare: true, marking: 'SPARE 1', colour: 'red/black' },
  });
  const cut = s.node('DC-X1/A', 'terminal', [48, -16, 52], { name: 'capped end, old buzzer pair' });
  const stub = s.node('DC-X1/B', 'terminal', [48, -6, 36], { name: 'capped end, old buzzer pair, low' });
  s.run('DC-X1/1', undefined, cut, stub, {
    extra: {
      conductor: wire(14),
      abandoned: true,
      marking: 'X1',
      colour: 'orange/black',
      note: 'cab buzzer moved, pair left in',
    },
  });
}

/** Earth studs on the rails, each beside an access panel, with a washer of stainless under the lug. */
function earths(s: Service): void {
  const studs: readonly (readonly [number, string])[] = [
    [60, 'AP-01'],
    [96, 'AP-02'],
    [150, 'AP-03'],
    [213, 'AP-04'],
    [275, 'AP-05'],
    [319, 'AP-06'],
    [352.5, 'AP-07'],
  ];
  const bar = s.node('DCP/N', 'terminal', [47.8, -22, 58], { name: 'negative bar', torque: '9 N.m' });
  s.circuit({
    '#': ['', 'Earth bonds'],
    id: 'DC-E',
    name: 'earth bonds, stud to stud',
    conductor: wire(4, 1),
    bonding: true,
    marking: 'green',
    colour: 'green',
  });
  s.run('DC-E/0', 'DC-E', 'DCP', bar, { comment: 'Earth bonds, stud to stud along the right rail' });
  let last = bar;
  studs.forEach(([x, panel], i) => {
    const stud = s.node(`ES-${i + 1}`, 'terminal', [x, 14.2, 4.9], {
      name: `earth stud ${i + 1}, right rail`,
      panel,
      tolerance: '5 mm',
      torque: '15 N.m',
      isolator: true,
      note: 'stainless washer, do not paint',
    });
    s.run(`DC-E/${i + 1}`, 'DC-E', last, stud, {
      via:
        i === 0
          ? [
              [50, -22, 58],
              [50, 13, 13],
              [50, 13, 4.9],
            ]
          : [],
      zones: ['TC'],
    });
    last = stud;
  });
}
