import { Service, WIRED } from '../coach/service.js';
import type { P } from '../inches.js';
import { ceilingOf } from './access.js';
import { GRID } from './plan.js';
import { CHASE_Y } from './zones.js';

const every = { ...WIRED, date: '2026-03-24' };

/** Data: one shelf on the front wall, a cable to each place. */
export function data(): Service {
  const s = new Service('data', 'Data', 'data', every, [
    'Data. Shielded pairs, both ends numbered; no joints but at the plates.',
  ]);
  s.node('NET', 'source', [47.5, -38, 72], { name: 'network shelf, feeds the cables from DC-33' });
  const overhead: readonly (readonly [number, number, string])[] = [
    [1, 21, 'front camera'],
    [4, 22, 'smoke alarm front'],
    [6, 23, 'ceiling speaker front'],
    [9, 24, 'wireless point'],
    [11, 25, 'smoke alarm middle'],
    [14, 26, 'ceiling speaker rear'],
    [16, 27, 'smoke alarm rear'],
    [19, 28, 'rear camera'],
  ];
  overhead.forEach(([bay, panel, name], i) => {
    const id = `DA-${String(i + 1).padStart(2, '0')}`;
    const x = GRID.mid(bay);
    const y = -CHASE_Y - 3.6 + i * 0.3;
    circuit(s, id, name);
    const plug = s.node(`${id}/C1`, 'connector', [x - 3, y, 93.6], {
      name: `coupler, ${name}`,
      circuit: id,
      panel: `AP-${panel}`,
      tolerance: '10 mm',
    });
    const device = s.node(`${id}/D`, 'device', [x, -30, 90.3], { name, circuit: id });
    s.run(`${id}/1`, id, 'NET', plug, {
      via: [
        [50, -38, 78],
        [50, y, 88],
        [50, y, 96],
      ],
      zones: ['RC-L'],
      grommets: ['CL-1'],
    });
    s.run(`${id}/2`, id, plug, device, { via: [[x, -30, 93.6]], zones: ['RC-L'], grommets: [ceilingOf(bay)] });
  });
  wall(s);
  trough(s);
  return s;
}

function circuit(s: Service, id: string, name: string): void {
  s.circuit({ id, name, conductor: { awg: 23, conductors: 8 }, marking: id, colour: 'green' });
}

function wall(s: Service): void {
  const x = GRID.mid(6);
  const plate = s.node('DA-11/C1', 'connector', [x, -49, 26], {
    name: 'data box, left wall bay 6',
    circuit: 'DA-11',
    panel: 'AP-37',
    tolerance: '10 mm',
  });
  circuit(s, 'DA-11', 'desk outlets');
  s.run('DA-11/1', 'DA-11', 'NET', plate, {
    via: [
      [50, -38, 78],
      [50, -30.6, 88],
      [50, -30.6, 96],
      [x, -30.6, 95],
      [x, -49, 94.5],
    ],
    zones: ['RC-L', 'RS-6', 'WL-6'],
    grommets: ['CL-1', 'TP-L'],
  });
  ([22, 30] as const).forEach((z, k) => {
    const out = s.node(`DA-11/D${k + 1}`, 'device', [x + 2 * k, -47.3, z], { name: `desk outlet ${k + 1}`, circuit: 'DA-11' });
    s.run(`DA-11/${k + 2}`, 'DA-11', plate, out, { via: [[x + 2 * k, -49, z]], zones: ['WL-6'], grommets: ['IP-L-3'] });
  });
}

function trough(s: Service): void {
  const places: readonly (readonly [string, string, number, string, number])[] = [
    ['DA-12', 'tank monitor', 93, 'AP-02', 99.25],
    ['DA-13', 'generator monitor', 355, 'AP-07', 362.75],
    ['DA-14', 'slide-out monitor', 205, 'AP-04', 207.75],
  ];
  places.forEach(([id, name, x, panel, up], i) => {
    const y = -1 + i;
    circuit(s, id, name);
    const plug = s.node(`${id}/C1`, 'connector', [x, y, 6], { name: `coupler, ${name}`, circuit: id, panel, tolerance: '10 mm' });
    const device = s.node(`${id}/D`, 'device', [up, y, 13], { name, circuit: id });
    const down: readonly P[] = [
      [50, -38, 60],
      [50, y, 13],
      [50, y, 6],
    ];
    s.run(`${id}/1`, id, 'NET', plug, { via: down, zones: ['TC'] });
    s.run(`${id}/2`, id, plug, device, { via: [[up, y, 6]], zones: ['TC'] });
  });
}
