import { Service } from '../coach/service.js';
import type { P } from '../inches.js';
import type { Rec } from '../yaml.js';
import { GRID } from './plan.js';

const wire = (awg: number | string, conductors = 2): Rec => ({ awg, conductors, rating: '105 C' });
const every = { supports: '15 in', tags: 'both ends', tolerance: '12 mm', stage: 'services' };

interface Feed {
  readonly name: string;
  readonly loads: readonly (readonly [string, number])[];
  readonly fuse: number;
  readonly awg: number;
  readonly splice: number;
  readonly panel: string;
  readonly up: number;
}

const FEEDS: readonly Feed[] = [
  {
    name: 'front lights',
    loads: [
      ['bench light front', 1],
      ['map lamp', 1],
    ],
    fuse: 10,
    awg: 10,
    splice: 60,
    panel: 'AP-01',
    up: 52.75,
  },
  {
    name: 'mount drive',
    loads: [
      ['telescope mount', 4],
      ['dew heater', 1],
    ],
    fuse: 10,
    awg: 8,
    splice: 94,
    panel: 'AP-02',
    up: 99.25,
  },
  {
    name: 'dome shutter',
    loads: [
      ['shutter motor', 6],
      ['shutter switch', 0.5],
    ],
    fuse: 15,
    awg: 8,
    splice: 90,
    panel: 'AP-02',
    up: 83.75,
  },
  {
    name: 'red lights',
    loads: [
      ['red strip left', 1],
      ['red strip right', 1],
    ],
    fuse: 5,
    awg: 12,
    splice: 136,
    panel: 'AP-03',
    up: 130.25,
  },
  {
    name: 'desk outlets',
    loads: [
      ['desk outlet 1', 2],
      ['desk outlet 2', 2],
    ],
    fuse: 10,
    awg: 8,
    splice: 140,
    panel: 'AP-03',
    up: 145.75,
  },
  {
    name: 'screen and sound',
    loads: [
      ['screen', 3],
      ['amplifier', 2],
    ],
    fuse: 10,
    awg: 8,
    splice: 183,
    panel: 'AP-04',
    up: 176.75,
  },
  {
    name: 'slide-out motor',
    loads: [
      ['slide motor', 18],
      ['slide switch', 0.5],
    ],
    fuse: 30,
    awg: 2,
    splice: 187,
    panel: 'AP-04',
    up: 192.25,
  },
  {
    name: 'rear lights',
    loads: [
      ['bench light rear', 1],
      ['step light', 1],
    ],
    fuse: 5,
    awg: 10,
    splice: 224,
    panel: 'AP-05',
    up: 223.25,
  },
  {
    name: 'water pump',
    loads: [
      ['pump', 6],
      ['tank sender', 0.2],
    ],
    fuse: 10,
    awg: 8,
    splice: 88,
    panel: 'AP-02',
    up: 83.75,
  },
];

const zoneAt = (x: number): string => (x < 161 ? 'TC-F' : 'TC-B');

export function dc(): Service {
  const s = new Service('dc-house', 'House 12 V', 'dc', { ...every, date: '2026-10-20' }, [
    'House 12 V, roughed in. Fuses by position from the top.',
  ]);
  s.circuit({
    id: 'D-00',
    name: 'battery main',
    voltage: '12.8 V',
    load: '60 A',
    conductor: wire('2/0'),
    protection: { kind: 'fuse', rating: '150 A', at: 'BAT/F' },
    marking: 'D-00',
  });
  s.node('BAT', 'source', [54, -14, 20], { name: 'house battery' });
  s.node('BAT/F', 'device', [52, -18, 32], { name: 'main fuse', rating: '150 A' });
  s.node('DCP', 'panel', [47.5, -24, 56], { name: 'DC panel' });
  s.run('D-00/1', 'D-00', 'BAT', 'BAT/F');
  s.run('D-00/2', 'D-00', 'BAT/F', 'DCP', { via: [[49, -20, 44]] });
  FEEDS.forEach((feed, i) => {
    const id = `D-${String(i + 1).padStart(2, '0')}`;
    const lane = -10 + i * 1.8;
    const total = feed.loads.reduce((sum, [, amps]) => sum + amps, 0);
    s.circuit({
      id,
      name: feed.name,
      voltage: '12.8 V',
      load: `${total} A`,
      conductor: wire(feed.awg),
      protection: { kind: 'fuse', rating: `${feed.fuse} A`, at: 'DCP' },
      marking: id,
    });
    const splice = s.node(`${id}/S1`, 'splice', [feed.splice, lane, 5.2], {
      name: `splice, ${feed.name}`,
      circuit: id,
      panel: feed.panel,
      tolerance: '12 mm',
    });
    const zones = feed.splice > 161 ? ['TC-F', 'TC-B'] : ['TC-F'];
    s.run(`${id}/1`, id, 'DCP', splice, {
      via: [
        [50, lane, 13],
        [50, lane, 5.2],
      ],
      zones,
    });
    feed.loads.forEach(([name, amps], k) => {
      const load = s.node(`${id}/L${k + 1}`, 'load', [feed.up + k * 3, lane - 2 + k * 4, 13], {
        name,
        circuit: id,
        load: `${amps} A`,
      });
      s.run(`${id}/${k + 2}`, id, splice, load, {
        via: [
          [feed.up, lane, 5.2],
          [feed.up, lane, 12],
        ],
        zones: [zoneAt(feed.up)],
      });
    });
  });
  return s;
}

export function ac(): Service {
  const s = new Service('ac-mains', 'Mains 120 V', 'ac', { ...every, date: '2026-10-14' }, ['Mains 120 V, right lane only.']);
  s.node('SHORE', 'source', [52, 49.3, 30], { name: 'shore inlet' });
  s.node('ACP', 'panel', [47.5, 28, 60], { name: 'mains panel' });
  s.circuit({
    id: 'M-SH',
    name: 'shore',
    voltage: '120 V',
    load: '24 A',
    conductor: wire(8, 3),
    protection: { kind: 'breaker', rating: '30 A', at: 'ACP' },
    marking: 'SHORE',
  });
  s.run('M-SH/1', 'M-SH', 'SHORE', 'ACP', { via: [[52, 44, 34]] });
  const feeds: readonly (readonly [string, number, string, number, number])[] = [
    ['outlets front', 73, 'AP-08', 68.25, 8],
    ['heater', 78, 'AP-08', 83.75, 12],
    ['outlets slide-out', 128, 'AP-09', 130.25, 8],
    ['charger', 133, 'AP-09', 130.25, 6],
  ];
  feeds.forEach(([name, x, panel, up, amps], i) => {
    const id = `M-0${i + 1}`;
    const y = 32 + i * 2.5;
    s.circuit({
      id,
      name,
      voltage: '120 V',
      load: `${amps} A`,
      conductor: wire(12, 3),
      protection: { kind: 'breaker', rating: '15 A', at: 'ACP' },
      marking: id,
    });
    const box = s.node(`${id}/J1`, 'junction', [x, y, 3.8], {
      name: `junction box, ${name}`,
      circuit: id,
      panel,
      tolerance: '12 mm',
    });
    const load = s.node(`${id}/L`, 'load', [up, y + 3, 16], { name, circuit: id, load: `${amps} A` });
    s.run(`${id}/1`, id, 'ACP', box, {
      via: [
        [50, 28, 58],
        [50, y, 13],
        [50, y, 3.8],
      ],
      zones: ['RL'],
    });
    s.run(`${id}/2`, id, box, load, {
      via: [
        [up, y, 3.8],
        [up, y, 12],
      ],
      zones: ['RL'],
    });
  });
  return s;
}

export function water(): Service {
  const s = new Service('water', 'Fresh water', 'water', { ...every, supports: '16 in', date: '2026-10-22' }, [
    'Fresh water, left lane. Trunk falls to the drain at the front.',
  ]);
  s.circuit({ id: 'WC', name: 'cold water', size: '1/2 in PEX', working_pressure: '50 psi', marking: 'blue' });
  const trunk = (x: number): P => [x, -33, 2.4 + (x - 68) / 30];
  s.node('FRESH/OUT', 'source', [120, -40, 14], { name: 'fresh tank outlet', circuit: 'WC' });
  s.node('PUMP', 'device', [99.25, -34, 13], { name: 'water pump', circuit: 'WC' });
  s.node('WC-D1', 'drain', trunk(68), {
    name: 'drain, front',
    circuit: 'WC',
    panel: 'AP-06',
    tolerance: '12 mm',
    position: 'normally closed',
  });
  s.node('WC-T1', 'fitting', trunk(79), { name: 'tee, sink', circuit: 'WC', panel: 'AP-06', tolerance: '12 mm' });
  s.node('WC-T2', 'fitting', trunk(126), { name: 'tee, pump', circuit: 'WC', panel: 'AP-07', tolerance: '12 mm' });
  s.node('WC-T3', 'fitting', trunk(134), { name: 'tee, kettle', circuit: 'WC', panel: 'AP-07', tolerance: '12 mm' });
  s.node('SINK/C', 'load', [83.75, -40, 30], { name: 'sink', circuit: 'WC' });
  s.node('KETTLE/C', 'load', [145.75, -36, 28], { name: 'kettle tap', circuit: 'WC' });
  s.run('WC/S', 'WC', 'FRESH/OUT', 'PUMP', { extra: { size: '3/4 in PEX' } });
  s.run('WC/1', 'WC', 'WC-D1', 'WC-T1', { zones: ['LL'] });
  s.run('WC/2', 'WC', 'WC-T1', 'WC-T2', { zones: ['LL'] });
  s.run('WC/3', 'WC', 'WC-T2', 'WC-T3', { zones: ['LL'] });
  s.run('WC/P', 'WC', 'PUMP', 'WC-T2', {
    via: [
      [99.25, -34, 12],
      [99.25, -37, 5.9],
      [124, -37, 5.2],
    ],
    zones: ['LL'],
  });
  s.run('WC/4', 'WC', 'WC-T1', 'SINK/C', {
    via: [
      [83.75, -33, 3],
      [83.75, -33, 12],
    ],
    zones: ['LL'],
  });
  s.run('WC/5', 'WC', 'WC-T3', 'KETTLE/C', {
    via: [
      [145.75, -33, 5.1],
      [145.75, -33, 12],
    ],
    zones: ['LL'],
  });
  return s;
}

export function gas(): Service {
  const s = new Service('gas', 'Propane', 'gas', { ...every, supports: '18 in', date: '2026-10-27' }, [
    'Propane, outside under the belly. For a licensed gas fitter.',
  ]);
  s.circuit({
    id: 'GA',
    name: 'propane main',
    size: '1/2 in steel',
    working_pressure: '11 in w.c.',
    protection: { kind: 'regulator', at: 'LP/R' },
    marking: 'yellow',
  });
  s.node('LP', 'source', [26, 40, -10], { name: 'propane tank' });
  s.node('LP/R', 'device', [34, 36, -3], { name: 'regulator' });
  s.node('GA-T1', 'fitting', [114.75, 21.5, -1.5], { name: 'tee, heater', circuit: 'GA' });
  s.node('GV-1', 'valve', [114.75, 21.5, 14], { name: 'shut-off, heater', circuit: 'GA', position: 'normally open' });
  s.node('STOVE/G', 'load', [114.75, 26, 18], { name: 'room heater', circuit: 'GA' });
  s.run('GA/1', 'GA', 'LP', 'LP/R');
  s.run('GA/2', 'GA', 'LP/R', 'GA-T1', { via: [[44, 21.5, -1.5]] });
  s.run('GA/3', 'GA', 'GA-T1', 'GV-1', { grommets: ['BP-R-1'], extra: { sealed: ['BP-R-1'] } });
  s.run('GA/4', 'GA', 'GV-1', 'STOVE/G');
  return s;
}

export function data(): Service {
  const s = new Service('data', 'Data', 'data', { ...every, date: '2026-10-21' }, ['Data, through the trough.']);
  s.node('NET', 'source', [47.5, -34, 66], { name: 'network shelf, feeds the cables' });
  const places: readonly (readonly [string, number, string, number])[] = [
    ['mount control', 96, 'AP-02', 99.25],
    ['screen', 141, 'AP-03', 145.75],
    ['weather mast', 222, 'AP-05', 223.25],
  ];
  places.forEach(([name, x, panel, up], i) => {
    const id = `N-0${i + 1}`;
    const y = 8.5 + i * 1.5;
    s.circuit({ id, name, conductor: { awg: 23, conductors: 8 }, marking: id });
    const plug = s.node(`${id}/C1`, 'connector', [x, y, 5.8], {
      name: `coupler, ${name}`,
      circuit: id,
      panel,
      tolerance: '12 mm',
    });
    const device = s.node(`${id}/D`, 'device', [up, y, 13], { name, circuit: id });
    s.run(`${id}/1`, id, 'NET', plug, {
      via: [
        [50, -34, 58],
        [50, y, 13],
        [50, y, 5.8],
      ],
      zones: x > 161 ? ['TC-F', 'TC-B'] : ['TC-F'],
    });
    s.run(`${id}/2`, id, plug, device, { via: [[up, y, 5.8]], zones: [zoneAt(up)] });
  });
  return s;
}

export const services = (): readonly Service[] => [dc(), ac(), water(), gas(), data()];
export const rearOf = GRID.rear;
