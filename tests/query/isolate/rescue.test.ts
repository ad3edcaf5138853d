import { describe, expect, it } from 'vitest';
import { shutOffs } from '../../../src/query/isolate/graph/shut-offs.js';
import { proposedRole } from '../../../src/query/isolate/proposed-role.js';
import { beforeWelding, firstShutOffs, powerEquipment, rescueSources } from '../../../src/query/isolate/rescue.js';
import type { NodeKind, NodeRole, ServiceNode, Tank } from '../../../src/records/index.js';
import { record } from '../../support/build.js';
import { node, run } from '../../support/services.js';

type Medium = ServiceNode['medium'];
const of = (id: string, medium: Medium, role?: NodeRole, more: Partial<ServiceNode> = {}) =>
  node(id, [0, 0, 0], { medium, nodeKind: 'device', ...(role ? { role } : {}), ...more });
const tank = (id: string, use: Tank['use']): Tank => ({ ...record(id), use }) as unknown as Tank;

/** Battery, plug, switch and fuse in a row; a cylinder with a valve; a diesel tank with a node and a gasoline one without. */
const [bat, plug, sw, fuse, lamp] = [
  of('BAT', 'dc', 'battery', { of: ['BATTERY-BOX'] }),
  of('PLUG', 'dc', 'plug'),
  of('SW', 'dc', 'switch'),
  of('F', 'dc', 'fuse'),
  of('L', 'dc', 'lamp'),
];
const [second, fuse2] = [of('BAT-2', 'dc', 'battery'), of('F-2', 'dc', 'fuse')];
const [lp, valve, stove] = [of('LP', 'gas', 'cylinder'), of('GV', 'gas', 'shut-off'), of('ST', 'gas', 'appliance')];
const [late] = [of('GV-2', 'gas', 'shut-off')];
const diesel = of('D/OUT', 'fuel', 'tank', { of: ['DIESEL'] });
const sun = of('SUN', 'dc', 'solar panel');
const inverter = of('INV', 'ac', 'inverter', { of: ['INVERTER'] });
const box = of('BOX', 'dc', 'busbar', { nodeKind: 'panel' });
const shell = {
  nodes: [sun, lamp, fuse, sw, plug, bat, second, fuse2, lp, valve, late, stove, diesel, inverter, box],
  runs: [
    run('1', bat, plug),
    run('2', plug, sw),
    run('3', sw, fuse),
    run('4', fuse, lamp),
    run('5', second, fuse2),
    run('6', fuse2, lamp),
    run('G1', lp, valve),
    run('G2', valve, late),
    run('G3', late, stove),
  ],
  circuits: [],
  tanks: [tank('DIESEL', 'fuel'), tank('SPARE', 'fuel'), tank('WATER', 'fresh'), tank('AUTOGAS', 'gas')],
  components: [],
};

describe('what a rescuer shuts first', () => {
  it('goes gas, fuel, mains, direct current: in each the sources, then switches and valves, then panels, and the sun last', () => {
    expect(rescueSources(shell).map(({ group, id }) => `${group}: ${id}`)).toEqual([
      'Gas: LP',
      'Gas: GV',
      'Gas: GV-2',
      'Gas: AUTOGAS',
      'Fuel: D/OUT',
      'Fuel: SPARE',
      'AC power: INV',
      'Batteries and direct current: BAT',
      'Batteries and direct current: BAT-2',
      'Batteries and direct current: SW',
      'Batteries and direct current: F-2',
      'Batteries and direct current: BOX',
      'Batteries and direct current: SUN',
    ]);
    expect(rescueSources(shell).find(({ id }) => id === 'GV')?.node).toBe(valve);
    expect(rescueSources(shell).find(({ id }) => id === 'SPARE')).not.toHaveProperty('node');
  });

  it('takes the first switch or valve on the lines of each source, and no plug', () => {
    expect([...firstShutOffs(shell)].sort()).toEqual(['F-2', 'GV']);
    expect(shutOffs(shell).map(({ source, links }) => `${source}: ${links.map(({ id }) => id).join(' ')}`)).toEqual([
      'SUN: ',
      'BAT: PLUG',
      'BAT-2: F-2',
      'LP: GV',
      'D/OUT: ',
    ]);
  });

  it('knows the equipment that gives power', () => {
    expect([...powerEquipment(shell)].sort()).toEqual(['BATTERY-BOX', 'INVERTER']);
  });

  it('lists before welding what changes power, then appliances on wires; neither a stove on gas nor what has no role', () => {
    const [tv, charger, plain] = [of('TV', 'ac', 'appliance'), of('CHG', 'ac', 'charger'), of('?', 'dc')];
    const nodes = [tv, plain, charger, stove, of('PHONE', 'data', 'appliance'), inverter];
    expect(beforeWelding({ nodes }).map(({ id }) => id)).toEqual(['CHG', 'INV', 'TV', 'PHONE']);
  });
});

describe('a role that a name suggests', () => {
  const role = (name: string, medium: Medium, nodeKind: NodeKind = 'device') => proposedRole({ name, medium, nodeKind });

  it.each([
    ['Transfer switch', 'ac', 'changeover'],
    ['Change-over', 'ac', 'changeover'],
    ['Inverter and charger', 'ac', 'inverter charger'],
    ['Main fuse', 'dc', 'fuse'],
    ['Main breaker', 'ac', 'breaker'],
    ['Battery switch', 'dc', 'switch'],
    ['MPPT controller', 'dc', 'solar regulator'],
    ['Regulator', 'gas', 'gas regulator'],
    ['Batteries', 'dc', 'battery'],
    ['Genset', 'ac', 'generator'],
    ['Shore power', 'ac', 'shore inlet'],
    ['Hose inlet', 'water', 'city inlet'],
    ['Propane', 'gas', 'cylinder'],
    ['Air receiver', 'air', 'reservoir'],
    ['Water pump', 'water', 'pump'],
    ['Boiler', 'water', 'heater'],
    ['Stop cock', 'water', 'shut-off'],
    ['Bus bar', 'dc', 'busbar'],
    ['Socket', 'ac', 'outlet'],
  ] as const)('%s in %s: %s', (name, medium, wanted) => {
    expect(role(name, medium)).toBe(wanted);
  });

  it('is one that is found in the medium, else what the kind says', () => {
    expect(role('Regulator', 'air')).toBe('gas regulator');
    expect(role('Fuse box', 'water', 'fitting')).toBeUndefined();
    expect(role('Galley', 'dc', 'panel')).toBe('busbar');
    expect(role('Galley', 'water', 'panel')).toBeUndefined();
    expect(role('Galley', 'water')).toBe('appliance');
    expect(proposedRole({ medium: 'dc', nodeKind: 'splice' })).toBeUndefined();
  });
});
