import { Service } from '../coach/service.js';
import type { P } from '../inches.js';
import type { Rec } from '../yaml.js';
import { ceilingOf } from './access.js';
import { GRID } from './plan.js';

const every = {
  supports: '16 in',
  end_supports: '4 in',
  tags: 'both ends',
  tolerance: '10 mm',
  stage: 'services',
  date: '2026-03-17',
};
const cable = (awg: number, conductors = 3): Rec => ({ awg, conductors, rating: '90 C' });

let made: Service | undefined;

/** Mains 120 V: panel on the front wall right, through the right lane and the right roof chase. Never beside gas or low voltage. */
export function ac(): Service {
  if (made) return made;
  const s = new Service('ac-mains', 'Mains 120 V', 'ac', every, [
    'Mains 120 V. Work on it is for a licensed electrician; shore lead out and generator locked first.',
  ]);
  made = s;
  supply(s);
  receptacles(s);
  roofUnits(s);
  machines(s);
  return s;
}

const breakerAt = (n: number): P => [47.8, 26 + (n % 2) * 8, 68 - Math.floor(n / 2) * 1.5];
const wallY = 49;

function circuit(s: Service, n: number, name: string, amps: number, breaker: number, awg: number, comment?: string): string {
  const id = `AC-${String(n).padStart(2, '0')}`;
  s.circuit({
    ...(comment ? { '#': ['', comment] } : {}),
    id,
    name,
    voltage: '120 V',
    load: `${amps} A`,
    conductor: cable(awg),
    protection: { kind: 'breaker', rating: `${breaker} A`, at: `${id}/B` },
    marking: id,
    colour: 'black/white/green',
  });
  s.node(`${id}/B`, 'terminal', breakerAt(n), { name: `breaker ${n}`, torque: '4 N.m' });
  s.run(`${id}/0`, undefined, 'ACP', `${id}/B`, { extra: { conductor: cable(6), marking: `${id} bus`, note: 'bus' } });
  return id;
}

function supply(s: Service): void {
  s.circuit({
    '#': 'Supply',
    id: 'AC-SH',
    name: 'shore',
    voltage: '120 V',
    load: '40 A',
    conductor: cable(6),
    protection: { kind: 'breaker', rating: '50 A', at: 'SHORE/B' },
    marking: 'SHORE',
  });
  s.circuit({
    id: 'AC-GN',
    name: 'generator',
    voltage: '120 V',
    load: '30 A',
    conductor: cable(4),
    protection: { kind: 'breaker', rating: '40 A', at: 'GEN/B' },
    marking: 'GEN',
  });
  s.node('SHORE', 'source', [68.25, 49.3, 30], { name: 'shore inlet, right side ahead of the door' });
  s.node('SHORE/B', 'device', [60, 44, 34], { name: 'shore breaker', rating: '50 A' });
  s.node('GEN', 'source', [347.25, -32, -1], { name: 'generator, left rear' });
  s.node('GEN/B', 'device', [347.25, -35, 3], { name: 'generator breaker, on its case', rating: '40 A' });
  s.node('ATS', 'device', [50, 40, 44], { name: 'transfer switch, shore or generator' });
  s.node('ACP', 'panel', [47.5, 30, 60], { name: 'Mains panel' });
  s.node('CONV', 'device', [52, 30, 24], { name: 'charger, mains to 24 V' });
  s.run('AC-SH/1', 'AC-SH', 'SHORE', 'SHORE/B', { via: [[68.25, 46.5, 30]], grommets: ['IP-R-1'] });
  s.run('AC-SH/2', 'AC-SH', 'SHORE/B', 'ATS');
  s.run('AC-GN/0', 'AC-GN', 'GEN', 'GEN/B');
  s.run('AC-GN/1', 'AC-GN', 'GEN/B', 'ATS', {
    via: [
      [347.25, -35, 12],
      [347.25, -42, 13],
      [347.25, -42, 89],
      [347.25, 31, 89],
      [347.25, 31, 95.5],
      [50, 31, 95.5],
      [50, 31, 88],
      [50, 40, 70],
    ],
    zones: ['RC-R'],
    grommets: ['CL-7', 'CL-1'],
    comment: 'up the rear cabinet, over the ceiling, down beside the mains panel',
  });
  s.run('AC-M/1', undefined, 'ATS', 'ACP', { extra: { conductor: cable(4), marking: 'MAINS IN' } });
}

/** From a breaker down into the right lane, along it to `x`, in lane `y`. */
const lane = (n: number, y: number): readonly P[] => [
  [50, breakerAt(n)[1], breakerAt(n)[2]],
  [50, y, 13],
  [50, y, 3.6],
];
/** From a breaker up into the right chase. */
const chase = (n: number, y: number): readonly P[] => [
  [50, breakerAt(n)[1], breakerAt(n)[2]],
  [50, y, 88],
  [50, y, 94.5],
];

function wallOutlets(s: Service, id: string, bay: number, junction: string, lining: string): void {
  const x = GRID.mid(bay);
  const outlets: readonly P[] = [
    [x, 47.3, 22],
    [x - 3, 47.3, 44],
    [x + 3, 47.3, 44],
    [x, 47.3, 60],
  ];
  outlets.forEach((place, k) => {
    const out = s.node(`${id}/R${k + 1}`, 'load', place, {
      name: `outlet ${k + 1}, right wall bay ${bay}`,
      circuit: id,
      load: `${k === 0 ? 6 : 2} A`,
    });
    s.run(`${id}/R${k + 1}w`, id, junction, out, {
      via: [[place[0], wallY, place[2]]],
      zones: [`WR-${bay}`],
      grommets: [lining],
    });
  });
}

function receptacles(s: Service): void {
  const front: readonly (readonly [number, number, number, string, string, string, number])[] = [
    [1, 2, 86, 'AP-14', 'AP-33', 'IP-R-1', 34],
    [2, 7, 167, 'AP-17', 'AP-34', 'IP-R-2', 36],
  ];
  for (const [n, bay, x, lanePanel, wallPanel, lining, y] of front) {
    const id = circuit(
      s,
      n,
      `outlets right wall, bay ${bay}`,
      12,
      20,
      10,
      n === 1 ? 'Outlets. The front two come up from the lane, the rear two down from the roof.' : undefined,
    );
    const junction = s.node(`${id}/J1`, 'junction', [x, y, 3.6], {
      name: `junction box, lane`,
      circuit: id,
      panel: lanePanel,
      tolerance: '10 mm',
    });
    const wall = s.node(`${id}/J2`, 'junction', [GRID.mid(bay), wallY, 26], {
      name: `junction box, wall bay ${bay}`,
      circuit: id,
      panel: wallPanel,
      tolerance: '10 mm',
    });
    s.run(`${id}/1`, id, `${id}/B`, junction, { via: lane(n, y), zones: ['RL'] });
    s.run(`${id}/2`, id, junction, wall, {
      via: [
        [GRID.mid(bay), 42, 3.6],
        [GRID.mid(bay), 42, 12.2],
        [GRID.mid(bay), wallY, 12.2],
      ],
      zones: ['RL', `FD-${bay}`, `WR-${bay}`],
    });
    wallOutlets(s, id, bay, wall, lining);
  }
  const rear: readonly (readonly [number, number, string, string, number])[] = [
    [3, 12, 'AP-35', 'IP-R-4', 28],
    [4, 17, 'AP-36', 'IP-R-6', 26.5],
  ];
  for (const [n, bay, wallPanel, lining, y] of rear) {
    const id = circuit(s, n, `outlets right wall, bay ${bay}`, 12, 20, 10);
    const wall = s.node(`${id}/J1`, 'junction', [GRID.mid(bay), wallY, 26], {
      name: `junction box, wall bay ${bay}`,
      circuit: id,
      panel: wallPanel,
      tolerance: '10 mm',
    });
    s.run(`${id}/1`, id, `${id}/B`, wall, {
      via: [...chase(n, y), [GRID.mid(bay), y, 94.5], [GRID.mid(bay), wallY, 94.5]],
      zones: ['RC-R', `RS-${bay}`, `WR-${bay}`],
      grommets: ['CL-1', 'TP-R'],
    });
    wallOutlets(s, id, bay, wall, lining);
  }
}

function roofUnits(s: Service): void {
  const units: readonly (readonly [number, number, string, number])[] = [
    [5, 7, 'AP-30', 25],
    [6, 13, 'AP-31', 29.5],
  ];
  for (const [n, bay, panel, y] of units) {
    const id = circuit(s, n, `roof unit, bay ${bay}`, 13, 20, 10, n === 5 ? 'Overhead' : undefined);
    const x = GRID.mid(bay);
    const junction = s.node(`${id}/J1`, 'junction', [x, y, 94], {
      name: `junction box, roof unit bay ${bay}`,
      circuit: id,
      panel,
      tolerance: '10 mm',
    });
    const unit = s.node(`${id}/U`, 'load', [x, 0, 99.2], { name: `roof unit ${n - 4}`, circuit: id, load: '13 A' });
    s.run(`${id}/1`, id, `${id}/B`, junction, { via: chase(n, y), zones: ['RC-R'], grommets: ['CL-1'] });
    s.run(`${id}/2`, id, junction, unit, {
      via: [
        [x, 5, 94],
        [x, 0, 96],
      ],
      zones: ['RC-R', `TB-${bay}`],
    });
  }
  const lamps: readonly (readonly [number, number, string, string, number])[] = [
    [7, 3, 'AP-29', 'paper drying lamps', 24.5],
    [8, 18, 'AP-32', 'bindery task lamps', 30],
  ];
  for (const [n, bay, panel, name, y] of lamps) {
    const id = circuit(s, n, name, 8, 15, 12);
    const x = GRID.mid(bay);
    const junction = s.node(`${id}/J1`, 'junction', [x, y, 94], {
      name: `junction box, ${name}`,
      circuit: id,
      panel,
      tolerance: '10 mm',
    });
    s.run(`${id}/1`, id, `${id}/B`, junction, { via: chase(n, y), zones: ['RC-R'], grommets: ['CL-1'] });
    [14, 0, -14].forEach((lampY, k) => {
      const lamp = s.node(`${id}/L${k + 1}`, 'load', [x, lampY, 90.4], { name: `${name}, ${k + 1}`, circuit: id, load: '2.6 A' });
      s.run(`${id}/${k + 2}`, id, junction, lamp, {
        via: [
          [x, y - 4, 95 - k * 0.5],
          [x, lampY, 95 - k * 0.5],
        ],
        zones: ['RC-R', `TB-${bay}`],
        grommets: [ceilingOf(bay)],
      });
    });
  }
}

function machines(s: Service): void {
  const floor: readonly (readonly [number, string, number, string, number, number, number])[] = [
    [9, 'hand press motor', 142, 'AP-16', 145.75, 12, 30],
    [10, 'platen press', 176, 'AP-17', 176.75, 14, 32],
    [11, 'guillotine', 197, 'AP-18', 192.25, 10, 38.5],
  ];
  for (const [n, name, x, panel, up, amps, y] of floor) {
    const id = circuit(s, n, name, amps, 20, 8, n === 9 ? 'Machines' : undefined);
    const junction = s.node(`${id}/J1`, 'junction', [x, y, 4.8], {
      name: `junction box, ${name}`,
      circuit: id,
      panel,
      tolerance: '10 mm',
    });
    const machine = s.node(`${id}/M`, 'load', [up, 32, 14], { name, circuit: id, load: `${amps} A` });
    s.run(`${id}/1`, id, `${id}/B`, junction, { via: [...lane(n, y).slice(0, 2), [50, y, 4.8]], zones: ['RL'] });
    s.run(`${id}/2`, id, junction, machine, {
      via: [
        [up, 32, 4.8],
        [up, 32, 12],
      ],
      zones: ['RL'],
    });
  }
  const id = circuit(s, 12, 'air compressor', 14, 20, 8);
  const bay = 17;
  const x = GRID.mid(bay);
  const junction = s.node(`${id}/J1`, 'junction', [328, 38, 4], {
    name: 'junction box, compressor',
    circuit: id,
    panel: 'AP-19',
    tolerance: '10 mm',
  });
  const outlet = s.node(`${id}/M`, 'load', [331.75, 40, 13], { name: 'air compressor', circuit: id, load: '14 A' });
  s.run(`${id}/1`, id, `${id}/B`, junction, {
    via: [...chase(12, 24.5), [x + 2, 24.5, 94.5], [x + 2, wallY, 94.5], [x + 2, wallY, 12.2], [x + 2, 45, 12.2], [x + 2, 45, 4]],
    zones: ['RC-R', 'RS-17', 'WR-17', 'FD-17', 'RR'],
    grommets: ['CL-1', 'TP-R'],
  });
  s.run(`${id}/2`, id, junction, outlet, { via: [[331.75, 40, 4]], zones: ['RR'] });
  const charger = circuit(s, 13, 'charger', 12, 20, 10);
  s.run(`${charger}/1`, charger, `${charger}/B`, 'CONV', { via: [[50, 32, 30]] });
}
