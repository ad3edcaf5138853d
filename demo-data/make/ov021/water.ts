import { Service } from '../coach/service.js';
import type { P } from '../inches.js';
import type { Rec } from '../yaml.js';
import { lanesOf } from './zones.js';

const every = { supports: '16 in', tolerance: '10 mm', stage: 'services', date: '2026-03-12' };

/** One trunk in the left lane: crown in the middle, a drain at each end, tees where a panel opens. */
interface Trunk {
  readonly id: string;
  readonly circuit: string;
  readonly y: number;
  readonly tees: readonly (readonly [number, string, string])[];
}

const CROWN = 117;
/** Falls 1 in 35 from the crown to both drains. */
const fall = (x: number): number => 4.6 - Math.abs(x - CROWN) / 35;

function trunk(s: Service, { id, circuit, y, tees }: Trunk): void {
  const front = s.node(`${id}-D1`, 'drain', [56, y, fall(56)], {
    name: `${circuit} drain, front`,
    circuit,
    panel: 'AP-08',
    tolerance: '10 mm',
    position: 'normally closed',
  });
  const rear = s.node(`${id}-D2`, 'drain', [175, y, fall(175)], {
    name: `${circuit} drain, rear`,
    circuit,
    panel: 'AP-12',
    tolerance: '10 mm',
    position: 'normally closed',
  });
  let last = front;
  tees.forEach(([x, panel, name], i) => {
    const tee = s.node(`${id}-T${i + 1}`, 'fitting', [x, y, fall(x)], { name, circuit, panel, tolerance: '10 mm' });
    s.run(`${id}/${i + 1}`, circuit, last, tee, { zones: ['LL'] });
    last = tee;
  });
  s.run(`${id}/${tees.length + 1}`, circuit, last, rear, { zones: ['LL'] });
}

/** From a tee over to mid-bay and up through the floor. */
function riser(
  s: Service,
  circuit: string,
  tee: string,
  to: string,
  x: number,
  more: { readonly valve?: string; readonly panel?: string } = {},
): void {
  const [teeX, y, z] = s.placeOf(tee);
  const over: P = [x, y, z + Math.abs(x - teeX) / 20 + 0.1];
  const up: P = [x, y, 13];
  if (more.valve === undefined) {
    s.run(`${to}w`, circuit, tee, to, { via: [over, up], zones: ['LL'] });
    return;
  }
  s.node(more.valve, 'valve', up, { name: `${more.valve} shut-off, above the floor`, circuit, position: 'normally open' });
  s.run(`${to}w1`, circuit, tee, more.valve, { via: [over], zones: ['LL'] });
  s.run(`${to}w2`, circuit, more.valve, to);
}

export function water(): Service {
  const pipe = (size: string): Rec => ({ size, working_pressure: '50 psi' });
  const s = new Service(
    'water',
    'Fresh water',
    'water',
    every,
    ['Fresh water. Crimp rings, gauge on every one. Both trunks crown at station 117 and fall to a drain at each end.'],
    undefined,
    lanesOf,
  );
  s.circuit({ id: 'WC', name: 'cold water', ...pipe('1/2 in PEX'), marking: 'blue' });
  s.circuit({ id: 'WH', name: 'hot water', ...pipe('1/2 in PEX'), marking: 'red' });
  s.circuit({ id: 'WS', name: 'pump suction', ...pipe('3/4 in PEX'), marking: 'blue, two bands' });
  s.node('FRESH/OUT', 'source', [96, -28, 14], { name: 'fresh tank outlet', circuit: 'WS' });
  s.node('WV-1', 'valve', [97.5, -28, 13.8], { name: 'tank shut-off', circuit: 'WS', position: 'normally open' });
  s.node('PUMP', 'device', [99.25, -28, 13.5], { name: 'water pump', circuit: 'WC' });
  s.node('FRESH/FILL', 'terminal', [83.75, -49.4, 34], { name: 'gravity fill, left side', circuit: 'WS' });
  s.node('FRESH/IN', 'fitting', [86, -44, 33], { name: 'tank fill spigot', circuit: 'WS' });
  s.node('WTP-1', 'test-point', [100, -26, 14], { name: 'gauge tapping, cold', circuit: 'WC' });
  s.run('WC/TP', 'WC', 'PUMP', 'WTP-1');
  s.run('WS/1', 'WS', 'FRESH/OUT', 'WV-1');
  s.run('WS/2', 'WS', 'WV-1', 'PUMP');
  s.run('WS/3', 'WS', 'FRESH/FILL', 'FRESH/IN', {
    via: [[83.75, -47, 33.6]],
    grommets: ['IP-L-2'],
    extra: { size: '1-1/4 in hose' },
  });

  trunk(s, {
    id: 'WC',
    circuit: 'WC',
    y: -30.5,
    tees: [
      [66, 'AP-08', 'tee, type wash sink'],
      [95, 'AP-09', 'tee, pump'],
      [112, 'AP-10', 'tee, water heater'],
      [142, 'AP-11', 'tee, paper damper'],
      [165, 'AP-12', 'tee, hand basin'],
    ],
  });
  trunk(s, {
    id: 'WH',
    circuit: 'WH',
    y: -40,
    tees: [
      [67, 'AP-08', 'tee, type wash sink'],
      [120, 'AP-10', 'tee, water heater'],
      [166, 'AP-12', 'tee, hand basin'],
    ],
  });
  fixtures(s);
  return s;
}

function fixtures(s: Service): void {
  s.node('SINK-1/C', 'load', [68.25, -42, 32], { name: 'type wash sink, cold', circuit: 'WC' });
  s.node('SINK-1/H', 'load', [68.25, -43, 32], { name: 'type wash sink, hot', circuit: 'WH' });
  s.node('BASIN/C', 'load', [161.25, -42, 32], { name: 'hand basin, cold', circuit: 'WC' });
  s.node('BASIN/H', 'load', [161.25, -43, 32], { name: 'hand basin, hot', circuit: 'WH' });
  s.node('DAMPER/C', 'load', [145.75, -34, 30], { name: 'paper damper', circuit: 'WC' });
  s.node('HEATER/C', 'device', [114.75, -40, 16], { name: 'water heater, cold in', circuit: 'WC' });
  s.node('HEATER/H', 'device', [117, -42, 20], { name: 'water heater, hot out', circuit: 'WH' });
  s.run('WC/P', 'WC', 'PUMP', 'WC-T2', {
    via: [
      [99.25, -30.5, 13],
      [99.25, -30.5, fall(95) + 0.3],
    ],
    zones: ['LL'],
    comment: 'down from the pump; everything below it drains both ways',
  });
  riser(s, 'WC', 'WC-T1', 'SINK-1/C', 68.25, { valve: 'WV-2' });
  riser(s, 'WH', 'WH-T1', 'SINK-1/H', 68.25, { valve: 'WV-3' });
  riser(s, 'WC', 'WC-T5', 'BASIN/C', 161.25, { valve: 'WV-4' });
  riser(s, 'WH', 'WH-T3', 'BASIN/H', 161.25, { valve: 'WV-5' });
  riser(s, 'WC', 'WC-T4', 'DAMPER/C', 145.75, { valve: 'WV-6' });
  riser(s, 'WC', 'WC-T3', 'HEATER/C', 114.75, { valve: 'WV-7' });
  riser(s, 'WH', 'WH-T2', 'HEATER/H', 117);
  s.run('WH/0', 'WH', 'HEATER/C', 'HEATER/H', { comment: 'through the heater: cold in, hot out' });
}

/** Waste: falls to the grey tank, clean-outs where a panel opens. */
export function waste(): Service {
  const s = new Service(
    'waste',
    'Waste',
    'drain',
    { ...every, date: '2026-03-13' },
    ['Waste, 1-1/2 in ABS, falls better than 3/8 in a foot to the grey tank.'],
    undefined,
    lanesOf,
  );
  s.circuit({ id: 'DR', name: 'waste', size: '1-1/2 in ABS', marking: 'grey' });
  const z = (x: number): number => 5.85 - (x - 68) / 29;
  s.node('SINK-1/W', 'load', [68.25, -44.5, 24], { name: 'type wash sink, waste', circuit: 'DR' });
  s.node('BASIN/W', 'load', [161.25, -44.5, 24], { name: 'hand basin, waste', circuit: 'DR' });
  s.node('DR-T1', 'fitting', [82, -44.5, z(82)], { name: 'clean-out 1', circuit: 'DR', panel: 'AP-09', tolerance: '10 mm' });
  s.node('DR-T2', 'fitting', [138, -44.5, z(138)], { name: 'clean-out 2', circuit: 'DR', panel: 'AP-11', tolerance: '10 mm' });
  s.node('DR-T3', 'fitting', [166, -44.5, z(166)], {
    name: 'wye, hand basin',
    circuit: 'DR',
    panel: 'AP-12',
    tolerance: '10 mm',
  });
  s.node('GREY/IN', 'device', [188, -40, -1], { name: 'grey tank inlet', circuit: 'DR' });
  s.node('GREY/OUT', 'source', [208, -40, -15], { name: 'grey tank outlet', circuit: 'DR' });
  s.node('GREY/V', 'valve', [210, -44, -15.2], { name: 'grey dump valve', circuit: 'DR', position: 'normally closed' });
  s.node('GREY/D', 'drain', [212, -48, -15.5], { name: 'hose bayonet, left side', circuit: 'DR' });
  s.run('DR/1', 'DR', 'SINK-1/W', 'DR-T1', { via: [[68.25, -44.5, z(68)]], zones: ['LL'] });
  s.run('DR/2', 'DR', 'DR-T1', 'DR-T2', { zones: ['LL'] });
  s.run('DR/3', 'DR', 'DR-T2', 'DR-T3', { zones: ['LL'] });
  s.run('DR/4', 'DR', 'BASIN/W', 'DR-T3', { via: [[161.25, -44.5, z(161)]], zones: ['LL'] });
  s.run('DR/5', 'DR', 'DR-T3', 'GREY/IN', {
    via: [[184, -42, z(184)]],
    zones: ['LL'],
    grommets: ['BP-L-3'],
    extra: { sealed: ['BP-L-3'] },
  });
  s.run('DR/6', 'DR', 'GREY/OUT', 'GREY/V');
  s.run('DR/7', 'DR', 'GREY/V', 'GREY/D');
  return s;
}
