import { Service } from '../coach/service.js';
import type { P } from '../inches.js';
import { GRID } from './plan.js';
import { lanesOf } from './zones.js';

const every = { supports: '18 in', tolerance: '10 mm', stage: 'services' };

/** Propane: outside under the belly all the way, one riser to each appliance, no joint in any closed place. */
export function gas(): Service {
  const s = new Service('gas', 'Propane', 'gas', { ...every, date: '2026-03-19' }, [
    'Propane. Steel pipe and flares, all of it outside under the belly; only the risers come through, in sleeves.',
    'For a licensed gas fitter.',
  ]);
  s.circuit({
    id: 'GA',
    name: 'propane main',
    size: '1/2 in steel',
    working_pressure: '11 in w.c.',
    protection: { kind: 'regulator, two-stage', at: 'LP/R' },
    marking: 'yellow',
  });
  s.node('LP', 'source', [40, -40, -10], { name: 'propane tank' });
  s.node('LP/V', 'valve', [44, -38, -3], { name: 'tank valve', position: 'normally open' });
  s.node('LP/R', 'device', [47, -36, -2.5], { name: 'regulator' });
  s.node('LP/TP', 'test-point', [51, -30, -1.5], { name: 'gauge tapping' });
  s.run('GA/1', 'GA', 'LP', 'LP/V');
  s.run('GA/2', 'GA', 'LP/V', 'LP/R');
  s.run('GA/3', 'GA', 'LP/R', 'LP/TP');
  const appliances: readonly (readonly [string, string, number])[] = [
    ['HEATER/G', 'water heater', 4],
    ['FURNACE/G', 'furnace', 5],
    ['TYPEPOT/G', 'type-metal pot', 6],
  ];
  let last = 'LP/TP';
  appliances.forEach(([id, name, bay], i) => {
    const x = GRID.mid(bay);
    const tee = s.node(`GA-T${i + 1}`, 'fitting', [x, -22, -1.5], { name: `tee, ${name}`, circuit: 'GA' });
    s.run(`GA/${4 + i}`, 'GA', last, tee, { via: i === 0 ? [[58, -22, -1.5]] : [] });
    const valve = s.node(`GV-${i + 1}`, 'valve', [x, -22, 14], {
      name: `shut-off, ${name}`,
      circuit: 'GA',
      position: 'normally open',
    });
    s.node(id, 'load', [x, -28, 17], { name, circuit: 'GA' });
    s.run(`GA/${7 + i * 2}`, 'GA', tee, valve, {
      grommets: ['BP-L-2'],
      extra: { sealed: ['BP-L-2'] },
      ...(i === 0 ? { comment: 'risers, each in a sleeve through the belly panel' } : {}),
    });
    s.run(`GA/${8 + i * 2}`, 'GA', valve, id);
    last = tee;
  });
  return s;
}

/** Compressed air: compressor rear right, main through the trough, a drop at each machine. */
export function air(): Service {
  const s = new Service('air', 'Compressed air', 'air', { ...every, date: '2026-03-26' }, [
    'Compressed air, 110 psi at the receiver, 90 after the regulator.',
  ]);
  s.circuit({
    id: 'AI',
    name: 'air main',
    size: '1/2 in nylon',
    working_pressure: '110 psi',
    protection: { kind: 'relief valve', at: 'AIR/REC' },
    marking: 'white',
  });
  s.node('AIR/REC', 'source', [340, 36, 22], { name: 'receiver, 10 gal' });
  s.node('AIR/V', 'valve', [336, 30, 24], { name: 'main shut-off', circuit: 'AI', position: 'normally open' });
  s.node('AIR/REG', 'device', [333, 24, 24], { name: 'regulator and filter', circuit: 'AI' });
  s.node('AIR/TP', 'test-point', [333, 20, 22], { name: 'gauge tapping', circuit: 'AI' });
  s.run('AI/1', 'AI', 'AIR/REC', 'AIR/V');
  s.run('AI/2', 'AI', 'AIR/V', 'AIR/REG');
  s.run('AI/3', 'AI', 'AIR/REG', 'AIR/TP');
  const drops: readonly (readonly [string, string, number, string, number, number])[] = [
    ['bench gun, bindery', 'AIR/L1', 320, 'AP-06', 316.25, 22],
    ['tag lift', 'AIR/L2', 268, 'AP-05', 269.75, 12.5],
    ['nipping press', 'AIR/L3', 206, 'AP-04', 207.75, 18],
    ['platen press clutch', 'AIR/L4', 144, 'AP-03', 145.75, 18],
    ['front bench gun', 'AIR/L5', 97, 'AP-02', 99.25, 22],
  ];
  let last = 'AIR/TP';
  drops.forEach(([name, id, x, panel, up, z], i) => {
    const tee = s.node(`AI-T${i + 1}`, 'fitting', [x, 11.5, 4.9], {
      name: `tee, ${name}`,
      circuit: 'AI',
      panel,
      tolerance: '10 mm',
    });
    const via: readonly P[] =
      i === 0
        ? [
            [331.75, 11.5, 14],
            [331.75, 11.5, 4.9],
          ]
        : [];
    s.run(`AI/${4 + i * 3}`, 'AI', last, tee, { via, zones: ['TC'] });
    const valve = s.node(`AV-${i + 1}`, 'valve', [up, 11.5, 12.2], {
      name: `shut-off, ${name}`,
      circuit: 'AI',
      position: 'normally open',
    });
    s.node(id, 'load', [up, 14, z + 2], { name, circuit: 'AI' });
    s.run(`AI/${5 + i * 3}`, 'AI', tee, valve, { via: [[up, 11.5, 5]], zones: ['TC'] });
    s.run(`AI/${6 + i * 3}`, 'AI', valve, id);
    last = tee;
  });
  return s;
}

/** Hydraulics of the slide-out: pack under the raised floor, all in the open once the bench lid is up. */
export function hydraulic(): Service {
  const s = new Service('hydraulic', 'Slide-out hydraulics', 'hydraulic', { ...every, date: '2026-03-31' }, [
    'Slide-out hydraulics. Pressure off and slide pinned before anything is opened.',
  ]);
  s.circuit({
    id: 'HY',
    name: 'slide-out',
    size: '3/8 in hose',
    working_pressure: '2000 psi',
    protection: { kind: 'relief valve', at: 'HPU' },
    marking: 'HY',
  });
  s.node('HPU', 'source', [207.75, -15, 14], { name: 'power pack', circuit: 'HY' });
  s.node('HY/MV', 'valve', [214, -15, 14], { name: 'direction valve block', circuit: 'HY', position: 'normally closed' });
  s.node('HY/TP', 'test-point', [211, -15, 15.5], { name: 'gauge tapping', circuit: 'HY' });
  s.run('HY/1', 'HY', 'HPU', 'HY/TP');
  s.run('HY/2', 'HY', 'HY/TP', 'HY/MV');
  const cylinders: readonly (readonly [string, number])[] = [
    ['front', 180],
    ['rear', 282],
  ];
  cylinders.forEach(([name, x], i) => {
    const letter = name === 'front' ? 'F' : 'B';
    const out = s.node(`CYL-${letter}/O`, 'fitting', [x, -34, 13.4], { name: `${name} cylinder, out port`, circuit: 'HY' });
    const back = s.node(`CYL-${letter}/I`, 'fitting', [x, -22, 13.4], { name: `${name} cylinder, in port`, circuit: 'HY' });
    s.run(`HY/${3 + i * 2}`, 'HY', 'HY/MV', out, {
      via: [
        [214, -20, 13],
        [x, -20, 13],
      ],
    });
    s.run(`HY/${4 + i * 2}`, 'HY', 'HY/MV', back, {
      via: [
        [214, -18, 13],
        [x, -18, 13],
      ],
    });
  });
  return s;
}

/** Warm air, 3 in duct. */
export function duct(): Service {
  const s = new Service(
    'duct',
    'Warm air',
    'duct',
    { ...every, date: '2026-03-10' },
    ['Warm air from the furnace, 3 in duct in the left lane.'],
    undefined,
    lanesOf,
  );
  s.circuit({ id: 'WA', name: 'warm air', size: '3 in aluminium duct', marking: 'WA' });
  const y = -35.2;
  s.node('FURNACE/D', 'source', [GRID.mid(5), y, 13], { name: 'furnace plenum', circuit: 'WA' });
  s.node('WA-T1', 'fitting', [119, y, 3.5], { name: 'tee', circuit: 'WA', panel: 'AP-10', tolerance: '10 mm' });
  s.node('WA-V1', 'valve', [92, y, 3.5], {
    name: 'damper, front',
    circuit: 'WA',
    panel: 'AP-09',
    tolerance: '10 mm',
    position: 'normally open',
  });
  s.node('WA-V2', 'valve', [143, y, 3.5], {
    name: 'damper, middle',
    circuit: 'WA',
    panel: 'AP-11',
    tolerance: '10 mm',
    position: 'normally open',
  });
  s.node('WA-R1', 'load', [83.75, y, 11.6], { name: 'register, type wash sink', circuit: 'WA' });
  s.node('WA-R2', 'load', [145.75, y, 11.6], { name: 'register, paper damper', circuit: 'WA' });
  s.run('WA/1', 'WA', 'FURNACE/D', 'WA-T1', { via: [[GRID.mid(5), y, 3.5]], zones: ['LL'] });
  s.run('WA/2', 'WA', 'WA-T1', 'WA-V1', { zones: ['LL'] });
  s.run('WA/3', 'WA', 'WA-V1', 'WA-R1', { via: [[83.75, y, 3.5]], zones: ['LL'] });
  s.run('WA/4', 'WA', 'WA-T1', 'WA-V2', { zones: ['LL'] });
  s.run('WA/5', 'WA', 'WA-V2', 'WA-R2', { via: [[145.75, y, 3.5]], zones: ['LL'] });
  return s;
}
